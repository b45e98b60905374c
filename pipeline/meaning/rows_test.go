package meaning

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
)

const days = "Date|Start|End|Knots|Bites|Lost|Kept\n2026-06-03|06:00|08:00|8|3|1|2\n2026-06-04|06:00|08:00|9|4|1|1\n" +
	"2026-06-05|06:00|08:00|8|5|1|4\n" +
	"2026-06-06|06:00|08:00|9|1|0|0\n2026-06-07|06:00|08:00|8|2|0|1\n2026-06-08|06:00|08:00|9|3|1|2"

// TestYearly holds that a table of former seasons beside one of days is a look back.
func TestYearly(t *testing.T) {
	for table, want := range map[string]bool{
		"Season|Bites|Kept\n2021-22|31|12\n2022-23|55|25\n2023-24|38|15": true,
		"Year|Bites|Kept\n2021|31|12\n2022|55|25\n2023|38|15\n2024||":    true,
		"Knots|Bites|Kept\n7|31|12\n8|55|25\n9|38|15":                    false,
	} {
		l := inferred(t, "log.xlsx", nil, "Trips", days, "Other", table)
		proof := false
		for _, u := range l.Blocks {
			proof = proof || u.Proof && u.Plan.Name == "Other"
		}
		if proof != want {
			t.Errorf("%q: a look back %v, expected %v", table, proof, want)
		}
	}
}

// TestFoot holds that rows under a table of days and its totals are no rows of it, and that a
// strike without a day is one.
func TestFoot(t *testing.T) {
	for below, want := range map[string]int{
		// totals and averages are told by their words
		"\nTotal||||18|4|10\nper trip||||3|0.7|1.7\n2025||||12|3|7\nover (under)||||6|1|3":                     2,
		"\n\nTimes out||||6||\nWith guests||||5||":                                                             2,
		"\nJULY||||||\n2026-07-09|06:00|08:00|8|2|1|1\n\nReckoning||||||\nfeather|||4|kept||\nplug|||2|kept||": 3,
		"\nJULY||||||\n2026-07-09|06:00|08:00|8|2|1|1\n\nAUGUST||||||\n2026-08-09|06:00|08:00|8|2|1|1":         0,
		"\nTotal||||18|4|10\n\nlearnt||feathers at first light|||\n||read the water|||":                        2,
		"\n\n|Bites are all that came, 24 h clock|||||":                                                        1,
		"\n\n|6:30 to 8:00 trolled the bank, lost 2|||||":                                                      0,
		"\nTotal||||18|4|10\n\nJerry||lost a wahoo at the rail|||":                                             0,
		"\n|||7|2|1|1": 0,
		"\nTotal||||18|4|10\n2026-06-09|06:00|08:00|8|2|1|1":                         0,
		"\n|||Total|18|4|10\n|||bites / h|0.75|each line|\n|||boated / bites|0.95||": 2,
		"\n|||Total|18|4|10\n|||?|0.75||":                                            0,
	} {
		p := planOf(t, "", days+below)
		if len(p.Foot) != want {
			t.Errorf("%q: %v of no day, expected %d", below, p.Foot, want)
		}
	}
}

// TestPutBack holds that counts under a heading of fish that went back are of fish let go, where
// another heading has those kept.
func TestPutBack(t *testing.T) {
	const head = "|||Bites|||KEPT||BACK|\nDate|Start|End|Strikes|Missed|Lost|Alb|BFT|Skip|Oth\n"
	p := planOf(t, "",
		head+
			"2026-06-03|06:00|08:00|5|1|1|2|1||\n2026-06-04|06:00|08:00|4|1|0|1|1|1|\n"+
			"2026-06-05|06:00|08:00|3||1||1||1\n2026-06-06|06:00|08:00|1|1|||||")
	fates := []string{}
	for _, c := range p.Catch {
		fates = append(fates, c.Heading+"="+c.Fate)
	}
	if got := strings.Join(fates, " "); got != "KEPT Alb=landed KEPT BFT=landed BACK Skip=released BACK Oth=released" {
		t.Errorf("%s: %s", got, summary(p))
	}
}

// TestUnitOfNoCount holds that a column of centimetres counts nothing, whatever stands over it.
func TestUnitOfNoCount(t *testing.T) {
	p := planOf(t, "", "Bites||||\nTime|Fish|Result|Length (cm)|Round "+
		"(cm)\n06:40|wahoo|landed|120|50\n07:40|wahoo|landed|118|48\n08:40|mahi|lost||\n09:40|wahoo|landed|130|55")
	if p.Binds(countNames...) {
		t.Error(summary(p))
	}
}

// TestHalves holds that each half of a day is a trip where two tables name it, and not where
// one alone does.
func TestHalves(t *testing.T) {
	const halves = "Date|Half|Start|End|Lines\n2026-06-03|am|06:00|08:00|5\n2026-06-03|pm|14:00|16:00|5\n" +
		"2026-06-04|am|06:00|08:00|5\n2026-06-05|pm|14:00|16:00|5"
	const fish = "|Time|Fish|Result\n2026-06-03|am|06:40|wahoo|landed\n2026-06-03|pm|14:40|mahi|lost\n" +
		"2026-06-05|pm|14:50|mahi|landed"
	for second, want := range map[string]int{"Date|Half" + fish: 2, "Date|Tide" + fish: 0} {
		got := 0
		for _, u := range inferred(t, "log", nil, "Trips", halves, "Fish", second).Data() {
			if u.Plan.Half > 0 {
				got++
			}
		}
		if got != want {
			t.Errorf("%q: %d tables by half-days, expected %d", second, got, want)
		}
	}
}

