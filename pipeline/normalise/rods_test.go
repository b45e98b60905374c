package normalise

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/plan"
)

// TestRods holds what columns that are the places of the spread tell: bites in words and in the short words that the
// log explains, how many of them, at which speed, and how many lines were out. What is not understood is set aside.
func TestRods(t *testing.T) {
	const text = "Q = missed. Z = rod not out. OFF = threw the hook\n\n" +
		"Date,Hours,Knots,Left corner,Right corner,Left rigger,Right rigger,Remarks\n" +
		"2026-06-03,5,7,wahoo 28 lb,-,Q,-,\n2026-06-04,4,7,Z,dorado OFF,-,3 Q,\n2026-06-05,4,7,-,grmpf,2 dorado,-,\n" +
		"2026-06-06,2 + 3,14 / 7,wahoo @14,-,Q @7,-,\n2026-06-07,2 + 3,14 / 7,-,-,-,-,just the corners at first\n" +
		"2026-06-08,4,7,-,wahoo,Q,wahoo,\n2026-06-09,4,7,-,dorado lost,Q,mahi OFF,\n"
	x, u := only(t, csvOf(text))
	if len(u.Plan.Rods) != 4 {
		t.Fatalf("%d places of the spread, expected 4", len(u.Plan.Rods))
	}
	r, err := x.Reader(u, Settings{})
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range u.Block.Rows {
		_, _, problems := r.Row(RowOf(row))
		var got []string
		for _, s := range r.Sides() {
			v := s.Values
			if s.Kind == plan.Legs {
				got = append(got, fmt.Sprintf("%d lines at %g", v["lines_out"].Int, v["speed_kn"].Real))
				continue
			}
			got = append(got, strings.TrimSpace(fmt.Sprint(v["species_logged"].Text, " ", v["outcome"].Text, " ",
				v["leg"].Text)))
		}
		if len(got) == 0 || !strings.Contains(got[0], "lines at") {
			got = slices.Insert(got, 0, fmt.Sprintf("%d lines", r.value("lines_out").Int))
		}
		for _, p := range problems {
			got = append(got, "aside "+p.Cell)
		}
		want := []string{"4 lines, wahoo landed, missed", "3 lines, dorado lost, missed, missed, missed",
			"4 lines, dorado landed, dorado landed, aside grmpf",
			"4 lines at 14, 4 lines at 7, wahoo landed 1, missed 2, aside 14 / 7",
			"4 lines at 14, 4 lines at 7, aside 14 / 7, aside just the corners at first",
			"4 lines, wahoo landed, missed, wahoo landed", "4 lines, dorado lost, missed, mahi lost"}[row.Num-4]
		if s := strings.Join(got, ", "); s != want {
			t.Errorf("row %d: %s, expected %s", row.Num, s, want)
		}
	}
}

// TestStretchOnEachRow holds that a stretch in one cell that stands on the row of each line is one stretch, not one
// of the morning and one of the evening.
func TestStretchOnEachRow(t *testing.T) {
	rows := log{text: "Date|Start - Finish|Knots|Line No.|Lure|Hit\n2026-07-12|4:50-7:20|7|1|jet|0\n" +
		"2026-07-12|4:50-7:20|7|2|plug|1\n2026-07-12|4:50-7:20|7|3|pusher|0\n2026-07-12|7:30-9:00|7|1|jet|0"}.read(t)
	for i, want := range []string{"17400", "17400", "17400", "27000"} {
		if got := rows[i].values["start_s"]; got != want {
			t.Errorf("row %d starts at %s s, expected %s", i+1, got, want)
		}
	}
}
