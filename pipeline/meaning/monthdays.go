package meaning

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

// monthDays makes days of the numbers of a table whose title or sheet names the month: 4 under
// "Day", in the tab of October 2023, is 4 October 2023. Without a year it is 4 October. It
// returns what a user should be told of it. falling takes days that are not in their order too.
func (t *Lexicon) monthDays(b *layout.Block, falling bool) string {
	if b.Shape != layout.Table || b.Open || len(b.Labels) == 0 {
		return ""
	}
	month, year := monthOf(append([]string{b.Grid.Info.Title()}, b.Above...))
	if month == 0 {
		return ""
	}
	for _, l := range b.Labels {
		if l.Col > 2 || !slices.Contains(t.concepts.of[normalise(l.Text)], "day") ||
			!daysOfMonth(b.Rows, l.Col, falling) {
			continue
		}
		for i := range b.Rows {
			r := &b.Rows[i]
			if l.Col >= len(r.Cells) {
				continue
			}
			c := &r.Cells[l.Col]
			n := dayNumber(c.Text)
			if n == 0 {
				continue // blank, or a ditto mark
			}
			c.Look, c.Text = layout.Date, fmt.Sprintf("%d %s", n, month)
			if year > 0 {
				c.Text = fmt.Sprintf("%04d-%02d-%02d", year, month, n)
			}
		}
		return fmt.Sprintf("%s: %s %s", l.Text, takenForDays, month)
	}
	return ""
}

// sisterDays makes days of the numbers of tables of months whose days are not in their order, where a sheet with the
// same headings has such numbers: sheets of one hand, a month each, are read alike.
func (t *Lexicon) sisterDays(blocks []*layout.Block, told map[*layout.Block]string) {
	heads := map[string]bool{}
	for _, b := range blocks {
		if b.Shape == layout.Table && len(b.Labels) > 1 && strings.Contains(told[b], takenForDays) {
			heads[headsOf(b)] = true
		}
	}
	for _, b := range blocks {
		if told[b] != "" || !heads[headsOf(b)] {
			continue
		}
		if said := t.monthDays(b, true); said != "" {
			told[b] = said
			stripFoot(b)
		}
	}
}

// takenForDays says of a column that its numbers are days of a month.
const takenForDays = "its numbers are taken for days of"

// headsOf are the headings of a block, in one text.
func headsOf(b *layout.Block) string {
	var all []string
	for _, l := range b.Labels {
		all = append(all, normalise(l.Full()))
	}
	return strings.Join(all, "\x00")
}

// monthOf is the one month, with its year where it is told, that texts name: "OCT 23",
// "DOÑA LUPE October 2023". A two-digit number is the year. Months that differ are none.
func monthOf(texts []string) (month time.Month, year int) {
	for _, text := range texts {
		toks := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" -–—/.,'’:()", r) })
		for i, w := range toks {
			m, ok := words.Month(w)
			if !ok || len(w) < 3 || i > 0 && isDayNumber(toks[i-1]) {
				continue
			}
			if month != 0 && m != month {
				return 0, 0
			}
			dated := false
			for _, next := range toks[i+1 : min(i+3, len(toks))] {
				if y, err := strconv.Atoi(next); err == nil &&
					(len(next) == 4 && y > 1950 && y < 2100 || len(next) == 2) {
					if len(next) == 2 {
						y += 2000
					}
					if year == 0 || len(next) == 4 {
						year = y
					}
					dated = true
				}
			}
			if otherWords[strings.ToLower(w)] && !dated {
				continue
			}
			month = m
		}
	}
	return month, year
}

// otherWords are short forms of months that are words too: a set of lines, mar for sea.
var otherWords = map[string]bool{"set": true, "mar": true}

// isDayNumber tells 4 in "4 October".
func isDayNumber(w string) bool {
	n, err := strconv.Atoi(w)
	return err == nil && n >= 1 && n <= 31
}

// dayNumber is the day of a month in a cell: "4", "4.", "dim. 4", "Sat 12th", "sab 4 morning"; 0 of others.
func dayNumber(text string) int {
	number := ""
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '.' || r == ',' }) {
		if _, ok := words.Weekday(w); ok || number != "" && halfOfDay(w) {
			continue
		}
		if number != "" {
			return 0
		}
		number = w
	}
	for _, ending := range []string{"st", "nd", "rd", "th", "er", "º"} {
		number = strings.TrimSuffix(number, ending)
	}
	if n, err := strconv.Atoi(number); err == nil && n >= 1 && n <= 31 {
		return n
	}
	return 0
}

func halfOfDay(w string) bool { _, ok := words.HalfOfDay(w); return ok }

// isSentence tells a text of several words that begins with one: "We went out on 3 days".
func isSentence(text string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimSpace(text))
	return unicode.IsLetter(first) && len(strings.Fields(text)) >= leastSentence
}

// leastSentence is how many words make a sentence.
const leastSentence = 4

// daysOfMonth tells a column of days of a month, that never fall. A last row may have a label
// there: "trips   5", or the words and their figure in one cell; and a row of nothing but a sentence there says none.
func daysOfMonth(rows []layout.Row, col int, falling bool) bool {
	last, n := 0, 0
	for i, r := range rows {
		if col >= len(r.Cells) || r.Cells[col].Look == layout.Blank || words.Ditto(r.Cells[col].Text) {
			continue
		}
		text := r.Cells[col].Text
		d := dayNumber(text)
		if d == 0 && loneText(&r) && isSentence(text) {
			continue
		}
		if falling && d > 0 {
			last = d
		}
		if d < max(1, last) {
			sum := !strings.ContainsAny(text, "0123456789?") || loneText(&r) && sumInWords.MatchString(text)
			if n >= leastDays && i == len(rows)-1 && sum && !timed(&r) {
				continue
			}
			return false
		}
		last, n = d, n+1
	}
	return n > 0
}
