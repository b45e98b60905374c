package layout

import (
	"maps"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
	"wakeledger/pipeline/unit"
)

var (
	clockFirst = regexp.MustCompile(`(?i)^(\d{1,2}[:.h]\d{2}\s*([ap]\.?m?\.?)?|[0-2]\d[0-5]\d)\b[\s,;:\-–—]+(\S.*)$`)
	dayFirst   = regexp.MustCompile(
		`(?i)^((?:mon|tue|wed|thu|fri|sat|sun|lun|mar|mer|mi[eé]|jeu|gio|jue|ven|vie|sam|s[aá]b|dom|dim|die|don|fre|son|seg|ter|qua|qui|sex|mit|sam)[\pL-]*\.?,?\s+|(?:mo|di|mi|do|fr|sa|so)\.?,?\s+)?(\d{1,4}[/.\-]\d{1,2}(?:[/.\-]\d{2,4})?|\d{1,2}(?:st|nd|rd|th|\.)?\s+(?:de\s+)?\pL{3,10}\.?,?(?:\s+(?:de\s+)?\d{4})?|\pL{3,10}\.?\s+\d{1,2}(?:st|nd|rd|th)?(?:,?\s+\d{4})?)\b[\s.,;:\-–—]*(.*)$`)
)

// fewTimed is how many lines with a clock time a diary has at least.
const fewTimed = 5

// diary takes a text whose lines begin with a clock time under a line for each day: one
// row an entry, with its day, its time and what happened.
func (g *Grid) diary(like Likeness) (Block, bool) {
	var lines []int // the rows of one cell, the first
	for i := range g.Rows {
		if len(g.Rows[i].filled(0, g.Width)) == 1 && g.Rows[i].at(0).Look != Blank {
			lines = append(lines, i)
		}
	}
	if len(lines) < fewTimed || 3*len(lines) < len(g.Rows) {
		return Block{}, false
	}
	timed, dated, longest, capitals := 0, 0, 0, 0
	heads, watches := g.outings(), g.watches()
	maps.Copy(heads, g.numberedTitles())
	for _, i := range lines {
		c := g.Rows[i].at(0)
		longest = max(longest, utf8.RuneCountInString(c.Text))
		if _, head := heads[i]; head {
			dated++
		} else if _, what := timeFirst(c.Text, like); what != "" && !watches[i] {
			timed++
			if first, _ := utf8.DecodeRuneInString(what); unicode.IsUpper(first) {
				capitals++
			}
		} else if dayFirst.MatchString(undecorated(c.Text)) {
			dated++
		}
	}
	if timed < fewTimed || 3*timed < len(g.Rows) || dated == 0 {
		return Block{}, false
	}
	b := Block{Grid: g, Shape: Records, Labels: []Label{{Col: 0, Text: "date"},
		{Col: 1, Text: "time"}, {Col: 2, Text: "event"}}}
	day, began, head := "", "", true
	for i := range g.Rows {
		text := g.Rows[i].at(0).Text
		if h, ok := heads[i]; ok {
			day, began, head = h.day, h.day, false
		} else if watches[i] {
			continue
		} else if time, what := timeFirst(text, like); what != "" {
			head = false
			b.Rows = append(b.Rows, Row{Num: g.Rows[i].Num,
				Cells: []Cell{{Text: day, Look: Date}, {Text: time, Look: Clock}, {Text: what, Look: Text}}})
		} else if m := dayFirst.FindStringSubmatch(undecorated(text)); m != nil && lookOf(m[2], 0) == Date {
			day, head = withYear(m[2], began), false
		} else if head {
			b.Above = append(b.Above, text)
		} else if n := len(b.Rows); n > 0 && b.Rows[n-1].Num == g.Rows[i].Num-1 {
			if sentenceOfItsOwn(text, g.Rows[i-1].at(0).Text, longest, 4*capitals > timed) {
				b.Rows = append(b.Rows, Row{Num: g.Rows[i].Num,
					Cells: []Cell{{Text: day, Look: Date}, {}, {Text: text, Look: Text}}})
				continue
			}
			c := &b.Rows[n-1].Cells[2]
			c.Text += " " + text
		} else if text != "" {
			b.Beside = append(b.Beside, Note{g.Rows[i].Num, 1, text})
		}
	}
	b.addTrips(heads)
	return b, day != ""
}

// wholeDate begins with a day as computers write it, whose year looks like a clock time: 2025-06-03.
var wholeDate = regexp.MustCompile(`^(?:19|20)\d\d-[01]?\d-[0-3]?\d\b`)

// timeFirst parts a line that begins with a clock time into that and what happened then; an hour alone, as some write
// the full hours, is one where it tells of the lines: "9h lines up". What is "" for another line.
func timeFirst(text string, like Likeness) (time, what string) {
	if m := clockFirst.FindStringSubmatch(text); m != nil && !wholeDate.MatchString(text) {
		return strings.TrimSpace(m[1]), m[3]
	}
	if m := hourFirst.FindStringSubmatch(text); m != nil && like.Event != nil && like.Event(m[2]) != "" {
		return m[1], m[2]
	}
	return "", ""
}

