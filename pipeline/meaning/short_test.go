package meaning

import (
	"os"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
)

// TestHeads holds that the words of headings in testdata/heads.txt speak for their meanings at
// least nearly as loud as for any other.
func TestHeads(t *testing.T) {
	l := lexicon(t)
	text, err := os.ReadFile("testdata/heads.txt")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, line := range strings.Split(string(text), "\n") {
		want, heads, ok := strings.Cut(line, ": ")
		if !ok || strings.HasPrefix(line, "#") {
			continue
		}
		for _, h := range strings.Split(heads, " | ") {
			n++
			s := l.said(layout.Label{Text: h})
			top, of := s.asideWeight, map[string]float64{"aside": s.asideWeight}
			for c, x := range s.columns {
				name := meaningOf(candidate{column: c})
				of[name] = max(of[name], x.weight)
				top = max(top, x.weight)
			}
			best := 0.0
			for _, name := range strings.Split(want, ",") {
				best = max(best, of[name])
			}
			if best <= 0 || best < top-0.7 {
				t.Errorf("%q says %.1f of %s, %.1f of another", h, best, want, top)
			}
		}
	}
	if n < 900 {
		t.Errorf("%d headings alone", n)
	}
}

// TestShortHeads holds what short headings are taken for over cells that fit, and what over cells that
// do not: words cut short are hints, and cells decide.
func TestShortHeads(t *testing.T) {
	l := lexicon(t)
	for _, c := range []struct{ heading, cells, want string }{
		{"st", "06:00 06:10 07:00", "start_s"}, {"et", "11:00 12:10 13:00", "end_s"},
		{"tm", "06:40 07:10 08:00", "time_s"}, {"tid", "1 2 3", "trip"}, {"psg", "1 1 2", "trip"},
		{"nl", "4 5 4 6", "lines_out"}, {"n_lines", "4 5 4 6", "lines_out"}, {"# lns", "4 5 4 6", "lines_out"},
		{"out", "lost landed missed", "outcome"}, {"sex", "F M F", "aside"},
		{"g", "35.5 58.5 40.5", "girth_cm"}, {"wght", "22 31 18", "scale_kg"}, {"lgth_cm", "104 98 77", "length_cm"},
		{"avg_spd", "8 9.5 12", "speed_kn"},
		{"wm", "s e s s", "weighed"}, {"gr", "tr jg tr bt", "method"}, {"bft", "4 3 5", "wind"},
		{"st", "calm rough calm", ""}, {"zq", "4 5 4", ""},
	} {
		v := valuesOf(t, c.heading, strings.Fields(c.cells)...)
		legend := readLegend(nil)
		legend.addShort(l, v)
		got := ""
		for _, x := range l.candidates(legend.rewritten(v), "", nil)[:1] {
			got = meaningOf(x)
		}
		if got != c.want {
			t.Errorf("%s over %s: %q, expected %q", c.heading, c.cells, got, c.want)
		}
	}
}

// TestCodeOfSpecies holds that a species' code over counts is a count of it beside another species or
// where the heading says nothing else, and the wind's force alone.
func TestCodeOfSpecies(t *testing.T) {
	for rows, want := range map[string]string{
		"Date|Start|End|SST|Bft\n2026-06-03|06:00|08:00|21.5|4\n2026-06-04|06:00|08:00|21.7|2":            "wind",
		"Date|Start|End|YFT|BFT|SKJ\n2026-06-03|06:00|08:00|2|1|0\n2026-06-04|06:00|08:00|0|1|5":          "catch",
		"Date|Start|End|Wind|SST\n|||Bft|C\n2026-06-03|06:00|08:00|4|21.5\n2026-06-04|06:00|08:00|3|21.7": "wind",
	} {
		p := planOf(t, "", rows)
		got := ""
		if p.Binds("wind") {
			got = "wind"
		}
		if len(p.Catch) > 0 {
			got = "catch"
		}
		if got != want {
			t.Errorf("%q: %s, expected %s", strings.SplitN(rows, "\n", 2)[0], got, want)
		}
	}
}
