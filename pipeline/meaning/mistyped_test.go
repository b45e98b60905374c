package meaning

import (
	"slices"
	"strings"
	"testing"
)

// TestMended holds which words of a heading are read for others, one slip of the pen away: not short ones, not
// such as are words of headings themselves, not fish, and not where two are as near.
func TestMended(t *testing.T) {
	x := lexicon(t)
	for text, want := range map[string]string{"Reuslt": "result", "Gitrh (in)": "girth (in)", "Boat sped": "",
		"Lentgh cm": "length cm", "Speed": "", "Lenght/Girth": "length/Girth", "Wnd": "", "Wahooo": "",
		"Peter": "", "Schooly": "", "O que bateu": ""} {
		got, changed := x.mended(text)
		if changed != (want != "") || changed && got != want {
			t.Errorf("%q is read as %q, expected %q", text, got, want)
		}
	}
}

// TestSisters has a heading that says nothing be its sisters' in sheets of one hand: mistyped, or left out; not
// where it says something of its own.
func TestSisters(t *testing.T) {
	const rows = "\n06:40 | wahoo | landed | 120\n08:10 | dorado | lost |\n09:30 | wahoo | missed |"
	for head, want := range map[string]string{"Reuslt": "outcome", "": "outcome", "Rslt of it": "outcome",
		"Notes": ""} {
		log := inferred(t, "log", nil, "2 May 2026", "Time | Fish | Result | Length cm"+rows,
			"3 May 2026", "Time | Fish | "+head+" | Length cm"+rows, "4 May 2026",
			"Time | Fish | Result | Length cm"+rows)
		got := ""
		for _, b := range log.Blocks[1].Plan.Bindings {
			if b.Index == 2 {
				got = b.Column.Name
			}
		}
		if got != want && !(want == "" && got == "notes") {
			t.Errorf("%q between its sisters is %q, expected %q", head, got, want)
		}
		told := slices.ContainsFunc(log.Blocks[1].Plan.Notes, func(n string) bool {
			return strings.Contains(n, "read as Result, which stands there")
		})
		if told != (want == "outcome") {
			t.Errorf("%q between its sisters: told %t, in %q", head, told, log.Blocks[1].Plan.Notes)
		}
	}
}

// TestMendedIsTold holds that a heading which is read for another word is told, and one whose cells say what it is
// or that is understood as it stands is not.
func TestMendedIsTold(t *testing.T) {
	p := planOf(t, "log", "Date | Time | Fish | Gitrh cm | Baleias\n2026-05-02 | 06:40 | wahoo | 60 | muitas\n"+
		"2026-05-03 | 07:10 | wahoo | 55 | nenhuma\n2026-05-09 | 07:40 | dorado | 52 | uma")
	if p == nil {
		t.Fatal("no table is read")
	}
	told := slices.DeleteFunc(slices.Clone(p.Notes), func(n string) bool { return !strings.Contains(n, ": read as ") })
	if !slices.Equal(told, []string{"Gitrh cm: read as girth cm"}) {
		t.Errorf("told %q, expected that Gitrh is read as girth", told)
	}
}
