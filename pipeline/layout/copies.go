package layout

import (
	"slices"
	"strings"
)

// Of sheets that say the same cell for cell, one with so many rows and a day in them is a copy whatever it is
// called, and another one by its name: two days without a date may be alike.
const (
	fewCopied  = 8
	fewRenamed = 3
)

// Copy is a sheet that says the same as an earlier one, cell for cell.
type Copy struct {
	*Sheet
	Of *Sheet
}

// Copies parts sheets into those that say something of their own and the copies of these: "Log (2)", kept before the
// last season was typed in.
func Copies(sheets []*Sheet) (own []*Sheet, copies []Copy) {
	for _, s := range sheets {
		i := slices.IndexFunc(own, func(o *Sheet) bool { return s.copies(o) })
		if i < 0 {
			own = append(own, s)
			continue
		}
		copies = append(copies, Copy{s, own[i]})
	}
	return own, copies
}

func (s *Sheet) copies(o *Sheet) bool {
	if s.Grid.More || o.Grid.More {
		return false
	}
	a, b := s.Grid.said(), o.Grid.said()
	return slices.Equal(a, b) && (len(a) >= fewCopied && s.Grid.dated() || len(a) >= fewRenamed &&
		renamed(s.Grid.Info.Title(), o.Grid.Info.Title()))
}

// dated tells a grid in which a day stands: forms of two days that only their sheets name may say the same.
func (g *Grid) dated() bool {
	return slices.ContainsFunc(g.Rows, func(r Row) bool {
		return slices.ContainsFunc(r.Cells, func(c Cell) bool { return c.Look == Date })
	})
}

// said are the rows of a grid that say anything, each as one text.
func (g *Grid) said() []string {
	var out []string
	for _, r := range g.Rows {
		cells := make([]string, len(r.Cells))
		for i, c := range r.Cells {
			cells[i] = c.Text
		}
		if text := strings.TrimRight(strings.Join(cells, "\x00"), "\x00"); text != "" {
			out = append(out, text)
		}
	}
	return out
}

// copyWords are what a program, or its user, adds to the name of a sheet that is a copy.
var copyWords = []string{"copy", "copia", "cópia", "copie", "kopie", "backup", "bak", "old",
	"of", "de", "di", "da", "von"}

// renamed tells a name that is another one with no more than a number in brackets or a word for a copy to it.
func renamed(name, of string) bool {
	rest, found := strings.ToLower(name), false
	if before, after, ok := strings.Cut(rest, strings.ToLower(of)); ok && of != "" {
		rest, found = before+" "+after, true
	}
	return found && !slices.ContainsFunc(strings.FieldsFunc(rest,
		func(r rune) bool { return strings.ContainsRune(" -_()", r) }),
		func(w string) bool { return !slices.Contains(copyWords, w) && strings.Trim(w, "0123456789") != "" })
}
