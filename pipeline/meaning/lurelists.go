package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// oneSpell tells a table of stretches each row of which tells of one, in columns or in words.
func (u *Understood) oneSpell() bool {
	p := u.Plan
	if !p.Reads("stretches") {
		return p.Binds("start_s", "end_s") || p.Binds("duration_s")
	}
	return !slices.ContainsFunc(p.Bindings, func(b plan.Binding) bool {
		return b.Column.Parse == "stretches" && slices.ContainsFunc(u.b.rows, func(row []string) bool {
			return len(phrase.Stretches(cellOf(row, b.Index))) > 1
		})
	})
}

// Listed is what is known of a column whose cells name several lures each.
type Listed struct {
	At      plan.Unknown // the column
	Example string
	Unsure  bool // whether each was on a line of its own must be asked
}

// lureLists finds tables of stretches in which most cells of the lures name several: they are no lure's name. Where the
// table has as many lines as lures, or its heading says that they were out, each was on a line of its own; elsewhere,
// where nothing counts the lines, nobody knows.
func (l *Log) lureLists() {
	for _, u := range l.Data() {
		p := u.Plan
		lure := p.Find("lure")
		if lure == nil || p.Kind != plan.Flat && p.Kind != plan.Legs || p.Binds("line") || p.Gives("line") ||
			len(p.Spread)+len(p.Rods) > 0 || p.StrikeSets() > 0 || !u.oneSpell() || p.OfSet("duration_s", 1) != nil ||
			p.OfSet("start_s", 1) != nil {
			continue
		}
		lists, named, counted, alike := 0, 0, 0, 0
		example := ""
		lines := p.Find("lines_out")
		for _, row := range u.b.rows {
			text := cellOf(row, lure.Index)
			if strings.TrimSpace(text) == "" || words.NotLogged(text) {
				continue
			}
			named++
			n := len(words.Lures(text))
			if n > 1 {
				lists++
				if example == "" {
					example = text
				}
			}
			if lines == nil {
				continue
			}
			if x, ok := number(cellOf(row, lines.Index)); ok {
				counted++
				if int(x) == n {
					alike++
				}
			}
		}
		if lists < 2 || 2*lists <= named {
			continue
		}
		at := plan.Unknown{Index: lure.Index, Heading: lure.Heading, Aside: plan.SeveralLures}
		each := words.OutThere(lure.Heading)
		if counted > 0 || p.Gives("lines_out") {
			if each = 10*alike >= 9*counted && counted > 1; !each {
				continue // the lines are counted, and the lures are others
			}
		}
		u.Listed = Listed{At: at, Example: example, Unsure: !each}
		p.Bindings = slices.DeleteFunc(p.Bindings, func(b plan.Binding) bool { return b.Index == at.Index })
		p.Unknown = append(p.Unknown, at)
		if each {
			p.Lures = &at
			u.b.note("%s: each lure of a cell was on a line of its own", strings.TrimSpace(at.Heading))
		}
	}
}
