package unit

import (
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// dateParts is a date's text taken apart: up to three numbers, perhaps a month's name.
type dateParts struct {
	num     [3]int
	digits  [3]int  // how many digits each number has
	n       int     // numbers seen
	sep     [2]rune // separators between two numbers: '-', '/', '.', ',' or ' '
	named   int     // month given by name, 0 if none
	before  int     // numbers before the name
	day     bool    // a weekday was seen
	weekday time.Weekday
}

// scan takes s apart. It returns false unless the parts have a shape that a date has.
func (p *dateParts) scan(s string) bool { return p.parts(s) && p.shaped() }

// parts takes s apart; a weekday may stand before all else, or behind it, in brackets too.
func (p *dateParts) parts(s string) bool {
	if s, ok := strings.CutSuffix(s, ")"); ok {
		if i := strings.LastIndexByte(s, '('); i > 0 {
			return p.take(strings.TrimRightFunc(s[:i], isSpace)) && p.bracket(s[i+1:])
		}
	}
	return p.take(s)
}

// bracket takes what stands in brackets behind a date: a weekday.
func (p *dateParts) bracket(s string) bool {
	rest, ok := p.word(s)
	return ok && rest == "" && p.day
}

// take takes the parts one after the other.
func (p *dateParts) take(s string) bool {
	for s != "" {
		var ok bool
		if isDigit(s[0]) {
			s, ok = p.number(s)
		} else {
			s, ok = p.word(s)
		}
		if !ok {
			return false
		}
		if s, ok = p.separator(s); !ok {
			return false
		}
	}
	return true
}

// number takes the number at the start of s, with an ordinal's ending ("25th").
func (p *dateParts) number(s string) (rest string, ok bool) {
	v, n := leadingInt(s)
	if n == 0 || p.n == len(p.num) {
		return s, false
	}
	p.num[p.n], p.digits[p.n] = v, n
	p.n++
	s = s[n:]
	if end := wordLen(s); end == 2 {
		switch strings.ToLower(s[:2]) {
		case "st", "nd", "rd", "th", "er":
			s = s[2:]
		}
	}
	return s, true
}

// word takes the word at the start of s: a weekday before all else, a month, or a filler.
func (p *dateParts) word(s string) (rest string, ok bool) {
	end := wordLen(s)
	var buf [maxDateWord]byte
	switch kind := dateWords[string(foldWord(buf[:], s[:end]))]; kind {
	case 0:
		return s, false
	case sundayWord, mondayWord, tuesdayWord, wednesdayWord, thursdayWord, fridayWord, saturdayWord:
		ok = !p.day && (p.n == 0 && p.named == 0 || end == len(s))
		p.day, p.weekday = true, time.Weekday(kind-sundayWord)
	case fillerWord:
		ok = p.n > 0 || p.named > 0
	default:
		ok = p.named == 0
		p.named, p.before = kind, p.n
	}
	return s[end:], ok
}

// separator takes what stands between two parts: spaces around at most one sign, at
// the end of the text nothing, or the full stop of a year that is an ordinal: 25.6.2026.
func (p *dateParts) separator(s string) (rest string, ok bool) {
	if s == "" {
		return s, true
	}
	sign := rune(0)
	rest = strings.TrimLeftFunc(s, isSpace)
	if rest != s {
		sign = ' '
	}
	if rest != "" && strings.IndexByte("-/.,", rest[0]) >= 0 {
		sign = rune(rest[0])
		rest = strings.TrimLeftFunc(rest[1:], isSpace)
	}
	if p.n == 1 || p.n == 2 {
		p.sep[p.n-1] = sign
	}
	return rest, rest != "" || sign == '.' && p.n == 3 && p.sep[1] == '.'
}

// shaped reports whether the parts may be a date.
func (p *dateParts) shaped() bool {
	switch {
	case p.named > 0:
		return p.n == 2 && p.before < 2 && p.fits(p.yearAt(), 1-p.yearAt())
	case p.n == 1:
		return p.digits[0] == 8
	}
	first := p.yearAt()
	return p.n == 3 && p.sep[0] == p.sep[1] && p.sep[0] != 0 && p.sep[0] != ',' &&
		p.fits(first, 1) && p.digits[2-first] <= 2
}

// fits reports whether the number at index year has a year's digits, and that at index day a day's.
func (p *dateParts) fits(year, day int) bool {
	d := p.digits[year]
	return (d == 4 || d == 2) && p.digits[day] <= 2
}

// yearAt is the index of the year: first if it has four digits, else last.
func (p *dateParts) yearAt() int {
	if p.digits[0] == 4 && (p.named == 0 || p.before == 1) {
		return 0
	}
	return p.n - 1
}

// swappable reports whether day and month are told apart by the file's order alone.
func (p *dateParts) swappable() bool {
	return p.named == 0 && p.n == 3 && p.yearAt() == 2 && p.sep[0] != '.'
}

// civil puts the parts together; the order matters only to a swappable date.
func (p *dateParts) civil(order Order) civil {
	at := p.yearAt()
	switch {
	case p.n == 1:
		return civil{p.num[0] / 10000, p.num[0] / 100 % 100, p.num[0] % 100}
	case p.named > 0:
		return civil{p.year(at), p.named, p.num[1-at]}
	case at == 0:
		return civil{p.year(at), p.num[1], p.num[2]}
	case order == MonthFirst:
		return civil{p.year(at), p.num[0], p.num[1]}
	}
	return civil{p.year(at), p.num[1], p.num[0]}
}

// year expands a year of two digits: 00 to 69 are 2000 to 2069, 70 to 99 are 1970 to 1999.
func (p *dateParts) year(at int) int {
	y := p.num[at]
	switch {
	case p.digits[at] > 2:
	case y < 70:
		y += 2000
	default:
		y += 1900
	}
	return y
}

// wordLen is the length in bytes of the letters at the start of s.
func wordLen(s string) int {
	for i, r := range s {
		if r < utf8.RuneSelf && (r|0x20 < 'a' || r|0x20 > 'z') || !unicode.IsLetter(r) {
			return i
		}
	}
	return len(s)
}

// maxDateWord is in bytes; the longest word of the table is shorter.
const maxDateWord = 16

// Kinds of words in a date beside the months, which are 1 to 12.
const (
	sundayWord = iota + 13
	mondayWord
	tuesdayWord
	wednesdayWord
	thursdayWord
	fridayWord
	saturdayWord
	fillerWord
)

// dateWords are the words of a date in lower case: in full, and the usual short
// forms where no two languages clash ("mar" is March, never mardi or martes).
var dateWords = map[string]int{
	"jan": 1, "january": 1, "januar": 1, "jän": 1, "jänner": 1, "janv": 1, "janvier": 1,
	"ene": 1, "enero": 1, "janeiro": 1,
	"feb": 2, "february": 2, "februar": 2, "fév": 2, "fev": 2, "févr": 2, "fevr": 2, "février": 2,
	"fevrier": 2, "febrero": 2, "fevereiro": 2,
	"mar": 3, "march": 3, "mär": 3, "märz": 3, "maerz": 3, "mrz": 3, "mars": 3, "marzo": 3, "março": 3, "marco": 3,
	"apr": 4, "april": 4, "avr": 4, "avril": 4, "abr": 4, "abril": 4,
	"may": 5, "mai": 5, "mayo": 5, "maio": 5,
	"jun": 6, "june": 6, "juni": 6, "juin": 6, "junio": 6, "junho": 6,
	"jul": 7, "july": 7, "juli": 7, "juil": 7, "juillet": 7, "julio": 7, "julho": 7,
	"aug": 8, "august": 8, "août": 8, "aout": 8, "ago": 8, "agosto": 8,
	"sep": 9, "sept": 9, "september": 9, "septembre": 9, "septiembre": 9, "setiembre": 9, "set": 9, "setembro": 9,
	"oct": 10, "october": 10, "okt": 10, "oktober": 10, "octobre": 10, "octubre": 10, "out": 10, "outubro": 10,
	"nov": 11, "november": 11, "novembre": 11, "noviembre": 11, "novembro": 11,
	"dec": 12, "december": 12, "dez": 12, "dezember": 12, "déc": 12, "décembre": 12, "decembre": 12, "dic": 12,
	"diciembre": 12, "dezembro": 12,
	"gennaio": 1, "gen": 1, "febbraio": 2, "aprile": 4, "maggio": 5, "mag": 5, "giugno": 6, "giu": 6, "luglio": 7,
	"lug": 7, "settembre": 9, "ottobre": 10, "ott": 10, "dicembre": 12, "desember": 12, "des": 12,

	"mon": mondayWord, "monday": mondayWord, "mo": mondayWord, "lun": mondayWord,
	"tue": tuesdayWord, "tues": tuesdayWord, "tuesday": tuesdayWord, "di": tuesdayWord,
	"wed": wednesdayWord, "weds": wednesdayWord, "wednesday": wednesdayWord, "mi": wednesdayWord,
	"mer": wednesdayWord, "mié": wednesdayWord,
	"thu": thursdayWord, "thur": thursdayWord, "thurs": thursdayWord, "thursday": thursdayWord, "do": thursdayWord,
	"jeu": thursdayWord, "jue": thursdayWord,
	"fri": fridayWord, "friday": fridayWord, "fr": fridayWord, "ven": fridayWord, "vie": fridayWord,
	"sat": saturdayWord, "saturday": saturdayWord, "sa": saturdayWord, "sam": saturdayWord, "sáb": saturdayWord,
	"sun": sundayWord, "sunday": sundayWord, "so": sundayWord, "dom": sundayWord, "dim": sundayWord,
	"lundi": mondayWord, "lunes": mondayWord, "lunedì": mondayWord, "lunedi": mondayWord, "montag": mondayWord,
	"mardi": tuesdayWord, "martes": tuesdayWord, "martedì": tuesdayWord, "martedi": tuesdayWord,
	"dienstag": tuesdayWord, "mercredi": wednesdayWord, "miércoles": wednesdayWord, "miercoles": wednesdayWord,
	"mercoledì": wednesdayWord, "mercoledi": wednesdayWord, "mittwoch": wednesdayWord,
	"jeudi": thursdayWord, "jueves": thursdayWord, "giovedì": thursdayWord, "giovedi": thursdayWord,
	"donnerstag": thursdayWord, "vendredi": fridayWord, "viernes": fridayWord, "venerdì": fridayWord,
	"venerdi": fridayWord, "freitag": fridayWord,
	"samedi": saturdayWord, "sábado": saturdayWord, "sabado": saturdayWord, "sabato": saturdayWord,
	"samstag": saturdayWord, "dimanche": sundayWord, "domingo": sundayWord, "domenica": sundayWord,
	"sonntag": sundayWord,

	"of": fillerWord, "the": fillerWord, "de": fillerWord, "del": fillerWord,
}
