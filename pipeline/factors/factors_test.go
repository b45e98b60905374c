package factors

import (
	"math"
	"testing"
)

func TestLevel(t *testing.T) {
	edges := []float64{0, 6, 8}
	for v, want := range map[float64]string{0: "[0, 6)", 5.9: "[0, 6)", 6: "[6, 8)", 8: "8 and up",
		40: "8 and up", -1: "[0, 6)"} {
		if got := Level(edges, v); got != want {
			t.Errorf("%v is in %s, want %s", v, got, want)
		}
	}
	if Lower("[6, 8)") != 6 || Lower("8 and up") != 8 || Lower("other") != -1 {
		t.Error("lower ends of classes")
	}
}

// TestParse holds that what String writes is read again, and that other words are no class.
func TestParse(t *testing.T) {
	for _, c := range []Class{{0, 6}, {6.5, 8}, {-3, 10}, {16, math.Inf(1)}} {
		if got, ok := Parse(c.String()); !ok || got != c {
			t.Errorf("%s: %v, %v", c, got, ok)
		}
	}
	for _, level := range []string{"", "not logged", "other", "12", "[8, 10", "8, 10)",
		"[8)", "[a, b)", "pull up and up"} {
		if c, ok := Parse(level); ok {
			t.Errorf("%q is %v", level, c)
		}
	}
}

func TestText(t *testing.T) {
	for _, c := range [][3]string{
		{Speed, "[12, 14)", "12 to 14 kn"}, {Speed, "16 and up", "16 kn and up"}, {Speed, "not logged", "not logged"},
		{LureWeight, "[250, 500)", "250 to 500 g"}, {LureWeight, "8 to 16 oz", "8 to 16 oz"},
		{Drag, "[25, 30)", "25 to 30 %"},
		{"sea-state", "3", "sea state 3"}, {"month", "2026-07", "July 2026"}, {"hour", "06:00", "06:00 to 07:00"},
		{"lure", "[0, 6)", "[0, 6)"}, {"sea-temp", "[-3, 10)", "-3 to 10 °C"},
	} {
		if got := Text(c[0], c[1]); got != c[2] {
			t.Errorf("%s %s: %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

func TestScore(t *testing.T) {
	for _, c := range []struct {
		name, level string
		want        float64
		ok          bool
	}{
		{Speed, "[12, 14)", 13, true}, {Speed, "16 and up", 16, true},
		{Speed, "not logged", 0, false}, {"hour", "06:00", 6, true},
		{"sea-state", "3", 3, true}, {"lure", "3", 0, false}, {"month", "2026-07", 0, false},
	} {
		if got, ok := Score(c.name, c.level); got != c.want || ok != c.ok {
			t.Errorf("%s %s: %v %v, want %v %v", c.name, c.level, got, ok, c.want, c.ok)
		}
	}
}

func TestRelated(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"hour", "light", true}, {"moon", "month", true}, {"lure", "hooks", true},
		{"position", "setback", true}, {"turning", "turning", true},
		{"lure", "setback", false}, {"month", "hour", false}, {"turning", "boat", false}, {Speed, "approach", false},
	} {
		if got := Related(c.a, c.b); got != c.want || Related(c.b, c.a) != got {
			t.Errorf("%s and %s: %v", c.a, c.b, got)
		}
	}
}

// TestScales holds that classes follow on each other, and that boats share only what a season has.
func TestScales(t *testing.T) {
	for _, f := range append(All(), beside...) {
		for _, s := range []Scale{f.Classes, f.US, f.Club} {
			for i := 1; i < len(s.Edges); i++ {
				if s.Edges[i] <= s.Edges[i-1] {
					t.Errorf("%s: %v after %v", f.Name, s.Edges[i], s.Edges[i-1])
				}
			}
			if (s.Unit == "") != (len(s.Edges) == 0) {
				t.Errorf("%s: a unit without classes, or the other way", f.Name)
			}
		}
		if f.Noun == "" || Of(f.Name).Noun != f.Noun || len(f.Classes.Edges) > 0 && f.Classes.Size != 0 {
			t.Errorf("%s: %+v", f.Name, f)
		}
	}
	if oz := Of(LureWeight).US; oz.Inside(8) != 226.796185 || oz.ToShow(28.349523125) != 1 {
		t.Error("8 oz are 226.796185 g")
	}
	if f := Of("sea-temp").US; f.Inside(70) != 21.111111 || f.Inside(50) != 10 || f.ToShow(10) != 50 {
		t.Error("70 °F are 21.111111 °C")
	}
}
