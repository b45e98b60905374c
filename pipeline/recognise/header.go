package recognise

import (
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

// header is what was found of a sheet's header: its headings by column, and the
// index of the first and last of the one or two rows that it takes.
type header struct {
	headings    []heading
	known       int // headings with a meaning
	units       int // headings with a unit
	filled      int // columns with a heading
	first, last int
}

// betterThan prefers more known headings, then more units, then fewer and
// earlier rows (whoever is found first).
func (h header) betterThan(o header) bool {
	if 3*h.known < h.filled || h.known < 2 {
		return false
	}
	if h.known != o.known {
		return h.known > o.known
	}
	return h.units > o.units && h.first == o.first
}

const headerWithin = 20

// findHeader looks for the header among the first rows: one row, or two of which
// the upper groups the lower or the lower gives units.
func (t *Table) findHeader(rows [][]string) (header, bool) {
	var best header
	for i, row := range rows {
		if i >= headerWithin {
			break
		}
		one := t.count(t.headingsOf(row))
		one.first, one.last = i, i
		if one.betterThan(best) {
			best = one
		}
		if i+1 < len(rows) && mayBeHeadings(rows[i+1]) && one.filled > 0 {
			two := t.count(t.pairedHeadings(row, rows[i+1]))
			two.first, two.last = i, i+1
			// The lower row alone must not do as well: then the upper is a title.
			if two.betterThan(best) && two.known+two.units > t.score(rows[i+1]) {
				best = two
			}
		}
	}
	return t.earlier(best, rows), best.known > 1
}

// earlier is the first table's header where a sheet holds several tables, of which
// a later one has more headings that are known.
func (t *Table) earlier(best header, rows [][]string) header {
	for i := range best.first {
		if t.Begins(rows[i:best.first]) {
			first := t.count(t.headingsOf(rows[i]))
			first.first, first.last = i, i
			return first
		}
	}
	return best
}

func (t *Table) score(row []string) int {
	h := t.count(t.headingsOf(row))
	return h.known + h.units
}

func (t *Table) count(hs []heading) header {
	h := header{headings: hs}
	for _, x := range hs {
		if x.text != "" && (len(x.candidates) > 0 || !isPlace(x.name)) {
			h.filled++ // places in the spread say nothing for or against
		}
		if len(x.candidates) > 0 {
			h.known++
			if x.unit != "" {
				h.units++
			}
		}
	}
	return h
}

func (t *Table) headingsOf(row []string) []heading {
	hs := make([]heading, len(row))
	for i, cell := range row {
		if strings.TrimSpace(cell) != "" {
			hs[i] = t.heading(cell)
		}
	}
	return hs
}

// mayBeHeadings tells a row of words from one of data: none of its cells is a
// number or a time.
func mayBeHeadings(row []string) bool {
	words := 0
	for _, cell := range row {
		cell = strings.TrimSpace(cell)
		if cell == "" {
			continue
		}
		if _, err := strconv.ParseFloat(cell, 64); err == nil {
			return false
		}
		if _, err := unit.ParseMoment(cell, unit.DayFirst); err == nil {
			return false
		}
		words++
	}
	return words > 0
}

// pairedHeadings joins two rows of headings. A cell of the upper row stands for
// the blank cells to its right too, as merged cells do.
func (t *Table) pairedHeadings(upper, lower []string) []heading {
	hs := make([]heading, max(len(upper), len(lower)))
	group := ""
	for i := range hs {
		own := cellOf(upper, i)
		if own != "" {
			group = own
		}
		below := cellOf(lower, i)
		switch {
		case below == "" && own != "":
			hs[i] = t.heading(own)
		case below != "":
			hs[i] = t.paired(group, below)
		}
	}
	return hs
}

// paired finds what a group and a name, or a name and a unit, mean together:
// "Lines" over "In", "Lure" over "Weight", "Girth" over "cm".
func (t *Table) paired(group, name string) heading {
	if group != "" {
		if u, ok := unit.Lookup(strings.Trim(name, "()[] ")); ok {
			h := heading{text: group + " " + name}
			if t.withUnit(&h, group, u) {
				return h
			}
		}
		if h := t.heading(group + " " + name); len(h.candidates) > 0 {
			return h
		}
	}
	h := t.heading(name)
	if len(h.candidates) == 0 && group != "" {
		h.text = group + " " + name
	}
	return h
}

func cellOf(row []string, i int) string {
	if i < len(row) {
		return strings.TrimSpace(row[i])
	}
	return ""
}
