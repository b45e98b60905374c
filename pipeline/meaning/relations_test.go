package meaning

import (
	"fmt"
	"strings"
	"testing"
)

// relationCases are, for each relation, columns for which it holds and columns for which
// it does not, with whether the one is rewarded and the other punished.
var relationCases = map[string]struct {
	holds, fails string
	up, down     bool
}{
	"one column a meaning": {"strikes_n=1 2 3|hooked_n=1 1 2",
		"strikes_n=1 2 3|strikes_n=1 1 2", false, true},
	"start before end": {"start_s=06:00 07:10 06:40|end_s=08:00 11:00 13:20",
		"start_s=16:00 17:10 16:40|end_s=14:00 16:00 15:20", true, true},
	"end less start is hours": {"start_s=06:00 07:00 06:30|end_s=08:00 11:00 13:00|duration_s=2 4 6.5",
		"start_s=06:00 07:00 06:30|end_s=08:00 11:00 13:00|duration_s=5 1 9", true, true},
	"dock before lines before dock": {
		"depart_s=05:00 05:10|start_s=06:00 06:10|end_s=12:00 11:00|return_s=13:00 12:00",
		"depart_s=15:00 15:10|start_s=06:00 06:10|end_s=19:00 18:00|return_s=13:10 13:00", true, true},
	"stretches follow one another": {
		"date=3/6/26 3/6/26 3/6/26 3/6/26|start_s=06:00 09:00 11:30 13:00|duration_s=2.5 2 1 3",
		"date=3/6/26 3/6/26 3/6/26 3/6/26|return_s=06:00 09:00 11:30 13:00|duration_s=2.5 3.5 3 3", false, true},
	"the boat comes home once a day": {
		"date=3/6/26 4/6/26 5/6/26 6/6/26|return_s=14:00 15:00 13:30 13:00",
		"date=3/6/26 3/6/26 4/6/26 4/6/26|return_s=06:00 09:00 05:30 13:00", false, true},
	"letters beside a stretch are no fish's": {
		"start_s=06:00 07:00 06:30 06:10|?outcome=r l r l|species=wahoo tuna wahoo tuna",
		"start_s=06:00 07:00 06:30 06:10|?outcome=r l r l", false, true},
	"hours of another way are taken off the clock": {
		"start_s=06:00 07:00 06:30|end_s=10:00 11:00 13:00|?stopped_s:hours_bottom_fishing=2 1.5 3",
		"duration_s=4 5 6|?stopped_s:hours_bottom_fishing=2 1.5 3", false, true},
	"counts nest": {"strikes_n=5 4 2|hooked_n=3 4 1",
		"strikes_n=3 4 1|hooked_n=5 6 2", true, true},
	"order of counts": {"strikes_n=5 4 2|hooked_n=3 4 1",
		"hooked_n=3 4 1|strikes_n=5 4 2", true, false},
	"counts add up": {"strikes_n=5 4 2 3|hooked_n=3 4 1 1|missed_n=2 0 1 2",
		"strikes_n=5 4 2 3|hooked_n=1 1 1 1|missed_n=2 0 0 1", true, false},
	"hours by lines are line-hours": {"lines_out=4 5 6|duration_s=2 3 1.5|line_hours=8 15 9",
		"lines_out=4 5 6|duration_s=2 3 1.5|line_hours=70 3 1", true, true},
	"counts beside a word": {"strikes_n=5 4 2|hooked_n=3 4 1",
		"?strikes_n=5 4 2|?hooked_n=3 4 1", false, true},
	"a strike has a clock and a fate": {"time_s=06:40 07:10|outcome=lost landed",
		"time_s=06:40 07:10|area=shelf bank", true, true},
	"weight goes with length cubed": {"length_cm=100 120 140 90 110|scale_kg=10 17.3 27.4 7.3 13.3",
		"?length_cm=100 120 140 90 110|?scale_kg=40 3 27 70 5", true, true},
	"girth below length": {"length_cm=100 120 140|girth_cm=50 62 70",
		"?length_cm=50 62 70|?girth_cm=100 120 140", true, true},
	"girth beside the length": {"length_cm=100 120 140|girth_cm=50 62 70",
		"length_cm=100 120 140|notes=calm rough calm|girth_cm=50 62 70", true, false},
	"a whole fish weighs more": {"scale_kg=10 17.3 27.4 7.3|scale_kg=8.1 14 23 6.2",
		"scale_kg=8.1 14 23 6.2|scale_kg=10 17.3 27.4 7.3", false, true},
	"clock within the stretch": {"start_s=06:00 07:00 06:30|end_s=08:00 11:00 13:00|time_s=06:40 07:10 12:00",
		"start_s=06:00 07:00 06:30|end_s=08:00 11:00 13:00|time_s=16:40 17:10 18:00", true, true},
	"a bare number is of the outing": {"?trip:No.=1 2 3|date=3/6/26 4/6/26 5/6/26|start_s=06:00 07:00 06:30",
		"?trip:No.=1 2 3|date=3/6/26 3/6/26 3/6/26|species=wahoo tuna wahoo", false, true},
	"a method tells trolling apart": {"start_s=06:00 07:00 06:30|method=trolling jig trolling",
		"start_s=06:00 07:00 06:30|method=jig bottom jig", false, true},
	"measures stand beside their fish": {"species=wahoo tuna wahoo|length_cm=100 120 140",
		"length_cm=100 120 140|notes=calm rough calm|species=wahoo tuna wahoo", true, false},
	"lines out belong to a stretch": {"start_s=06:00 07:00 06:30|end_s=08:00 11:00 13:00|lines_out=4 5 4",
		"species=wahoo tuna wahoo|lines_out=4 5 4", false, true},
	"numbers anew are of the stretch": {"lines_out=4 5 4 5 4 5 4", "lines_out=1 2 1 2 3 1 2", false, true},
	"a stretch's number stands beside its hours": {
		"?leg=1 2 3 1 2 3 1 2 3 1 2 3|start_s=06:00 07:00 08:00 06:00 07:00 08:00 06:00 07:00 08:00 06:00 07:00 08:00",
		"?leg=1 2 3 1 2 3 1 2 3 1 2 3|species=wahoo tuna wahoo wahoo tuna wahoo wahoo tuna wahoo wahoo tuna wahoo",
		false, true},
	"a trip's number goes with its day": {"?trip=1 1 1 2 2 3 3 4|date=3/6/26 3/6/26 3/6/26 4/6/26 4/6/26 5/6/26 " +
		"5/6/26 6/6/26",
		"?trip=1 1 2 2 2 3 3 4|date=3/6/26 3/6/26 3/6/26 4/6/26 4/6/26 5/6/26 5/6/26 6/6/26", true, true},
	"fates fit the fish": {"outcome=lost landed missed lost landed landed missed missed|species=tuna tuna NA NA " +
		"wahoo tuna NA NA|length_cm=NA 90 NA NA 120 81 NA NA",
		"outcome=lost landed lost landed missed|length_cm=90 NA 80 NA 120", true, true},
	"how it was weighed stands beside weights": {"scale_kg=4.1 NA 6 3 NA 2 9 NA|?weighed=s NA e s NA s s NA",
		"scale_kg=4.1 NA 6 3 NA 2 9 NA|?weighed=s e s s e NA NA s", true, true},
	"lines of each stretch": {
		"start_s=06:00 07:00 06:30 06:10 06:20 06:00|speed_kn=7 8 9 8 12 7|?lines_out=6 4 6 4 2 4",
		"start_s=06:00 07:00 06:30 06:10 06:20 06:00|?lines_out=1 2 3 4 5 6", true, false},
	"a yes or no is of one fish": {"catch=1 2 0|catch=0 1 1|kept=yes no yes|outcome=landed released landed",
		"catch=1 2 0|catch=0 1 1|kept=yes no yes", false, true},
	"some of those stand behind them all": {"landed_n=2 1 3|released_n:of_those_let_go=1 0 1",
		"landed_n=2 1 3|lost_n=1 0 1|released_n:of_those_let_go=1 0 1", true, false},
	"the best fish and its scale weight": {"landed_n=2 1 3|fishlist:biggest=wahoo~20 wahoo~18 tuna~9",
		"fishlist:biggest=wahoo~20 wahoo~18 tuna~9|notes=calm rough calm", true, false},
	"a lure has one weight": {"lure=green black green black|lure_weight_g=12 16 12 16",
		"lure=green black green black|lure_weight_g=110 NA 28 34", false, true},
	"entries have one time": {"start_s=06:00 07:00 06:30|event=lines_in wahoo lines_up",
		"start_s=06:00 07:00 06:30|end_s=08:00 11:00 13:00|event=lines_in wahoo lines_up", false, true},
	"hours of a day are no clock times": {"date=3/6/26 3/6/26 3/6/26|duration_s=9 9 9",
		"date=3/6/26 3/6/26 3/6/26|duration_s=6.9 8.6 9.5", false, true},
	"hours of a meter are the engine's": {"duration_s=2 3 4 5",
		"duration_s=7.4 10.4 9.3 7|notes=2314.2 2321.6 2332.0 2341.3|port=2321.6 2332.0 2341.3 2348.3", false, true},
}

