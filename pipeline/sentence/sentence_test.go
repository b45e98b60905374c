package sentence

import "testing"

func TestWords(t *testing.T) {
	for want, got := range map[string]string{
		"":           Capital("") + List(nil),
		"Speed":      Capital("speed"),
		"Écho":       Capital("écho"),
		"\xff":       Capital("\xff"),
		"a":          List([]string{"a"}),
		"a and b":    List([]string{"a", "b"}),
		"a, b and c": List([]string{"a", "b", "c"}),
		"1 trip":     Count(1, "trip", "trips"),
		"0 fish":     Count(0, "fish", "fish"),
		"12 trips":   Count(12, "trip", "trips"),
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
