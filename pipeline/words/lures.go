package words

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
)

var (
	betweenNamed = regexp.MustCompile(`\s*(?:[,;\n]|\s\+\s)\s*`)
	lureTimes    = regexp.MustCompile(`^(\d)\s*[x×]?\s+(\pL.*)$`) // 2 green plugs, 2x cedar plug
	timesLure    = regexp.MustCompile(`^(.*\pL)\s*[x×](\d)$`)     // green plug x2
)

// longestLure is of how many words the name of a lure is at most; longer ones are remarks.
const longestLure = 6

// OutThere reports whether the heading of a column of lures says that they were out together.
func OutThere(heading string) bool {
	_, ok := outThere.any(Scan(heading))
	return ok
}

// SomeLure reports whether a cell for a place says that a line was out there, and not with which lure.
func SomeLure(text string) bool {
	if strings.TrimSpace(text) == "?" {
		return true
	}
	key, ok := outThere.whole(trimmed(text))
	return ok && key == "some"
}

// Lures are the lures that a cell names, each as often as it was out: "green plug, 2 cedar plugs" are three. It is nil
// where a part is no name of a lure, or says no more than the colour or weight of the one before: "diver, black, 6 oz".
func Lures(text string) []string {
	var out []string
	hues := 0
	for _, part := range betweenNamed.Split(strings.Trim(text, " ,;\n"), -1) {
		n := 1
		if m := lureTimes.FindStringSubmatch(part); m != nil {
			n, _ = strconv.Atoi(m[1])
			part = m[2]
		} else if m := timesLure.FindStringSubmatch(part); m != nil {
			n, _ = strconv.Atoi(m[2])
			part = m[1]
		}
		if !strings.ContainsFunc(part, unicode.IsLetter) || len(strings.Fields(part)) > longestLure || n < 1 {
			return nil
		}
		if toks := Scan(part); len(toks) > 0 {
			if _, _, unit := UnitAt(toks, 0); unit {
				return nil
			}
		}
		if Colour(part) {
			hues++
		}
		for range n {
			out = append(out, part)
		}
	}
	if hues > 0 && hues == len(out)-1 && !Colour(out[0]) && strings.Contains(text, ",") {
		return nil
	}
	return out
}
