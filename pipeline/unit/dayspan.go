package unit

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// mostDays is how many days a trip that is written with its first and its last lasts at the most.
const mostDays = 10

const (
	andTo = `\s*(?:[-–—/&+]|to|and|al|a|ao|au|et|bis(?: zum)?|und|y|e|through|thru|till?|until)\s*`
	nth   = `(?:st|nd|rd|th|º|\.)?`
)

var (
	daysOfMonth = regexp.MustCompile(`(?i)^(\d{1,2})` + nth + `(` + andTo + `)(\d{1,2})` + nth + // 24-25/8/24, 24-25 Aug
		`((?:[/.]|\s+(?:de |di )?)(?:\d{1,2}|\pL{3,10})\.?(?:(?:[/., ]|\s)+(?:de )?\d{2,4})?)$`)
	monthsDays = regexp.MustCompile(`(?i)^(\pL{3,10}\.?\s+)(\d{1,2})` + nth + andTo + `(\d{1,2})` + nth + // Aug 24-25
		`(,?\s+\d{2,4})?$`)
	isoDays     = regexp.MustCompile(`(?i)^(\d{4}-\d{2}-)(\d{2})` + andTo + `(\d{4}-\d{2}-)?(\d{2})$`)
	daysDay     = regexp.MustCompile(`(?i)^(\d{1,2})([/.])(\d{1,2})` + andTo + `(\d{1,2})[/.](\d{2}|\d{4})$`) // 8/24-25/24
	monthDays   = regexp.MustCompile(`^(\d{1,2})/(\d{1,2})\s*[-–—&+]\s*(\d{1,2})$`)                           // 6/17-18
	fromWords   = regexp.MustCompile(`(?i)^(?:du|dal|del|desde|from|vom|von|do|de|des|from the|le|les)\s+`)
	wordsBehind = regexp.MustCompile(`\s*\([^()\d]*\)$`)
	behindDays  = regexp.MustCompile(`(?:\s+\pL{4,})+$`)
	wordBefore  = regexp.MustCompile(`(\pL{2,10}\.?),?\s+(?:(?:den|the|le|el|il|dem) )?`)
	dayDay      = regexp.MustCompile(`(?i)^(\d{1,2})([/.])(\d{1,2})((?:[/.]\d{2,4})?)\.?` + andTo +
		`(\d{1,2})[/.](\d{1,2})((?:[/.]\d{2,4})?)$`)
)

// twoDays tells the first and the last of some days of a month, Aug 24-25: no day of a year that is written as 25.
func twoDays(text string) bool {
	if m := monthsDays.FindStringSubmatch(text); m == nil || m[4] != "" || !namesMonth(m[1]) {
		return false
	}
	_, _, ok := DaySpan(text)
	return ok
}