func TestRelations(t *testing.T) {
	for _, r := range relations {
		c, ok := relationCases[r.name]
		if !ok {
			t.Errorf("%s: no example of it", r.name)
			continue
		}
		g, a := made(t, c.holds)
		holds := r.score(g, a)
		g, a = made(t, c.fails)
		fails := r.score(g, a)
		if holds < 0 || c.up && holds <= 0 || fails > 0 || c.down && fails >= 0 || holds <= fails {
			t.Errorf("%s: %.2f where it holds, %.2f where it does not", r.name, holds, fails)
		}
		if g, a := made(t, "notes=calm rough"); r.score(g, a) != 0 {
			t.Errorf("%s: says %.2f of columns that it is not about", r.name, r.score(g, a))
		}
	}
}

func score(t *testing.T, name, spec string) float64 {
	t.Helper()
	for _, r := range relations {
		if r.name == name {
			g, a := made(t, spec)
			return r.score(g, a)
		}
	}
	t.Fatalf("no relation %s", name)
	return 0
}

// TestRelationsAtTheirEdges holds what they make of unusual days that are in order.
func TestRelationsAtTheirEdges(t *testing.T) {
	for _, c := range []struct {
		what, relation, spec string
		sign                 float64
	}{
		{"nights", "start before end", "start_s=22:30 21:00 22:10|end_s=01:15 03:40 04:15", 1},
		{"clocks of twelve hours", "start before end", "start_s=6:00 7:10 6:40|end_s=1:00 2:30 12:20", 1},
		{"hours over midnight", "end less start is hours", "start_s=22:30 21:00 22:00|end_s=01:30 03:00 " +
			"04:00|duration_s=3 6 6", 1},
		{"hours less a stop", "end less start is hours", "start_s=06:00 07:00 06:30|end_s=08:00 11:00 " +
			"13:00|duration_s=1.5 4 6|stopped_s=30 0 30", 1},
		{"two columns of one meaning that are a first and a second", "one column a meaning",
			"start_s:Start 1=06:00 07:00|start_s:Start 2=10:00 11:00", 0},
		{"a start without an end", "start before end", "start_s=06:00 07:10 06:40", -1},
		{"a running number of lines in one stretch", "lines out belong to a stretch",
			"start_s=06:00 06:00 06:00|end_s=08:00 08:00 08:00|lines_out=1 2 3", -1},
		{"other lines in a stretch without times", "lines out belong to a stretch",
			"start_s=06:00 NA NA|end_s=08:00 NA NA|lines_out=4 5 6", -1},
		{"other lines at times that are written another way", "lines out belong to a stretch",
			"start_s=06:00 8.15 9.30|end_s=08:00 9.10 11.45|lines_out=4 5 6", 0},
		{"as many lines as that day, at the same hours", "lines out belong to a stretch",
			"date=3/6/26 4/6/26 5/6/26|start_s=06:00 06:00 06:00|end_s=08:00 08:00 08:00|lines_out=4 5 4", 0},
		{"words beside a start and an end", "entries have one time",
			"start_s=06:00 07:10 06:40|end_s=08:00 11:00 13:00|event=lines_in wahoo lines_up", -1},
		{"a count left blank where none is a nought", "counts nest", "strikes_n=5  2 0|missed_n=1 2 2 0", 1},
		{"a count left blank where none is blank too", "counts nest", "strikes_n=5  2 |missed_n=1 2 2 ", -1},
		{"a sum left blank where none is a nought", "counts add up",
			"strikes_n=5  2 0 3|hooked_n=4 1 1 0 3|missed_n=1 2 1 0 0", 1},
		{"two bites at one time of a day", "hours of a day are no clock times",
			"date=3/6/26 3/6/26 3/6/26 3/6/26|duration_s=7.5 9.5 9.5 11", -1},
		{"ticks beside weights", "how it was weighed stands beside weights", "scale_kg=4.1 NA 6|?weighed=y NA y", 0},
		{"a few words beside weights", "how it was weighed stands beside weights",
			"scale_kg=4.1 NA 6|?weighed=scale NA guess", 1},
		{"a guessed weight", "a lure has one weight", "lure=green black|lure_weight_g=~7 12", -1},
		{"a weight without a lure or a fish", "a lure has one weight", "lure_weight_g=12 16", 0},
		{"words beside one time", "entries have one time", "start_s=06:00 07:10 06:40|event=lines_in wahoo lines_up",
			0},
		{"a trip over a night", "a trip's number goes with its day",
			"?trip=1 1 2 2 2 3 4 5 5|date=3/6/26 3/6/26 4/6/26 4/6/26 5/6/26 7/6/26 8/6/26 9/6/26 9/6/26", 1},
		{"days of several numbers", "a trip's number goes with its day",
			"?trip=1 1 2 2 3 3 4 4|date=3/6/26 3/6/26 3/6/26 4/6/26 5/6/26 5/6/26 6/6/26 6/6/26", -1},
		{"stretches of a day whose times nobody wrote", "lines out belong to a stretch",
			"date=3/6/26 4/6/26 4/6/26|start_s=06:00 - -|end_s=08:00 - -|lines_out=4 4 6", 0},
		{"a count of two words and one without", "counts beside a word", "strikes_n=5 4 2|hooked_n=3 4 1|?lost_n=1 0 0",
			0},
	} {
		got := score(t, c.relation, c.spec)
		if c.sign == 0 && got != 0 || got*c.sign < 0 || c.sign != 0 && got == 0 {
			t.Errorf("%s: %s says %.2f", c.what, c.relation, got)
		}
	}
}

// TestCleanedWeight holds that the weight of a cleaned fish is not taken for that of the whole one, in whichever order
// they stand.
func TestCleanedWeight(t *testing.T) {
	const rows = "\n2026-06-03|wahoo|%s|%s\n2026-06-04|wahoo|%s|%s\n2026-06-05|dorado|%s|%s\n2026-06-06|dorado|%s|%s"
	for heads, cleanedFirst := range map[string]bool{"kg cleaned|kg whole": true, "kg whole|kg cleaned": false,
		"kg entier|kg vidé": false, "kg ausgenommen|kg ganz": true} {
		cells := []any{"14.2", "12.1", "9.8", "8.4", "6.1", "5.2", "17", "14.6"}
		if cleanedFirst {
			for i := 0; i < len(cells); i += 2 {
				cells[i], cells[i+1] = cells[i+1], cells[i]
			}
		}
		p := planOf(t, "", "Date|Fish|"+heads+fmt.Sprintf(rows, cells...))
		whole := strings.Split(heads, "|")[0]
		if cleanedFirst {
			whole = strings.Split(heads, "|")[1]
		}
		if b := p.Find("scale_kg"); b == nil || b.Heading != whole {
			t.Errorf("%s: %s", heads, summary(p))
		}
	}
}
