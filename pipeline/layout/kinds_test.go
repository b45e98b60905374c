package layout

import (
	"strings"
	"testing"
)

const outings = "# OUT = trip; RUN = start / end / lines / speed; HIT = bite: time, species, outcome\n" +
	"OUT|1|2026-06-03|calm\nRUN|06:00|08:30|5|7\nHIT|06:20|wahoo|kept\nHIT|07:10|mahi|lost\n" +
	"OUT|2|2026-06-04|\nRUN|06:10|09:30|5|7\nRUN|10:00|11:30|4|8\nHIT|10:40|mahi|kept\n" +
	"OUT|3|2026-06-09|swell\nRUN|06:10||5|7\nHIT|06:40|mahi|kept"

// TestKinds holds that lines of several kinds become a table of each, with the number and the day of the outing above
// its rows, and its cells named as the log says, by a first line of headings, or not at all.
func TestKinds(t *testing.T) {
	_, bare, _ := strings.Cut(outings, "\n")
	headed := strings.Replace(bare, "RUN|", "RUN|start|end|lines|speed\nRUN|", 1)
	for text, want := range map[string]string{
		outings: "records [out,date,] 2=1 6=2 10=3; " +
			"records [out,date,start,end,lines,speed] 3=1 7=2 8=2 11=3; " +
			"records [out,date,time,species,outcome] 4=1 5=1 9=2 12=3",
		bare: "records [out,date,] 1=1 5=2 9=3; records [out,date,,,,] 2=1 6=2 7=2 10=3; " +
			"records [out,date,,,] 3=1 4=1 8=2 11=3",
		headed: "records [out,date,] 1=1 6=2 10=3; records [out,date,start,end,lines,speed] 3=1 7=2 8=2 11=3; " +
			"records [out,date,,,] 4=1 5=1 9=2 12=3",
	} {
		if got := shown(take(t, text)); got != want {
			t.Errorf("%s\n%s\nexpected\n%s", text, got, want)
		}
	}
	if got := take(t, outings).Blocks[1].Rows[2]; got.at(1).Text != "2026-06-04" {
		t.Errorf("a run is of %v", got.Cells)
	}
}

// TestNoKinds holds that words in a first column are no kinds under a heading, where days stand in rows of several of
// them, or where figures stand among them.
func TestNoKinds(t *testing.T) {
	_, bare, _ := strings.Cut(outings, "\n")
	for _, text := range []string{"boat|trip|date|notes|lines\n" + bare, bare + "\n4|late|tired",
		strings.ReplaceAll(bare, "RUN|", "RUN|2026-06-03|")} {
		for _, b := range take(t, text).Blocks {
			if b.Kind != "" {
				t.Errorf("lines of the kind %q in\n%s", b.Kind, text)
			}
		}
	}
}

// TestLinesGoOn holds that a row of words under others in the same columns, where the first headings of its table are
// of both, begins no table of its own, whatever its words are like.
func TestLinesGoOn(t *testing.T) {
	const text = "trip|date|start|end|speed|rod|lure|time|outcome|species|length\n" +
		"1|2026-06-03|06:00|09:00|7|outside|plug 5|06:40|kept|wahoo|120\n|||||inside|plug 4||||\n" +
		"|||||rod|lure|||rod|\n|||||centre|jet 2|07:30|lost||\n2|2026-06-04|06:00|09:00|7|outside|plug 5||||"
	const want = "2=1 3=inside 4=rod 5=centre 6=2"
	if got := shown(take(t, text)); strings.Contains(got, ";") || !strings.HasSuffix(got, want) {
		t.Errorf("a row of words among the lines: %s", got)
	}
}
