package recognise

import (
	"slices"
	"strings"
)

// The cells of a log in which each row is an event; that both stand in one column
// tells it.
var (
	beginnings = map[string]bool{"lines in": true, "lines down": true, "lines wet": true, "gear in": true, "gear down": true, "lures in": true, "start fishing": true, "start trolling": true, "started fishing": true, "started trolling": true}
	endings    = map[string]bool{"lines up": true, "lines out": true, "lines in boat": true, "lines aboard": true, "gear out": true, "gear up": true, "lures out": true, "stop fishing": true, "stop trolling": true, "stopped fishing": true, "stopped trolling": true}
)

// events tells a log of events, whose rows are no legs, strikes or fish: read as
// any of these, it would say what nobody wrote.
func events(rows [][]string, columns int) bool {
	for i := range columns {
		cells := column(rows, i)
		in := slices.ContainsFunc(cells, func(c string) bool { return beginnings[normalise(c)] })
		if in && slices.ContainsFunc(cells, func(c string) bool { return endings[normalise(c)] }) {
			return true
		}
	}
	return false
}

// unsigned sets coordinates aside, under their own names, whose degrees and minutes
// have neither a sign nor a letter, here or in the heading: 88 22.0 lies on both
// sides of Greenwich.
func (l *Layout) unsigned(rows [][]string) {
	open := func(b Binding) bool {
		if b.Column.Parse != "latitude" && b.Column.Parse != "longitude" {
			return false
		}
		words := strings.Fields(normalise(b.Heading))
		if slices.Contains([]string{"n", "s", "e", "w", "north", "south", "east", "west"}, words[len(words)-1]) {
			return false
		}
		cells := column(rows, b.Index)
		return len(cells) > 0 && !slices.ContainsFunc(cells, func(c string) bool {
			return strings.ContainsAny(c, "NSEWnsew-\u2212") || len(strings.FieldsFunc(c, func(r rune) bool { return strings.ContainsRune(" °º'′:", r) })) < 2
		})
	}
	for _, b := range l.Bindings {
		if open(b) {
			l.Unknown = append(l.Unknown, Unknown{Index: b.Index, Heading: b.Heading})
			l.Notes = append(l.Notes, b.Heading+": degrees and minutes without a sign or a letter are kept by name: head the column "+b.Heading+" N, S, E or W")
		}
	}
	l.Bindings = slices.DeleteFunc(l.Bindings, open)
}
