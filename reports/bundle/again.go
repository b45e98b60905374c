package bundle

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// Shared is a summary that a boat has shared, with what it was made of. It never leaves
// the boat: it is what the next summary's difference is told from.
type Shared struct {
	On     string // YYYY-MM-DD
	Season Season
	Source Source
}

// Remember is a summary in a form to keep in the season file.
func (last Shared) Remember() (string, error) {
	b, err := json.Marshal(last)
	return string(b), err
}

// Recall reads what Remember wrote; nil for an empty text.
func Recall(text string) (*Shared, error) {
	if text == "" {
		return nil, nil
	}
	var last Shared
	err := json.Unmarshal([]byte(text), &last)
	if err == nil && len(last.Source.Sizes) != len(last.Source.Fish) {
		err = errors.New("its fish and their sizes are not of one number")
	}
	if err != nil {
		return nil, fmt.Errorf("the summary that was shared last cannot be read from the season file: %w", err)
	}
	return &last, nil
}

func (last *Shared) orNone() Shared {
	if last == nil {
		return Shared{}
	}
	return *last
}

// Difference is what a second summary would show by subtracting the one shared before:
// single trips or days. Make returns it in place of the summary.
type Difference struct {
	On        string   // when the summary before was shared
	Days      []string // that are new or changed, in order
	LineHours float64
	Strikes   int64
	Changed   bool     // a day that was shared already has less than it had
	Counts    []string // that the summary before shows and this one could not
}

func (d *Difference) Error() string {
	days := fmt.Sprintf("%d days are", len(d.Days))
	if len(d.Days) == 1 {
		days = "one day is"
	}
	listed := strings.Join(d.Days[:min(4, len(d.Days))], ", ")
	if len(d.Days) > 4 {
		listed += ", ..."
	}
	what := fmt.Sprintf("since the summary of %s, %s new (%s): who has both reads off %.1f line-hours and %d strikes",
		d.On, days, listed, d.LineHours, d.Strikes)
	switch {
	case d.Changed:
		return fmt.Sprintf("since the summary of %s, %s changed (%s): who has both reads off what was changed",
			d.On, days, listed)
	case len(d.Counts) > 0:
		return what + "; of these, " + strings.Join(d.Counts, ", ") +
			" would be those of one trip or day, or none at all"
	case len(d.Days) >= MinTrips:
		return what + ", nearly all of one trip or day"
	}
	return what
}

// differs is a *Difference where the season, less what was shared before, shows a single
// trip or day.
func (last *Shared) differs(total *bin) error {
	if last == nil || total.unchanged() {
		return nil
	}
	d := &Difference{On: last.On, LineHours: total.grown.sum[lineHours], Strikes: int64(total.grown.sum[strikes] + 0.5)}
	for day, a := range total.grown.byDay {
		if day == "" {
			day = "no date"
		}
		for _, v := range a {
			d.Changed = d.Changed || v < -least
			if (v > least || v < -least) && !slices.Contains(d.Days, day) {
				d.Days = append(d.Days, day)
			}
		}
	}
	slices.Sort(d.Days)
	for is, count := range map[hidden]string{hideStrikes: "strikes", hideBoated: "fish"} {
		if last.Season.Total.hides()&is == 0 && total.hidden&is != 0 {
			d.Counts = append(d.Counts, count)
		}
	}
	slices.Sort(d.Counts)
	stands := total.grown.stands(effortBy...)
	if !stands {
		d.Counts = nil // it is all that there is
	}
	if stands && !d.Changed && len(d.Counts) == 0 {
		return nil
	}
	return d
}

// Grown says what the difference from the summary shared last shows: a sum over so many
// trips, and what is left out for it; "" where there is none.
func (last *Shared) Grown(s Season, src Source) string {
	b := table{by: effortBy, earlier: last.Source.total()}.whole(src.total())
	if b.unchanged() {
		return ""
	}
	says := fmt.Sprintf("since the summary of %s, %d days are new: who has both reads off what they sum up to, %.1f "+
		"line-hours, "+
		"and nothing of a single one", last.On, b.grown.byDay.days(effortBy...), b.grown.sum[lineHours])
	was, is := last.Season.Total.hides(), s.Total.hides()
	for _, g := range []struct {
		hidden
		count string
	}{{hideStrikes, "strikes"}, {hideBoated, "fish"}, {hideHookups, "hook-ups"},
		{hideFates, "fish landed and released"}} {
		switch {
		case was&g.hidden == 0 && is&g.hidden != 0:
			says += "; the season's " + g.count + " are not shown this time, the difference would be of one trip or day"
		case was&g.hidden != 0:
			says += "; the season's " + g.count + " were not shown then and stay so"
		}
	}
	return says
}

// whole is all pieces as one row, with those that the earlier summary does not hold.
func (t table) whole(pieces []Piece) *bin {
	b := newBin(allTrips)
	for _, p := range pieces {
		b.add(p, t.by)
	}
	for _, p := range t.earlier {
		b.grown.put(p, -1)
	}
	for _, g := range t.groups {
		if b.hidden&g.over != 0 || !b.shows(g) {
			b.hidden |= g.is
		}
	}
	return b
}

// hides is what a row does not show.
func (c Cell) hides() hidden {
	var h hidden
	for is, n := range map[hidden]*int64{hideStrikes: c.Strikes, hideBoated: c.Boated, hideHookups: c.Hookups} {
		if n == nil {
			h |= is
		}
	}
	return h
}

func (t Total) hides() hidden {
	h := Cell{Strikes: t.Strikes, Boated: t.Boated, Hookups: t.Hookups}.hides()
	if t.Landed == nil {
		h |= hideFates
	}
	return h
}

func (c FishCell) hides() hidden {
	var h hidden
	for is, n := range map[hidden]*int64{hideScale: c.OnScale, hideFates: c.Landed} {
		if n == nil {
			h |= is
		}
	}
	return h
}

func hiddenBy[C interface{ hides() hidden }](rows []C, level func(C) string) map[string]hidden {
	out := map[string]hidden{}
	for _, c := range rows {
		out[level(c)] = c.hides()
	}
	return out
}

func hiddenCells(rows []Cell) map[string]hidden {
	return hiddenBy(rows, func(c Cell) string { return c.Level })
}

func hiddenFish(rows []FishCell) map[string]hidden {
	return hiddenBy(rows, func(c FishCell) string { return c.Level })
}

func shownSizes(rows []SizeCell) map[string]hidden {
	out := map[string]hidden{}
	for _, c := range rows {
		out[c.Level] = 0
	}
	return out
}
