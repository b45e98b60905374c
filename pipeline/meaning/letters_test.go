package meaning

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
)

// TestLetterRuns holds that cells of a letter for each bite are written out by the legend, and other words are not.
func TestLetterRuns(t *testing.T) {
	values := func(cells ...string) *Values {
		var rows []layout.Cell
		for _, c := range cells {
			rows = append(rows, layout.Cell{Text: c, Look: layout.Text})
		}
		return newValues(layout.Label{Text: "Hits"}, rows, true, false)
	}
	l := readLegend([]string{"g = in the boat   z = never stuck, gone   p = set free, swam off"})
	want := map[string]string{"ggz": "landed; landed; missed", "p g": "released; landed", "z": "missed"}
	if got := l.letterRuns(values("GGz", "p G", "z")); !maps.Equal(got, want) {
		t.Errorf("%v, expected %v", got, want)
	}
	for _, cells := range [][]string{{"g", "z"}, {"ggz", "gap", "zip"}} {
		if got := l.letterRuns(values(cells...)); got != nil {
			t.Errorf("%q: %v", cells, got)
		}
	}
}

// TestEntriesSaid holds that entries of a log of events mean what its legend says of them, as all of a cell.
func TestEntriesSaid(t *testing.T) {
	p := inferred(t, "log.csv", nil, "log", "hit loose = he was on and we lost him / hit deck = in the boat / "+
		"stop = three fish on bait, this is not from trolling\nDate|Time|Event|Lines|Knots\n"+
		"2026-06-03|06:00|lines in|4|7\n"+
		"|07:00|hit loose||\n|07:30|hit deck||\n|08:00|lines up||\n|08:10|stop||\n2026-06-04|06:00|lines in|4|7\n"+
		"|07:00|hit deck||\n|09:00|lines up||").Data()
	if len(p) != 1 {
		t.Fatalf("%d blocks", len(p))
	}
	codes := p[0].Plan.Find("event").Codes
	if codes["hit loose"] != "lost" || codes["hit deck"] != "landed" || !strings.Contains(codes["stop"], "not from") {
		t.Errorf("%v", codes)
	}
}

// TestNumbersAnew holds that numbers which begin at one again are those of stretches where each has its hours, and
// none of a table of fish. A word for another way of fishing may stand in the place of some.
func TestNumbersAnew(t *testing.T) {
	const pull = "%s|%d|06:00|08:00|4|7\n|%d|08:30|10:00|4|8\n|%d|10:30|11:00|3|9\n"
	text, fish := "Date|Wub|Start|End|Lines|Knots\n", "Date|Wub|Time|Species|Length\n"
	for day := range 4 {
		date := fmt.Sprintf("2026-06-%02d", day+3)
		text += fmt.Sprintf(pull, date, 1, 2, 3)
		fish += fmt.Sprintf("%s|1|07:00|wahoo|120\n|2|07:10|wahoo|110\n|3|07:20|mahi|90\n", date)
	}
	if p := planOf(t, "log", text+"|bottom|12:00|13:00||\n"); p == nil || p.Find("leg") == nil {
		t.Errorf("%s", summary(p))
	}
	if p := planOf(t, "log", fish); p == nil || p.Find("leg") != nil {
		t.Errorf("%s", summary(p))
	}
}

// TestShortOfTwoLists holds that letters which two lists cut short are of the one that the heading says most of, each
// time the log is read.
func TestShortOfTwoLists(t *testing.T) {
	const fish = "Date|Time|how|Species|lb|lb_how|Fate\n2023-06-03|06:10|T|bluefin|105|E|kept\n" +
		"2023-06-03|07:10|T|yellowfin|26.5|S|kept\n2023-06-04|06:30|C|bluefin|39.8|S|kept\n" +
		"2023-06-05|06:20|T|bluefin|41|E|kept"
	for range 20 {
		if b := planOf(t, "Fish", fish).Find("weighed"); b == nil || b.Heading != "lb_how" || b.Codes["s"] != "scale" {
			t.Fatalf("how it was weighed: %v", b)
		}
	}
}

// TestLinesSaid holds that what the legend says of the lines is no fate, though its last words alone would be one.
func TestLinesSaid(t *testing.T) {
	p := inferred(t, "log.csv", nil, "log", "Fecha|Hora|Ev|Cañas|Nudos|Fin\n"+
		"|||||e=lineas al agua v=cambio vel n=cambio canas t=picada q=todo arriba / f=fallo b=a bordo\n"+
		"2026-06-03|06:00|e|4|7|\n2026-06-03|07:00|t|||f\n2026-06-03|07:30|v||8|\n2026-06-03|07:40|t|||b\n"+
		"2026-06-03|08:00|q|||\n2026-06-04|06:00|e|4|7|\n2026-06-04|07:00|n|5||\n2026-06-04|07:20|t|||b\n"+
		"2026-06-04|09:00|q|||").Data()
	if len(p) != 1 {
		t.Fatalf("%d tables of records, expected 1", len(p))
	}
	b := p[0].Plan.Find("event")
	if b == nil || b.Codes["e"] != "lineas al agua" || b.Codes["q"] != "todo arriba" {
		t.Errorf("the entries of the legend: %s", summary(p[0].Plan))
	}
	if b := p[0].Plan.Find("outcome"); b == nil || b.Codes["f"] != "fallo" || b.Codes["b"] != "a bordo" {
		t.Errorf("the fates of the legend: %s", summary(p[0].Plan))
	}
}

// TestCodesOfFatesUnderHow holds that a column is of fates where the legend says so of its codes, whatever its heading
// is usually for, and that numbers may be codes.
func TestCodesOfFatesUnderHow(t *testing.T) {
	for _, legend := range []string{"||||||w=wet a line s=change of speed h=strike d=all up / 1=missed 2=lost 3=kept",
		"w=wet a line|s=change of speed|h=strike|d=all up; 1=missed 2=lost 3=kept"} {
		head := "Date|Time|What|Knots|Rods|Fish|How\n"
		text := head + legend + "\n"
		if legend[0] != '|' {
			text = legend + "\n" + head
		}
		p := inferred(t, "log.csv", nil, "log", text+
			"2026-06-03|06:00|w|7|4||\n2026-06-03|07:00|h||||1\n2026-06-03|07:30|s|8|||\n"+
			"2026-06-03|07:40|h|||wahoo|3\n"+
			"2026-06-03|08:00|d||||\n2026-06-04|06:00|w|7|4||\n2026-06-04|07:20|h||||2\n2026-06-04|09:00|d||||").Data()
		if len(p) != 1 {
			t.Fatalf("%d tables of records, expected 1", len(p))
		}
		if b := p[0].Plan.Find("outcome"); b == nil || b.Heading != "How" || b.Codes["2"] != "lost" {
			t.Errorf("the codes under How: %s", summary(p[0].Plan))
		}
	}
}
