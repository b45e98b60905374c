package proof

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// mostCells is how many cells of a block are asked about one by one: more of them are a
// doubt about the whole column.
const mostCells = 3

// rowText is what a row of a block says, by which its questions are known again.
func rowText(s *Subject, num int64) string {
	i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == num })
	if i < 0 {
		return fmt.Sprint(num)
	}
	return meaning.Text(s.Block.Rows[i])
}

// rowName is a row as users find it.
func rowName(s *Subject, num int64) string {
	name := fmt.Sprintf("row %d", num)
	if s.Block.Turned {
		name = "column " + meaning.ColumnName(int(num)-1)
	}
	return strings.TrimSpace(s.Plan.Name + " " + name)
}

func clock(seconds int64) string {
	return fmt.Sprintf("%02d:%02d", seconds/3600%24, seconds/60%60)
}

// ends asks for the ends, or starts, that nobody wrote down: by the clock where it is one.
func (q *inquiry) ends(s *Subject) {
	for _, lacks := range []string{"end_s", "start_s"} {
		var rows []Half
		for _, h := range s.Stats.Half {
			if same := func(o Half) bool { return o.Day == h.Day && o.Clock == h.Clock }; h.Lacks == lacks &&
				!slices.ContainsFunc(rows, same) {
				rows = append(rows, h)
			}
		}
		b, apart := s.Plan.Find(lacks), true
		if i := slices.IndexFunc(s.Plan.Bindings, func(x plan.Binding) bool {
			return x.Column.Parse == "stretches"
		}); b == nil && i >= 0 {
			b, apart = &s.Plan.Bindings[i], false // start and end stand in one cell
		}
		if len(rows) == 0 || b == nil || b.Index < 0 {
			continue
		}
		had, what := "lines in at", "when the lines came up"
		if lacks == "start_s" {
			had, what = "lines up at", "when the lines went in"
		}
		var places, keys []string
		for _, h := range rows {
			places = append(places, fmt.Sprintf("%s (%s %s)", rowName(s, h.Row), had, clock(h.Clock)))
			keys = append(keys, rowText(s, h.Row))
		}
		text := fmt.Sprintf("%s does not say %s. When was that, by the clock?", places[0], what)
		if len(rows) > 1 {
			text = fmt.Sprintf("%d rows do not say %s: %s. Are their hours to be left out?",
				len(rows), what, some(places))
		}
		q.ask("no end", s.Plan.Name, b.Heading, text, []string{"leave the hours out"}, hours, keys...)
		x := q.last()
		x.Brief = fmt.Sprintf("%s not say %s.", plural(len(rows), "stretch does", "stretches do"), what)
		if len(rows) == 1 && apart {
			x.cell, x.column = plan.Cell{Row: rows[0].Row, Index: b.Index}, b
			if at := s.nextStart(rows[0]); at != "" && lacks == "end_s" {
				x.Options = []string{"leave the hours out", "at " + at + ", when the lines went in again"}
				x.Choices = []string{"leave the hours out", asCell(at)}
			}
		}
	}
}

// nextStart is when the next stretch of the day began, by the clock; "" where there is none.
func (s *Subject) nextStart(h Half) string {
	next := int64(-1)
	for _, x := range s.Stats.spans[h.Day] {
		if x.from > h.Clock && (next < 0 || x.from < next) {
			next = x.from
		}
	}
	if next < 0 {
		return ""
	}
	return clock(next)
}

// some are three of several things at most.
func some(all []string) string {
	if len(all) > 3 {
		return strings.Join(all[:3], ", ") + fmt.Sprintf(" and %d more", len(all)-3)
	}
	return strings.Join(all, ", ")
}

// long asks whether stretches of more than half a day ended in the afternoon: of each, or of all at once where they
// are many.
func (q *inquiry) long(s *Subject) {
	var ends []lateEnd
	for _, l := range s.Stats.Long {
		b := endOf(s, l)
		if b == nil || nextDay(s, l, b) || l.End < 2*longLeg || l.End-longLeg <= l.Start {
			continue // on the same day the clock says what it says
		}
		ends = append(ends, lateEnd{l, b})
	}
	if len(ends) > mostCells {
		q.longOnes(s, ends)
		return
	}
	for _, e := range ends {
		q.longOne(s, e)
	}
}

// lateEnd is a stretch of more than half a day, with the column of its end.
type lateEnd struct {
	Long
	b *plan.Binding
}

func (e lateEnd) cell() plan.Cell { return plan.Cell{Row: e.Row, Index: e.b.Index} }

