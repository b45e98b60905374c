package meaning

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
)

// unknownWords is a table none of whose counts has a word that is known: what they are
// lies between them.
const unknownWords = `Date|Begin|Finish|Raised|Came on|On deck|Slipped
3/6/26|06:00|10:00|5|4|3|1
4/6/26|06:10|11:00|3|2|2|0
14/6/26|06:20|09:30|4|4|2|2
15/6/26|06:00|10:20|6|3|1|2
21/6/26|06:00|12:00|2|2|1|1
22/6/26|06:40|12:00|7|5|4|1`

// TestJointly holds that the meanings of several columns together are better evidence
// than those of each alone.
func TestJointly(t *testing.T) {
	score := func(off Switches) (float64, *group, choice) {
		l := inferred(t, "log", off, "", unknownWords)
		u := l.Data()[0]
		g := u.b.group
		full := &group{values: g.values, written: g.written, cands: g.cands, rows: g.rows, cache: map[string]float64{}}
		return full.score(u.choice), full, u.choice
	}
	joint, g, c := score(nil)
	alone, _, one := score(Switches{"jointly": true})
	if joint <= alone || slices.Equal(c, one) {
		t.Errorf("jointly %.2f %v, each alone %.2f %v", joint, c, alone, one)
	}
	for i := range c { // no single column could be better
		for k := range g.cands[i] {
			other := slices.Clone(c)
			if other[i] = k; g.score(other) > joint+1e-9 {
				t.Errorf("%s is better as %s", g.values[i].Label.Text, meaningOf(g.cands[i][k]))
			}
		}
	}
}

// TestPairs holds that clock times stand above words that are used both ways: no single
// column could change its meaning for the better, the two together can.
func TestPairs(t *testing.T) {
	p := planOf(t, "",
		"Date|Out|In|Lines\n3/6/26|06:00|08:00|4\n4/6/26|06:10|09:00|4\n5/6/26|07:00|11:30|5\n6/6/26|06:30|10:00|5")
	if s, e := p.Find("start_s"), p.Find("end_s"); s == nil || e == nil || s.Heading != "Out" || e.Heading != "In" {
		t.Errorf("out before in: %s", summary(p))
	}
}

// TestSwitches holds that what is switched off says nothing, and everything else as before.
func TestSwitches(t *testing.T) {
	l := lexicon(t)
	v := valuesOf(t, "Speed (kn)", "8", "9.5", "12")
	for _, name := range []string{"words", "no word", "cells", "unit", "a guess by its heading", "species over counts",
		"place over fates", "place over lures"} {
		for _, c := range l.candidates(v, "", Switches{name: true}) {
			if slices.ContainsFunc(c.votes, func(x vote) bool { return x.Evidence == name }) {
				t.Errorf("%s is off, and votes for %s", name, meaningOf(c))
			}
		}
	}
	for _, r := range relations {
		g, a := made(t, relationCases[r.name].holds)
		full := g.score(make(choice, len(g.cands)))
		g.off = Switches{r.name: true}
		if left := full - r.score(g, a); math.Abs(g.score(make(choice, len(g.cands)))-left) > 1e-9 {
			t.Errorf("%s is off, and still says something of %v", r.name, a)
		}
		if g.off = (Switches{"relations": true}); g.score(make(choice, len(g.cands))) != 0 {
			t.Error("relations are off, and still say something")
		}
	}
}

func valuesOf(t *testing.T, heading string, cells ...string) *Values {
	t.Helper()
	g, _ := made(t, "notes="+strings.Join(cells, " "))
	return newValues(layout.Label{Text: heading}, g.values[0].Rows, false, false)
}

// seasons are small logs of several hands.
var seasons = []string{
	unknownWords,
	"Date|Start|End|Speed " +
		"(kn)|Lines|Strikes|Landed|Notes\n3/6/26|06:00|08:00|8|4|2|1|calm\n14/6/26|06:10|09:00|9|5|0|0|rough\n" +
		"15/6/26|07:00|11:30|12|5|3|2|",
	"Date|Time|Rod|Lure|Outcome|Species|Length (in)|Weight (lb)\n3/6/26|06:40|short " +
		"left|jet|landed|Wahoo|44|22\n14/6/26|07:40|long " +
		"right|jet|lost|Wahoo||\n15/6/26|08:10|stinger|plug|released|Mahi|30|",
	"Fecha|Inicio|Fin|Velocidad|Líneas|Picadas\n3/6/26|06:00|08:00|8|4|2\n14/6/26|06:10|09:00|9|5|0\n" +
		"15/6/26|07:00|11:30|12|5|3",
	"Date|Hours|Rods|Wahoo|Mahi\n3/6/26|4|4|1|0\n14/6/26|3.5|5|0|2\n15/6/26|6|5|3|1",
}

// TestColumnsInAnyOrder holds that the order of columns changes nothing of what they
// mean, or is asked about.
func TestColumnsInAnyOrder(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 26))
	for _, text := range seasons {
		want := inferred(t, "log", nil, "", text)
		means := bound(want.Data()[0].Plan)
		for range 12 {
			turned := shuffled(rng, text)
			got := inferred(t, "log", nil, "", turned)
			if p := got.Data()[0].Plan; p.Kind != want.Data()[0].Plan.Kind {
				t.Errorf("%s\n is %s", turned, summary(p))
			}
			for heading, is := range bound(got.Data()[0].Plan) {
				if is != means[heading] && !asked(got, heading) && !asked(want, heading) {
					t.Errorf("%s\n %s is %s, expected %s", turned, heading, is, means[heading])
				}
			}
		}
	}
}

func asked(l *Log, heading string) bool {
	return slices.ContainsFunc(l.Open(), func(o Open) bool { return o.Heading == heading })
}

// shuffled is a table with its columns in another order.
func shuffled(rng *rand.Rand, text string) string {
	lines := strings.Split(text, "\n")
	order := rng.Perm(len(strings.Split(lines[0], "|")))
	for k, line := range lines {
		cells := strings.Split(line, "|")
		row := make([]string, len(order))
		for i, j := range order {
			row[i] = cells[j]
		}
		lines[k] = strings.Join(row, "|")
	}
	return strings.Join(lines, "\n")
}

// TestTheSameEveryTime holds that a log is understood as it was before.
func TestTheSameEveryTime(t *testing.T) {
	for _, text := range seasons {
		want := inferred(t, "log", nil, "a", text, "b", seasons[2])
		for range 20 {
			got := inferred(t, "log", nil, "a", text, "b", seasons[2])
			for i, u := range got.Blocks {
				if !reflect.DeepEqual(u.Plan, want.Blocks[i].Plan) {
					t.Fatalf("%s\n then %s\n now  %s", text, summary(want.Blocks[i].Plan), summary(u.Plan))
				}
			}
			if !reflect.DeepEqual(got.Open(), want.Open()) {
				t.Fatalf("%s\n asked %v\n now   %v", text, want.Open(), got.Open())
			}
		}
	}
}
