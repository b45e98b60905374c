package recognise

import (
	"slices"
	"strconv"
	"strings"
)

// against holds what headings of counts say against their cells and their
// neighbours, and says what it changed.
func (t *Table) against(l *Layout, hs []heading, rows [][]string) {
	l.serials(hs, rows)
	t.countOfFish(l, hs)
	t.keptAndLetGo(l, hs, rows)
	l.tagged(hs, rows)
}

// manySerials is how many cells must run 1, 2, 3 under a heading that does not say
// that it numbers something.
const manySerials = 6

// serials keeps a heading whose cells are 1, 2, 3 and so on from being a count.
func (l *Layout) serials(hs []heading, rows [][]string) {
	for i := range hs {
		h := &hs[i]
		if len(h.candidates) == 0 || h.candidates[0].Parse != "count" {
			continue
		}
		cells, least := column(rows, i), manySerials
		if words := strings.Fields(normalise(h.text)); len(words) > 1 && slices.Contains([]string{"no", "nr", "number", "id"}, words[len(words)-1]) {
			least = 3
		}
		if len(cells) < least || !consecutive(cells) {
			continue
		}
		h.candidates = slices.DeleteFunc(slices.Clone(h.candidates), func(c *Column) bool { return c.Parse == "count" })
		l.Notes = append(l.Notes, h.text+": a running number (1, 2, 3 ...), no count")
	}
}

func consecutive(cells []string) bool {
	for i, c := range cells {
		if v, err := strconv.Atoi(c); err != nil || v != i+1 {
			return false
		}
	}
	return true
}

// countOfFish takes a bare "Count" beside words of a catch for fish landed, where no
// line and no speed at let-out make it the seconds that a line ran out.
func (t *Table) countOfFish(l *Layout, hs []heading) {
	fish := slices.ContainsFunc(hs, func(h heading) bool {
		return h.means("species") || h.means("scale_kg") || h.means("strikes_n") || h.means("hooked_n") || h.means("released_n") || h.means("lost_n") ||
			len(h.candidates) == 0 && speaksOf(normalise(h.text), "fish", "catch", "wt", "weight", "species", "lb", "lbs", "kg")
	})
	gear := slices.ContainsFunc(hs, func(h heading) bool {
		return h.means("letout_kn") || h.means("line") || h.means("landed_n") || h.means("lure") || h.means("setback_m")
	})
	for i := range hs {
		if fish && !gear && hs[i].means("count_s") && (hs[i].name == "count" || hs[i].name == "counts") && hs[i].unit == "" {
			hs[i].candidates = slices.DeleteFunc(slices.Clone(t.byAlias["landed"]), func(c *Column) bool { return c.Name != "landed_n" })
			l.Notes = append(l.Notes, hs[i].text+": taken for fish landed, as no line or let-out speed stands beside it")
		}
	}
}

// keptAndLetGo settles counts of fish, of those kept and of those let go side by side:
// where the first is the sum of the others in all rows, it says nothing more.
func (t *Table) keptAndLetGo(l *Layout, hs []heading, rows [][]string) {
	kept := slices.IndexFunc(hs, func(h heading) bool { return h.may("landed_n", "kept") })
	let := slices.IndexFunc(hs, func(h heading) bool { return h.may("released_n") })
	if kept < 0 || let < 0 {
		return
	}
	all := slices.IndexFunc(hs, func(h heading) bool { return h.means("landed_n") && !h.may("kept") && !h.may("released_n") })
	if all < 0 || !addUp(rows, all, kept, let) {
		return
	}
	l.Notes = append(l.Notes, hs[all].text+": the sum of "+hs[kept].text+" and "+hs[let].text+" in all rows: these were taken for landed and released")
	hs[all].candidates = nil
	hs[kept].only("landed_n")
	hs[let].only("released_n")
}

// addUp tells a column that is the sum of two others in all rows, and in two or more
// not nought.
func addUp(rows [][]string, sum, a, b int) bool {
	some := 0
	for _, row := range rows {
		var v [3]int
		for i, at := range []int{sum, a, b} {
			cell := cellOf(row, at)
			if n, err := strconv.Atoi(cell); err == nil {
				v[i] = n
			} else if cell != "" && cell != "-" {
				return false
			}
		}
		if v[0] != v[1]+v[2] {
			return false
		}
		if v[0] > 0 {
			some++
		}
	}
	return some > 1
}

// tagged tells a column of kept fish in which T stands beside Y and N, for tagged.
func (l *Layout) tagged(hs []heading, rows [][]string) {
	for i := range hs {
		if len(hs[i].candidates) == 0 || hs[i].candidates[0].Parse != "kept" {
			continue
		}
		seen := map[string]bool{}
		for _, c := range column(rows, i) {
			seen[strings.ToUpper(c)] = true
		}
		if seen["T"] && seen["Y"] && seen["N"] {
			l.Tagged = true
			l.Notes = append(l.Notes, hs[i].text+": T beside Y and N was taken for tagged, so released")
		}
	}
}
