package phrase

import "testing"

// TestOfCount holds how many of three boated fish a remark says were let go, in words.
func TestOfCount(t *testing.T) {
	for text, want := range map[string]string{
		"all released":                      "3 released",
		"let them all go":                   "3 released",
		"calm; everything released.":        "calm; 3 released.",
		"2 of 3 released":                   "2 released",
		"kept 2 of 3":                       "2 kept, 1 released",
		"kept one and let the others go":    "kept one and  2 released",
		"kept 1, rest released":             "kept 1, 2 released",
		"all three released":                "3 released",
		"2 of 5 released":                   "2 of 5 released",
		"released nothing all day":          "released nothing all day",
		"all mahi released":                 "all mahi released",
		"soltamos todos":                    "3 released",
		"both released":                     "both released",
		"kept one of the mahi, rest let go": "kept one of the mahi, rest let go",
	} {
		if got := OfCount(text, 3); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}
