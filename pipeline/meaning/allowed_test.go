package meaning

import (
	"strings"
	"testing"
)

// TestAllowed holds that a table which lists what the cells of another are chosen from tells no bites, and that one
// whose words stand in no other table is not left out.
func TestAllowed(t *testing.T) {
	bites := strings.Join([]string{"Day|Time|Result|Fish|Rod|Sea", "2026-03-01|07:10|Boated|Wahoo|Flat|1-2",
		"2026-03-01|08:20|Dropped|Tuna|Rigger|1-2", "2026-03-08|07:40|Boated|Mahi|Flat|2-4",
		"2026-03-08|09:15|Boated|Tuna|Flat|2-4", "2026-03-15|06:50|Dropped|Wahoo|Rigger|1-2"}, "\n")
	list := strings.Join([]string{"Result|Fish|Rod|Sea", "Boated|Wahoo|Flat|1-2", "Dropped|Tuna|Rigger|2-4",
		"|Mahi||4-6", "|Marlin||", "|Bonito||"}, "\n")
	other := strings.NewReplacer("Dropped", "Jumped off", "Rigger", "Bow", "2-4", "5-6").Replace(list)
	for text, want := range map[string]bool{list: true, other: false} {
		l := inferred(t, "log", nil, "Bites", bites, "Choices", text)
		for _, u := range l.Blocks {
			if got := l.allowed(u); got != (want && u.Plan.Sheet == 1) {
				t.Errorf("sheet %d of %q: %t, rows %v", u.Plan.Sheet, text, got, u.b.rows)
			}
		}
	}
}

// TestOthersBesideNames holds that other fish are counted beside those of the columns where two rows name such that no
// count of theirs can have, though one name may be another's somewhere, and that a name of a column's fish forbids it.
func TestOthersBesideNames(t *testing.T) {
	const rows = "Date|In|Up|Lines|Kings|Mahi|Others|Missed\n2026-06-03|06:00|08:00|5|2|1|1 cuda|0\n" +
		"2026-06-04|06:00|08:30|5||1|1 wahoo|1\n2026-06-05|06:00|08:00|5|2|||1\n2026-06-06|06:00|08:00|5|3||1 %s|1"
	for fish, want := range map[string]int{"wahoo": 3, "dolphinfish": 3, "king mackerel": 2} {
		if p := planOf(t, "", strings.Replace(rows, "%s", fish, 1)); len(p.Catch) != want {
			t.Errorf("%s: %d counts of fish: %s", fish, len(p.Catch), summary(p))
		}
	}
}
