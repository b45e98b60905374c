package layout

import (
	"errors"
	"regexp"
	"strings"
	"unicode"

	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// Look is what a cell looks like.
type Look uint8

// The looks of a cell.
const (
	Blank Look = iota
	Number
	Clock
	Date
	Duration
	Text
)

// Cell is one cell of a grid.
type Cell struct {
	Text    string
	Look    Look
	Formula string // "" where it holds none
	Comment string
	Spaced  bool // a space stood before it: in a text parted at commas, no decimal comma
}

var (
	numberLike = regexp.MustCompile(
		`^(~|c\.|ca\.?|est\.?|about)?\s*[$€£]?[-+]?\d+([.,]\d+)?\s*(%|"|''|'|#|°|[\pL]{1,4}\.?|knots|lines|rods)?\s*\??$|^\d+ \d/\d$|^\d+-\d+(\.\d)?\s*(kts?|kn|knots)?$`)
	clockLike = regexp.MustCompile(
		`(?i)^~?\d{1,2}\s*[:h.]\s*\d{2}(:\d{2}(\.\d+)?)?\s*h?\s*([ap]\.?\s?m?\.?)?$|^~?\d{1,2}\s*[ap]\.?m\.?$|^noon$`)
	dateLike = regexp.MustCompile(
		`(?i)^((mon|tue|wed|thu|fri|sat|sun|lun|mar|mer|mi[eé]|jeu|gio|jue|ven|vie|sam|s[aá]b|dom|dim|die|don|fre|son|seg|ter|qua|qui|sex)[\pL]*\.?,?\s+)?(\d{1,4}[/.\-]\d{1,2}([/.\-]\d{2,4}|\.\d{2,4}\.)?|\d{1,2}(st|nd|rd|th|\.)?[ \-]?\s?(de )?\pL{3,10}\.?,?[ \-]?\s?(de )?(\d{2,4})?|\pL{3,10}\.?[ \-]\d{1,2}(st|nd|rd|th)?(,?[ \-]\d{2,4})?)(\s*\(\pL+\.?\))?(\s+\d{1,2}:\d\d(:\d\d)?\s*([ap]m)?)?$`)
	isoLike      = regexp.MustCompile(`^\d{4}-\d{2}-\d{2}([T ]\d{2}:\d{2}(:\d{2})?.*)?$`)
	durationLike = regexp.MustCompile(
		`(?i)^\d{1,2}\s*(h|hrs?|hours?)\s*(\d{1,2}\s*(m|min)?)?$|^\d+\s*(m|min|mins|minutes)$`)
)

// classLooks are the looks of a workbook's cells by their number format.
var classLooks = map[sheet.Class]Look{sheet.Date: Date, sheet.DateTime: Date,
	sheet.Clock: Clock, sheet.Duration: Duration}

// lookOf tells what a cell looks like, from what the file knows of it, else from its text.
func lookOf(text string, class sheet.Class) Look {
	if text == "" || text == "-" || text == "--" || text == "—" {
		return Blank
	}
	if look, ok := classLooks[class]; ok && text[0] >= '0' && text[0] <= '9' {
		return look
	}
	if len(text) > 40 {
		return Text
	}
	if !strings.ContainsAny(text, "0123456789") && !strings.EqualFold(text, "noon") {
		return Text // every other look has a figure
	}
	if plainNumber(text) {
		return Number // most cells of a log: to say so without the expressions saves half of the time
	}
	switch {
	case clockLike.MatchString(text) && !strings.Contains(text, ".") || clockLike.MatchString(text) &&
		strings.ContainsAny(text, "apAP"):
		return Clock
	case isoLike.MatchString(text):
		return Date
	case durationLike.MatchString(text):
		return Duration
	// 3 Jun is no number of juns
	case dateLike.MatchString(text) && strings.IndexFunc(text, unicode.IsLetter) >= 0 && isDay(text):
		return Date
	case numberLike.MatchString(text):
		return Number
	case dateLike.MatchString(text) && strings.ContainsAny(text, "0123456789") && isDay(text):
		return Date
	}
	return Text
}

// plainNumber tells figures with one decimal mark among them at most.
func plainNumber(text string) bool {
	marks := 0
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c >= '0' && c <= '9':
		case (c == '.' || c == ',') && i > 0 && i < len(text)-1:
			marks++
		default:
			return false
		}
	}
	return marks < 2
}

// isDay tells a day from other words with a number behind them: UTC-9, Pass 2.
func isDay(text string) bool {
	if strings.IndexFunc(text, unicode.IsLetter) < 0 {
		return true
	}
	if m := dayFirst.FindStringSubmatch(text); m != nil {
		text = m[2] // without its weekday
	}
	_, moment := unit.ParseMoment(text, unit.DayFirst)
	_, day := unit.ParseDayMonth(text, unit.DayFirst)
	return !errors.Is(moment, unit.ErrNotMoment) || !errors.Is(day, unit.ErrNotDate)
}
