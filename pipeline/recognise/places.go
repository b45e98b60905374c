package recognise

import (
	"slices"
	"strings"
	"unicode"
)

// placeWords are the words for a line's place in the spread; false: only beside one
// that is a place. Common practice, no source.
var placeWords = map[string]bool{
	"port": true, "starboard": true, "stbd": true, "left": true, "right": true, "center": true, "centre": true, "middle": true,
	"short": true, "long": true, "corner": true, "rigger": true, "outrigger": true, "flat": true, "flatline": true, "shotgun": true, "stinger": true,
	"inside": true, "outside": true, "inner": true, "outer": true,
	"line": false, "rod": false, "lure": false, "no": false, "1": false, "2": false, "3": false, "4": false, "5": false, "6": false, "7": false, "8": false, "9": false,
}

// isPlace tells a text, in normal form, that is a place in the spread: "short
// corner", "port rigger 2", or a rod or line by its number.
func isPlace(name string) bool {
	place, line, number := false, false, false
	words := strings.Fields(name)
	for _, w := range words {
		core, ok := placeWords[w]
		if !ok {
			return false
		}
		place = place || core
		line = line || w == "rod" || w == "line"
		number = number || w[0] <= '9'
	}
	return len(words) <= 4 && (place || line && number)
}

// spread finds columns that are headed by a place in the spread and hold the lure
// that ran there: two or more, where the sheet has no line or lure of its own.
func (t *Table) spread(l *Layout, hs []heading, rows [][]string) {
	if slices.ContainsFunc(hs, func(h heading) bool { return h.means("line") || h.means("lure") }) {
		return
	}
	for i, h := range hs {
		if h.text != "" && len(h.candidates) == 0 && isPlace(h.name) && areNames(column(rows, i)) {
			l.Spread = append(l.Spread, Unknown{Index: i, Heading: h.text})
		}
	}
	if len(l.Spread) < 2 || len(l.Spread) > MaxSpread {
		l.Spread = nil
	}
}

// MaxSpread is how many lines one row may describe.
const MaxSpread = 31

// areNames tells names, such as lures', from numbers, ticks and yes or no.
func areNames(cells []string) bool {
	names, others := 0, 0
	for _, c := range cells {
		switch {
		case strings.IndexFunc(c, unicode.IsLetter) >= 0 && len(c) > 3:
			names++
		case normalise(c) != "": // no ditto mark or dash
			others++
		}
	}
	return names > others
}

// runSpread keeps the columns of places where each row is effort, so that each of
// its lines is a line on that leg.
func (l *Layout) runSpread() {
	if len(l.Spread) == 0 {
		return
	}
	effort := l.binds("duration_s") || l.binds("start_s") && (l.binds("end_s") || slices.ContainsFunc(l.Bindings, func(b Binding) bool { return b.Column.Parse == "span" }))
	if l.Kind != Flat || !effort || l.binds("line", "lure") {
		l.Spread = nil
		return
	}
	var names []string
	for _, u := range l.Spread {
		names = append(names, u.Heading)
	}
	l.Notes = append(l.Notes, strings.Join(names, ", ")+": places in the spread with the lure that ran there; each is a line on the row's leg, kept as a row of its own")
}
