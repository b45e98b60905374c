package pipeline

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"wakeledger/pipeline/identity"
	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// tableOf is what a file's tables may be joined to others by.
type tableOf struct {
	path     string
	sheets   []*layout.Sheet
	headings []string
	boats    map[string]bool
	days     map[string]bool
	yearless bool // its days have no year
	keys     []keyColumn
}

// keyColumn is a column of numbers or codes; own where no two rows have the same.
type keyColumn struct {
	heading string
	values  map[string]bool
	days    map[string]string // of each value, where the row has one
	own     bool
	coded   bool // letters and figures, as in T01
	trip    bool // headed as a trip's number: several rows of a table may be of one
}

// fewDays is how many days two tables that have no other must share to be of one book.
const fewDays = 3

// fewTrips is how many trips two tables must both name to be of one book where neither has a row a trip.
const fewTrips = 5

func (s *Season) tableOf(path string, sheets []*layout.Sheet) tableOf {
	t := tableOf{path: path, sheets: sheets, boats: map[string]bool{}, days: map[string]bool{}}
	for _, x := range sheets {
		for i := range x.Blocks {
			b := &x.Blocks[i]
			if b.Shape != layout.Table || len(b.Rows) < 3 {
				continue
			}
			days := dayColumn(b)
			for _, d := range days {
				t.days[d] = true
				t.yearless = t.yearless || len(d) == len(anyYear)
			}
			for _, l := range b.Labels {
				h := strings.ToLower(l.Full())
				t.headings = append(t.headings, h)
				column := s.column(l.Full())
				if column != nil && column.Name == "boat" {
					for _, r := range b.Rows {
						if c := textAt(r, l.Col); c != "" {
							t.boats[c] = true
						}
					}
				}
				if k, ok := keyOf(b, l.Col, days); ok {
					k.heading, k.trip = strings.ToLower(l.Text), column != nil && column.Name == "trip"
					t.keys = append(t.keys, k)
					t.keys = append(t.keys, pairsOf(b, l, days)...)
				}
			}
		}
	}
	return t
}

func (s *Season) column(heading string) *plan.Column {
	_, column, _ := s.lexicon.Nearest(heading)
	return column
}

func textAt(r layout.Row, col int) string {
	if col >= len(r.Cells) {
		return ""
	}
	return strings.ToLower(strings.TrimSpace(r.Cells[col].Text))
}

// dayColumn is the day of each row, of the first column that is mostly days; empty where none is. A day that
// is written once is that of the rows below it too.
func dayColumn(b *layout.Block) map[int]string {
	for _, l := range b.Labels {
		days, filled, dated := map[int]string{}, 0, 0
		day := ""
		for i, r := range b.Rows {
			if textAt(r, l.Col) != "" {
				filled, day = filled+1, ""
				if c := r.Cells[l.Col]; c.Look == layout.Date {
					day = dayText(c.Text, b.Grid.Info)
				}
				if day != "" {
					dated++
				}
			}
			if day != "" {
				days[i] = day
			}
		}
		if 2*dated > filled && 2*len(days) > len(b.Rows) {
			return days
		}
	}
	return nil
}

// anyYear is how a day without a year is spelled; one with a year ends the same way.
const anyYear = "01-02"

// ofAnyYear are days without their years.
func ofAnyYear(days map[string]bool) map[string]bool {
	out := map[string]bool{}
	for d := range days {
		out[d[len(d)-len(anyYear):]] = true
	}
	return out
}

// dayText is a date in one spelling, also of a workbook's serial; "" for what is none, as hooks of 7/0.
func dayText(text string, of sheet.Info) string {
	if v, err := strconv.ParseFloat(text, 64); err == nil && of.Workbook {
		if m, err := unit.FromSerial(v, of.Date1904); err == nil && m.HasDate {
			return m.Date.String()
		}
	}
	for _, order := range []unit.Order{unit.DayFirst, unit.MonthFirst} {
		if m, err := unit.ParseMoment(text, order); err == nil && m.HasDate {
			return m.Date.String()
		}
	}
	for _, order := range []unit.Order{unit.DayFirst, unit.MonthFirst} {
		if d, err := unit.ParseDayMonth(text, order); err == nil {
			return fmt.Sprintf("%02d-%02d", d.Month, d.Day)
		}
	}
	return ""
}

// keyOf takes a column of whole numbers or codes for one that rows are known by.
func keyOf(b *layout.Block, col int, days map[int]string) (keyColumn, bool) {
	k := keyColumn{values: map[string]bool{}, days: map[string]string{}}
	filled, coded, worded := 0, 0, 0
	for i, r := range b.Rows {
		c := textAt(r, col)
		if c == "" || c == "na" {
			continue
		}
		number := strings.Trim(c, "0123456789") == ""
		if len(c) > 12 || !number && strings.ContainsAny(c, " .,:/") {
			return k, false
		}
		if !strings.ContainsAny(c, "0123456789") {
			if worded++; 5*worded > len(b.Rows) {
				return k, false
			}
			continue // why it has no number
		}
		filled++
		if !number {
			coded++
		}
		k.values[c] = true
		if k.days[c] == "" {
			k.days[c] = days[i]
		}
	}
	k.own, k.coded = len(k.values) == filled, coded == filled
	return k, len(k.values) >= 3 && 2*filled > len(b.Rows)
}

