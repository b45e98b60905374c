package sheet

import (
	"math"
	"strconv"
	"strings"
)

// Class is what a cell's number format makes of the number in it. Texts, booleans
// and errors are Plain whatever their format says.
type Class uint8

// The classes of cells.
const (
	Plain    Class = iota
	Date           // a day
	Clock          // a time of day
	DateTime       // both
	Duration       // hours that may pass 24 ([h]:mm), or minutes and seconds alone
	Cents          // two decimals (0.00): 6.1 is shown as 6.10, which may be a clock's ten past six
)

// formatClass tells the class of a number format by its code, or by its number
// where it is one of those without a code (ECMA-376 part 1, 18.8.30).
func formatClass(id int, code string) Class {
	if code != "" {
		return codeClass(code)
	}
	switch {
	case 14 <= id && id <= 17:
		return Date
	case 18 <= id && id <= 21:
		return Clock
	case id == 22:
		return DateTime
	case 45 <= id && id <= 47:
		return Duration
	case id == 2:
		return Cents
	}
	return Plain
}

// shown writes the numbers of a row out as their formats show them, where trailing noughts tell something.
func shown(cells []string, class []Class) {
	for i, c := range class {
		if c == Cents && i < len(cells) {
			cells[i] = cents(cells[i])
		}
	}
}

// noise is how many decimals a stored number has at least whose last ones are what arithmetic left.
const noise = 12

// cents is a number with two decimals; one that has more stays as it is.
func cents(text string) string {
	whole, part, _ := strings.Cut(text, ".")
	if whole == "" || len(part) == 2 || strings.Trim(whole+part, "0123456789") != "" {
		return text
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || len(part) > 2 && (len(part) < noise || math.Abs(100*x-math.Round(100*x)) > 1e-9*x) {
		return text
	}
	return strconv.FormatFloat(x, 'f', 2, 64)
}

// codeClass reads the letters of a format. An m is a minute beside an hour or a
// second and else a month.
func codeClass(code string) Class {
	if code == "0.00" {
		return Cents
	}
	letters, elapsed := formatLetters(strings.ToLower(code))
	var date, hours, short bool
	for i, c := range letters {
		switch {
		case c == 'h':
			hours = true
		case c == 's', c == 'm' && (i > 0 && letters[i-1] == 'h' || i+1 < len(letters) && letters[i+1] == 's'):
			short = true
		default:
			date = true
		}
	}
	return classOf(date, hours, short, elapsed)
}

func classOf(date, hours, short, elapsed bool) Class {
	switch {
	case elapsed:
		return Duration
	case date && (hours || short):
		return DateTime
	case date:
		return Date
	case hours:
		return Clock
	case short:
		return Duration
	}
	return Plain
}

// formatLetters are the letters of dates and times in a format's first section,
// each run of one as one letter, without what stands in quotes or brackets.
// elapsed tells one of them in brackets of its own, as in [h]:mm.
func formatLetters(code string) (letters []byte, elapsed bool) {
	for i := 0; i < len(code); i++ {
		c := code[i]
		switch c {
		case ';':
			return letters, elapsed
		case '\\', '_', '*':
			i++ // what follows is a character, not a letter of the format
			continue
		case '"', '[':
			closing := byte('"')
			if c == '[' {
				closing = ']'
			}
			n := strings.IndexByte(code[i+1:], closing)
			if n < 0 {
				return letters, elapsed
			}
			word := code[i+1 : i+1+n]
			i += n + 1
			if c == '"' || word == "" || !strings.Contains("hms", word[:1]) || strings.Trim(word, word[:1]) != "" {
				continue
			}
			c, elapsed = word[0], true
		case 'a':
			if strings.HasPrefix(code[i:], "am/pm") {
				i += len("m/pm")
			}
			continue
		}
		if strings.IndexByte("ydhms", c) >= 0 && (len(letters) == 0 || letters[len(letters)-1] != c) {
			letters = append(letters, c)
		}
	}
	return letters, elapsed
}

// classSet keeps the classes of a row once for all rows that have the same.
type classSet struct {
	kinds [][]Class
	ids   map[string]uint32
}

// id is the number in kinds of a row's classes; 0 is a row of Plain cells.
func (s *classSet) id(list []Class) uint32 {
	for len(list) > 0 && list[len(list)-1] == Plain {
		list = list[:len(list)-1]
	}
	if s.ids == nil {
		s.ids, s.kinds = map[string]uint32{"": 0}, [][]Class{nil}
	}
	id, ok := s.ids[string(list)]
	if !ok {
		id = uint32(len(s.kinds))
		s.ids[string(list)] = id
		s.kinds = append(s.kinds, append([]Class(nil), list...))
	}
	return id
}

// setClass sets the class of cell i, counted from 0.
func setClass(list []Class, i int, c Class) []Class {
	for len(list) <= i && c != Plain {
		list = append(list, Plain)
	}
	if i < len(list) {
		list[i] = c
	}
	return list
}
