package browser

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// unknown is how a page prints what is not known.
const unknown = "–"

// Disagree lists where a chart and the tables under it differ: a value of the chart
// that no table has, at the precision that the table shows, or a row of the table
// that the chart leaves out. It is empty where they hold the same.
func Disagree(f Figure) []string {
	d := &disagreement{f: f}
	for _, u := range f.Undrawn {
		d.say("not drawn: %s", u)
	}
	switch {
	case len(f.Tables) == 0:
		d.say("no table")
	case len(f.Option.Series) == 0:
		d.say("no data")
	default:
		if rule := d.rule(); rule != nil {
			rule()
		} else {
			d.say("no rule for a chart of this kind")
		}
	}
	return d.found
}

type disagreement struct {
	f     Figure
	found []string
}

func (d *disagreement) say(format string, args ...any) {
	d.found = append(d.found, d.f.ID+": "+fmt.Sprintf(format, args...))
}

// rule is how a chart of this kind stands in its table.
func (d *disagreement) rule() func() {
	s := d.f.Option.Series
	last := s[len(s)-1]
	switch {
	case last.RenderItem == "rateBar":
		return d.rates
	case last.RenderItem == "ratioBar":
		return d.ratios
	case last.RenderItem == "dayBar":
		return d.days
	case last.RenderItem == "sizeMedian":
		return d.sizes
	case last.RenderItem == "fateBar":
		return d.fates
	case last.RenderItem == "pairCell":
		return d.pairs
	case last.RenderItem == "fishBar":
		return d.heaviest
	case last.RenderItem == "shareMark":
		return d.shares
	case last.RenderItem == "histBar":
		return d.histogram
	case last.RenderItem == "plotDot":
		return d.plot
	case last.Type == "bar" && len(s) == 1:
		return d.effort
	case last.Type == "bar" && len(s) == 3:
		return d.outings
	}
	return nil
}

// number reads a number as a page prints it, with its decimals.
func number(text string) (v float64, decimals int, ok bool) {
	text = strings.TrimSuffix(strings.NewReplacer("\u202f", "", "−", "-", "+", "").Replace(text), " %")
	v, err := strconv.ParseFloat(text, 64)
	if _, after, found := strings.Cut(text, "."); found {
		decimals = len(after)
	}
	return v, decimals, err == nil
}

// prints tells whether text is v, rounded as the text shows it.
func prints(text string, v float64) bool {
	shown, decimals, ok := number(text)
	return ok && math.Abs(shown-v) <= 0.5*math.Pow(10, -float64(decimals))+1e-9*math.Max(1, math.Abs(v))
}

// is tells whether the cell holds v, in print and unrounded; factor is what v is
// multiplied by to be the unrounded number (a share of 1 in a chart of per cent).
func (c Cell) is(v, factor float64) bool {
	key, err := strconv.ParseFloat(c.Key, 64)
	return err == nil && math.Abs(key-v*factor) <= 1e-9*math.Max(1, math.Abs(key)) && prints(c.Text, v)
}

// spans tells whether the cell holds the interval, or none where an end is not known.
func (c Cell) spans(m Mark, lo, hi int, factor float64) bool {
	a, okA := m.at(lo)
	b, okB := m.at(hi)
	if !okA || !okB {
		return c.Text == unknown
	}
	from, to, ok := strings.Cut(c.Text, " to ")
	return ok && prints(to, b) && Cell{from, c.Key}.is(a, factor)
}

// value tells whether the cell holds value i of the mark.
func (c Cell) value(m Mark, i int, factor float64) bool {
	v, ok := m.at(i)
	if !ok {
		return c.Text == unknown
	}
	return c.is(v, factor)
}

var asides = regexp.MustCompile(` \((little effort|too little to tell|compared with)\)$`)

// name is a row's level, as a chart names it.
func name(row []Cell) string { return asides.ReplaceAllString(row[0].Text, "") }

