package phrase

import (
	"regexp"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// One bite may be told in two parts: where it came, on which lure and when, and behind a colon what it was and what
// became of it: "Run 2, 8:21, bite on the purple one, G (doing 9 kn then): yellowfin, 54 cm, let go at the boat".

// biteHead is the part before the colon.
type biteHead struct {
	fate    words.Fate // bite or hooked
	session int        // the number of its stretch; 0 where none is named
	at      *Clock
	place   string
	kn      float64
}

var (
	headColon   = regexp.MustCompile(`:\s+`)
	headBracket = regexp.MustCompile(`\s*\(([^()]*)\)\s*$`)
	headSession = regexp.MustCompile(
		`(?i)^(?:run|pass|set|stretch|session|leg|tour|passe|pasada|passata)\s*#?(\d{1,2})$`)
)

// OneBite tells a text that is one bite in two parts.
func OneBite(text string) bool { _, _, ok := headOf(text); return ok }

// headed is the beginning of a sentence that a word with a colon opens, and sentenceEnd where it ends.
var (
	headed      = regexp.MustCompile(`(?:^|[.;!]\s+)(\pL[\pL ]{1,15}:)\s`)
	sentenceEnd = regexp.MustCompile(`[.;!](?:\s|$)`)
)

// biteHeads are the places of the words for a bite, with their colons, that open sentences.
func biteHeads(text string) (out [][2]int) {
	for from := 0; from < len(text); {
		m := headed.FindStringSubmatchIndex(text[from:])
		if m == nil {
			break
		}
		at := [2]int{from + m[2], from + m[3]}
		if fate, only := words.FateOnly(text[at[0] : at[1]-1]); only && fate == words.Bit {
			out = append(out, at)
		}
		from = at[1]
	}
	return out
}

// withoutHeads leaves the word for a bite out that opens a sentence of what became of it, "Bite: wahoo lost." Other
// places in the text stay.
func withoutHeads(text string, d Defaults) string {
	out := []byte(text)
	for _, at := range biteHeads(text) {
		rest := text[at[1]:]
		if end := sentenceEnd.FindStringIndex(rest); end != nil {
			rest = rest[:end[0]]
		}
		if oneTold(tell(rest, d)) {
			for i := at[0]; i < at[1]; i++ {
				out[i] = ' '
			}
		}
	}
	return string(out)
}

// oneTold tells a story of one bite of which it says what became.
func oneTold(s Story) bool {
	return len(s.Bites) == 1 && len(s.Left) == 0 && s.Bites[0].N <= 1 && s.Bites[0].Fate != words.Bit &&
		s.Bites[0].Fate != words.FateUnknown
}

// headOf parts a text of one bite at the colon behind its head.
func headOf(text string) (h biteHead, rest string, ok bool) {
	at := headColon.FindStringIndex(text)
	if at == nil || at[1] == len(text) {
		return h, "", false
	}
	head, rest := text[:at[0]], text[at[1]:]
	if m := headBracket.FindStringSubmatchIndex(head); m != nil {
		if told := Settings(head[m[2]:m[3]]).Speeds; len(told) == 1 {
			h.kn = told[0]
		}
		head = head[:m[0]]
	}
	for _, part := range strings.Split(head, ", ") {
		part = strings.TrimSpace(part)
		toks := words.Scan(part)
		if len(toks) == 0 {
			return h, "", false
		}
		if m := headSession.FindStringSubmatch(part); m != nil && h.fate == words.FateUnknown {
			h.session, _ = strconv.Atoi(m[1])
			continue
		}
		if m, err := unit.ParseMoment(part, unit.OrderUnknown); err == nil && m.HasTime && !m.HasDate &&
			h.fate == words.FateUnknown {
			h.at = &Clock{Seconds: m.Seconds, Sure: true}
			continue
		}
		if h.fate != words.FateUnknown {
			h.place = part
			continue
		}
		f, told := words.FateAt(toks, 0)
		next := 1
		switch {
		case told && (f.Fate == words.Bit || f.Fate == words.Hooked) && !f.After:
			h.fate, next = f.Fate, f.Used[len(f.Used)-1]+1
		case words.AnyFish(toks[0].Text):
			h.fate = words.Hooked
		default:
			return h, "", false
		}
		if next < len(toks) && onWords[toks[next-1].Text] && !onWords[toks[next].Text] {
			next-- // fish on the left flat
		}
		if next < len(toks) && (next+1 >= len(toks) || !onWords[toks[next].Text]) {
			return h, "", false
		}
		if next < len(toks) {
			if on := strings.TrimSpace(part[toks[next].End:]); words.IsPlace(on) {
				h.place = on
			}
		}
	}
	return h, rest, h.fate != words.FateUnknown
}

// onWords stand between a bite and its line or lure.
var onWords = map[string]bool{"on": true, "off": true, "from": true, "at": true, "en": true, "sur": true, "su": true,
	"sul": true, "no": true, "na": true, "an": true, "auf": true, "på": true, "pa": true}

// oneOf is the one bite of a text, whatever parts it: "mahi, gaffed, kept".
func oneOf(text string, hit words.Fate, d Defaults) Story {
	b := Bite{Fish: Fish{N: 1, Fate: hit}}
	fish := FishList(text, d)
	if len(fish) == 1 && fish[0].N <= 1 {
		b.Fish = fish[0]
	}
	f, cause, _, told := words.FateOf(text)
	if !told && len(fish) != 1 || len(fish) > 1 {
		return Story{Landed: -1, Strikes: -1, Left: []string{text}}
	}
	if told {
		b.Fate, b.Cause = f, cause
	}
	return Story{Landed: -1, Strikes: -1, Bites: []Bite{b}}
}

// of gives the one bite that is told behind its head what the head says of it.
func (h *biteHead) of(s *Story) bool {
	if len(s.Bites) != 1 || s.Bites[0].N > 1 {
		return false
	}
	b := &s.Bites[0]
	if b.Fate == words.FateUnknown {
		b.Fate = h.fate
	}
	if b.Place == "" {
		b.Place = h.place
	}
	if b.At == nil {
		b.At = h.at
	}
	if b.Kn == 0 {
		b.Kn = h.kn
	}
	if b.Session == 0 {
		b.Session = h.session
	}
	return true
}
