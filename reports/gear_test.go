package reports

import (
	"strings"
	"testing"

	"wakeledger/queries"
)

func TestGearSection(t *testing.T) {
	in := demoSeason()
	if s := section(t, made(t, in).gearSection); s.Chart != nil ||
		!strings.Contains(s.Sentences[0], "nothing can be said") {
		t.Errorf("%+v", s)
	}
	in.Drag = []queries.Drag{
		{Level: "[20, 25)", Hookups: 40, Lost: 5, EndNotKnown: 2, BreakOffs: 2, BreakShare: p(0.053), BreakLo: p(0.015),
			BreakHi: p(0.17), Pulled: 3, PulledShare: p(0.079), PulledLo: p(0.027), PulledHi: p(0.21)},
		{Level: "[25, 30)", Hookups: 50, Lost: 12, BreakOffs: 6, BreakShare: p(0.12), BreakLo: p(0.056),
			BreakHi: p(0.24), Pulled: 5, PulledShare: p(0.1), PulledLo: p(0.043), PulledHi: p(0.21)},
		{Level: "not logged", Hookups: 3},
	}
	in.Failures = []queries.Failure{{Part: "leader", Gear: "all", Hookups: 93, Known: 91, Failed: 2,
		Share: p(0.022), Lo: p(0.006), Hi: p(0.077)},
		{Part: "leader", Gear: "136 kg", Hookups: 40, Known: 40, Failed: 2, Share: p(0.05), Lo: p(0.014), Hi: p(0.165)}}
	s := section(t, made(t, in).gearSection)
	if s.Chart == nil || len(s.Table.Rows) != 3 {
		t.Fatalf("%+v", s)
	}
	if !strings.Contains(s.Sentences[0], "Of 91 hook-ups whose end is known, 8 broke off") ||
		!strings.Contains(s.Sentences[1], "the intervals overlap") {
		t.Errorf("%q", s.Sentences)
	}
	if !strings.Contains(s.Notes[0], "Leader failed in 2 of 91 hook-ups: 2.2 % (0.6 to 7.7); by what it was, 136 "+
		"kg: 2 of 40.") {
		t.Errorf("%q", s.Notes)
	}
	in.Drag[1].BreakLo = p(0.18)
	if s := section(t, made(t, in).gearSection); !strings.Contains(s.Sentences[1], "lies above that of the others") {
		t.Errorf("%q", s.Sentences)
	}
}