// level is a label of a chart's row: the level, and what else stands under it.
func level(label string) (name, under string) {
	lines := strings.Split(strings.TrimSuffix(label, "\nlittle effort"), "\n")
	return strings.Join(strings.Fields(lines[0]), " "), strings.Join(lines[1:], " ")
}

func (h Head) words() string { return strings.ToLower(h.Text + " " + h.Unit) }

// column is the first column whose head has all words; -1 where none has. With
// interval, the next column must be an interval's.
func (t Table) column(interval bool, words ...string) int {
	for i, h := range t.Heads {
		all := true
		for _, w := range words {
			all = all && strings.Contains(h.words(), strings.ToLower(w))
		}
		if all && (!interval || i+1 < len(t.Heads) && strings.Contains(t.Heads[i+1].words(), "interval")) {
			return i
		}
	}
	return -1
}

// row is the row of a level; nil where there is not exactly one.
func (t Table) row(level string) []Cell {
	var found []Cell
	for _, r := range t.Rows {
		if name(r) == level {
			if found != nil {
				return nil
			}
			found = r
		}
	}
	return found
}

// countColumns are the heads under which a table has a number that a chart prints
// beside a row, by the word behind the number.
var countColumns = map[string][]string{
	"strike": {"in the rate", "strikes"}, "strikes": {"in the rate", "strikes"}, "line-h": {"line-hours"},
	"boat-h": {"boat-hours"}, "leg-h": {"leg-hours"},
	"trip": {"trips"}, "trips": {"trips"}, "tangle": {"legs with a tangle"},
	"tangles": {"legs with a tangle"}, "fish": {"all", "fish"},
	"hooked": {"hook-ups"}, "boated": {"boated"}, "broke off": {"broken off"}, "pulled": {"hook pulled"},
	"of": {"end known", "with an outcome"},
}

var countForm = regexp.MustCompile(`^([\d.\x{202f}]+)(?: of ([\d.\x{202f}]+))? (.+)$`)

// counts holds the numbers that a chart prints beside a row against the table's row.
func (d *disagreement) counts(t Table, row []Cell, printed, under string) {
	for _, line := range strings.Split(printed, "\n") {
		m := countForm.FindStringSubmatch(line)
		if m == nil {
			if _, _, ok := number(strings.Fields(line + " x")[0]); ok {
				d.say("%q beside %s is no count that is known", line, name(row))
			}
			continue
		}
		d.count(t, row, m[1], m[3], under)
		if m[2] != "" {
			d.count(t, row, m[2], "of", under)
		}
	}
}

func (d *disagreement) count(t Table, row []Cell, text, word, under string) {
	for _, head := range countColumns[word] {
		c := t.column(false, strings.TrimSpace(strings.ToLower(under)), head)
		if c < 0 || len(row) <= c {
			continue
		}
		if key, err := strconv.ParseFloat(row[c].Key, 64); err != nil || !prints(text, key) {
			d.say("%s: %s %s in the chart, %s in the table", name(row), text, word, row[c].Text)
		}
		return
	}
	d.say("%s: the table has no column for %s %s", name(row), text, word)
}

// each gives every level of a chart of rows with its row of the table, and says
// which row of the table has a value and is not drawn.
func (d *disagreement) each(t Table, value int, check func(i int, row []Cell, under string)) {
	y := d.f.Option.YAxis
	if len(y) < 2 {
		d.say("no levels")
		return
	}
	drawn := map[string]bool{}
	for i, label := range y[0].Data {
		level, under := level(label)
		drawn[level] = true
		row := t.row(level)
		if row == nil {
			d.say("the table has not one row %q", level)
			continue
		}
		check(i, row, under)
		if i < len(y[1].Data) {
			d.counts(t, row, y[1].Data[i], under)
		}
	}
	for _, r := range t.Rows {
		if !drawn[name(r)] && r[value].Text != unknown {
			d.say("the chart leaves out %q", name(r))
		}
	}
}
