package phrase

import (
	"regexp"
	"strconv"
	"strings"

	"wakeledger/pipeline/words"
)

// labelOf is a label with a number behind it, at the head of a part of a text: "bites: 4", "lost = 2".
var labelOf = regexp.MustCompile(`(?im)(?:^|[.;,(]\s*)(\pL[\pL ]{2,20}?)(\s*[:=]\s*|\s+)(\d{1,2})\b`)

// furtherItem is a further item of a list behind a label: "lost: 2 wahoo, 1 mahi" are all lost.
var furtherItem = regexp.MustCompile(`^[^.;\n(]*(?:\([^()]*\)[^.;\n(]*)*,\s*\d`)

// labelled writes labels with their numbers as a sentence has them, byte for byte as long: "bites: 4" is "4 bites ",
// "landed: 2 yellowfin" is "landed  2 yellowfin".
func labelled(text string) string {
	if !strings.ContainsAny(text, "0123456789") {
		return text
	}
	out := []byte(text)
	for _, m := range labelOf.FindAllStringSubmatchIndex(text, -1) {
		label, sign, n := text[m[2]:m[3]], text[m[4]:m[5]], text[m[6]:m[7]]
		fate, only := words.FateOnly(label)
		colon := strings.ContainsAny(sign, ":=")
		switch {
		case !only:
		case fate == words.Bit && (colon || n == "0") && endsPart(text[m[7]:]):
			copy(out[m[2]:m[7]], n+" "+label+strings.Repeat(" ", len(sign)-1))
		case fate != words.Bit && colon && (fate == words.Landed || !furtherItem.MatchString(text[m[7]:])):
			copy(out[m[4]:m[5]], strings.Repeat(" ", len(sign)))
		}
	}
	return string(out)
}

// endsPart reports whether a text goes on with a sign that parts it, or not at all.
func endsPart(rest string) bool {
	rest = strings.TrimLeft(rest, " ")
	return rest == "" || strings.ContainsAny(rest[:1], ".;,)\n")
}

// underLabel is a part of a text that begins with a label: "Released: 3 skipjack, 1 mahi".
var underLabel = regexp.MustCompile(`^\s*(\pL[\pL ]{2,20}?)\s*[:=]\s*(.+)$`)

// underLabels reads a text all of whose parts are lists under labels of what became of their fish: "Kept: 2 wahoo, 1
// mahi. Released: 3 skipjack. Lost: 1". Numbers alone are of fish without a name.
func underLabels(text string, d Defaults) (s Story, ok bool) {
	s = Story{Landed: -1, Strikes: -1}
	lists, at := 0, 0
	for _, part := range remarkEnd.Split(text, -1) {
		from := at
		at += len(part) + 1
		if strings.TrimSpace(part) == "" {
			continue
		}
		m := underLabel.FindStringSubmatch(part)
		if m == nil {
			return s, false
		}
		fate, only := words.FateOnly(m[1])
		n, err := strconv.Atoi(strings.TrimSpace(m[2]))
		nothing := err == nil && n == 0 || words.Nothing(m[2])
		switch {
		case !only || fate == words.FateUnknown:
			return s, false
		case fate == words.Bit && err == nil:
			s.Strikes = n
		case fate == words.Bit || fate == words.Hooked:
			return s, false
		case nothing:
		case err == nil:
			s.Bites = append(s.Bites, Bite{Fish: Fish{N: n, Fate: fate}, Told: from})
		default:
			fish := FishList(m[2], d)
			for _, f := range fish {
				if f.Name == "" && f.LengthCm+f.Kg == 0 {
					return s, false
				}
				if f.Fate == words.FateUnknown {
					f.Fate = fate
				}
				s.Bites = append(s.Bites, Bite{Fish: f, Told: from})
			}
			if lists++; len(fish) == 0 {
				return s, false
			}
		}
	}
	sum := 0
	for _, b := range s.Bites {
		sum += max(b.N, 1)
	}
	if s.Strikes > sum && sum > 0 {
		s.Bites = append(s.Bites, Bite{Fish: Fish{N: s.Strikes - sum, Fate: words.Bit}})
	}
	s.Nothing = len(s.Bites) == 0
	return s, lists > 0 && s.Strikes != 0 && (s.Strikes < 0 || s.Strikes >= sum)
}
