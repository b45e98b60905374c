package normalise

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
	"wakeledger/pipeline/zone"
)

// parser reads the cells of one kind of column.
type parser struct {
	typ  entry.Type
	cell func(r *Reader, t *target, text string) error
}

var parsers = map[string]parser{
	"text":       {entry.Text, textCell},
	"zone":       {entry.Text, zoneCell},
	"date":       {entry.Day, dateCell},
	"moment":     {entry.Int, momentCell},
	"quantity":   {entry.Real, quantityCell},
	"count":      {entry.Int, countCell},
	"position":   {entry.Real, positionCell},
	"latitude":   {entry.Real, latitudeCell},
	"longitude":  {entry.Real, longitudeCell},
	"bool":       {entry.Flag, flagCell("bool", "yes")},
	"tangle":     {entry.Flag, tangleCell},
	"kept":       {entry.Flag, flagCell("kept", "yes")},
	"tagcapture": {entry.Flag, flagCell("tagcapture", "yes")},
	"released":   {entry.Flag, flagCell("bool", "no")},
	"outcome":    {entry.Text, outcomeCell},
	"lengthkind": {entry.Text, listCell("lengthkind",
		"fork length, curved fork length, total length or lower jaw to fork")},
	"weightstate": {entry.Text, listCell("weightstate", "round, bled, gilled and gutted, or dressed")},
	"species":     {entry.Text, speciesCell},
	"stretches":   {entry.Text, textCell},
	"story":       {entry.Text, longCell},
	"fishlist":    {entry.Text, longCell},
	"event":       {entry.Text, longCell},
	"method":      {entry.Text, textCell},
	"weighed":     {entry.Text, textCell},
}

func textCell(r *Reader, t *target, text string) error {
	if faulty(text) {
		return errors.New("the cell holds a spreadsheet error, not a value")
	}
	r.values[t.field] = entry.OfText(oneSpaced(text))
	return nil
}

// oneSpaced makes each run of white space one space.
func oneSpaced(s string) string {
	for i := range len(s) {
		switch c := s[i]; {
		case c < ' ', c == 0xc2, c == ' ' && i > 0 && s[i-1] == ' ': // 0xc2 begins a no-break space
			return strings.Join(strings.Fields(s), " ")
		}
	}
	return s
}

func faulty(text string) bool {
	if text == "" || text[0] != '#' {
		return false
	}
	switch text {
	case "#N/A", "#DIV/0!", "#REF!", "#VALUE!", "#NAME?", "#NULL!", "#NUM!":
		return true
	}
	return false
}

func zoneCell(r *Reader, t *target, text string) error {
	name, err := zone.Name(text)
	if err != nil {
		return err
	}
	r.values[t.field] = entry.OfText(name)
	return nil
}

func dateCell(r *Reader, t *target, text string) error {
	if r.layout.Month != 0 {
		if d, err := strconv.Atoi(text); err == nil {
			return r.yearless(t, unit.DayMonth{Day: d, Month: r.layout.Month})
		}
	}
	m, err := r.moment(text)
	if first, days, ok := unit.DaySpan(text); err != nil && ok {
		r.doubts = append(r.doubts, r.problem(t, text, fmt.Sprintf("%d days: the first of them was taken", days)))
		return dateCell(r, t, first)
	}
	if err != nil {
		return r.withoutYear(t, text, err)
	}
	if !m.HasDate {
		return errors.New("a time of day where a date was expected")
	}
	r.values[t.field] = entry.OfInt(int64(m.Date))
	return nil
}

// dashedDay is a day without its year that is written with a dash, which is a range in any other column: 6-27.
var dashedDay = regexp.MustCompile(`^\d{1,2}-\d{1,2}$`)

// withoutYear reads a date whose year stands elsewhere. Where it is no such date,
// what was wrong with it as a date of its own is the error.
func (r *Reader) withoutYear(t *target, text string, wrong error) error {
	if dashedDay.MatchString(text) {
		text = strings.Replace(text, "-", "/", 1)
	}
	d, err := retry(r.ev, func() (unit.DayMonth, error) { return unit.ParseDayMonth(text, r.order()) })
	if errors.Is(err, unit.ErrNotDate) {
		err = wrong
	}
	if err != nil {
		return dateHelp(err)
	}
	return r.yearless(t, d)
}

