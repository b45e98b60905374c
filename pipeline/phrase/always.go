package phrase

import (
	"regexp"
	"strconv"
	"strings"

	"wakeledger/pipeline/words"
)

// A captain says above a table once what became of a kind of fish all season: "Sailfish always released. All else kept
// unless noted."
var (
	always = regexp.MustCompile(`(?i)(?:^|\PL)(?:always|all|siempre|toujours|sempre|immer|alle)(?:\PL|$)`)
	unless = regexp.MustCompile(`(?i)(?:^|\PL)(?:unless|except|salvo|excepto|sauf|tranne|exceto|außer|sofern nicht|` +
		`wenn nicht)(?:\PL|$)`)
	denied = regexp.MustCompile(`(?i)(?:^|\PL)(?:no|not|never|nothing|nunca|jamais|pas|mai|non|nie|nicht|kein\pL*|` +
		`n[ãa]o)(?:\PL|$)`)
	article  = regexp.MustCompile(`(?i)^(?:the|our|l[oa]s|nuestr[oa]s|les|nos|die|unsere|[oa]s|gli|i|le)\s+`)
	fishEach = regexp.MustCompile(`\s*(?:[,&+/]|\s(?:and|y|et|und|e)\s)\s*`)
	sentence = regexp.MustCompile(`[.;\n]`)
)

// longestSaying is the most words that say what becomes of a kind of fish: more are the story of a day.
const longestSaying = 8

// AlwaysReleased are the names of the fish that a text says are let go whenever they are caught, as written.
func AlwaysReleased(text string) []string {
	var names []string
	for _, s := range sentence.Split(text, -1) {
		if at := unless.FindStringIndex(s); at != nil {
			s = s[:at[0]]
		}
		fate, _, at, ok := words.FateOf(s)
		if !ok || fate != words.Released || !always.MatchString(s) || denied.MatchString(s) ||
			strings.ContainsAny(s, "0123456789") || len(strings.Fields(s)) > longestSaying {
			continue
		}
		name := always.ReplaceAllString(s[:at[0]]+" "+s[at[1]:], " ")
		for _, one := range fishEach.Split(strings.Join(strings.Fields(name), " "), -1) {
			if one = article.ReplaceAllString(strings.Trim(one, " ,:-–"), ""); one != "" {
				names = append(names, one)
			}
		}
	}
	return names
}

// KeptUnlessTold tells a text which says that fish were kept where nothing else is said: the counts are then of all
// fish, and remarks say which of them were let go.
func KeptUnlessTold(text string) bool {
	for _, s := range sentence.Split(text, -1) {
		at := unless.FindStringIndex(s)
		if at == nil || denied.MatchString(s[:at[0]]) || strings.ContainsAny(s, "0123456789") {
			continue
		}
		if fate, _, _, ok := words.FateOf(s[:at[0]]); ok && fate == words.Landed {
			return true
		}
	}
	return false
}

// before are words for the time up to a day.
var before = regexp.MustCompile(`(?i)(?:^|\PL)(?:before|until|till?|up to|antes|hasta|avant|jusqu\pL*|prima|fino|` +
	`até|vor|bis)(?:\PL|$)`)

// bareNumber is a number of one or two figures among words.
var bareNumber = regexp.MustCompile(`(?:^|[^\d.,:/])(\d{1,2})(?:[^\d.,:/]|[.,]\s|[.,]?$)`)

// UsualIn is the one number that a heading says is usual in its cells, "Rods (always 5 before July)", and whether it
// says that of the time before some day.
func UsualIn(heading string) (n int, early, ok bool) {
	toks := words.Scan(heading)
	numbers := bareNumber.FindAllStringSubmatch(heading, -1)
	for i := range toks {
		if _, usual := words.LineAt(toks, i, "usual"); usual && len(numbers) == 1 {
			n, _ = strconv.Atoi(numbers[0][1])
			return n, before.MatchString(heading), n > 0
		}
	}
	return 0, false, false
}
