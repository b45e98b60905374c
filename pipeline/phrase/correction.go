package phrase

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/words"
)

// Correction is what a row says of another one, which it names by its number.
type Correction struct {
	Of    string // the other row's number, as written
	Undo  bool   // it was entered twice, or never was
	What  string // the column that it mends: "speed"; empty where that is not said
	Is    string // what it should say
	Not   string // and what it says; empty where that is not said
	Whole bool   // What, Is and Not are all told
	Fish  string // the number of the fish of which it says what became; empty where it says that of none
	Fate  words.Fate
}

var (
	mends = regexp.MustCompile(`(?i)(?:^|\PL)(?:correct(?:s|ing|ion)?|amend(?:s|ing|ment)?|corrig\pL*|correcci[oó]n|` +
		`correg\pL*|rectifi\pL*|rettific\pL*|correzione|corre[cç][aã]o|berichtig\pL*|korrektur|korrigier\pL*)` +
		`\P{L}(\D{0,25})(\d{1,5}(?:/\d{2,4})?)\b(.*)`)
	undoes = regexp.MustCompile(`(?i)(?:^|\PL)(?:revers(?:e|es|ing|al)|void(?:s|ing)?|anul\pL*|annul\pL*|` +
		`contre-?pass\pL*|storn\pL*|estorn\pL*|extorn\pL*)\P{L}(\D{0,25})(\d{1,5})\b`)
	numberedFish = regexp.MustCompile(`(?i)\P{L}(?:no\.?|nr\.?|num\.?|n[°º]|#)\s*(\d{1,3})\b([^;.]*)`)
	isNot        = regexp.MustCompile(
		`(?i)^(.*?)\P{L}(?:was|were|is|are|should (?:be|read|have been)|era|eran|es|son|[ée]tait|` +
			`[ée]taient|est|sont|erano|sono|eram|s[ãa]o|war|waren|ist|sind)\s+(\S+?)[,;]?\s+(?:and |y |et |e |und )?` +
			`(?:not|no|non|pas|n[ãa]o|nicht|instead of|en vez de|au lieu de|invece di|em vez de|statt)\s+` +
			`(?:the |las? |l[eo]s? )?(\S+)`)
)

// CorrectionIn reads a row's remark that mends another row, or takes it back: "correcting entry 6: speed was 14, not
// 4",
// "to reverse entry 19".
func CorrectionIn(text string) (Correction, bool) {
	if m := undoes.FindStringSubmatch(text); m != nil {
		return Correction{Of: m[2], Undo: true}, true
	}
	m := mends.FindStringSubmatch(text)
	if m == nil {
		return Correction{}, false
	}
	c := Correction{Of: m[2]}
	if s := isNot.FindStringSubmatch(" " + m[3]); s != nil {
		bare := func(s string) string { return strings.Trim(s, " .,;:!\"'()") }
		c.What, c.Is, c.Not = bare(s[1]), bare(s[2]), bare(s[3])
		c.Whole = c.What != "" && c.Is != "" && c.Not != ""
	} else if f := numberedFish.FindStringSubmatch(m[3]); f != nil {
		if fate, _, _, ok := words.FateOf(f[2]); ok && fate > words.Bit {
			c.Fish, c.Fate = f[1], fate
		}
	}
	return c, true
}

var ownMend = regexp.MustCompile(`(?i)(?:^|[^\pL\d.,:])(\d{1,3}(?:[.,]\d{1,2})?)\s+(\pL{3,})[,;]?\s+` +
	`(?:and |y |et |e |und )?(?:not|non|pas|no|n[ãa]o|nicht|instead of|en vez de|au lieu de|invece di|em vez de|statt)` +
	`\s+(?:the |las? |l[eo]s? )?(\d{1,3}(?:[.,]\d{1,2})?)(?:\PL|$)`)

// OwnCorrection reads a remark that mends a figure of its own row: "read 5 lines, and not 4". Whether the row has that
// figure tells whether it does.
func OwnCorrection(text string) (Correction, bool) {
	m := ownMend.FindStringSubmatch(text)
	if m == nil {
		return Correction{}, false
	}
	return Correction{What: m[2], Is: m[1], Not: m[3], Whole: true}, true
}