// yearless gives a day its year. A log that states one year and has come to its end
// does not say whether the next January is of another.
func (r *Reader) yearless(t *target, d unit.DayMonth) error {
	date, err := r.withYear(d)
	if err == nil {
		r.values[t.field] = entry.OfInt(int64(date))
	}
	return err
}

// withYear is a day with its year.
func (r *Reader) withYear(d unit.DayMonth) (unit.Date, error) {
	years := r.layout.Years
	date, ok := years.Date(d)
	switch {
	case years == unit.Years{}:
		return 0, errors.New("no year: write it with the day, in the sheet's or the file's name, or above the table")
	case !ok && d.HasWeekday:
		return 0, fmt.Errorf("no %s in %d: is the year another one?", d.Weekday, years.From)
	case !ok:
		return 0, unit.ErrNoSuchDay
	case years.From == years.To && !d.HasWeekday && r.month >= time.October && d.Month <= time.March:
		return 0, fmt.Errorf("a %s below a %s, and %d is the only year stated: write the year with the day", d.Month,
			r.month, years.From)
	}
	r.month = d.Month
	return date, nil
}

// clockBehind is a clock time behind a day: "6/6 11pm", "Fri 6/6 20:30".
var clockBehind = regexp.MustCompile(`(?i)^(.+?),?\s+(\d{1,2}[:.]\d\d|\d{1,2}(?:[:.]\d\d)?\s?[ap]\.?m?\.?)$`)

// dayAndClock reads a day without its year and a clock time in one cell.
func (r *Reader) dayAndClock(text string) (unit.Moment, bool) {
	parts := clockBehind.FindStringSubmatch(text)
	if parts == nil {
		return unit.Moment{}, false
	}
	m, err := r.moment(parts[2])
	if err != nil || !m.HasTime || m.HasDate {
		return unit.Moment{}, false
	}
	d, err := retry(r.ev, func() (unit.DayMonth, error) { return unit.ParseDayMonth(parts[1], r.order()) })
	if err != nil {
		return unit.Moment{}, false
	}
	if m.Date, err = r.withYear(d); err != nil {
		return unit.Moment{}, false
	}
	m.HasDate = true
	return m, true
}

func momentCell(r *Reader, t *target, text string) error {
	m, err := r.moment(text)
	if err != nil {
		if of, ok := r.dayAndClock(text); ok {
			m, err = of, nil
		}
	}
	next, on := false, 0
	if n, ok := r.afterMidnight(t, text); err != nil && ok {
		m, err = unit.Moment{Seconds: n * 60, HasTime: true}, nil
	}
	if clock, ok := words.AboutClock(text); err != nil && ok {
		if about, wrong := r.moment(clock); wrong == nil && about.HasTime && !about.HasDate {
			m, err = about, nil
			r.doubts = append(r.doubts, r.problem(t, text, "not exact: taken as it stands"))
		}
	}
	if err != nil {
		clock, ok := words.OfNextDay(text)
		if !ok {
			var weekday time.Weekday
			if weekday, clock, ok = words.OnWeekday(text); ok {
				on = int(weekday) + 1
			}
		}
		if !ok {
			return dateHelp(err)
		}
		if m, err = r.moment(clock); err != nil {
			return dateHelp(err)
		}
		next = !m.HasDate && on == 0
	}
	m = r.local(m)
	if err := r.ownClock(m); err != nil {
		return err
	}
	if !m.HasTime {
		return errors.New("a date where a time of day was expected")
	}
	r.moments = append(r.moments, placed{t.field, m, next, on})
	return nil
}

// lateStart is the first start of an evening's stretch, written without a colon.
const lateStart = 1800