// DaySpan takes a cell with the first and the last of some days apart, 24-25/8/24 or Aug 24 to 25: the text of the
// first, and how many they are. It is false where they are not of one month, or may be read in two ways.
func DaySpan(text string) (first string, days int, ok bool) {
	text = strings.TrimSpace(text)
	if strings.HasSuffix(text, ")") {
		text = wordsBehind.ReplaceAllString(text, "")
	}
	if m := behindDays.FindString(text); m != "" && !slices.ContainsFunc(strings.Fields(m), namesMonth) {
		text = strings.TrimSuffix(text, m) // 7/19-20 overnight
	}
	if !strings.ContainsAny(text, "0123456789") {
		return "", 0, false
	}
	if text[0] > '9' { // letters
		text = withoutWeekdays(fromWords.ReplaceAllString(text, ""))
	}
	type span struct {
		first    string
		from, to string
	}
	var found []span
	if m := daysOfMonth.FindStringSubmatch(text); m != nil && ofMonth(m[4], strings.TrimSpace(m[2]) == "/") {
		found = append(found, span{m[1] + m[4], m[1], m[3]})
	}
	if m := monthsDays.FindStringSubmatch(text); m != nil && namesMonth(m[1]) {
		found = append(found, span{m[1] + m[2] + m[4], m[2], m[3]})
	}
	if m := isoDays.FindStringSubmatch(text); m != nil && (m[3] == "" || m[3] == m[1]) {
		found = append(found, span{m[1] + m[2], m[2], m[4]})
	}
	if m := daysDay.FindStringSubmatch(text); m != nil && isMonth(m[1]) && !dayTwice(text, m[1], m[3], m[4]) {
		found = append(found, span{m[1] + m[2] + m[3] + m[2] + m[5], m[3], m[4]})
	}
	if m := monthDays.FindStringSubmatch(text); m != nil && isMonth(m[1]) {
		month, _ := strconv.Atoi(m[1])
		found = append(found, span{m[2] + " " + time.Month(month).String()[:3], m[2], m[3]})
	}
	if m := dayDay.FindStringSubmatch(text); m != nil && (m[4] == "" || m[4] == m[7]) {
		first := m[1] + m[2] + m[3] + m[7]
		if m[1] == m[5] && isMonth(m[1]) {
			found = append(found, span{ofNamed(first, m[7], m[3], m[1]), m[3], m[6]})
		}
		if m[3] == m[6] && isMonth(m[3]) {
			found = append(found, span{ofNamed(first, m[7], m[1], m[3]), m[1], m[5]})
		}
	}
	if len(found) != 1 {
		return "", 0, false
	}
	from, errFrom := strconv.Atoi(found[0].from)
	to, errTo := strconv.Atoi(found[0].to)
	days = to - from + 1
	return found[0].first, days, errFrom == nil && errTo == nil && days > 1 && days <= mostDays && to <= 31
}

// dayTwice tells two days of one month, 05/07 a 06/07, from a month with two of its days and a year, 8/24-25/24: these
// would not follow each other, or are the same two days.
func dayTwice(text, month, from, to string) bool {
	m := dayDay.FindStringSubmatch(text)
	return m != nil && m[3] == m[6] && len(from) == len(to) && (from >= to || month == from)
}

// ofNamed is the first of some days with its month's name where it has no year: that the month stays the same tells
// which of two numbers it is, 7/5 - 7/6.
func ofNamed(first, year, day, month string) string {
	if n, err := strconv.Atoi(month); err == nil && year == "" {
		return day + " " + time.Month(n).String()[:3]
	}
	return first
}

// withoutWeekdays is a text in which two numbers have their weekday before them without these: Sat 2 - Sun 3 March.
// One weekday alone may be of either.
func withoutWeekdays(text string) string {
	at := wordBefore.FindAllStringSubmatchIndex(text, -1)
	at = slices.DeleteFunc(at, func(m []int) bool {
		var p dateParts
		p.word(text[m[2]:m[3]]) // what it is shows in p
		return !p.day
	})
	if len(at) != 2 {
		return text
	}
	return text[:at[0][2]] + text[at[0][1]:at[1][2]] + text[at[1][1]:]
}

// ofMonth tells what stands behind some days of a month for that month: its name or its number, behind a stroke
// between the days with its year.
func ofMonth(rest string, stroke bool) bool {
	parts := strings.FieldsFunc(rest, func(r rune) bool { return strings.ContainsRune(" /.,", r) })
	if len(parts) > 0 && (parts[0] == "de" || parts[0] == "di") {
		parts = parts[1:]
	}
	return len(parts) > 0 && (namesMonth(parts[0]) || isMonth(parts[0]) && (!stroke || len(parts) > 1))
}

// namesMonth tells the name of a month, and not that of a weekday.
func namesMonth(text string) bool {
	var p dateParts
	p.word(strings.Trim(text, " .")) // what it is shows in p
	return p.named > 0
}

func isMonth(text string) bool {
	n, err := strconv.Atoi(text)
	return err == nil && n >= 1 && n <= 12
}
