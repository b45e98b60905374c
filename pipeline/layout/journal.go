package layout

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

var (
	mailHead = regexp.MustCompile(
		`(?i)^(from|to|cc|subject|date|sent|von|an|betreff|datum|gesendet|de|para|pour|à|a|asunto|fecha|enviado|assunto|data|objet|envoyé|oggetto|inviato)\s*:\s*(.*)$`)
	wholeDay = regexp.MustCompile(
		`(?i)\d{4}-\d{2}-\d{2}|\pL{3,10}\.? \d{1,2},? \d{4}|\d{1,2}\.? (?:de )?\pL{3,10}\.? (?:de )?\d{4}|\d{1,2}[./]\d{1,2}[./]\d{4}`)
	sentAt     = regexp.MustCompile(`(?i)\b(\d{1,2}):(\d{2})(?::\d{2})?\s*([ap]m)?`)
	shortDay   = regexp.MustCompile(`(?:^|[\s(])(\d{1,2}/\d{1,2})(?:[\s).,;]|$)`)
	shortClock = regexp.MustCompile(
		`(?i)^(\d{1,2}[:.h]\d{2}\s*([ap]\.?m?\.?\b)?|[0-2]?\d[0-5]\d)\b(?:[\s,;:\-–—]+|\.\s+)(\S.*)$`)
	// an hour alone, as some write the full hours: 9h lines up
	hourFirst  = regexp.MustCompile(`(?i)^([01]?\d\s?h|2[0-4]\s?h)\s+(\pL.*)$`)
	clockAfter = regexp.MustCompile(
		`(?i)^((?:\d{1,2} )?\pL[\pL' ]{0,30}?)\s+(?:at |@ ?)?(\d{1,2}[:.h]\d{2}\s*([ap]\.?m?\.?\b)?|[0-2]?\d[0-5]\d)(?:(?:[\s,;:\-–—]+|\.\s+)(.*))?$`)
	measured = regexp.MustCompile(
		`(?i)^\d+\s*(lbs?|kgs?|gal|gals|gallons?|litres?|liters?|nm|miles?|kts?|kn|knots|ft|feet|cm|rpm|hours?|hrs?|fathoms?|fm|pounds?)\b`)
)

// journal is what the lines of mails or notes told so far.
type journal struct {
	b        Block
	day      string
	sent     unit.Date // day of the mail; 0 outside of mails
	sentTime int       // in minutes, -1 where it has none
	bySent   bool      // the day is the mail's own
	first    int       // first row of the mail
	latest   int       // its latest clock time, in minutes
	entries  int
	lines    int
	head     bool // the last line was of a mail's head
	mails    int
	sentAt   []int // when the mail of each row was sent, in minutes; -1 where it does not say
}

// journal takes mails or notes of a phone in which most lines tell what happened at a clock time,
// before the words or behind them ("picked up 10:07"), under a line for each day or under the
// head of a mail: one row a line, with its day, its time and what happened.
func (g *Grid) journal(like Likeness) (Block, bool) {
	if g.Info.Workbook || like.Event == nil {
		return Block{}, false
	}
	j := journal{b: Block{Grid: g, Shape: Records,
		Labels: []Label{{Col: 0, Text: "date"}, {Col: 1, Text: "time"}, {Col: 2, Text: "event"}}}}
	titles := g.numberedTitles()
	for i := range g.Rows {
		if g.Rows[i].filled(0, g.Width) == nil {
			continue
		}
		if _, title := titles[i]; title {
			j.day = ""
			continue
		}
		text := joined(g.Rows[i])
		if m := mailHead.FindStringSubmatch(text); m != nil && (j.head || j.mails > 0 || len(j.b.Rows) == 0) {
			j.mailHead(strings.ToLower(m[1]), m[2])
			continue
		}
		j.head = false
		for _, said := range entries(text, like) {
			j.line(g.Rows[i].Num, said, like)
		}
	}
	j.closeMail()
	j.messages()
	j.b.addTrips(titles)
	for _, r := range j.b.Rows {
		if r.Cells[0].Text == "" {
			return Block{}, false
		}
	}
	return j.b, j.entries >= 5 && 3*j.entries >= j.lines
}

