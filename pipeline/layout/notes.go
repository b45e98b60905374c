package layout

import (
	"regexp"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

// Notes of a telephone, exported as one text: each has a title, often the day that it tells of, under that the
// day and time at which it was written, then its lines.

var (
	stamp = regexp.MustCompile(
		`(?i)^(\d{1,4})[./-](\d{1,2})[./-](\d{2,4}),?\s+(?:at |às |à |alle |um )?\d{1,2}[:h.]\d{2}(?::\d{2})?(?:\s*[ap]m)?$`)
	rule      = regexp.MustCompile(`^[-=_*~#—– ]{3,}$`)
	daysOver  = regexp.MustCompile(`(?i)(?:^|\s)(\d{1,2})\s*(?:a|ao|to|bis|au|al|-|–)\s*(\d{1,2})([/.]\d{1,2})$`)
	dayOf     = regexp.MustCompile(`(?i)^(?:dia|day|jour|giorno|tag)\s+(\d{1,2})\b[\s.:,;–-]*`)
	hourH     = regexp.MustCompile(`(\d)[hH.](\d{2}(?:\D|$))`)
	clockTold = regexp.MustCompile(`(?i)\b([01]?\d|2[0-4])[:h](\d{2})?\b`)
	yesterday = regexp.MustCompile(`(?i)^(?:yesterday|ontem|ayer|hier|ieri|gestern)(?:\P{L}|$)`)
)

// fewNotes with such heads are notes.
const fewNotes = 4

// longBefore is how many days before it was written a note may tell of.
const longBefore = 40

// aNote is one note: its title, when it was written, and its lines.
type aNote struct {
	title   string
	written unit.Date
	minutes int // of the day, when it was written
	lines   []Row
}

// notes takes notes of a telephone: one row a day, with its words. What stands before the first of a day
// holds for all.
func (g *Grid) notes() (Block, bool) {
	if g.Info.Workbook {
		return Block{}, false
	}
	order, ok := g.stampOrder()
	if !ok {
		return Block{}, false
	}
	b := Block{Grid: g, Shape: Prose, Labels: []Label{{Col: 0, Text: "date"}, {Col: 1, Text: "what happened"},
		{Col: 2, Text: "notes"}}}
	above, all := g.takeNotes(order)
	b.Above = above
	begun := false
	for _, n := range all {
		day, rest, own := n.day(order)
		if begun = begun || own; !begun {
			b.Above = append(b.Above, n.title)
			for _, l := range n.lines {
				b.Above = append(b.Above, joined(l))
			}
			continue
		}
		b.Rows = append(b.Rows, n.rows(day, rest, own, order)...)
	}
	return b, len(b.Rows) >= fewNotes
}

// stampOrder is the order of day and month in which notes are dated; false where the text has too few such
// lines, or does not tell.
func (g *Grid) stampOrder() (unit.Order, bool) {
	n, first, second, iso := 0, 0, 0, 0
	for i := range g.Rows {
		m := stamp.FindStringSubmatch(joined(g.Rows[i]))
		if m == nil || i == 0 || g.Rows[i-1].Num+1 != g.Rows[i].Num {
			continue
		}
		n++
		a, _ := strconv.Atoi(m[1])
		b, _ := strconv.Atoi(m[2])
		switch {
		case len(m[1]) == 4:
			iso++
		case a > 12:
			first++
		case b > 12:
			second++
		}
	}
	switch {
	case n < fewNotes || first > 0 && second > 0:
		return 0, false
	case second > 0:
		return unit.MonthFirst, true
	}
	return unit.DayFirst, first > 0 || iso == n
}

// takeNotes parts the text: what stands above the first note, and the notes.
func (g *Grid) takeNotes(order unit.Order) (above []string, all []aNote) {
	for i := range g.Rows {
		text := strings.TrimSpace(joined(g.Rows[i]))
		next := ""
		if i+1 < len(g.Rows) && g.Rows[i+1].Num == g.Rows[i].Num+1 {
			next = strings.TrimSpace(joined(g.Rows[i+1]))
		}
		at, dated := stampOf(text, order)
		switch {
		case text == "" || rule.MatchString(text):
		case stamp.MatchString(next):
			all = append(all, aNote{title: text})
		case dated && len(all) > 0 && all[len(all)-1].written == 0:
			n := &all[len(all)-1]
			n.written, n.minutes = at, minutesOf(sentAt.FindStringSubmatch(hourH.ReplaceAllString(text, "$1:$2")))
		case len(all) == 0:
			above = append(above, text)
		default:
			n := &all[len(all)-1]
			n.lines = append(n.lines, g.Rows[i])
		}
	}
	return above, all
}

func stampOf(text string, order unit.Order) (unit.Date, bool) {
	m := stamp.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	at, err := unit.ParseMoment(m[1]+"/"+m[2]+"/"+m[3], order)
	if len(m[1]) == 4 {
		at, err = unit.ParseMoment(m[1]+"-"+m[2]+"-"+m[3], order)
	}
	return at.Date, err == nil && at.HasDate
}

// day is the day that a note tells of, as its title says, and what else that says; of a title without a day it
// is the day on which it was written, and own is false.
func (n *aNote) day(order unit.Order) (day unit.Date, rest string, own bool) {
	if m := daysOver.FindStringSubmatch(n.title); m != nil {
		if d, ok := n.before(m[1]+m[3], order); ok {
			return d, n.title, true
		}
	}
	if m := dayFirst.FindStringSubmatch(n.title); m != nil {
		if d, ok := n.before(m[2], order); ok {
			return d, m[3], true
		}
	}
	return n.written, n.title, false
}

// before is a day without a year, or with one, of the weeks before the note was written.
func (n *aNote) before(text string, order unit.Order) (unit.Date, bool) {
	if at, err := unit.ParseMoment(text, order); err == nil && at.HasDate {
		return at.Date, at.Date <= n.written && at.Date > n.written-longBefore
	}
	d, err := unit.ParseDayMonth(text, order)
	if err != nil {
		return 0, false
	}
	y, _, _ := n.written.Civil()
	for _, year := range []int{y, y - 1} {
		if day := unit.DateOf(year, d.Month, d.Day); day <= n.written && day > n.written-longBefore {
			return day, true
		}
	}
	return 0, false
}

// rows are a note's rows: one, or one for each of the days that its lines begin with.
func (n *aNote) rows(day unit.Date, title string, own bool, order unit.Order) []Row {
	var out []Row
	m := daysOver.FindStringSubmatch(n.title)
	for _, l := range n.lines {
		text := joined(l)
		if m != nil {
			if d := dayOf.FindStringSubmatch(text); d != nil {
				if on, ok := n.before(d[1]+m[3], order); ok {
					day, text = on, text[len(d[0]):]
				}
			}
		}
		if !own && len(out) == 0 && (yesterday.MatchString(text) || n.tooLate()) {
			day--
		}
		if k := len(out) - 1; k >= 0 && out[k].Cells[0].Text == day.String() {
			out[k].Cells[1].Text = sentence(out[k].Cells[1].Text) + " " + text
			continue
		}
		out = append(out, Row{Num: l.Num, Cells: []Cell{{Text: day.String(), Look: Date}, {Text: text, Look: Text},
			{Text: title, Look: Text}}})
	}
	return out
}

// tooLate tells a note with a clock time that comes after the one at which it was written: it is of the day before.
func (n *aNote) tooLate() bool {
	for _, l := range n.lines {
		for _, m := range clockTold.FindAllStringSubmatch(joined(l), -1) {
			if at := clockOf(m[1], m[2]); at <= 24*60 && at > n.minutes {
				return true
			}
		}
	}
	return false
}

// sentence ends a line as a sentence.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?;:,") {
		return text
	}
	return text + "."
}
