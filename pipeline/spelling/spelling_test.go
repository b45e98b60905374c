package spelling

import "testing"

func TestNearest(t *testing.T) {
	factors := []string{"speed-band", "lure", "lure-weight", "colour", "hooks", "setback", "sea-temp", "boat"}
	for word, want := range map[string]string{
		"colour": "colour", "color": "colour", "COLOR": "colour", "speed": "speed-band", "speed_band": "speed-band",
		"lures": "lure", "lur": "lure", "weight": "lure-weight", "temp": "sea-temp",
		"setbcak": "setback", "hook": "hooks",
		"bota": "boat", "temperature": "sea-temp", "bo": "", "tide": "", "x": "", "": "",
		"weather": "", "lure weight": "lure-weight",
	} {
		if got := Nearest(word, factors); got != want {
			t.Errorf("%q: nearest is %q, want %q", word, got, want)
		}
	}
}

// TestDistance checks the optimal string alignment by hand.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"girth", "girth", 0}, {"grith", "girth", 1}, {"spede", "speed", 1},
		{"length", "lgth", 2}, {"ca", "abc", 3}} {
		if got := Distance(c.a, c.b); got != c.want {
			t.Errorf("from %q to %q: %d, expected %d", c.a, c.b, got, c.want)
		}
		if got := Distance(c.b, c.a); got != c.want {
			t.Errorf("from %q to %q: %d, expected %d", c.b, c.a, got, c.want)
		}
	}
}