// afterMidnight takes a number of one or two digits for the minutes of an end past midnight, 30 for 0030, where the
// stretch began in the evening and its start has no colon: a spreadsheet drops the noughts.
func (r *Reader) afterMidnight(t *target, text string) (minutes int, ok bool) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > 59 || t.Column.Name != "end_s" {
		return 0, false
	}
	return n, slices.ContainsFunc(r.targets, func(o target) bool {
		if o.Column.Name != "start_s" || o.Set != t.Set || o.Index < 0 || o.Index >= len(r.row.Cells) {
			return false
		}
		start, err := strconv.Atoi(strings.TrimSpace(r.row.Cells[o.Index]))
		return err == nil && start >= lateStart && start < 2400 && start%100 < 60
	})
}

// local is an instant of UTC (ISO 8601), with its day, by the boat's own clock, where its zone is named.
func (r *Reader) local(m unit.Moment) unit.Moment {
	if m.Offset == nil || *m.Offset != 0 || !m.HasDate || !m.HasTime || r.set.Zone == nil {
		return m
	}
	y, month, d := m.Date.Civil()
	at := time.Date(y, month, d, 0, 0, m.Seconds, 0, time.UTC).In(r.set.Zone)
	m.Date = unit.DateOf(at.Year(), at.Month(), at.Day())
	m.Seconds = at.Hour()*3600 + at.Minute()*60 + at.Second()
	m.Offset = nil
	return m
}

// ownClock fails where a moment states an offset from UTC that is not the boat's own clock's:
// one of its zone, where that is named, and any but UTC where it is not.
func (r *Reader) ownClock(m unit.Moment) error {
	switch {
	case m.Offset == nil:
		return nil
	case r.set.Zone == nil && *m.Offset == 0:
		return errors.New("a time of UTC: log the boat's own clock here and its zone in a column \"time zone\"")
	case r.set.Zone == nil:
		return nil
	}
	days := []unit.Date{m.Date}
	if !m.HasDate { // then it is winter's or summer's
		days = []unit.Date{unit.DateOf(2001, time.January, 15), unit.DateOf(2001, time.July, 15)}
	}
	own := 0
	for _, d := range days {
		y, month, day := d.Civil()
		if _, own = time.Date(y, month, day, 0, 0, m.Seconds, 0, r.set.Zone).Zone(); own == *m.Offset {
			return nil
		}
	}
	return fmt.Errorf("a time %s, where the boat's clock of %s is %s: log the boat's own clock, or name its zone",
		zone.Offset(*m.Offset), r.set.Zone, zone.Offset(own))
}

func dateHelp(err error) error {
	if errors.Is(err, unit.ErrAmbiguousDate) {
		return fmt.Errorf("%w: nothing in the file tells day-first from month-first: --dates day-first or --dates "+
			"month-first settles it", err)
	}
	return err
}

// moment reads a cell that may be a date, a time or both, or a workbook's serial.
func (r *Reader) moment(text string) (unit.Moment, error) {
	if r.info.Workbook {
		if v, err := strconv.ParseFloat(text, 64); err == nil && (v < 2 && !afterOne(text) || v >= 20000 && v < 1e6) {
			return unit.FromSerial(v, r.info.Date1904)
		}
	}
	return retry(r.ev, func() (unit.Moment, error) { return unit.ParseMoment(text, r.order()) })
}

// afterOne tells a clock time with a point, 1.45: no time of a workbook beyond a day has two decimals.
func afterOne(text string) bool { return len(text) == len("1.45") && strings.HasPrefix(text, "1.") }

func (r *Reader) order() unit.Order {
	if r.set.Order != unit.OrderUnknown {
		return r.set.Order
	}
	if r.layout.Order != unit.OrderUnknown {
		return r.layout.Order
	}
	return r.ev.Order()
}

func (r *Reader) mark() unit.Mark {
	if r.set.Mark != unit.MarkUnknown {
		return r.set.Mark
	}
	return r.ev.Mark()
}