func (e lateEnd) earlier() string { return clock(e.End - longLeg) }

// ofLong rests on how long a stretch is: one into the next day makes one trip of two days.
var ofLong = append([]string{"trips"}, append(slices.Clone(hours), bites...)...)

func (q *inquiry) longOne(s *Subject, e lateEnd) {
	text := fmt.Sprintf("%s: lines in at %s and up at %s, which would be %.1f hours. Was it %s?",
		rowName(s, e.Row), clock(e.Start), clock(e.End), float64(e.End-e.Start)/3600, e.earlier())
	options := []string{"yes, up at " + e.earlier(), "no, the next day at " + clock(e.End)}
	about := fmt.Sprintf("row %d", e.Row)
	if e.b.Set > 0 {
		about += fmt.Sprintf(" %d", e.b.Set+1) // the row's second stretch
	}
	q.ask("long", s.Plan.Name, about, text, options, ofLong, rowText(s, e.Row))
	x := q.last()
	x.Brief = "A stretch would be longer than half a day: its end is read as twelve hours earlier."
	x.cell, x.column, x.Choices = e.cell(), e.b, []string{asCell(e.earlier()), "next day"}
}

func (q *inquiry) longOnes(s *Subject, ends []lateEnd) {
	var places, keys []string
	cells := map[plan.Cell]string{}
	for _, e := range ends {
		places = append(places, fmt.Sprintf("%s (lines in at %s, up at %s)", rowName(s, e.Row), clock(e.Start),
			clock(e.End)))
		keys = append(keys, rowText(s, e.Row))
		cells[e.cell()] = e.earlier()
	}
	text := fmt.Sprintf("%d stretches would go on into the next day, for more than 12 hours: %s. Did they end in the "+
		"afternoon, by a clock of twelve hours?", len(ends), some(places))
	q.ask("long ones", s.Plan.Name, ends[0].b.Heading, text, []string{"yes, twelve hours earlier", "no, the next day"},
		ofLong, keys...)
	x := q.last()
	x.Brief = plural(len(ends), "stretch", "stretches") + " would be longer than half a day: their ends are read as " +
		"twelve hours earlier."
	x.cells = cells
}

// nextDay tells a stretch whose end says itself that it is of the day after, or whose row is of two days: 18-19/7.
func nextDay(s *Subject, l Long, b *plan.Binding) bool {
	return slices.ContainsFunc(s.Block.Rows, func(r layout.Row) bool {
		_, said := words.OfNextDay(cellOf(r, b))
		_, days, _ := unit.DaySpan(cellOf(r, s.Plan.Find("date")))
		return (said || days == 2) && int64(r.Num) == l.Row
	})
}

// endOf is the column of a stretch's end: in a row of several stretches that beside its own start. nil
// where it stands in no column of its own.
func endOf(s *Subject, l Long) *plan.Binding {
	i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == l.Row })
	first := s.Plan.Find("end_s")
	if first == nil || first.Index < 0 || i < 0 {
		return nil
	}
	cells := s.Block.Rows[i].Cells
	at := func(b *plan.Binding, seconds int64) bool {
		if b.Index < 0 || b.Index >= len(cells) {
			return false
		}
		got, ok := clockIn(cells[b.Index].Text)
		return ok && got%(24*3600) == seconds%(24*3600)
	}
	for k := range s.Plan.Bindings {
		start := &s.Plan.Bindings[k]
		if start.Column.Name != "start_s" || !at(start, l.Start) {
			continue
		}
		for j := range s.Plan.Bindings {
			end := &s.Plan.Bindings[j]
			if end.Column.Name == "end_s" && end.Set == start.Set && end.Index >= 0 {
				return end
			}
		}
	}
	return first
}

// clockIn is the clock time that a cell says, in seconds: a workbook's share of a day, or words.
func clockIn(text string) (int64, bool) {
	if x, err := strconv.ParseFloat(text, 64); err == nil {
		return int64(math.Round(x * 24 * 3600)), x >= 0 && x < 1
	}
	m, err := unit.ParseMoment(text, unit.OrderUnknown)
	return int64(m.Seconds), err == nil && m.HasTime
}

// lonely is how many days from all others make a day odd.
const lonely = 300

