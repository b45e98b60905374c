package meaning

import (
	"fmt"
	"strings"
	"testing"
)

// TestCountsTold asks about a count of bites beside the words of a log of events only where the words tell of others,
// and knows the lines that are in by their column where none says each day that they are up.
func TestCountsTold(t *testing.T) {
	told := []string{"mahi 42in box; miss", "wahoo 51in 31.5# dock scale; came off", "lost blackfin at the boat; miss",
		"king about 12# box; short strike", "yellowfin 36in box; pulled hook", "on 2 min then broke off; king box"}
	for _, c := range []struct {
		bites string
		asked bool
	}{{"2", false}, {"3", true}} {
		text := "date,time,kts,rods,bites,what,note\n"
		for d := 1; d < 7; d++ {
			text += fmt.Sprintf("5/%d/23,6:10,8.5,3,,,lines in\n5/%d/23,7:10,7.5,5,%s,%s,\n"+
				"5/%d/23,9:00,,0,,,done\n", d, d, c.bites, told[d-1], d)
		}
		l := inferred(t, "log.csv", nil, "Days", strings.ReplaceAll(text, ",", "|"))
		asked := false
		for _, o := range l.Open() {
			asked = asked || o.Heading == "bites"
		}
		if asked != c.asked {
			t.Errorf("%s bites: asked %t", c.bites, asked)
		}
		if p := l.Data()[0].Plan; !p.NoneUp {
			t.Error("lines that are in are counted, and none where they are up")
		}
	}
	const once = "date|time|kts|rods|note\n5/1/23|6:10|8|3|lines in\n5/1/23|9:00||0|done\n" +
		"5/2/23|6:10|8|3|lines in\n5/2/23|9:00|||done\n"
	if p := planOf(t, "log", once); p.NoneUp {
		t.Error("one day alone ends with none")
	}
}