func quantityCell(r *Reader, t *target, text string) error {
	c := t.Column
	if v, ok := plainNumber(text); ok && r.fallback(t) == c.Unit && v >= c.Min &&
		v <= c.Max && r.mark() != unit.MarkComma {
		r.values[t.field] = entry.OfReal(v)
		return nil
	}
	q, err := retry(r.ev, func() (unit.Quantity, error) {
		return unit.ParseQuantity(text, c.Dimension, r.fallback(t), r.mark())
	})
	if errors.Is(err, unit.ErrNoUnit) {
		if q, err = r.onlyUnit(t, text); err != nil {
			return err
		}
	}
	if errors.Is(err, unit.ErrAmbiguousMark) {
		return fmt.Errorf("%w: --decimal comma or --decimal point settles it", err)
	}
	if errors.Is(err, unit.ErrRange) && (c.Name == "speed_kn" || c.Name == "strike_speed_kn") {
		return r.between(t, text)
	}
	if err != nil && (c.Name == "speed_kn" || c.Name == "strike_speed_kn") {
		near := strings.Replace(text, "/", "-", 1)
		if near != text && !strings.Contains(text, " / ") && !r.stroked() && r.near(t, near) {
			return r.between(t, near) // 6/7, from six to seven; far apart they may be two speeds
		}
	}
	if err != nil && c.Name == "length_cm" && r.crossed(t, text) {
		return nil
	}
	if errors.Is(err, unit.ErrDimension) && r.longNotHeavy(t, text) {
		return nil
	}
	if err != nil && t.measure() && r.sets == 0 {
		list := text
		if r.layout.Kind != plan.Events {
			list = strings.ReplaceAll(text, ", ", ";")
		}
		if all := r.measuresIn(t, list, ";&/+"); all != nil {
			r.each = append(r.each, measures{t, text, all})
			r.values[t.field] = entry.OfReal(all[0])
			return nil
		}
	}
	if weight := words.OnScale(text); err != nil && c.Name == "scale_kg" && weight != "" {
		return quantityCell(r, t, weight)
	}
	if best := words.OfBest(text); err != nil && t.measure() && r.sets == 0 && best != "" {
		return quantityCell(r, t, best) // 47 best: of the longest of several
	}
	if err != nil && c.Name == "scale_kg" && t.Unit == unit.Kilogram && words.GuessedCell(text) {
		r.doubts = append(r.doubts, r.problem(t, text, "the cell calls it a guess: taken as not logged"))
		return nil
	}
	if err != nil && t.measure() && words.Hedged(text) {
		if kept, ok := r.words.find("kept", text); !ok || kept != "no" {
			r.doubts = append(r.doubts, r.problem(t, text, "no reading: not logged"))
			return nil
		}
	}
	if err != nil && (c.Name == "speed_kn" || c.Name == "strike_speed_kn") {
		if v, ok := about(text); ok && v >= c.Min && v <= c.Max {
			r.doubts = append(r.doubts, r.problem(t, text, "read as "+short(v)+" kn"))
			r.values[t.field] = entry.OfReal(v)
			return nil
		}
	}
	if err != nil && c.Name == "duration_s" && r.partOfHour(t, text) {
		return nil
	}
	if err != nil && c.Name == "duration_s" && t.Set == 0 && r.hoursTold(t, text, err) {
		return nil
	}
	if v, ok := about(text); err != nil && c.Name == "sea_temp_c" && ok && t.Unit != "" && words.Hedged(text) {
		if q, err = (unit.Quantity{Value: v, Unit: t.Unit}), nil; true {
			r.doubts = append(r.doubts, r.problem(t, text, "read as "+short(v)+" "+string(t.Unit)))
		}
	}
	if errors.Is(err, unit.ErrApproximate) && t.measure() {
		r.doubts = append(r.doubts, r.problem(t, text, "the cell calls it a guess: taken as not logged"))
		return nil
	}
	if err != nil {
		return r.notWeighed(t, text, err)
	}
	v, err := q.In(c.Unit)
	if err != nil {
		return err
	}
	if v < c.Min || v > c.Max {
		lo, hi := inUnit(c.Min, c.Unit, q.Unit), inUnit(c.Max, c.Unit, q.Unit)
		return fmt.Errorf("%s %s is not possible here: expected %s to %s %s",
			short(q.Value), q.Unit, short(lo), short(hi), q.Unit)
	}
	r.values[t.field] = entry.OfReal(v)
	return nil
}