// years asks about days that stand alone a year from the log's others.
func (q *inquiry) years() {
	var days []int64
	for _, s := range q.subjects {
		for d := range s.Stats.First {
			days = append(days, d)
		}
	}
	slices.Sort(days)
	days = slices.Compact(days)
	near := func(d int64, within int64) int {
		n := 0
		for _, o := range days {
			if o-d <= within && d-o <= within {
				n++
			}
		}
		return n
	}
	asked := 0
	for i := range q.subjects {
		q.now = &q.subjects[i]
		s := q.now
		b := s.Plan.Find("date")
		if b == nil || b.Index < 0 || b.By != nil {
			continue
		}
		for _, d := range days {
			row, ok := s.Stats.First[d]
			if !ok || near(d, lonely) > 1 || len(days) < 5 || asked == mostCells {
				continue
			}
			was := unit.Date(d).Time()
			for _, by := range []int{1, -1} {
				may := was.AddDate(by, 0, 0)
				if near(may.Unix()/86400, 60) < 2 {
					continue
				}
				text := fmt.Sprintf("%s is of %s, and no other day of the log is near it. Is it %s?",
					rowName(s, row), dayWords(was), dayWords(may))
				q.ask("year", s.Plan.Name, b.Heading, text, []string{"yes, " + dayWords(may), "no, " + dayWords(was)},
					all, rowText(s, row))
				x := q.last()
				x.Brief = "A day stands a year from all others: is its year right?"
				x.cell, x.column, x.Choices = plan.Cell{Row: row, Index: b.Index}, b,
					[]string{asCell(may.Format(time.DateOnly)), "no"}
				asked++
				break
			}
		}
	}
	q.now = nil
}

func dayWords(t time.Time) string { return t.Format("2 January 2006") }

// asCell is the choice of what a cell is to be read as.
func asCell(text string) string { return "=" + text }

// odd asks about the cells and words that could not be read and that totals rest on. It
// returns the problems that no question of its own is asked of.
func (q *inquiry) odd(s *Subject) (left []record.Problem) {
	type found struct {
		b    *plan.Binding
		word string
		rows []int64
		of   []string // what rests on it
	}
	var all []found
	for _, p := range s.Stats.Aside {
		b := s.binding(p)
		switch {
		case p.Pos.Row == 0 || p.Pos.Col == 0 || b == nil || strings.HasPrefix(p.Reason, record.OfEither),
			strings.HasPrefix(p.Reason, record.FateOfEither):
			left = append(left, p)
			continue
		case s.half(p) || unsureDay(p) || notCounted(p):
			continue // asked already
		case len(s.rests(p)) == 0 || measured(b) && figureless(p.Cell):
			continue // no total rests on it: a word in place of a measure is none
		case askable[b.Column.Parse] == nil || measured(b) || len(p.Cell) > 30 || p.Whole &&
			b.Column.Parse == "count" && !figureless(p.Cell):
			left = append(left, p)
			continue
		}
		word := strings.ToLower(strings.TrimSpace(p.Cell))
		i := slices.IndexFunc(all, func(f found) bool { return f.b == b && f.word == word })
		if i < 0 {
			i, all = len(all), append(all, found{b: b, word: word})
		}
		if all[i].rows = append(all[i].rows, int64(p.Pos.Row)); p.Whole {
			all[i].of = s.rests(p)
		}
	}
	for i, f := range all {
		if i == mostCells {
			for _, p := range s.Stats.Aside {
				if word := strings.ToLower(strings.TrimSpace(p.Cell)); slices.ContainsFunc(all[i:],
					func(o found) bool { return o.b == s.binding(p) && o.word == word }) {
					left = append(left, p)
				}
			}
			break
		}
		q.word(s, f.b, f.word, f.rows, f.of)
	}
	return left
}

// unsureDay tells the problem of a date that can be read in two ways.
func unsureDay(p record.Problem) bool {
	return strings.HasPrefix(p.Reason, unit.ErrAmbiguousDate.Error())
}

// order asks once for the whole log whether dates are written the day or the month first.
func (q *inquiry) order() {
	n, first := 0, ""
	for _, s := range q.subjects {
		for _, p := range s.Stats.Aside {
			if unsureDay(p) {
				if n++; first == "" {
					first = strings.TrimSpace(p.Cell)
				}
			}
		}
	}
	if n == 0 {
		return
	}
	q.ask("order", "", "dates", fmt.Sprintf("%s such as %q may have the day or the month first. Which is it?",
		plural(n, "date", "dates"), first),
		[]string{"the day first", "the month first"}, all)
	x := q.last()
	x.Brief, x.Choices = "Some dates may have the day or the month first.", []string{"day", "month"}
}