// sentenceOfItsOwn tells a line without a clock below an entry that is not the rest of that: it begins a sentence,
// where the text writes these with capitals, and its first word would have had room in the line above.
func sentenceOfItsOwn(text, above string, longest int, capitals bool) bool {
	word, _, _ := strings.Cut(text, " ")
	first, _ := utf8.DecodeRuneInString(text)
	fits := utf8.RuneCountInString(above)+1+utf8.RuneCountInString(word) <= longest
	return fits && (!capitals || unicode.IsUpper(first) || first == '-')
}

// longestValue is how long the value behind a label is at most, in bytes; what is longer is told.
const longestValue = 30

// longestFact is how long a line is at most, in characters, in a text of which no line was broken: each tells a fact.
const longestFact = 50

// shortLines reports whether a text has short lines alone.
func (g *Grid) shortLines() bool {
	for i := range g.Rows {
		if utf8.RuneCountInString(joined(g.Rows[i])) > longestFact {
			return false
		}
	}
	return true
}

// paragraphs takes a text of a paragraph a day, each beginning with its day or under it: one
// row a day, with its words. Where a line is like a heading, a blank line must stand before each day:
// lines of prose that were parted at their commas look like many things. Labels with values under each day are records.
func (g *Grid) paragraphs(headed bool, like Likeness) (Block, bool) {
	b := Block{Grid: g, Shape: Prose, Labels: []Label{{Col: 0, Text: "date"}, {Col: 1, Text: "what happened"}}}
	lines, apart, alone, last, before := 0, 0, 0, 0, ""
	keyed, facts := 0, g.shortLines()
	for i := range g.Rows {
		if g.Rows[i].filled(0, g.Width) == nil {
			continue
		}
		lines++
		text := joined(g.Rows[i])
		day, what, dated := dayLine(strings.Join(strings.Fields(text), " "), before)
		after, n := last, len(b.Rows)
		dated = dated && !(n > 0 && b.Rows[n-1].Cells[1].Text == "" && spanFirst.MatchString(text))
		last = int(g.Rows[i].Num)
		switch {
		case dated:
			before = day
			if last > after+1 {
				apart++ // a blank line stands before it
			}
			if what == "" {
				alone++
			}
			b.Rows = append(b.Rows, Row{Num: g.Rows[i].Num,
				Cells: []Cell{{Text: day, Look: Date}, {Text: what, Look: Text}}})
		case n == 0:
			b.Above = append(b.Above, text)
		default:
			if label, value, ok := key(Cell{Text: text, Look: Text}, like); ok && len(value) <= longestValue &&
				like.Label(label) >= 0.5 {
				keyed++
			}
			c := &b.Rows[n-1].Cells[1]
			if c.Text != "" && facts && !strings.ContainsAny(c.Text[len(c.Text)-1:], ".;,:") {
				c.Text += ";"
			}
			c.Text = strings.TrimSpace(c.Text + " " + text)
		}
	}
	n, long, paragraph := len(b.Rows), 0, 40
	if !headed && n >= fewTimed && 10*apart >= 8*(n-1) {
		paragraph = 16 // a blank line before each: "Trolled 3 h. No bites."
	}
	for _, row := range b.Rows {
		if len(row.Cells[1].Text) > paragraph {
			long++
		}
	}
	if 3*keyed > 2*(lines-n) {
		return Block{}, false
	}
	wrapped := (10*apart >= 8*n || alone == n && !headed) && mostWrapped*n > lines
	return b, !g.Info.Workbook && n >= 3 && 2*long > n && (3*n > lines && !headed || wrapped)
}

const weekday = `(?:mon|tue|wed|thu|fri|sat|sun|lun|mar|mer|mi[eé]|jeu|gio|jue|ven|vie|sam|s[aá]b|dom|dim|die|don|` +
	`fre|son|seg|ter|qua|qui|sex|mit|mo|di|mi|do|fr|sa|so)[\pL]*\.?,?\s+`

var (
	// several days of which a diary tells at once: "15-17 juin. Gijon, no fishing"
	daysTogether = regexp.MustCompile(
		`(?i)^(?:` + weekday + `)?(\d{1,2})\s?[-–/]\s?\d{1,2}\.?\s+(\pL{3,10})\b[\s.,;:\-–—]*(.*)$`)
	// a weekday and a number, of the month of the day before: "Lun 3. In port, rain"
	weekdayOnly = regexp.MustCompile(`(?i)^` + weekday + `(\d{1,2})(?:st|nd|rd|th|er)?(?:[.,;:]|\s[\-–—]|$)\s*(.*)$`)
	shortYear   = regexp.MustCompile(`^'?\d{2}$`)             // 2 Jan 24, and no more in its line
	threeParts  = regexp.MustCompile(`^\d+[/.-]\d+[/.-]\d+$`) // 3/6/25 in 0630: no figure of inches
	dayAndMonth = regexp.MustCompile(`^(\d{1,2})\S*(\s+(?:de\s+)?\pL{3,10}\b.*)$`)
)