// crossed reads a fish's length and girth in one cell: 62x38, 62" x 38".
func (r *Reader) crossed(t *target, text string) bool {
	both := r.measuresIn(t, strings.ToLower(text), "x×*")
	if r.sets > 0 || len(both) != 2 || both[1] >= both[0] || both[1] < leastGirth*both[0] {
		return false
	}
	r.values[t.field] = entry.OfReal(both[0])
	r.put("girth_cm", entry.OfReal(both[1]))
	return true
}

// leastLong and mostLong are the lengths in cm between which a fish under weights is measured.
const leastLong, mostLong = 15, 500

// longNotHeavy reads a length, with its unit, where the weights of other fish stand: "35 in" under "size", beside "24
// lb".
func (r *Reader) longNotHeavy(t *target, text string) bool {
	q, err := unit.ParseQuantity(text, unit.Length, "", r.mark())
	if t.Column.Name != "scale_kg" || r.sets > 0 || t.Set > 0 || err != nil || !q.Stated || r.value("length_cm").Known {
		return false
	}
	cm, err := q.In(unit.Centimetre)
	if err != nil || cm < leastLong || cm > mostLong {
		return false
	}
	r.put("length_cm", entry.OfReal(cm))
	return true
}

// notWeighed takes the words for a released fish, where the scale's weight would
// stand, for that; wrong is what they are as a weight.
func (r *Reader) notWeighed(t *target, text string, wrong error) error {
	f, _ := words.FateOnly(text)
	kept, ok := r.words.find("kept", text)
	free := f == words.Released || ok && kept == "no" && plain(text) != "no" && plain(text) != "n"
	if t.Column.Name != "scale_kg" || !free || r.released < 0 {
		return wrong
	}
	r.values[r.released] = entry.OfFlag(false)
	return nil
}

