package bundle

import "slices"

// hidden is a set of groups of counts that a row does not show.
type hidden uint8

const (
	hideStrikes hidden = 1 << iota
	hideBoated
	hideHookups
	hideFates
	hideScale
)

// group is counts of a row that are shown together or not at all.
type group struct {
	is   hidden
	of   []quantity // what is shown
	rest []quantity // what then follows by subtraction; that there is none of it may be seen
	over hidden     // the group that it is a part of: hidden there, it is hidden too
}

var (
	effortGroups = []group{
		{is: hideStrikes, of: []quantity{strikes}},
		{is: hideBoated, of: []quantity{boated}, rest: []quantity{away}, over: hideStrikes},
		{is: hideHookups, of: []quantity{hookups}, rest: []quantity{missed, lost}, over: hideBoated},
	}
	// seasonGroups are those of the season's row.
	seasonGroups = append(effortGroups[:len(effortGroups):len(effortGroups)],
		group{is: hideFates, of: []quantity{landed, released}, over: hideBoated})
	fishGroups = []group{
		{is: hideScale, of: []quantity{onScale}, rest: []quantity{unweighed}},
		{is: hideFates, of: []quantity{landed, released}},
	}
)

// hide settles which groups each row hides: those that would show a trip or a day, and
// where the season shows their sum, as many more rows, the smallest first, as it takes
// that the hidden ones together show none (secondary suppression).
func (t table) hide(rows []*bin) {
	for _, g := range t.groups {
		for _, b := range rows {
			if b.hidden&g.over != 0 || !b.shows(g) {
				b.hidden |= g.is
			}
		}
		if t.total&g.is == 0 {
			t.cover(rows, g)
		}
	}
}

// cover hides more rows until those that hide the group show nothing by their sum: one more
// where one does, else the one with the least; then none that is not needed.
func (t table) cover(rows []*bin, g group) {
	var more []*bin
	for !sumShows(rows, g) {
		open := slices.DeleteFunc(slices.Clone(rows), func(b *bin) bool { return b.hidden&g.is != 0 })
		slices.SortStableFunc(open, func(a, b *bin) int { return t.compare(a, b, g.of[0]) })
		if len(open) == 0 {
			return
		}
		pick := open[0]
		for _, b := range open {
			b.hidden |= g.is
			enough := sumShows(rows, g)
			b.hidden &^= g.is
			if enough {
				pick = b
				break
			}
		}
		pick.hidden |= g.is
		more = append(more, pick)
	}
	for _, b := range more {
		if b.hidden &^= g.is; !sumShows(rows, g) {
			b.hidden |= g.is
		}
	}
}

// sumShows tells whether the sum over the rows that hide the group may be had.
func sumShows(rows []*bin, g group) bool {
	all, none := newBin(Merged), true
	for _, b := range rows {
		if b.hidden&g.is != 0 {
			all.take(b)
			none = false
		}
	}
	return none || all.shows(g)
}

// shows tells whether a group may be shown: for the row itself, and in its difference
// from the row of the earlier summary.
func (b *bin) shows(g group) bool {
	return g.safeIn(b.now) && (b.unchanged() || g.safeIn(b.grown))
}

func (g group) safeIn(h heap) bool {
	for _, q := range g.of {
		if !h.safe(q) {
			return false
		}
	}
	for _, q := range g.rest {
		if !h.nothing(q) && !h.safe(q) {
			return false
		}
	}
	return true
}

// compare puts the row with the least of q first, of equals the smallest.
func (t table) compare(a, b *bin, q quantity) int {
	x, y := a.now.sum[q], b.now.sum[q]
	switch {
	case x < y-least || x < y+least && t.less(a, b):
		return -1
	case x > y+least || t.less(b, a):
		return 1
	}
	return 0
}