// noYear asks of which year the days of a log are that nowhere says one.
func (q *inquiry) noYear() {
	no := q.log.NoYear
	if no == nil {
		return
	}
	var years []string
	for _, y := range no.Fit {
		years = append(years, yearWords(y))
	}
	taken := "I take " + years[0]
	if no.Named {
		taken += ", in which the weekdays are right,"
	}
	q.ask("no year", "", "dates", fmt.Sprintf("The days of this log, such as %q, have no year. %s until you say. "+
		"Of which year are they?", no.First[0], taken), years, []string{"trips"}, no.First...)
	q.last().Brief = "The days of a log have no year."
}

func yearWords(y unit.Years) string {
	if y.From == y.To {
		return strconv.Itoa(y.From)
	}
	return fmt.Sprintf("%d to %d", y.From, y.To)
}

// tellYear has the days of a log that nowhere says a year be of the one that was answered.
func tellYear(l *meaning.Log, _ *Question, choice string) {
	if l.NoYear == nil {
		return
	}
	for _, y := range l.NoYear.Fit {
		if yearWords(y) == choice {
			l.OfYears(y)
		}
	}
}

// orderDays has the log's dates read the day or the month first.
func orderDays(_ *meaning.Log, q *Question, choice string) {
	for _, u := range q.of {
		if u.Plan.Order = unit.DayFirst; choice == "month" {
			u.Plan.Order = unit.MonthFirst
		}
	}
}

// binding is the column under which a problem stands.
func (s *Subject) binding(p record.Problem) *plan.Binding {
	for i := range s.Plan.Bindings {
		if b := &s.Plan.Bindings[i]; b.Index == p.Pos.Col-1 && b.Heading == p.Column {
			return b
		}
	}
	return nil
}

// half tells the problem of a row without a start or an end.
func (s *Subject) half(p record.Problem) bool {
	b := s.binding(p)
	return slices.ContainsFunc(s.Stats.Half, func(h Half) bool {
		return h.Row == int64(p.Pos.Row) && b.Column.Name == h.Lacks
	})
}

func measured(b *plan.Binding) bool {
	return b.Column.Name == "scale_kg" || b.Column.Name == "length_cm" || b.Column.Name == "girth_cm"
}

func figureless(text string) bool { return !strings.ContainsFunc(text, unicode.IsDigit) }

// askable are what the cells of a column may be answered to be, by how they are read. The
// figure itself may be said too.
var askable = map[string]func(b *plan.Binding, word string) (options, choices []string){
	"quantity": func(b *plan.Binding, word string) (options, choices []string) {
		if figureless(word) && (b.Column.Name == "speed_kn" || b.Column.Name == "duration_s") {
			options, choices = []string{"not trolling: leave it out"}, []string{leaveOut}
		}
		return append(options, "not known"), append(choices, Leave)
	},
	"count": func(b *plan.Binding, word string) (options, choices []string) {
		return append(figuresOf(b, word), "not known"), append(cellsOf(figuresOf(b, word)), Leave)
	},
	"moment": func(_ *plan.Binding, word string) (options, choices []string) {
		if n, err := strconv.Atoi(word); err == nil && n > 0 && n < 24 {
			hour := fmt.Sprintf("%d:00", n)
			options, choices = []string{hour}, []string{asCell(hour)}
		}
		return append(options, "not known"), append(choices, Leave)
	},
	"outcome": func(*plan.Binding, string) (options, choices []string) {
		return []string{"missed", "hooked and lost", "landed", "let go", "no bite"},
			[]string{asCell("missed"), asCell("lost"), asCell("landed"), asCell("released"), asCell("nothing")}
	},
	"method": func(*plan.Binding, string) (options, choices []string) {
		return []string{"trolled", "not trolled: leave it out"}, []string{asCell("troll"), leaveOut}
	},
	"weighed": func(*plan.Binding, string) (options, choices []string) {
		return []string{"off a scale", "no: worked out or guessed"}, []string{asCell("scale"), asCell("guess")}
	},
}

// numerals are the figures of a cell.
var numerals = regexp.MustCompile(`\d+`)

// mostNumerals is of how many figures of a cell one may be meant: 4 or 5.
const mostNumerals = 2

// figuresOf are the figures of a cell that may be its count. None is offered that may be taken for the number of an
// answer.
func figuresOf(b *plan.Binding, word string) []string {
	all := numerals.FindAllString(word, -1)
	for _, n := range all {
		if v, err := strconv.ParseFloat(n, 64); err != nil || v <= mostNumerals+1 || v > b.Column.Max ||
			len(all) > mostNumerals {
			return nil
		}
	}
	return slices.Compact(all)
}