// plainNumber reads digits with at most one point among them: what most cells
// of numbers are.
func plainNumber(text string) (float64, bool) {
	points := 0
	for i := range len(text) {
		switch c := text[i]; {
		case c == '.' && i > 0 && i < len(text)-1:
			points++
		case c < '0' || c > '9':
			return 0, false
		}
	}
	if points > 1 || len(text) > 15 {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}

func inUnit(v float64, from, to unit.Unit) float64 {
	if w, err := unit.Convert(v, from, to); err == nil {
		return w
	}
	return v
}

func short(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }

// fallback is the unit of a cell that states none: the heading's, the only one
// that the trade has, or that of the system in which the log is kept.
func (r *Reader) fallback(t *target) unit.Unit {
	c := t.Column
	if t.Unit != "" {
		return t.Unit
	}
	if t.Only != "" {
		return t.Only
	}
	if c.Bare != "" {
		return c.Bare
	}
	switch r.system() {
	case "us":
		return c.US
	case "metric":
		return c.Metric
	}
	return ""
}

// system is the log's units, "us" or "metric", as they were said or its cells tell; "" where nothing does.
func (r *Reader) system() string {
	return cmp.Or(r.set.Units, r.ev.System())
}

// onlyUnit settles a bare number where one unit alone is possible: no sea is at
// 40 degrees C, and none that is trolled below 38 F.
func (r *Reader) onlyUnit(t *target, text string) (unit.Quantity, error) {
	c := t.Column
	v, err := unit.ParseNumber(text, r.mark())
	if err != nil {
		return unit.Quantity{}, err
	}
	if c.Dimension == unit.Temperature {
		if v > c.Max {
			return unit.Quantity{Value: v, Unit: unit.Fahrenheit}, nil
		}
		return unit.Quantity{Value: v, Unit: unit.Celsius}, nil
	}
	if c.US != "" && c.Metric != "" {
		return unit.Quantity{}, fmt.Errorf("no unit: is it %s or %s? A unit in the heading or cell, or --log-units "+
			"us or metric, settles it", c.US, c.Metric)
	}
	return unit.Quantity{}, fmt.Errorf("no unit: write it in the heading or the cell, such as %q",
		text+" "+string(c.Unit))
}

// countCell reads a whole number, or a yes or a no of what can only have been one.
func countCell(r *Reader, t *target, text string) error {
	if len(text) == 1 && text[0] >= '0' && text[0] <= '9' {
		r.values[t.field] = entry.OfInt(int64(text[0] - '0'))
		return nil
	}
	if text[0] > '9' && words.Nothing(text) {
		r.values[t.field] = entry.OfInt(0)
		return nil
	}
	if _, n, ok := words.Tally(text); ok && float64(n) <= t.Column.Max {
		r.values[t.field] = entry.OfInt(int64(n))
		return nil
	}
	if means, ok := r.words.find("mark", text); ok {
		r.values[t.field] = entry.OfInt(map[string]int64{"yes": 1}[means])
		return nil
	}
	if n, ok := words.BesideTeasers(text); ok && t.Column.Name == "lines_out" {
		r.doubts = append(r.doubts, r.problem(t, text, "read as "+n+": a teaser hooks nothing"))
		text = n
	}
	v, err := unit.ParseNumber(r.counted(t, text), r.mark())
	if t.Column.Name == "lines_out" {
		n, ok := words.LinesAt(text)
		if !ok {
			n, ok = words.Summed(text)
		}
		if usual, early, said := phrase.UsualIn(text); said && !early && !ok {
			n, ok = usual, true // 3, all season
		}
		if ok {
			v, err = float64(n), nil
		}
	}
	if err != nil {
		if n, ok := r.bitesTold(t, text); ok && float64(n) <= t.Column.Max {
			v, err = float64(n), nil
		} else if n, ok := r.named(t, text); ok && float64(n) <= t.Column.Max {
			v, err = float64(n), nil
		} else if n, ok := phrase.Count(text); ok && float64(n) <= t.Column.Max &&
			!strings.ContainsAny(text, "0123456789") {
			v, err = float64(n), nil
		} else if n, ok := leading(text); ok && n <= t.Column.Max &&
			!(t.Column.Name == "lines_out" && addsLines(text)) {
			r.doubts = append(r.doubts, r.problem(t, text, "read as "+short(n)))
			v, err = n, nil
		}
	}
	if err != nil || v != math.Trunc(v) || v < t.Column.Min || v > t.Column.Max {
		return fmt.Errorf("not a count: expected a whole number from %.0f to %.0f", t.Column.Min, t.Column.Max)
	}
	r.values[t.field] = entry.OfInt(int64(v))
	return nil
}

// counted leaves out what is counted behind a number: "4 lines", "2 rods".
func (r *Reader) counted(t *target, text string) string {
	number, word, ok := strings.Cut(text, " ")
	if _, known := r.words.find(t.Column.Name, word); ok && known {
		return number
	}
	return text
}

func flagCell(list, yes string) func(*Reader, *target, string) error {
	return func(r *Reader, t *target, text string) error {
		means, ok := r.words.find(list, text)
		if list == "kept" && r.layout.Tagged && strings.EqualFold(text, "t") {
			means, ok = "no", true
		}
		if fate, _, _, told := words.FateOf(text); !ok && list == "kept" && told {
			switch {
			case fate == words.Lost && r.has("outcome"):
				r.put("outcome", entry.OfText("lost")) // K, R, and a fish that never came to the boat
				return nil
			case fate == words.Landed || fate == words.Released:
				means, ok = map[bool]string{true: "yes", false: "no"}[fate == words.Landed], true
			}
		}
		if !ok {
			return errors.New("neither yes nor no: expected one of them")
		}
		r.values[t.field] = entry.OfFlag(means == yes)
		return nil
	}
}

// tangleCell reads a yes or a no, a number of tangles, or which lines tangled.
func tangleCell(r *Reader, t *target, text string) error {
	if means, ok := r.words.find("bool", text); ok {
		r.values[t.field] = entry.OfFlag(means == "yes")
		return nil
	}
	if v, err := unit.ParseNumber(text, r.mark()); err == nil {
		r.values[t.field] = entry.OfFlag(v > 0)
		return nil
	}
	r.values[t.field] = entry.OfFlag(true)
	r.values[r.index["tangled_lines"]] = entry.OfText(oneSpaced(text))
	return nil
}

func listCell(list, expected string) func(*Reader, *target, string) error {
	return func(r *Reader, t *target, text string) error {
		means, ok := r.words.find(list, text)
		if !ok {
			return fmt.Errorf("not understood: expected %s", expected)
		}
		r.values[t.field] = entry.OfText(means)
		return nil
	}
}

// speciesCell keeps the name as logged beside the code. A name that means
// several species without an ocean to settle it stays without a code.
func speciesCell(r *Reader, t *target, text string) error {
	if words.Nothing(text) {
		r.nothing = true
		return nil
	}
	if fate, ok := words.FateOnly(text); ok && (fate == words.Lost || fate == words.Missed) && r.sets == 0 &&
		r.has("outcome") && !r.layout.Binds("outcome") && !r.set.Species.Find(text, r.set.Ocean).Found {
		r.put("outcome", entry.OfText(fate.String())) // "lost" where others have the fish
		return nil
	}
	name := r.withoutFate(r.withoutLength(t, oneSpaced(text)))
	if fish := phrase.FishList(name, phrase.Defaults{}); len(fish) == 1 && fish[0].N > 1 &&
		fish[0].Name != "" && r.sets == 0 && !r.lists {
		r.like, name = fish[0].N, fish[0].Name
	}
	r.values[r.index["species_logged"]] = entry.OfText(name)
	if m := r.set.Species.Find(name, r.set.Ocean); m.Found {
		r.values[t.field] = entry.OfText(m.Species.Code)
	}
	return nil
}

// withoutFate takes what became of a fish off its name, where no column of the log tells that: "marlin tagged", "tuna
// lost at the boat".
func (r *Reader) withoutFate(name string) string {
	if r.sets > 0 || !r.has("outcome") || r.layout.Binds("outcome", "kept") ||
		r.set.Species.Find(name, r.set.Ocean).Found {
		return name
	}
	fate, _, at, ok := words.FateOf(name)
	fish := strings.TrimRight(name[:at[0]], " ,;:-(")
	if !ok || fate < words.Missed || at[0] == 0 || !r.set.Species.Find(fish, r.set.Ocean).Found &&
		len(r.set.Species.Find(fish, r.set.Ocean).Candidates) == 0 {
		return name
	}
	if !r.value("outcome").Known {
		r.put("outcome", entry.OfText(outcomeOf(fate)))
	}
	return fish
}

// sized tells a column of fish whose lengths stand behind their names, where no other column has them.
func sized(b plan.Binding) bool { return b.Sized != "" }

var lengthBehind = regexp.MustCompile(`^(\pL[\pL ./'?-]*?)\s+(\d{1,3}(?:[.,]\d{1,2})?(?:\s?(?:cm|in|"))?)$`)

// withoutLength takes the length off a fish's name.
func (r *Reader) withoutLength(t *target, text string) string {
	m := lengthBehind.FindStringSubmatch(text)
	if t.Sized == "" || m == nil || r.layout.Binds("length_cm") {
		return text
	}
	q, err := unit.ParseQuantity(m[2], unit.Length, t.Sized, unit.MarkOf(m[2]))
	if err != nil {
		return text
	}
	if v, err := q.In(unit.Centimetre); err == nil {
		r.values[r.index["length_cm"]] = entry.OfReal(v)
		return m[1]
	}
	return text
}

// longCell keeps a text of any length as it stands.
func longCell(r *Reader, t *target, text string) error {
	r.values[t.field] = entry.OfText(text)
	return nil
}

// mostOfBite is the most words of a cell that says of a strike that it was one.
const mostOfBite = 3

// outcomeCell takes what became of a strike, and why it was lost where it says so.
func outcomeCell(r *Reader, t *target, text string) error {
	if means, ok := r.words.find("outcome", text); ok {
		r.values[t.field] = entry.OfText(means)
		if _, cause, _, ok := words.FateOf(text); ok && means == "lost" && cause != "" && t.beside >= 0 {
			r.tellCause(t, text, cause)
		}
		return nil
	}
	if words.Nothing(text) {
		r.nothing = true
		return nil
	}
	fate, cause, _, ok := words.FateOf(text)
	if !ok && words.Yes(text) { // Got it? yes
		if fate, _, _, ok = words.FateOf(strings.TrimRight(t.Heading, "? ")); fate != words.Landed {
			ok = false
		}
	}
	if how, told := words.Method(text); !ok && (told && how != "troll" && how != "kite" || words.OnlyOther(text)) {
		r.elsewise = true // "bottom", where others say what became of them
		return nil
	}
	if !ok {
		return errors.New("not understood: expected missed, lost, landed or released")
	}
	if o := outcomeOf(fate); o != "" {
		r.values[t.field] = entry.OfText(o)
	} else if fate == words.Bit && len(strings.Fields(text)) <= mostOfBite {
		r.values[t.field] = entry.OfText("missed") // a touch, where the others were hooked, and no more
	}
	if cause != "" {
		r.tellCause(t, text, cause)
	}
	return nil
}

// tellCause keeps why a fish was lost where the outcome says it ("pulled hook"): in its own
// words, which name the part that gave, where no column has the causes.
func (r *Reader) tellCause(t *target, text, cause string) {
	if t.beside >= 0 {
		r.values[t.beside] = entry.OfText(oneSpaced(text))
		return
	}
	r.put("loss_cause", entry.OfText(cause))
}

var (
	inBrackets   = regexp.MustCompile(`\([^()]*\)`)
	decimalComma = regexp.MustCompile(`(\d),(\d)`)
)

// about is the one number of a text that hedges it (8ish, about 8, 8 y pico), or the middle
// of two that are near each other (6 à 7, 5-5 1/2). What stands in brackets is a remark.
func about(text string) (float64, bool) {
	text = decimalComma.ReplaceAllString(inBrackets.ReplaceAllString(text, " "), "$1.$2")
	if strings.ContainsAny(text, "+/") && !strings.Contains(text, "1/2") {
		return 0, false
	}
	var v []float64
	for _, f := range strings.FieldsFunc(strings.ReplaceAll(strings.ReplaceAll(text, " 1/2", ".5"), "½", ".5"),
		func(c rune) bool { return (c < '0' || c > '9') && c != '.' }) {
		if f = strings.Trim(f, "."); f == "" {
			continue // ca.
		}
		x, err := strconv.ParseFloat(f, 64)
		if err != nil {
			return 0, false
		}
		v = append(v, x)
	}
	switch {
	case len(v) == 1:
		return v[0], true
	case len(v) == 2 && v[1] > v[0] && v[1]-v[0] <= maxBetween:
		return (v[0] + v[1]) / 2, true
	}
	return 0, false
}

// addsLines tells lines that are told at several places, of which not all are known: the first number is not of them
// all.
func addsLines(text string) bool {
	outside, _, _ := strings.Cut(text, "(")
	_, more, ok := strings.Cut(outside, "+")
	return ok && strings.ContainsAny(more, "0123456789")
}

// leading is the whole number that a count's cell begins with, before a remark: "5 (4 + center)".
func leading(text string) (float64, bool) {
	n := 0
	for n < len(text) && text[n] >= '0' && text[n] <= '9' {
		n++
	}
	if n == 0 || n == len(text) || text[n] != ' ' && text[n] != '(' || strings.HasPrefix(strings.TrimSpace(text[n:]),
		"/") || strings.HasPrefix(strings.TrimSpace(text[n:]), "-") {
		return 0, false
	}
	outside, _, _ := strings.Cut(text[n:], "(")
	if first := strings.TrimSpace(outside); first != "" && first[0] >= 'A' &&
		strings.ContainsAny(outside, "0123456789") {
		return 0, false // 4 then 7
	}
	v, err := strconv.ParseFloat(text[:n], 64)
	return v, err == nil
}