// TestLegendOfFates holds that a log's own word for a fate is read as it explains it.
func TestLegendOfFates(t *testing.T) {
	p := planOf(t, "", "Touch = nothing stuck. Adios = hooked and then got "+
		"away.\n\nDate|Time|Result|Species\n2026-06-03|06:40|Touch|\n2026-06-04|07:10|Kept|Wahoo\n"+
		"2026-06-05|07:10|Adios|Wahoo\n2026-06-06|07:10|Kept|Mahi")
	if b := p.Find("outcome"); b == nil || !strings.HasPrefix(b.Codes["adios"], "hooked and then") ||
		b.Codes["touch"] != "" {
		t.Error(summary(p))
	}
}

// TestLetGoByName holds that a question which fish were let go, answered by their names, counts
// them, and that counts by species hold them where the bites add up so.
func TestLetGoByName(t *testing.T) {
	const head = "Date|Start|End|Bites|Missed|Lost|Tuna landed|Wahoo landed|Did you let any of those go? Which ones?\n"
	p := planOf(t, "", head+"2026-06-03|06:00|08:00|4|1|1|1|1|the "+
		"tuna\n2026-06-04|06:00|08:00|2||||2|No\n2026-06-05|06:00|08:00|3|1|1|1||No\n"+
		"2026-06-06|06:00|08:00|2|1|||1|the wahoo")
	if b := p.Find("released_n"); b == nil || !p.Inclusive {
		t.Error(summary(p), p.Inclusive)
	}
}

// TestStartsAnew holds that a column that counts 1, 2 and starts anew each day is no number of lines.
func TestStartsAnew(t *testing.T) {
	const head, rows = "Date|Lines no.|Start|End|Knots|Rods|Bites\n",
		"2026-06-03|1|06:00|08:00|7|5|1\n2026-06-03|2|09:00|10:00|7|4|0\n2026-06-04|1|06:00|08:00|7|5|1\n" +
			"2026-06-04|2|09:00|10:00|7|4|0\n" +
			"2026-06-04|3|11:00|12:00|7|5|1\n2026-06-05|1|06:00|08:00|7|6|1\n2026-06-05|2|09:00|10:00|7|4|0"
	if b := planOf(t, "", head+rows).Find("lines_out"); b == nil || b.Heading != "Rods" {
		t.Errorf("lines out are %v, expected Rods", b)
	}
}

// TestToldInRemarks holds that a form's remarks tell its hours and bites where its tables were left
// empty, and are remarks where they were filled in.
func TestToldInRemarks(t *testing.T) {
	const form = "Boat|Tern||Date|%s\n|\nRun|Lines in|Lines up|Rods|Knots\n%s\n2||||\n|\nTime|Fish|Outcome|Length " +
		"cm\n%s\n|\nRemarks|%s"
	const told = "No time to write. Trolled 4 hours with 5 rods at 8 knots. Two dorado boated, one lost."
	l := inferred(t, "log", nil, "3 June", fmt.Sprintf(form, "2026-06-03", "1|06:00|09:00|4|7",
		"06:40|wahoo|landed|110\n07:10|wahoo|lost|", told),
		"5 June", fmt.Sprintf(form, "2026-06-05", "1|06:00|09:30|4|7",
			"06:50|wahoo|landed|101\n08:10||missed|", "calm"),
		"9 June", fmt.Sprintf(form, "2026-06-09", "1||||", "|||", told))
	var days []string
	for _, u := range l.Data() {
		if u.Block.Shape == layout.Form && u.Plan.Reads("story") && u.Plan.Reads("stretches") && !u.Plan.NoEffort {
			days = append(days, u.Plan.Name)
		}
	}
	if !slices.Equal(days, []string{"9 June"}) {
		t.Errorf("hours in the remarks of %v, expected those of 9 June alone", days)
	}
}

// TestOneBoat holds that a table which names no boat is of the one that the log's forms name.
func TestOneBoat(t *testing.T) {
	const form = "Date: 3 June 2026|Boat: " +
		"Marram\n\nTime|Fish|Result\n06:40|wahoo|landed\n07:40|mahi|lost\n08:10|mahi|missed"
	for second, want := range map[string]bool{form: true, strings.ReplaceAll(form, "Marram", "Tern"): false} {
		l := inferred(t, "log", nil, "A", form, "B", second, "Petrol",
			"Date|Port\n2026-06-03|Westhaven\n2026-06-04|Westhaven\n2026-06-05|Westhaven")
		for _, u := range l.Data() {
			if u.Plan.Name == "Petrol" && u.Plan.Gives("boat") != want {
				t.Errorf("%q: %s, a boat %v, expected %v", second, summary(u.Plan), u.Plan.Gives("boat"), want)
			}
		}
	}
}
