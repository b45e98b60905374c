package reports

import (
	"fmt"

	"wakeledger/reports/bundle"
	"wakeledger/reports/page"
)

// clubSum is cells of several boats added up.
type clubSum struct {
	Trips                                      int64
	LineHours                                  float64
	strikes, hookups, boated, landed, released clubCount
}

// clubCount is a count over boats: the sum of the figures that are shown, how many they
// are, and how many are not shown.
type clubCount struct {
	n         int64
	lit, dark int
}

func (c *clubCount) add(n *int64) {
	if n == nil {
		c.dark++
		return
	}
	c.n += *n
	c.lit++
}

func (c *clubCount) plus(o clubCount) { c.n, c.lit, c.dark = c.n+o.n, c.lit+o.lit, c.dark+o.dark }

// cell is the sum, not known where a part of it is not shown.
func (c clubCount) cell() page.Cell {
	if c.dark > 0 {
		return page.Cell{}
	}
	return page.Whole(c.n)
}

// shown is the sum of what is shown, not known where nothing is.
func (c clubCount) shown() page.Cell {
	if c.lit == 0 {
		return page.Cell{}
	}
	return page.Whole(c.n)
}

// words are the sum with its noun, as the lower end that it is where a part is not shown.
func (c clubCount) words(one, more string) string {
	if c.dark > 0 {
		return page.Plural(c.n, one, more) + " or more"
	}
	return page.Plural(c.n, one, more)
}

// note is what stands under the sum.
func (c clubCount) note(whole string) string {
	if c.dark > 0 {
		return "or more: " + page.Plural(int64(c.dark), "figure", "figures") + " not shown"
	}
	return whole
}

func (s *clubSum) add(c bundle.Cell) {
	s.Trips, s.LineHours = s.Trips+c.Trips, s.LineHours+c.LineHours
	s.strikes.add(c.Strikes)
	s.hookups.add(c.Hookups)
	s.boated.add(c.Boated)
}

func (s *clubSum) addSeason(t bundle.Total) {
	s.add(bundle.Cell{Trips: t.Trips, LineHours: t.LineHours, Strikes: t.Strikes, Hookups: t.Hookups, Boated: t.Boated})
	s.landed.add(t.Landed)
	s.released.add(t.Released)
}

func (s *clubSum) plus(o clubSum) {
	s.Trips, s.LineHours = s.Trips+o.Trips, s.LineHours+o.LineHours
	s.strikes.plus(o.strikes)
	s.hookups.plus(o.hookups)
	s.boated.plus(o.boated)
	s.landed.plus(o.landed)
	s.released.plus(o.released)
}

// dark is how many of the counts that a page shows are not shown.
func (s clubSum) dark() int {
	return s.strikes.dark + s.hookups.dark + s.boated.dark + s.landed.dark + s.released.dark
}

// partly is the note under a table whose sums leave out what boats do not show.
func partly(figures int) []string {
	if figures == 0 {
		return nil
	}
	return []string{fmt.Sprintf("Not shown: %s of boats, because one trip or day would be nearly all of it, or "+
		"because there was none. "+
		"Where a row has some, its other counts are the least that there were.",
		page.Plural(int64(figures), "figure", "figures"))}
}
