package words

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var places = mustLoad("places")

// PlaceAt finds a place in the spread at token i of prose: "shotgun", "right short",
// "way back". Words such as "left" and "long" are a place only together, or where sure is
// set because "on the" stands before them.
func PlaceAt(toks []Token, i int, sure bool) (next int, ok bool) {
	n, strong, thing := 0, sure, false
	if sure && loneCode(toks, i) {
		return i + 1, true // bite on C, missed
	}
	for next = i; next < len(toks) && n < 4 && (n == 0 || !Stops(toks[next])); n++ {
		part := next
		if toks[next].Text == "-" && n > 0 && next+1 < len(toks) && !toks[next].Gap && !toks[next+1].Gap {
			part++
		}
		if n > 0 && ofWords[toks[next].Text] && next+1 < len(toks) {
			part++ // canne de gauche
		}
		h, ok := placePart(toks, part, n)
		if !ok {
			break
		}
		strong = strong || h.Key == "sure" || h.Key == "code" && capitalCode(toks[part])
		thing = thing || h.Key != "side" && h.Key != "code"
		next = h.Next()
	}
	return next, n > 0 && (strong || n > 1 && thing)
}

// placePart is the n-th part of a place at a token.
func placePart(toks []Token, i, n int) (Hit, bool) {
	for _, e := range places.by()[toks[i].Text] {
		used, ok := e.match(toks, i)
		switch {
		case !ok, n == 0 && e.key == "thing", e.key == "first" && (n > 0 || !sideFollows(toks, used[len(used)-1]+1)):
		case e.key == "code" && (n > 0 || !sideLetter(toks, i) && !capitalCode(toks[i])):
		default:
			return Hit{Key: e.key, Used: used}, true
		}
	}
	return Hit{}, false
}

// sideFollows reports whether a side or a part stands at token i, as in "caña izquierda",
// perhaps behind "de": the noun comes first in the Romance languages.
func sideFollows(toks []Token, i int) bool {
	if i < len(toks) && ofWords[toks[i].Text] {
		i++
	}
	if i >= len(toks) {
		return false
	}
	for _, e := range places.by()[toks[i].Text] {
		if e.key == "side" || e.key == "part" {
			return true
		}
	}
	return false
}

// capitalCode reports whether a token may be the code of a place in prose: LL, SR.
func capitalCode(t Token) bool { return t.Caps && len(t.Text) > 1 }

// loneCode reports whether a token is a capital that is the code of a place, before a comma or the end.
func loneCode(toks []Token, i int) bool {
	if t := toks[i]; !t.Caps || len(t.Text) != 1 || i+1 < len(toks) && !Stops(toks[i+1]) {
		return false
	}
	return slices.ContainsFunc(places.by()[toks[i].Text], func(e entry) bool { return e.key == "code" })
}

// sideLetter reports whether a lone letter is a side: "R short".
func sideLetter(toks []Token, i int) bool {
	if t := toks[i].Text; t != "r" && t != "l" && t != "p" && t != "s" || i+1 >= len(toks) {
		return false
	}
	for _, e := range places.by()[toks[i+1].Text] {
		if e.key == "part" || e.key == "sure" {
			return true
		}
	}
	return false
}

var (
	ofWords    = set("de del di do da d")
	onWords    = set("on off from en sur sul sulla na no auf an")
	onTheWords = set("na nas sul sulla sulle")
	theWords   = set("the la el le lo il o a der die das dem l our my")
)

// AfterOn reports whether "on the" stands before token i, so that what follows is a place; or "on" alone, where a comma
// or nothing follows: "bite on middle, missed".
func AfterOn(toks []Token, i int) bool {
	if i >= 2 && toks[i-1].Text == "on" && (i+1 == len(toks) || Stops(toks[i+1])) {
		return true
	}
	return i >= 2 && onWords[toks[i-2].Text] && theWords[toks[i-1].Text] || i >= 1 && onTheWords[toks[i-1].Text]
}

// IsPlace reports whether a heading or a cell is a place in the spread and nothing else:
// "short corner", "R long", "P1", "rod 3", "stbd rigger".
func IsPlace(text string) bool {
	toks := trimmed(text)
	found := false
	for i := 0; i < len(toks); {
		h, ok := places.at(toks, i)
		switch {
		case ok && h.Key == "thing" && i == 0:
			i, found = h.Next(), found || toks[len(toks)-1].Kind == Digits
		case ok:
			i, found = h.Next(), true
		case toks[i].Kind == Digits && len(toks[i].Text) < 3 && (found || i > 0), toks[i].Text == "#",
			toks[i].Text == "/", toks[i].Text == "-", theWords[toks[i].Text]:
			i++
		default:
			return false
		}
	}
	return found
}

// BehindPlace is what a heading says behind a place in the spread: "bites" of "Port long bites".
func BehindPlace(text string) (rest string, ok bool) {
	words := strings.Fields(text)
	for n := len(words) - 1; n > 0; n-- {
		if IsPlace(strings.Join(words[:n], " ")) {
			return strings.Join(words[n:], " "), true
		}
	}
	return "", false
}

