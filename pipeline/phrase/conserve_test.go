package phrase

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"wakeledger/pipeline/words"
)

// toldBites is a clause with the bites that it tells.
type toldBites struct {
	text string
	fate words.Fate
	n    int
}

var toldClauses = []toldBites{
	{"missed 2", words.Missed, 2}, {"1 missed", words.Missed, 1}, {"lost one at the boat", words.Lost, 1},
	{"2 pulled hooks", words.Lost, 2}, {"a 99# BFT on the flat line", words.Landed, 1},
	{"1 mahi 8# way back", words.Landed, 1}, {"boxed a wahoo", words.Landed, 1},
	{"released 3 sailfish", words.Released, 3}, {"blue marlin T/R ~100 kg", words.Released, 1},
	{"2 knockdowns no hookup", words.Missed, 2}, {"lost a mahi", words.Lost, 1}, {"wahoo 44 in 20 lb", words.Landed, 1},
	{"let 2 yellowfin go", words.Released, 2}, {"1 wahoo broke off", words.Lost, 1},
	{"2 picadas falladas", words.Missed, 2}, {"un dorado de 8 kg", words.Landed, 1},
	{"2 germons relâchés", words.Released, 2}, {"1 tonno slamato", words.Lost, 1}, {"2 Fehlbisse", words.Missed, 2},
	{"1 atum devolvido", words.Released, 1},
}

var toldRemarks = []string{"fog till 9", "bait balls at 180 ft", "74.2 F", "Took the Pruitts", "First session 8 kts",
	"birds everywhere", "porpoise", "nice weather", "118 gal"}

// However clauses are put together, no bite is lost in silence and none is made up.
func TestTellConserves(t *testing.T) {
	rnd := rand.New(rand.NewPCG(16, 8))
	silent := 0
	for range 4000 {
		want := map[words.Fate]int{}
		var parts []string
		for range 1 + rnd.IntN(4) {
			if rnd.IntN(4) == 0 {
				parts = append(parts, toldRemarks[rnd.IntN(len(toldRemarks))])
				continue
			}
			c := toldClauses[rnd.IntN(len(toldClauses))]
			want[c.fate] += c.n
			parts = append(parts, c.text)
		}
		text := strings.Join(parts, []string{", ", "; ", ". ", "\n", " and ", " / ", " + ", " - "}[rnd.IntN(8)])
		s := Tell(text, Defaults{})
		got := map[words.Fate]int{}
		for _, b := range s.Bites {
			got[b.Fate] += b.N
		}
		for f, n := range want {
			if n == 0 {
				delete(want, f)
			}
		}
		if fmt.Sprint(got) != fmt.Sprint(want) && len(s.Left) == 0 {
			if silent++; silent < 12 {
				t.Errorf("%q\n  read %s", text, show(s))
			}
		}
	}
	if silent > 0 {
		t.Errorf("%d of 4000 texts misread in silence", silent)
	}
}

// No text makes the reader fail, and a clause that is left is part of the text.
func FuzzTell(f *testing.F) {
	for _, c := range toldClauses {
		f.Add(c.text)
	}
	f.Add("0625-0925 6 lines @ 14 kn; 1040-1315 4 lines @ 14")
	f.Add("1st: , 2 of 3 x 4' 5\" ~ a")
	f.Fuzz(func(t *testing.T, text string) {
		s := Tell(text, Defaults{LengthUnit: "in", WeightUnit: "lb"})
		for _, l := range s.Left {
			if !strings.Contains(text, l) {
				t.Errorf("%q is left of %q", l, text)
			}
		}
		for _, b := range s.Bites {
			if b.N < 1 || b.Guess && b.Scaled {
				t.Errorf("%q gives %+v", text, b)
			}
		}
		FishList(text, Defaults{})
		Stretches(text)
		Settings(text)
		Clocks(text)
		Duration(text)
		Count(text)
	})
}
