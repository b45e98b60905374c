package recognise

import (
	"errors"
	"fmt"
	"strings"

	"wakeledger/pipeline/unit"
)

// Given is a value that stands once for a whole sheet: "Boat: Sea Wren" above
// the table, or a date as the sheet's name.
type Given struct {
	Heading string // the label as logged, "sheet name" for the sheet's name
	Column  *Column
	Text    string
	Section bool // it holds for this table of the sheet alone
}

// mayBeGiven are the columns that a label above a table may set.
var mayBeGiven = map[string]bool{"trip": true, "boat": true, "captain": true, "port": true, "zone": true, "date": true}

// given finds labels with a value above the header, for columns that the table
// itself does not have.
func (t *Table) given(l *Layout, name string, above [][]string) {
	for _, row := range above {
		for i := 0; i < len(row); i++ {
			label, value, found := strings.Cut(cellOf(row, i), ":")
			used := i
			if !found || strings.TrimSpace(value) == "" {
				if used = i + 1; used >= len(row) {
					continue
				}
				value = row[used]
			}
			if l.give(t, strings.TrimSpace(label), strings.TrimSpace(value)) {
				i = used
			}
		}
	}
	if !l.binds("start_s", "time_s") || l.binds("date") || l.gives("date") {
		return
	}
	if statesDay(name) {
		l.give(t, "date", name)
	} else if day, ok := titleDay(above); ok {
		l.give(t, "date", day)
	}
}

// beforeDay are the words that a title may have before the day of its table.
var beforeDay = map[string]bool{"trip": true, "day": true, "date": true, "outing": true, "fishing": true, "log": true, "of": true, "for": true, "on": true, "no": true}

// titleDay finds the one day that titles above a table begin with, as in
// "Trip 12 July 2026 - the bank". A day elsewhere in them is of something else.
func titleDay(above [][]string) (day string, ok bool) {
	for _, text := range texts(above) {
		words := strings.Fields(text)
		i := 0
		for i < len(words) && beforeDay[strings.ToLower(strings.Trim(words[i], ":-"))] {
			i++
		}
		for n := 1; n <= min(5, len(words)-i); n++ {
			s := strings.Trim(strings.Join(words[i:i+n], " "), " ,;:-–")
			if !statesDay(s) {
				continue
			}
			if ok && s != day {
				return "", false
			}
			day, ok = s, true
			break
		}
	}
	return day, ok
}

func (l *Layout) give(t *Table, label, value string) bool {
	if value == "" || len(t.heading(value).candidates) > 0 {
		return false
	}
	for _, c := range t.find(normalise(label)) {
		if !mayBeGiven[c.Name] || !c.In(l.Kind) || l.binds(c.Name) || l.gives(c.Name) {
			continue
		}
		if c.Parse == "date" && likeDate(value) == unlikely && !statesDay(value) {
			continue
		}
		l.Given = append(l.Given, Given{Heading: label, Column: c, Text: value})
		l.Notes = append(l.Notes, fmt.Sprintf("%s %q stands above the table or as the sheet's name, and was taken for each of its rows", c.Name, value))
		return true
	}
	return false
}

func (l *Layout) gives(name string) bool {
	for _, g := range l.Given {
		if g.Column.Name == name {
			return true
		}
	}
	return false
}

// statesDay tells a text that is a whole date, with its year, even if the order
// of its day and month is open.
func statesDay(text string) bool {
	m, err := unit.ParseMoment(text, unit.OrderUnknown)
	return err == nil && m.HasDate || errors.Is(err, unit.ErrAmbiguousDate)
}
