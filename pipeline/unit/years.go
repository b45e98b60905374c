package unit

import (
	"slices"
	"strings"
	"time"
)

// Years are the first and last year that a log's dates without a year may be in; one year,
// or the two of a season that crosses the new year. The zero value says nothing.
type Years struct{ From, To int }

// YearsIn finds the year or the season that a title or a file's name states: "Log 2025",
// "2025-26", "2025/2026", "season 25/26". It says nothing where the text states several that
// differ, or what may be a year and a month ("2005-06").
func YearsIn(text string) Years {
	var found Years
	for i := 0; i < len(text); {
		if !isDigit(text[i]) {
			i++
			continue
		}
		n := digitRun(text[i:])
		y, used := yearsAt(text, i, n)
		i += max(n, used)
		switch {
		case y == Years{}:
		case y == doubtfulYears, found != Years{} && found != y:
			return Years{}
		default:
			found = y
		}
	}
	return found
}

// doubtfulYears are those of a text that may mean a month as well.
var doubtfulYears = Years{-1, -1}

// yearsAt reads the year or season that begins with the n digits at i, and how much of
// the text it takes.
func yearsAt(s string, i, n int) (y Years, used int) {
	first, _ := leadingInt(s[i : i+n])
	season := n == 2 && saysSeason(s[:i])
	if season {
		first += 2000
	} else if n != 4 || first < 1990 || first > LastYear {
		return Years{}, n
	}
	rest := strings.TrimLeft(s[i+n:], " ")
	if rest != "" && strings.IndexByte("-/", rest[0]) >= 0 {
		rest = strings.TrimLeft(rest[1:], " ")
		second, m := leadingInt(rest[:digitRun(rest)])
		// 2026-06-03 is a day
		followed := len(rest) > m+1 && strings.IndexByte("-/.", rest[m]) >= 0 && isDigit(rest[m+1])
		next := m == 4 && second == first+1 || m == 2 && second == (first+1)%100
		switch {
		case !next || followed:
		case m == 2 && second <= 12 && !season:
			return doubtfulYears, len(s) - i - len(rest) + m
		default:
			return Years{first, first + 1}, len(s) - i - len(rest) + m
		}
	}
	if season {
		return Years{}, n
	}
	return Years{first, first}, n
}

// seasons are words for a season before its two years; summers those that must stand right before them.
var (
	seasons = []string{"season", "saison", "temporada", "stagione", "época", "epoca"}
	summers = []string{"summer", "winter", "verano", "invierno", "estate", "inverno", "été", "hiver", "verão", "verao",
		"sommer"}
)

func saysSeason(before string) bool {
	before = strings.TrimRight(strings.ToLower(before), " '’")
	return slices.ContainsFunc(seasons, func(w string) bool { return strings.Contains(before, w) }) ||
		slices.ContainsFunc(summers, func(w string) bool { return strings.HasSuffix(before, w) })
}

// And is what two texts say together: "2026" within "2025-26" is 2026. It reports false
// where they contradict each other.
func (y Years) And(o Years) (Years, bool) {
	switch {
	case o == Years{}:
		return y, true
	case y == Years{}:
		return o, true
	}
	both := Years{max(y.From, o.From), min(y.To, o.To)}
	if both.From > both.To {
		return Years{}, false
	}
	return both, true
}

// Date gives a day its year. Of a season that crosses the new year the months from July on
// are in the first year (common practice, no source); a weekday that is stated decides
// before that. It reports false where no year of the season has the day on its weekday.
func (y Years) Date(d DayMonth) (Date, bool) {
	if y == (Years{}) {
		return 0, false
	}
	first, firstOK := d.In(y.From)
	last, lastOK := d.In(y.To)
	switch {
	case firstOK && (!lastOK || y.From == y.To || d.Month >= time.July):
		return first, true
	case lastOK:
		return last, true
	}
	return 0, false
}

// OnlyMonth reports whether a text is a month, with its year or without, and no more: "JUNE 2025", "-- Aug --".
func OnlyMonth(text string) bool {
	if _, _, ok := MonthIn(text); !ok {
		return false
	}
	named := 0
	for _, word := range strings.FieldsFunc(text,
		func(r rune) bool { return strings.ContainsRune(" _-.,/'’()*=:", r) }) {
		var buf [maxDateWord]byte
		kind := dateWords[string(foldWord(buf[:], word))]
		_, digits := leadingInt(word)
		switch {
		case kind >= 1 && kind <= 12:
			named++
		case digits != len(word) || digits != 4: // Jan 26 is a day
			return false
		}
	}
	return named == 1
}

// MonthIn finds the month that a sheet's name states by its name, and the year beside it:
// "July", "Jan 26", "2026 March". A number of two digits is the year. It reports false where
// there is none or several. "Out" and "Set" are no months here.
func MonthIn(text string) (m time.Month, y Years, ok bool) {
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" _-.,/'’()", r) }) {
		var buf [maxDateWord]byte
		folded := string(foldWord(buf[:], word))
		kind := dateWords[folded]
		if folded == "out" || folded == "set" { // October and September elsewhere; here more often lines
			continue
		}
		v, n := leadingInt(word)
		switch {
		case kind >= 1 && kind <= 12 && (m == 0 || m == time.Month(kind)):
			m = time.Month(kind)
		case kind >= 1 && kind <= 12:
			return 0, Years{}, false
		case n == 2 && n == len(word) && y == Years{}:
			y = Years{2000 + v, 2000 + v}
		}
	}
	if full := YearsIn(text); full != (Years{}) {
		y = full
	}
	return m, y, m != 0
}