func cellsOf(figures []string) []string {
	var out []string
	for _, n := range figures {
		out = append(out, asCell(n))
	}
	return out
}

const leaveOut = "leave the row out"

// asWritten is a word as the log has it: the letter that nothing explains.
func asWritten(b *plan.Binding, word string) string {
	for code, means := range b.Codes {
		if word == meaning.Unexplained && means == word {
			return code
		}
	}
	return word
}

// word asks what a cell, or a word of several cells, of a column means; of is what rests on it,
// where that is more than on its cell.
func (q *inquiry) word(s *Subject, b *plan.Binding, word string, rows []int64, of []string) {
	options, choices := askable[b.Column.Parse](b, word)
	where := rowName(s, rows[0])
	if len(rows) > 1 {
		where = fmt.Sprintf("%d rows, the first %s", len(rows), where)
	}
	effect := effectOf(b.Column.Name)
	switch {
	case slices.Contains(choices, leaveOut):
		effect = all
	case of != nil:
		effect = of
	}
	if b.Column.Parse == "weighed" {
		effect = []string{"fish"}
	}
	text := fmt.Sprintf("What does %q mean under %q (%s)?", asWritten(b, word), b.Heading, where)
	if word == "" {
		text = fmt.Sprintf("What does a blank mean under %q (%s)?", b.Heading, where)
	}
	if e := expects(b); e != "" {
		text += " Choose, or say it: " + e + "."
	}
	q.ask("word", s.Plan.Name, b.Heading, text, options, effect, b.Heading, word)
	x := q.last()
	if x.Brief = fmt.Sprintf("A word under %q is not known here.", b.Heading); !figureless(word) {
		x.Brief = fmt.Sprintf("A cell under %q could not be read.", b.Heading)
	}
	x.Choices, x.column, x.word, x.rows = choices, b, word, rows
}

// outcomes asks what words stand for that say no more than that something bit, where no
// word of the log says that a bite was missed, and what words of a miss do on rows whose fish were taped.
func (q *inquiry) outcomes(s *Subject) {
	b := s.Plan.Find("outcome")
	if b == nil || b.Index < 0 {
		return
	}
	if q.fatesOf(s, b, s.Stats.Taped, 1); !s.Stats.Missed {
		q.fatesOf(s, b, s.Stats.Unsaid, 2)
	}
}

// fatesOf asks what words of a column of fates mean, those that stand on at least so many of some rows.
func (q *inquiry) fatesOf(s *Subject, b *plan.Binding, rows []int64, least int) {
	by := map[string][]int64{}
	for _, num := range rows {
		i := slices.IndexFunc(s.Block.Rows, func(r layout.Row) bool { return int64(r.Num) == num })
		if i < 0 || b.Index >= len(s.Block.Rows[i].Cells) {
			continue
		}
		text := strings.ToLower(strings.TrimSpace(s.Block.Rows[i].Cells[b.Index].Text))
		if fate, _, _, _ := words.FateOf(text); fate != words.Hooked && strings.ContainsFunc(text, unicode.IsLetter) &&
			!words.Nothing(text) {
			by[text] = append(by[text], num)
		}
	}
	for _, text := range slices.Sorted(maps.Keys(by)) {
		if len(by[text]) >= least {
			q.word(s, b, text, by[text], nil)
		}
	}
}

// guessed asks about codes that were only taken to be short for a way of fishing other than
// trolling or for what became of a bite: "SPR" may be a spread, and no spear. A way's first
// letters are clear, where few rows have them, and so is what a fate's own name is cut to.
func (q *inquiry) guessed(s *Subject) {
	for _, cut := range []struct {
		name  string
		short func(string) (string, bool)
	}{{"method", words.ShortMethod}, {"outcome", words.ShortFate}} {
		b := s.Plan.Find(cut.name)
		if b == nil || b.Index < 0 {
			continue
		}
		by := map[string][]int64{}
		for _, r := range s.Block.Rows {
			code := cellOf(r, b)
			if means, ok := cut.short(code); ok && means != "troll" && b.Codes[code] == means {
				by[code] = append(by[code], int64(r.Num))
			}
		}
		for _, code := range slices.Sorted(maps.Keys(by)) {
			rows := by[code]
			clear := cut.name == "outcome" && words.PlainFate(code) || cut.name == "method" &&
				strings.HasPrefix(b.Codes[code], code) && 2*len(rows) < len(s.Block.Rows)
			if !clear {
				q.word(s, b, code, rows, nil)
			}
		}
	}
}
