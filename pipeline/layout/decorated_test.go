package layout

import (
	"strings"
	"testing"
)

// TestDecoratedDays holds that a day over its entries may have a word before it or marks around it, and that a day
// alone on a line heads what stands under it, without blank lines between.
func TestDecoratedDays(t *testing.T) {
	const entries = "%\nIn 6:10 out 11:30, four lines, 7.5 kn\n3 bites, 1 landed\n"
	days := func(form string) string {
		out := ""
		for _, day := range []string{"15 June 2024", "16 June 2024", "22 June 2024"} {
			out += strings.Replace(entries, "%", strings.Replace(form, "@", day, 1), 1)
		}
		return out
	}
	for _, form := range []string{"@", "Date: @", "* @ *", "== @ =="} {
		got := shown(take(t, days(form)))
		if want := "prose [date,what happened] 1=15 June 2024 4=16 June 2024 7=22 June 2024"; got != want {
			t.Errorf("%s: %s, expected %s", form, got, want)
		}
	}
	timed := strings.NewReplacer("In 6:10 out 11:30, four lines, 7.5 kn", "0610 in, four lines\n1130 up",
		"3 bites, 1 landed", "1200 home").Replace(days("* @ *"))
	if got := shown(take(t, timed)); !strings.HasPrefix(got, "records [date,time,event] 2=15 June 2024") {
		t.Error(got)
	}
	fuel := "Fuel: 15 June 2024\n40 gal\nFuel: 16 June 2024\n38 gal\nFuel: 22 June 2024\n41 gal"
	if got := shown(take(t, fuel)); strings.HasPrefix(got, "prose") {
		t.Errorf("days of something else: %s", got)
	}
}

// TestTitleOverRecords holds that a title over records that stand in columns is none of their labels.
func TestTitleOverRecords(t *testing.T) {
	s := take(t, "2024 season||||\nTrip|1|2|3|4\nDate|5/25|6/1|6/2|6/9\nHours|5.5|5|5|6.5\nLines|4|4|5|4\n"+
		"Speed|7.5|8|7|7.5\nBites|3|2|2|0")
	if got := shown(s); !strings.HasPrefix(got, "records [Trip,Date,Hours,Lines,Speed,Bites] 2=1 3=2 4=3 5=4") {
		t.Error(got)
	}
	if len(s.Blocks) != 1 || len(s.Blocks[0].Above) != 1 || s.Blocks[0].Above[0] != "2024 season" {
		t.Errorf("above: %v", s.Blocks)
	}
}