// pairsOf are the keys that a column makes with each of short codes beside it: trip and leg.
func pairsOf(b *layout.Block, with layout.Label, days map[int]string) []keyColumn {
	var out []keyColumn
	for _, l := range b.Labels {
		k := keyColumn{heading: strings.ToLower(with.Text + "+" + l.Text),
			values: map[string]bool{}, days: map[string]string{}}
		filled, short := 0, l.Col != with.Col
		for i, r := range b.Rows {
			first, c := textAt(r, with.Col), textAt(r, l.Col)
			if first == "" || c == "" || c == "na" {
				continue
			}
			short = short && len(c) <= 3
			filled++
			k.values[first+"+"+c] = true
			k.days[first+"+"+c] = days[i]
		}
		if k.own = len(k.values) == filled; short && len(k.values) >= 5 && 2*filled > len(b.Rows) {
			out = append(out, k)
		}
	}
	return out
}

// books are the files that are joined to each other, of more than one.
func books(tables []tableOf) [][]string {
	of := make([]int, len(tables))
	for i := range of {
		of[i] = i
	}
	for i := range tables {
		for j := range i {
			if !tables[i].joins(&tables[j]) {
				continue
			}
			from, to := of[i], of[j]
			for k := range of {
				if of[k] == from {
					of[k] = to
				}
			}
		}
	}
	parts := map[int][]string{}
	for i, t := range tables {
		parts[of[i]] = append(parts[of[i]], t.path)
	}
	var out [][]string
	for i := range tables {
		if len(parts[i]) > 1 {
			out = append(out, parts[i])
		}
	}
	return out
}

// joins tells whether two files are tables of one book: not of one hand, and not of two boats.
func (t *tableOf) joins(o *tableOf) bool {
	if len(t.headings) == 0 || len(o.headings) == 0 || identity.SameHand(t.headings, o.headings) ||
		identity.SameHand(o.headings, t.headings) {
		return false
	}
	if len(t.boats) > 0 && len(o.boats) > 0 && shared(t.boats, o.boats) == 0 {
		return false
	}
	days, others := t.days, o.days
	if t.yearless != o.yearless {
		days, others = ofAnyYear(days), ofAnyYear(others)
	}
	switch same := shared(days, others); {
	case same >= 5 && 10*same >= 9*min(len(days), len(others)),
		same >= fewDays && same == len(days) && same == len(others): // a short season, day for day
		return true
	}
	for _, a := range t.keys {
		for _, b := range o.keys {
			if a.joins(&b) || t.lists(a, b) || o.lists(b, a) || t.dates(a, b, o) || o.dates(b, a, t) {
				return true
			}
		}
	}
	return false
}

// lists tells whether a file named for a column of another, outcome.csv, has the codes in it.
func (t *tableOf) lists(own, of keyColumn) bool {
	name := strings.TrimSuffix(filepath.Base(t.path), filepath.Ext(t.path))
	return own.own && meaning.SameKey(name, of.heading) && 10*shared(own.values, of.values) >= 9*len(of.values)
}

// fewDated is how many rows a table without a day must name of another before it is taken to have its days from it.
const fewDated = 5

// dates tells whether rows that are numbered, under no more than "No", have the days of another table that has none: a
// column of this one names them, several times some.
func (t *tableOf) dates(own, of keyColumn, o *tableOf) bool {
	return len(t.days) > 0 && len(o.days) == 0 && own.own && meaning.OnlyNumbers(own.heading) && !of.own &&
		len(of.values) >= fewDated && 10*shared(own.values, of.values) >= 9*len(of.values)
}

// joins tells whether one column's values are keys of the other's rows.
func (k *keyColumn) joins(o *keyColumn) bool {
	named := meaning.SameKey(k.heading, o.heading) || k.coded && o.coded
	same := shared(k.values, o.values)
	trips := k.trip && o.trip && same >= fewTrips
	if !named || !k.own && !o.own && !trips || same < 3 || 10*same < 9*min(len(k.values), len(o.values)) {
		return false
	}
	both, agree := 0, 0
	for v, day := range k.days {
		if other := o.days[v]; day != "" && other != "" {
			both++
			if day == other {
				agree++
			}
		}
	}
	return both == 0 || 2*agree > both
}

func shared(a, b map[string]bool) int {
	n := 0
	for v := range a {
		if b[v] {
			n++
		}
	}
	return n
}
