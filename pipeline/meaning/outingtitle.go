package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
)

// outingTitles gives the tables under a title that numbers an outing, "Trip no. 4 - Saturday 12 June 2026", its
// number and its day, down to the next such title of the sheet.
func (l *Log) outingTitles(date, trip *plan.Column) {
	numbers, days := map[*layout.Grid]string{}, map[*layout.Grid]string{}
	l.numberedSheets(trip)
	for _, u := range l.Blocks {
		at := u.Block.Grid
		if number, day, ok := outingAbove(u.Block.Above); ok {
			numbers[at], days[at] = number, day
		}
		p := u.Plan
		if numbers[at] == "" || u.Proof || p.Kind == "" || p.Binds("date", "trip") || p.Gives("date") ||
			p.Gives("trip") {
			continue
		}
		u.b.give("title", trip, numbers[at], false)
		if days[at] != "" {
			u.b.give("title", date, days[at], false)
		}
	}
}

// numberedSheets gives the tables of sheets that begin with the number of an outing, "TRIP 4", each another, that
// number.
func (l *Log) numberedSheets(trip *plan.Column) {
	number, seen := map[*layout.Grid]string{}, map[string]int{}
	for _, s := range l.Sheets {
		if n := numberTitle(s); n != "" {
			number[s.Grid] = n
			seen[n]++
		}
	}
	for _, u := range l.Data() {
		if n := number[u.Block.Grid]; n != "" && len(seen) > 1 && seen[n] == 1 && !u.Plan.Binds("trip") {
			u.b.give("title", trip, n, false)
		}
	}
}

// numberTitle is the number of an outing with which a sheet begins and that is all of its first cell's words, or of
// which a workbook's sheet has its name, "" where neither is one.
func numberTitle(s *layout.Sheet) string {
	for _, row := range s.Grid.Rows {
		for _, c := range row.Cells {
			if c.Look == layout.Blank {
				continue
			}
			if n := numberOfOuting(c.Text); n != "" || !s.Grid.Info.Workbook {
				return n
			}
			return numberOfOuting(s.Grid.Info.Name)
		}
	}
	return ""
}

func numberOfOuting(text string) string {
	w := strings.Fields(normalise(text))
	n := len(w)
	if n < 2 || n > 3 || !outingWords[w[0]] || n == 3 && !slices.Contains([]string{"no", "n", "nr"}, w[1]) ||
		len(w[n-1]) > 3 || digits(w[n-1]) != len(w[n-1]) {
		return ""
	}
	return w[n-1]
}

// outingAbove is what the nearest title above a table says that numbers an outing; ok is false where none does.
func outingAbove(above []string) (number, day string, ok bool) {
	for _, text := range above {
		if number, day, ok = outingTitle(text); ok {
			return number, day, true
		}
	}
	return "", "", false
}

// outingWords are what a title calls an outing before its number.
var outingWords = set(strings.Fields("trip outing sortie salida uscita saida fahrt ausfahrt charter voyage"))

// outingTitle reads a title such as "SORTIE N° 4 – samedi 12 août 2023": a word for an outing, its number and
// nothing but its day. The day is none where it says two, or none.
func outingTitle(text string) (number, day string, ok bool) {
	w := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" \t,;:–—()", r) })
	w = slices.DeleteFunc(w, func(s string) bool { return strings.Trim(s, "-.") == "" })
	if len(w) < 3 || !outingWords[normalise(w[0])] {
		return "", "", false
	}
	i := 1
	if slices.Contains([]string{"n", "no", "nr", "num", "number", "numero"}, normalise(strings.Trim(w[i], ".º°"))) {
		i++
	}
	if i >= len(w) || len(w[i]) > 3 || digits(strings.TrimLeft(w[i], "#")) != len(strings.TrimLeft(w[i], "#")) {
		return "", "", false
	}
	number, w = strings.TrimLeft(w[i], "#"), w[i+1:]
	found := 0
	for len(w) > 0 {
		n := min(5, len(w))
		for n > 0 && !statesDay(strings.Join(w[:n], " ")) {
			n--
		}
		if n > 0 {
			day, found = strings.Join(w[:n], " "), found+1
			w = w[n:]
			continue
		}
		w = w[1:]
	}
	if found > 1 {
		day = ""
	}
	return number, day, number != "" && found > 0
}