// QuietMark reports whether a cell under a place of the spread is no more than a mark that nothing struck there: a
// dash, a dot, a nought.
func QuietMark(text string) bool {
	return text != "" && (strings.Trim(text, "-–— ") == "" || text == "." || text == "0" || text == "/" ||
		strings.EqualFold(text, "o"))
}

// numberedLine is a line that is known by its number: "no.1", "#3".
var numberedLine = regexp.MustCompile(`(?i)^(?:no\.?|nr\.?|n[°º]|#)\s*\d{1,2}$`)

// placesListed counts places of a spread that are named one after the other, each once: "LR, RR, C", "P1 S1 P2", "no.1,
// no.2".
func placesListed(parts []string) (n int, ok bool) {
	if len(parts) == 1 {
		parts = strings.Fields(parts[0])
		if slices.ContainsFunc(parts, func(p string) bool { return len(p) > longestCode }) {
			return 0, false
		}
	}
	seen := map[string]bool{}
	for _, p := range parts {
		key := strings.ToLower(p)
		if seen[key] || !numberedLine.MatchString(p) && !IsPlace(p) {
			return 0, false
		}
		seen[key] = true
	}
	return len(seen), len(seen) > 1
}

// longestCode is how many letters the code of a place has at the most.
const longestCode = 3

// numbered is a number of lines before their place: "2 long".
var numbered = regexp.MustCompile(`^(\d{1,2})\s+(\D+)$`)

// LinesAt adds up the lines at several places of a spread: "2 long, 2 short, 1 shotgun" are five, and so many are the
// places that a lure is named at, or that are named one by one: "LR, RR, LF". It reports false for a text that holds
// anything else.
func LinesAt(text string) (n int, ok bool) {
	if n, ok = luresAt(text); ok {
		return n, true
	}
	parts := partsOfSpread.Split(strings.TrimSpace(text), -1)
	if n, ok = placesListed(parts); ok {
		return n, true
	}
	placed := 0
	for _, part := range parts {
		m := numbered.FindStringSubmatch(part)
		if m == nil {
			return 0, false
		}
		if partOfSpread(m[2]) {
			placed++
		}
		of, _ := strconv.Atoi(m[1])
		n += of
	}
	return n, 2*placed > len(parts) && len(parts) > 1 // a word that is no place here may be one of his own
}

// partOfSpread reports whether a text is a place of the spread, or a word of one: "longue" of "longue babord".
func partOfSpread(text string) bool {
	toks := trimmed(strings.TrimSuffix(text, "s"))
	if len(toks) == 1 {
		if next, ok := places.atKey(toks, 0, "part"); ok && next == 1 {
			return true
		}
	}
	return IsPlace(text) || IsPlace(strings.TrimSuffix(text, "s"))
}

// besideTeasers is a number of lines with what is towed beside them without a hook.
var besideTeasers = regexp.MustCompile(
	`(?i)^(\d{1,2})\s*(?:\pL+\s*)?(?:\+|&|,)\s*(?:\d{1,2}\s*)?(?:teasers?|dredges?)$`)

// BesideTeasers is the number of lines of a text that tells what is towed beside them without a hook: "6 + teaser".
func BesideTeasers(text string) (lines string, ok bool) {
	if m := besideTeasers.FindStringSubmatch(text); m != nil {
		return m[1], true
	}
	return "", false
}

var summed = regexp.MustCompile(`^\d{1,2}(?:\s*\+\s*\d{1,2})+$`)

// Summed adds up figures with plus signs between: "2+1", the lines of two places. It reports false for anything else.
func Summed(text string) (n int, ok bool) {
	if !strings.Contains(text, "+") || !summed.MatchString(text) {
		return 0, false
	}
	for _, part := range strings.Split(text, "+") {
		of, _ := strconv.Atoi(strings.TrimSpace(part))
		n += of
	}
	return n, true
}

var (
	partsOfSpread = regexp.MustCompile(`\s*(?:[,;+&]|\band\b)\s*`)
	betweenLures  = regexp.MustCompile(`\s*[|;\n]\s*`)
	lureAt        = regexp.MustCompile(`^([\pL\d ]{1,20}?)\s*[=:]\s*\S`)
	teaserAt      = regexp.MustCompile(`(?i)^[\[(]?t[\])]|\bteasers?\b`) // [T] daisy chain
)

// luresAt counts the lures of a spread, each named with its place: "LR=red jet | SR=cedar plug | [T] bird" are two. A
// place that is named twice may be a change of lure: that is no count.
func luresAt(text string) (n int, ok bool) {
	seen := map[string]bool{}
	for _, part := range betweenLures.Split(strings.TrimSpace(text), -1) {
		m := lureAt.FindStringSubmatch(part)
		switch {
		case teaserAt.MatchString(part):
		case m == nil || !IsPlace(m[1]) || seen[strings.ToLower(m[1])]:
			return 0, false
		default:
			seen[strings.ToLower(m[1])] = true
		}
	}
	return len(seen), len(seen) > 0
}