// dayLine parts a line that begins with a day into the day and what is told of it. A weekday with a number alone is of
// the month of the day before it, where it comes after that day.
func dayLine(text, before string) (day, what string, ok bool) {
	text = undecorated(text)
	if m := daysTogether.FindStringSubmatch(text); m != nil && isDay(m[1]+" "+m[2]) {
		return m[1] + " " + m[2], m[3], true
	}
	if m := dayFirst.FindStringSubmatch(text); m != nil && isDay(m[2]) &&
		(threeParts.MatchString(m[2]) || !figured.MatchString(text) || inAt.MatchString(text)) {
		if whole := m[2] + " " + m[3]; shortYear.MatchString(m[3]) && isDay(whole) {
			return whole, "", true
		}
		if weekday := strings.Trim(m[1], " .,"); threeParts.MatchString(m[2]) && unit.OrderOf(weekday+" "+m[2]) !=
			unit.OrderUnknown {
			return weekday + " " + m[2], m[3], true // it settles whether day or month comes first
		}
		return m[2], m[3], true
	}
	m, last := weekdayOnly.FindStringSubmatch(text), dayAndMonth.FindStringSubmatch(before)
	if m == nil || last == nil {
		return "", "", false
	}
	n, _ := strconv.Atoi(m[1])
	was, _ := strconv.Atoi(last[1])
	return m[1] + last[2], m[2], n >= was && isDay(m[1]+last[2])
}

// decoration is what some write around the day over an entry: "* June 15 *", "== 15/6 ==", "Date: 15/6/24".
var decoration = regexp.MustCompile(
	`(?i)^[\s*=#_~-]*(?:(?:date|day|fecha|d[ií]a|data|jour|datum|tag|giorno)\s*:\s*)?|[\s*=#_~:-]*$`)

func undecorated(text string) string {
	const marks = " *=#_~-:"
	if text == "" || !strings.Contains(text[:min(len(text), longestDayWord)], ":") &&
		!strings.ContainsAny(text[:1]+text[len(text)-1:], marks) {
		return text
	}
	return decoration.ReplaceAllString(text, "")
}

// longestDayWord is within how many bytes the colon behind a word for the day stands.
const longestDayWord = 12

const spanClock = `(?:\d{1,2}[:h.]\d{2}|[0-2]\d[0-5]\d)\s*(?:[ap]\.?m\b\.?)?`

const untilWord = `\s*(?:-|–|to|till|until|a|à|au|as|às|bis|al|alle|til)\s*`

var (
	// a clock time and another right behind it: "7h30-11h40", "6:50 to 21:50", "0600 - 1130"
	clockSpan = regexp.MustCompile(`(?i)\b` + spanClock + untilWord + spanClock)
	// right under a line that is a day alone this is no day: "6.10-12.00, 5 lines"
	spanFirst = regexp.MustCompile(`(?i)^` + spanClock + untilWord + `\d`)
)

// daysOfSpans takes a text of a paragraph a day where most lines begin with a day, or stand under a line of it alone,
// and tell of the stretches from one clock time to another: sentences that begin with a clock time are no entries of
// their own there.
func (g *Grid) daysOfSpans(headed bool, like Likeness) (Block, bool) {
	lines, days, spans, before, under := 0, 0, 0, "", false
	for i := range g.Rows {
		if g.Rows[i].filled(0, g.Width) == nil {
			continue
		}
		text := strings.Join(strings.Fields(joined(g.Rows[i])), " ")
		day, what, dated := dayLine(text, before)
		dated = dated && !(under && spanFirst.MatchString(text))
		switch {
		case dated:
			days, before = days+1, day
		case under:
			what = text
		case days == 0:
			continue
		}
		if !under || dated {
			lines++
		}
		if under = dated && what == ""; clockSpan.MatchString(what) {
			spans++
		}
	}
	if days < 5 || 10*days < 8*lines || 2*spans < days {
		return Block{}, false
	}
	return g.paragraphs(headed, like)
}

// figured is a line that goes on with a figure and its unit: "7.5 kts until 1:00".
var figured = regexp.MustCompile(
	`(?i)^[\d.,/½ ]+\s*(?:kts?|kn|kns|knots?|nudos|nds|noeuds|lbs?|kgs?|ft|feet|cm|in|inch|inches|am|pm|h|hrs?|hours|lines|rods)\b`)

// inAt is a line that goes on with when the lines went in: "12/13 in 654 out 830".
var inAt = regexp.MustCompile(`(?i)^\d{1,2}/\d{1,2}\s+in\s+\d{1,2}[:.h]?\d{2}\b`)

// mostWrapped is into how many lines a day's paragraph may be broken, where a blank line stands before each.
const mostWrapped = 12

// joined is the words of a row whose text was parted at its commas or tabs.
func joined(r Row) string {
	out := ""
	for _, c := range r.Cells {
		switch text := strings.TrimSpace(c.Text); {
		case c.Look == Blank:
		case out == "":
			out = text
		case !c.Spaced && digit(out[len(out)-1]) && digit(text[0]):
			out += "," + text
		default:
			out += ", " + text
		}
	}
	return out
}

func digit(b byte) bool { return b >= '0' && b <= '9' }