// entries parts a line into what was told of each clock time, where a sentence begins with the
// time or with what happened at it: "lines in 5.55, 6 out. 9.05 on, then off. wound in at 11.50".
func entries(text string, like Likeness) []string {
	var out []string
	from := 0
	for at := 0; at+2 < len(text); at++ {
		if text[at] != '.' || text[at+1] != ' ' {
			continue
		}
		if next := strings.TrimSpace(text[at+2:]); timed(next, like) {
			out, from = append(out, text[from:at]), at+2
		}
	}
	return append(out, strings.TrimSpace(text[from:]))
}

// timed reports whether words begin with a clock time, or with what happened at one.
func timed(text string, like Likeness) bool {
	if m := shortClock.FindStringSubmatch(text); m != nil && !wholeDate.MatchString(text) {
		return !measured.MatchString(text)
	}
	m := clockAfter.FindStringSubmatch(text)
	return m != nil && like.Event(m[1]) != "" && !measured.MatchString(text[len(m[1]):])
}

// mailHead takes a line of a mail's head.
func (j *journal) mailHead(key, value string) {
	if !j.head {
		j.closeMail()
		j.head, j.day, j.sent, j.sentTime, j.bySent = true, "", 0, -1, false
		j.first, j.latest = len(j.b.Rows), 0
		j.mails++
	}
	if m := wholeDay.FindString(value); m != "" && j.sent == 0 {
		if at, err := unit.ParseMoment(strings.Replace(m, ". ", " ", 1), unit.DayFirst); err == nil && at.HasDate {
			j.sent, j.day, j.bySent = at.Date, at.Date.String(), true
			if c := sentAt.FindStringSubmatch(value); c != nil {
				j.sentTime = minutesOf(c)
			}
			return
		}
	}
	if m := shortDay.FindStringSubmatch(value); m != nil && key != "date" {
		j.shortDay(m[1])
	}
}

// minutesOf are the minutes of the hours, minutes and half of a clock time.
func minutesOf(m []string) int {
	h, _ := strconv.Atoi(m[1])
	n, _ := strconv.Atoi(m[2])
	if half := strings.ToLower(m[3]); half == "pm" && h < 12 {
		h += 12
	} else if half == "am" && h == 12 {
		h = 0
	}
	return 60*h + n
}

// shortDay takes a day without a year in a mail, of the weeks before it was sent.
func (j *journal) shortDay(text string) bool {
	for _, order := range []unit.Order{unit.MonthFirst, unit.DayFirst} {
		d, err := unit.ParseDayMonth(text, order)
		if err != nil || j.sent == 0 {
			continue
		}
		y, _, _ := j.sent.Civil()
		for _, year := range []int{y, y - 1} {
			if day := unit.DateOf(year, d.Month, d.Day); day <= j.sent && day > j.sent-21 {
				j.day, j.bySent = day.String(), false
				return true
			}
		}
	}
	return false
}

// closeMail gives the rows of a mail that was sent earlier in the day than they tell of the
// day before.
func (j *journal) closeMail() {
	if !j.bySent || j.sentTime < 0 || j.latest <= j.sentTime {
		return
	}
	for i := j.first; i < len(j.b.Rows); i++ {
		j.b.Rows[i].Cells[0].Text = (j.sent - 1).String()
	}
}

// Of short messages sent one by one from the boat.
const (
	fewMails   = 8
	lateByHalf = 4 * 60 // minutes: what a message tells of happened so long before it was sent at most
)

