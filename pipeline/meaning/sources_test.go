package meaning

import (
	"slices"
	"testing"
)

// blockOf is the first block of a sheet.
func blockOf(l *Log, sheet string) *Understood {
	i := slices.IndexFunc(l.Blocks, func(u *Understood) bool { return u.Plan.Name == sheet })
	if i < 0 {
		return nil
	}
	return l.Blocks[i]
}

// TestRepeated leaves out the rows that a page copied from the year before still has at its foot.
func TestRepeated(t *testing.T) {
	const head = "Date|Start|End|Knots|Bites|Kept\n"
	const old = "2025-06-03|06:00|08:00|8|3|2\n2025-06-04|06:00|08:00|9|4|1\n2025-06-05|06:00|08:00|8|5|4\n2025-06-06|06:00|08:00|9|1|0"
	const now = "2026-06-03|06:00|08:00|8|3|2\n2026-06-04|06:00|08:00|9|4|1\n2026-06-09|06:00|08:00|9|4|1\n"
	l := inferred(t, "log.xlsx", nil, "2025", head+old, "2026", head+now+"2025-06-05|06:00|08:00|8|5|4\n2025-06-06|06:00|08:00|9|1|1")
	if u := blockOf(l, "2026"); u == nil || len(u.Plan.Drop) != 1 || !u.Plan.Drop[5] {
		t.Errorf("expected row 5 alone to be left out: %+v", u)
	}
	if u := blockOf(l, "2025"); u == nil || len(u.Plan.Drop) != 0 {
		t.Error("rows of the first page are left out")
	}
}

// TestCatalogues takes a list of tackle that strikes name by tags for no fish.
func TestCatalogues(t *testing.T) {
	const strikes = "Date|Time|Tag|Outcome|Species|Length cm\n2026-06-03|06:10|T01|landed|Albacore|81\n2026-06-04|06:20|T02|lost||\n2026-06-05|07:10|T03|landed|Wahoo|120\n2026-06-06|07:30|T01|missed||"
	for _, c := range []struct {
		what, strikes string
		want          bool
	}{
		{"tackle", strikes, true},
		{"fish whose tags no strike names", "Date|Time|Outcome|Species|Length cm\n2026-06-03|06:10|landed|Albacore|81\n2026-06-04|06:20|lost||\n2026-06-05|07:10|landed|Wahoo|120", false},
	} {
		list := "Type|Tag|Weight g\nBullet|T01|70\nJet|T02|85\nSlant|T03|160"
		if !c.want {
			list = "Species|Tag|Weight g\nAlbacore|T01|7000\nWahoo|T02|8500\nWahoo|T03|16000"
		}
		l := inferred(t, "log.xlsx", nil, "Strikes", c.strikes, "List", list)
		u := blockOf(l, "List")
		if u == nil || (u.Proof || u.Plan.Kind == "") != c.want {
			t.Errorf("%s: %s, proof %v", c.what, summary(u.Plan), u.Proof)
		}
	}
}
