package proof

import (
	"slices"
	"testing"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
)

// TestTripRemarks asks about remarks on trips with stretches and without rows of strikes that tell of bites, and
// counts these where they are to count, on the stretch that they name.
func TestTripRemarks(t *testing.T) {
	const runs = "Trip|Run|Start|End|Lines|Knots\n1|A|06:00|08:00|4|8\n2|A|06:00|08:00|4|8\n2|B|08:30|10:00|4|8\n" +
		"3|A|06:00|08:00|4|8"
	const bites = "Trip|Run|Time|Outcome|Species|Length cm\n1|A|06:40|landed|Wahoo|110\n1|A|06:50|landed|Wahoo|104\n" +
		"3|A|06:40|lost|Mahi|\n3|A|06:50|landed|Mahi|88"
	for remark, want := range map[string]bool{
		"Forgot the sheet. Run B: three short strikes, lost a mahi at the boat": true,
		"Calm and grey":                         false,
		"Two mahi boated, all on the live bait": false,
	} {
		trips := "Trip|Date|Crew|Remarks\n1|2026-06-03|Ann|Windy\n2|2026-06-05|Ann|" + remark +
			"\n3|2026-06-07|Ben|\n4|2026-06-09|Ben|Fog till nine"
		l := inferred(t, "Trips", trips, "Runs", runs, "Bites", bites)
		told := map[string]*Told{"trip 1": {}, "trip 3": {}}
		qs := asked(t, l, Stats{Rowwise: []Listed{{Row: 2, Keys: []string{"trip 1"}},
			{Row: 3, Keys: []string{"trip 2"}},
			{Row: 4, Keys: []string{"trip 3"}}, {Row: 5, Keys: []string{"trip 4"}}}},
			Stats{Stretches: 4, Hours: 7.5, Fished: map[string]bool{"trip 1": true, "trip 2": true, "trip 3": true}},
			Stats{Listed: 4, Strikes: 4, Placed: true, Told: told})
		i := slices.IndexFunc(qs, func(q Question) bool { return q.Kind == "trip remarks" })
		if (i >= 0) != want {
			t.Errorf("%q: asked are %v", remark, kinds(qs))
			continue
		}
		if !want {
			continue
		}
		Settle(l, &qs[i], "count")
		p := l.Blocks[slices.IndexFunc(l.Blocks, func(u *meaning.Understood) bool {
			return u.Plan.Kind == plan.Trips
		})].Plan
		if len(p.Tells) != 1 || p.Tells[3] != "B" {
			t.Errorf("%q: counted of rows %v", remark, p.Tells)
		}
	}
}

// TestMoreRemarks asks about remarks beside hours that tell of more fish than the rows of strikes, in so many words.
func TestMoreRemarks(t *testing.T) {
	const bites = "Date|Time|Outcome|Species\n2026-06-03|06:40|landed|Wahoo\n2026-06-03|06:50|landed|Wahoo\n" +
		"2026-06-05|06:50|landed|Mahi"
	for remark, want := range map[string]bool{
		"quit writing, 3 more wahoo in the box": true, "dos más wahoo a bordo": true,
		"3 wahoo in the box": false, "2 more lines from nine": false,
	} {
		legs := "Date|Lines in|Lines up|Lines|Knots|Remarks\n2026-06-03|06:00|08:00|4|8|" + remark +
			"\n2026-06-05|06:00|08:00|4|8|\n2026-06-07|06:00|08:00|4|8|windy"
		l := inferred(t, "Days", legs, "Bites", bites)
		qs := asked(t, l, Stats{Stretches: 3, Hours: 6},
			Stats{Listed: 3, Strikes: 3, Placed: true,
				Told: map[string]*Told{"day 2026-06-03": {}, "day 2026-06-05": {}}})
		if got := slices.ContainsFunc(qs, func(q Question) bool { return q.Kind == "trip remarks" }); got != want {
			t.Errorf("%q: asked are %v", remark, kinds(qs))
		}
	}
}
