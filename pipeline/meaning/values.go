package meaning

import (
	"errors"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// Values is the cells of one column, and what they are like. Each likeness is worked
// out once.
type Values struct {
	Label      layout.Label
	Rows       []layout.Cell // one a row of the block
	cells      []layout.Cell // those that are not blank
	kinds      []cellKind    // the different ones among them
	workbook   bool
	monthly    bool   // the sheet's name or title states a month
	dotted     bool   // numbers such as 7.10 and 11.30 alone, which may be clock times
	behind     string // what its heading says behind a place of the spread, as others do; see behindPlaces
	spelledOut bool   // the cells are codes, as the log's legend writes them out
	fourDigits bool   // some are such as 0610 or 1140, or all such as 610
	shares     map[string]float64
	numbers    []float64
	clocks     []int       // per row, -1 where there is none
	figures    []float64   // per row, NaN where there is none
	tallied    []cellCount // per row
}

// cellCount is how many a cell says, where it says so.
type cellCount struct {
	n  int
	ok bool
}

// cellKind is a cell, how often a column has it, and the whole number that it says, NaN where it says none.
type cellKind struct {
	layout.Cell
	n     int
	whole float64
}

func newValues(label layout.Label, rows []layout.Cell, workbook, monthly bool) *Values {
	v := &Values{Label: label, Rows: rows, workbook: workbook, monthly: monthly, shares: map[string]float64{}}
	for _, c := range rows {
		if c.Look == layout.Blank || words.Ditto(c.Text) || words.NotLogged(c.Text) {
			continue
		}
		v.cells = append(v.cells, c)
		if x, ok := number(c.Text); ok {
			v.numbers = append(v.numbers, x)
		}
	}
	v.kinds = kindsOf(v.cells)
	v.dotted = len(v.cells) > 2
	dots, others := 0, 0
	for _, c := range v.cells {
		switch {
		case hoursDot.MatchString(c.Text):
			dots++
		case c.Look == layout.Clock, hoursPlain.MatchString(c.Text):
		case c.Look == layout.Number:
			v.dotted = false
		case digits(c.Text) > 0:
			others++ // 7.15 / 12.00
		}
		v.fourDigits = v.fourDigits || len(c.Text) == 4 && digits(c.Text) == 4 || severalClocks.MatchString(c.Text)
	}
	v.dotted = v.dotted && dots > 0 && 5*others <= len(v.cells)
	v.fourDigits = v.fourDigits || v.early()
	return v
}

func kindsOf(cells []layout.Cell) []cellKind {
	var out []cellKind
	at := make(map[layout.Cell]int, len(cells))
	for _, c := range cells {
		i, seen := at[c]
		if !seen {
			i = len(out)
			at[c] = i
			out = append(out, cellKind{Cell: c})
		}
		out[i].n++
	}
	mark := tallied(cells)
	worded := slices.ContainsFunc(out, func(k cellKind) bool { return numberWord(k.Cell) })
	for i, k := range out {
		out[i].whole = wholeOf(k.Cell, mark, worded)
	}
	return out
}

// tallied is the mark with which a column ticks off how many, where one of its cells has several; 0 where none has.
func tallied(cells []layout.Cell) rune {
	for _, c := range cells {
		if mark, n, _ := words.Tally(c.Text); n > 1 {
			return mark
		}
	}
	return 0
}

// numberWord tells a count of one or more in a word: beside it "no" is none.
func numberWord(c layout.Cell) bool {
	n, ok := phrase.Count(c.Text)
	return ok && n > 0 && digits(c.Text) == 0
}

// wholeOf is the whole number that a cell says, NaN where it says none. mark is that of a column of tallies, and worded
// tells one whose counts are words.
func wholeOf(c layout.Cell, mark rune, worded bool) float64 {
	if worded && strings.EqualFold(c.Text, "no") {
		return 0
	}
	if m, n, ok := words.Tally(c.Text); ok && m == mark {
		return float64(n)
	}
	if c.Look == layout.Clock || c.Look == layout.Date {
		return math.NaN()
	}
	if x, ok := phrase.Count(c.Text); ok {
		return float64(x)
	}
	if x, ok := number(c.Text); ok && x == float64(int(x)) {
		return x
	}
	return math.NaN()
}

// early tells numbers such as 610 and 645 alone, which may be hours of the morning.
func (v *Values) early() bool {
	for _, c := range v.cells {
		if x, err := strconv.Atoi(c.Text); err != nil || x < 400 || x > 959 || x%100 > 59 || x%5 != 0 {
			return false
		}
	}
	return len(v.cells) > 1
}

var hoursPlain = regexp.MustCompile(`^[0-2]?\d[0-5]\d$`) // 630, beside 6.15

// severalClocks are clock times of four digits of several stretches in one cell: 0640 / 1115.
var severalClocks = regexp.MustCompile(`^[0-2]\d[0-5]\d\s*(?:[/,;&+]\s*[0-2]\d[0-5]\d)+$`)

var hoursDot = regexp.MustCompile(`^[0-2]?\d\.[0-5]\d$`)

// sentences tells a column of texts of several words each, few of them alike.
func (v *Values) sentences() bool {
	return len(v.cells) >= 3 && v.texts() > 0.9 && v.distinct() > 0.3 && v.length() > 12 &&
		v.share("several words", func(c layout.Cell) bool { return strings.Contains(c.Text, " ") }) >= 0.6
}

// number is a cell's leading number, whatever unit stands behind it.
func number(text string) (float64, bool) {
	s := strings.TrimLeft(text, "~$ ")
	n := 0
	for n < len(s) && (s[n] >= '0' && s[n] <= '9' || s[n] == '.' || s[n] == ',' || s[n] == '-' && n == 0) {
		n++
	}
	rest := strings.TrimSpace(s[n:])
	if n == 0 || len(rest) > 6 {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.Replace(s[:n], ",", ".", 1), 64)
	return v, err == nil
}

// once works a likeness out once.
func (v *Values) once(name string, work func() float64) float64 {
	s, ok := v.shares[name]
	if !ok {
		s = work()
		v.shares[name] = s
	}
	return s
}

// share is the part of the cells for which a test holds, 0 where there are none.
func (v *Values) share(name string, test func(layout.Cell) bool) float64 {
	return v.once(name, func() float64 {
		n := 0
		for _, k := range v.kinds {
			if test(k.Cell) {
				n += k.n
			}
		}
		return float64(n) / float64(max(1, len(v.cells)))
	})
}

// dayShares tells numbers that a workbook shows as times: 0.25 is six hours.
func (v *Values) dayShares() bool {
	return v.workbook && v.share("time's format", func(c layout.Cell) bool {
		_, number := number(c.Text)
		return number && (c.Look == layout.Duration || c.Look == layout.Clock)
	}) > 0.5
}

func (v *Values) texts() float64 {
	return v.share("text", func(c layout.Cell) bool { return c.Look == layout.Text })
}

func (v *Values) numeric() float64 {
	return v.share("number", func(c layout.Cell) bool {
		_, ok := number(c.Text)
		return ok && c.Look != layout.Clock && c.Look != layout.Date
	})
}

// whole is the part of the cells that are whole numbers from lo to hi.
func (v *Values) whole(lo, hi float64) float64 {
	n := 0
	for _, k := range v.kinds {
		if k.whole >= lo && k.whole <= hi {
			n += k.n
		}
	}
	return float64(n) / float64(max(1, len(v.cells)))
}

// within is the part of the quantities of a column that are possible: those that state
// their unit, or whose heading does, by the column's bounds, the others by what is usual.
func (v *Values) within(c *plan.Column, heading unit.Unit, lo, hi float64) float64 {
	n, all := 0, 0
	for _, x := range v.kinds {
		text := weightSaid(x.Text, c)
		if q, err := unit.ParseQuantity(text, c.Dimension, "", unit.MarkOf(text)); err == nil && q.Stated {
			all += x.n
			if c.Possible(q.Value, q.Unit) {
				n += x.n
			}
		} else if y, ok := number(text); ok {
			all += x.n
			if heading != "" && c.Possible(y, heading) || heading == "" && y >= lo && y <= hi {
				n += x.n
			}
		}
	}
	if all == 0 {
		return 0
	}
	return float64(n) / float64(all)
}

// below is the part of the cells whose number is below a limit.
func (v *Values) below(limit float64) float64 {
	n := 0
	for _, x := range v.numbers {
		if x < limit {
			n++
		}
	}
	return float64(n) / float64(max(1, len(v.cells)))
}

// length is the usual length of its texts, in bytes.
func (v *Values) length() float64 {
	n, all := 0, 0
	for _, c := range v.cells {
		if c.Look == layout.Text {
			n++
			all += len(c.Text)
		}
	}
	if n == 0 {
		return 0
	}
	return float64(all) / float64(n)
}

// distinct is the part of the cells that are different texts.
func (v *Values) distinct() float64 {
	return v.once("distinct", func() float64 {
		seen := map[string]bool{}
		for _, k := range v.kinds {
			seen[strings.ToLower(k.Text)] = true
		}
		return float64(len(seen)) / float64(max(1, len(v.cells)))
	})
}

// rising tells numbers of which nearly none is below the one before.
func (v *Values) rising() bool {
	numbers := v.forward()
	down := 0
	for i := 1; i < len(numbers); i++ {
		if numbers[i] < numbers[i-1] {
			down++
		}
	}
	return 20*down <= len(numbers)
}

// fewFalling is how many numbers show that the newest row stands first.
const fewFalling = 5

// forward are the numbers from the oldest row on: the other way round where they never rise, as in a log that is
// kept with the newest row on top.
func (v *Values) forward() []float64 {
	last := len(v.numbers) - 1
	if last+1 < fewFalling || v.numbers[0] <= v.numbers[last] {
		return v.numbers
	}
	for i := 1; i <= last; i++ {
		if v.numbers[i] > v.numbers[i-1] {
			return v.numbers
		}
	}
	out := slices.Clone(v.numbers)
	slices.Reverse(out)
	return out
}

// clockOf is a cell's clock time in seconds: a workbook's fraction of a day, digits
// such as 0610, or words such as 6:10 am.
func (v *Values) clockOf(c layout.Cell) (int, bool) {
	switch c.Look {
	case layout.Blank:
		return 0, false
	case layout.Number:
		x, err := strconv.ParseFloat(c.Text, 64)
		switch {
		case err != nil:
			return 0, false
		case v.workbook && x > 0 && x < 1 && isMinute(x):
			return int(x*86400 + 0.5), true
		case x == float64(int(x)) && x >= 100 && x <= 2400 && int(x)%100 < 60 &&
			(len(c.Text) == 4 || len(c.Text) == 3 && (v.fourDigits || v.dotted)):
			return int(x)/100*3600 + int(x)%100*60, true
		case v.dotted && x < 24:
			return int(x)*3600 + int((x-float64(int(x)))*100+0.5)*60, true
		}
		return 0, false
	case layout.Clock, layout.Date:
		if x, err := strconv.ParseFloat(c.Text, 64); err == nil {
			x -= float64(int(x))
			return int(x*86400 + 0.5), c.Look == layout.Clock || x > 0
		}
	}
	for _, order := range []unit.Order{unit.DayFirst, unit.MonthFirst} {
		if m, err := unit.ParseMoment(strings.TrimLeft(c.Text, "~"), order); err == nil && m.HasTime {
			return m.Seconds, true
		}
	}
	if c.Look == layout.Text && len(c.Text) < 24 {
		if cl := phrase.Clocks(c.Text); len(cl) == 1 {
			return cl[0].Seconds, true
		}
	}
	return 0, false
}

// isMinute tells a fraction of a day that is a whole minute and no round fraction of
// an hour count: 0.25 may be a quarter of an hour.
func isMinute(x float64) bool {
	m := x * 1440
	round := x*100 == float64(int(x*100+1e-9))
	return m-float64(int(m+1e-4)) < 1e-4 && !round
}

// figure is the leading number of a row's cell, NaN where it has none.
func (v *Values) figure(row int) float64 {
	if v.figures == nil {
		v.figures = make([]float64, len(v.Rows))
		for i, c := range v.Rows {
			v.figures[i] = math.NaN()
			if x, ok := number(c.Text); ok {
				v.figures[i] = x
			}
		}
	}
	return v.figures[row]
}

// count is how many a row's cell says, where it says so.
func (v *Values) count(row int) (n int, ok bool) {
	if v.tallied == nil {
		v.tallied = make([]cellCount, len(v.Rows))
		mark := tallied(v.Rows)
		for i, c := range v.Rows {
			m, n, ok := words.Tally(c.Text)
			if !ok || m != mark {
				n, ok = phrase.Count(c.Text)
			}
			v.tallied[i] = cellCount{n, ok}
		}
	}
	return v.tallied[row].n, v.tallied[row].ok
}

// saysNought tells a column of counts in which a count of none is written down.
func (v *Values) saysNought() bool {
	return v.share("nought", func(c layout.Cell) bool { n, ok := phrase.Count(c.Text); return ok && n == 0 }) > 0
}

// seconds are the clock times by row, -1 where there is none.
func (v *Values) seconds() []int {
	if v.clocks == nil {
		v.clocks = make([]int, len(v.Rows))
		for i, c := range v.Rows {
			v.clocks[i] = -1
			if s, ok := v.clockOf(c); ok {
				v.clocks[i] = s
			}
		}
	}
	return v.clocks
}

func (v *Values) clockShare() float64 {
	return v.share("clock", func(c layout.Cell) bool { _, ok := v.clockOf(c); return ok })
}

// isDate tells a day: a workbook's serial, a text with or without its year.
func isDate(c layout.Cell) bool {
	if x, err := strconv.ParseFloat(c.Text, 64); err == nil {
		return x >= 20000 && x < 80000
	}
	m, err := unit.ParseMoment(c.Text, unit.DayFirst)
	return err == nil && m.HasDate || errors.Is(err, unit.ErrDateOrder) || yearless(c.Text)
}

// yearless tells a day and month without a year.
func yearless(s string) bool {
	_, err := unit.ParseDayMonth(s, unit.OrderUnknown)
	return err == nil || errors.Is(err, unit.ErrAmbiguousDate)
}

// numbersRows tells the numbers from one on, each once, in whatever order: those of rows.
func (v *Values) numbersRows() bool {
	seen := map[float64]bool{}
	for _, x := range v.numbers {
		if x < 1 || x > float64(len(v.numbers)) || x != math.Trunc(x) || seen[x] {
			return false
		}
		seen[x] = true
	}
	return len(seen) >= 3
}

// weekdays is the share of cells that name a day of the week.
func (v *Values) weekdays() float64 {
	return v.share("weekday", func(c layout.Cell) bool {
		_, ok := words.Weekday(c.Text)
		return ok
	})
}

func (v *Values) dates() float64 {
	return v.share("date", func(c layout.Cell) bool { return c.Look != layout.Clock && isDate(c) })
}

// quantities is the part of the cells that are quantities of a column's dimension.
func (v *Values) quantities(c *plan.Column) float64 {
	return v.share("quantity "+c.Name, func(x layout.Cell) bool {
		if x.Look == layout.Date || x.Look == layout.Clock {
			return false
		}
		text := weightSaid(x.Text, c)
		_, err := unit.ParseQuantity(text, c.Dimension, c.Unit, unit.MarkOf(text))
		return err == nil || errors.Is(err, unit.ErrApproximate) || errors.Is(err, unit.ErrRange)
	})
}

// weightSaid is the weight of a cell that says in words whether a scale gave it: "12.5 kg scale", "some 10 kg"; any
// other text as it stands.
func weightSaid(text string, c *plan.Column) string {
	if c.Dimension != unit.Mass {
		return text
	}
	figure := words.OnScale(text)
	if figure == "" && words.Hedged(text) {
		figure = toldWeight.FindString(text)
	}
	if figure != "" {
		return figure
	}
	return text
}

// stated is the part of the cells that state a unit of a column's dimension.
func (v *Values) stated(c *plan.Column) float64 {
	return v.share("stated "+c.Name+c.Dimension.String(), func(x layout.Cell) bool {
		text := weightSaid(x.Text, c)
		q, err := unit.ParseQuantity(text, c.Dimension, "", unit.MarkOf(text))
		return err == nil && q.Stated
	})
}

func hasLetter(s string) bool { return strings.IndexFunc(s, unicode.IsLetter) >= 0 }

// fewPlaces is of how many places of the spread a column must tell to be one of lines: a corner may be one of the sea.
const fewPlaces = 3

// placesOfSpread reports whether the cells are places of the spread, several of them.
func (v *Values) placesOfSpread() bool {
	seen := map[string]bool{}
	for _, k := range v.kinds {
		if !words.IsPlace(k.Text) {
			return false
		}
		seen[strings.ToLower(k.Text)] = true
	}
	return len(seen) >= fewPlaces
}
