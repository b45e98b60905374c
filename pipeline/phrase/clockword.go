package phrase

import "wakeledger/pipeline/words"

// Parts of an hour in words: ten past seven, sept heures et demie, half after six.
var (
	hourParts = map[string]int{"quarter": 15, "half": 30, "media": 30, "demie": 30,
		"mezza": 30, "mezzo": 30, "meia": 30,
		"cuarto": 15, "quart": 15, "quarto": 15, "viertel": 15, "thirty": 30, "fifteen": 15}
	pastWords  = map[string]bool{"past": true, "after": true, "nach": true}
	toWords    = map[string]bool{"to": true, "before": true, "til": true, "till": true, "vor": true}
	hourNames  = map[string]bool{"heures": true, "heure": true, "horas": true, "h": true, "uhr": true, "oclock": true}
	minusWords = map[string]bool{"menos": true, "moins": true, "meno": true}
)

// wordClock reads a time of day in words, of twelve hours: a quarter to eleven, ten past 7,
// six thirty, las siete y media, sept heures moins le quart, halb sieben.
func (s *scanner) wordClock(i int) (item, bool) {
	if it, ok := s.partFirst(i); ok {
		return it, true
	}
	h, next, ok := s.hourAt(i)
	if !ok {
		return item{}, false
	}
	named := hourNames[s.tok(next)]
	if named {
		next++
	}
	sign, join := 1, s.tok(next)
	switch {
	case minusWords[join]:
		sign, next = -1, next+1
	case join == "y" || join == "et" || join == "e":
		next++
	case join == "thirty" || join == "fifteen":
	default:
		return item{}, false
	}
	if t := s.tok(next); t == "le" || t == "un" {
		next++
	}
	m, worded := hourParts[s.tok(next)]
	if n, ok := words.Number(s.tok(next)); !worded && ok && n < 60 && n%5 == 0 && n > 0 && (named || sign < 0) {
		m = n
	}
	if m == 0 || !s.hourWord(i) && !s.atHour(i-1) {
		return item{}, false
	}
	return inWords(h, sign*m, next+1), true
}

// halves are words for a half that an hour may stand behind.
var halves = map[string]bool{"half": true, "media": true, "demi": true, "mezza": true, "mezz": true, "meia": true,
	"halbe": true, "halben": true, "halv": true}

// halfHour reads half an hour, and an hour and a half, in words: media hora, une heure et demie.
func (s *scanner) halfHour(i int) (item, bool) {
	at, minutes := i, 0.0
	if articles[s.tok(at)] || s.tok(at) == "one" {
		at, minutes = at+1, 60
	}
	if halves[s.tok(at)] {
		at, minutes = at+1, 30
		if t := s.tok(at); articles[t] || t == "-" || t == "'" || t == "’" {
			at++
		}
	}
	if minutes == 0 || !hourWords[s.tok(at)] {
		return item{}, false
	}
	end := at + 1
	if minutes == 60 {
		if !ands[s.tok(end)] {
			return item{}, false
		}
		if end++; articles[s.tok(end)] {
			end++
		}
		if !halves[s.tok(end)] && s.tok(end) != "demie" && s.tok(end) != "mezzo" {
			return item{}, false
		}
		minutes, end = 90, end+1
	}
	return item{kind: aTime, num: minutes, end: end, unit: "h"}, true
}

// hourWords are the words for one hour.
var hourWords = map[string]bool{"hour": true, "hr": true, "hora": true, "heure": true, "ora": true, "stunde": true}

// partFirst reads a clock whose part of the hour stands first.
func (s *scanner) partFirst(i int) (item, bool) {
	if s.tok(i) == "halb" {
		h, next, ok := s.hourAt(i + 1)
		return inWords(h, -30, next), ok
	}
	if _, worded := hourParts[s.tok(i+1)]; worded && articles[s.tok(i)] {
		return s.partFirst(i + 1) // a quarter past six
	}
	m, worded := hourParts[s.tok(i)]
	if n, ok := words.Number(s.tok(i)); !worded && ok && n > 0 && n < 30 && (n%5 == 0 || s.tok(i+1) == "minutes") {
		m = n
	}
	next := i + 1
	if s.tok(next) == "minutes" || s.tok(next) == "mins" || s.tok(next) == "min" {
		next++
	}
	join := s.tok(next)
	sign := 1
	switch {
	case m == 0 || s.tok(i-1) == "from" || s.tok(i-1) == "between":
		return item{}, false
	case pastWords[join]:
	case toWords[join] && (worded || s.hourWord(i) || s.tok(i-1) == "a"):
		sign = -1
	default:
		return item{}, false
	}
	h, end, ok := s.hourAt(next + 1)
	if !ok || s.tok(end) == ":" || s.tok(end) == "." && s.near(end) && s.near(end+1) && s.digits(end+1) {
		return item{}, false
	}
	return inWords(h, sign*m, end), true
}

// hourAt reads an hour from one to twelve, in digits or in words.
func (s *scanner) hourAt(i int) (h, next int, ok bool) {
	if i >= len(s.toks) || len(s.tok(i)) > 2 && s.digits(i) || articles[s.tok(i)] {
		return 0, i, false
	}
	if noons[s.tok(i)] {
		return 12, i + 1, true
	}
	h, ok = words.Number(s.tok(i))
	if s.tok(i) == "once" && s.tok(i-1) == "las" {
		h, ok = 11, true // in English it is one time
	}
	return h, i + 1, ok && h >= 1 && h <= 12
}

func inWords(h, minutes, end int) item {
	m := (h*60 + minutes + 12*60) % (12 * 60)
	if h == 12 && minutes >= 0 {
		m += 12 * 60
	}
	return item{kind: aClock, clock: Clock{Seconds: m * 60}, end: end, num: float64(m/60*100 + m%60), digits: true}
}