// messages gives each row of short messages, of a line or two each, the clock time that stands
// anywhere in it, else that at which it was sent.
func (j *journal) messages() {
	if j.mails < fewMails || 2*len(j.b.Rows) > 3*j.mails {
		return
	}
	for i := range j.b.Rows {
		time, what := &j.b.Rows[i].Cells[1], &j.b.Rows[i].Cells[2]
		sent := j.sentAt[i]
		if time.Text != "" || sent < 0 || strings.TrimSpace(what.Text) == "" {
			continue
		}
		time.Text = fmt.Sprintf("%02d:%02d", sent/60, sent%60)
		for _, at := range clockWithin.FindAllStringSubmatchIndex(what.Text, -1) {
			h, _ := strconv.Atoi(what.Text[at[2]:at[3]])
			n, _ := strconv.Atoi(what.Text[at[4]:at[5]])
			if told := 60*h + n; told <= sent && told > sent-lateByHalf && !measured.MatchString(what.Text[at[2]:]) {
				time.Text = fmt.Sprintf("%02d:%02d", h, n)
				what.Text = strings.TrimSpace(what.Text[:at[2]]) + what.Text[at[5]:]
				break
			}
		}
		j.entries++
	}
}

// clockWithin is a clock time among words: 0635, 11:20, 07h52.
var clockWithin = regexp.MustCompile(`\b([01]\d|2[0-3]|\d)[:h]?([0-5]\d)\b`)

// line takes a line of the text: a day, what happened at a time, or a remark.
func (j *journal) line(num int, text string, like Likeness) {
	time, what := "", text
	if t, rest, ok := unit.SpokenClock(text); ok && rest != "" {
		time, what = t, rest
	} else if m := hourFirst.FindStringSubmatch(text); m != nil && like.Event(m[2]) != "" {
		time, what = m[1], m[2]
	} else if m := shortClock.FindStringSubmatch(text); m != nil && !measured.MatchString(text) &&
		!wholeDate.MatchString(text) {
		time, what = strings.TrimSpace(m[1]), m[3]
	} else if m := clockAfter.FindStringSubmatch(text); m != nil && like.Event(m[1]) != "" &&
		!measured.MatchString(text[len(m[1]):]) {
		if time, what = strings.TrimSpace(m[2]), like.Event(m[1]); digitFirst(text) {
			what = m[1] // 5 lines in the water
		}
		if m[4] != "" {
			what += ", " + m[4]
		}
	} else if m := dayFirst.FindStringSubmatch(text); m != nil && isDay(m[2]) &&
		(len(m[3]) < len(text)/2+1 && !digitFirst(m[3]) || m[1] != "") {
		if j.sent == 0 || !j.shortDay(m[2]) {
			j.day, j.bySent = m[2], false
		}
		if m[1] == "" || len(m[3]) < longRest {
			return
		}
		what = m[3] // Saturday 3/5. Stayed home, blowing a gale
	}
	if j.day == "" && time == "" {
		j.b.Above = append(j.b.Above, text)
		return
	}
	j.lines++
	if time != "" {
		j.entries++
		if d := strings.Map(onlyDigits, time); len(d) >= 3 {
			h, _ := strconv.Atoi(d[:len(d)-2])
			n, _ := strconv.Atoi(d[len(d)-2:])
			j.latest = max(j.latest, 60*h+n)
		}
	}
	sent := -1
	if j.mails > 0 {
		sent = j.sentTime
	}
	j.sentAt = append(j.sentAt, sent)
	j.b.Rows = append(j.b.Rows, Row{Num: num, Cells: []Cell{{Text: j.day, Look: Date},
		{Text: time, Look: Clock}, {Text: what, Look: Text}}})
}

// longRest is from how many bytes on what stands behind a day's name and number tells of the day.
const longRest = 12

func digitFirst(s string) bool { return s != "" && digit(s[0]) }

func onlyDigits(r rune) rune {
	if r >= '0' && r <= '9' {
		return r
	}
	return -1
}
