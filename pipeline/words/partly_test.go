package words

import "testing"

func TestPartly(t *testing.T) {
	for text, want := range map[string]string{
		"missed bites not counted":                       "hooked",
		"short strikes are not written":                  "hooked",
		"only fish brought to the boat are written down": "landed",
		"Only landed fish are noted.":                    "landed",
		"missed bites counted too":                       "",
		"only fish":                                      "",
		"we landed two":                                  "",
	} {
		if got := Partly(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
