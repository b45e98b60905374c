package species

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Span is a name found inside a longer text.
type Span struct {
	Start, End int    // byte offsets in the text
	Name       string // as written: text[Start:End]
	Match             // what Find says of the name; Candidates for a name of several species
}

// In finds the names inside a text: the longest ones that do not overlap, in whole
// words, whatever their case, accents or plural. A name that is also an ordinary
// word counts only where the text shows that it is a fish.
func (l *List) In(text string) []Span { return l.InOcean(text, "") }

// InOcean is In for a text from a known ocean.
func (l *List) InOcean(text, ocean string) []Span {
	ocean, _ = ParseOcean(ocean)
	s := scan{l: l, text: text, ocean: ocean, words: split(text)}
	s.shouted = !strings.ContainsFunc(text, unicode.IsLower) &&
		slices.ContainsFunc(s.words, func(w word) bool { return len(w.key) > 3 && !w.digits })
	var out []Span
	var last hit
	for i := 0; i < len(s.words); {
		h := s.at(i)
		if h.n == 0 {
			i++
			continue
		}
		switch {
		case h.decoy:
		case last.n > 0 && last.end == i && s.near(i) && (inside(h.codes, last.codes) || inside(last.codes, h.codes)):
			h = last.join(h)
			out[len(out)-1] = s.span(h)
		default:
			out = append(out, s.span(h))
		}
		i, last = h.end, h
		if h.decoy {
			last = hit{}
		}
	}
	return out
}

// word is a run of letters or of digits.
type word struct {
	start, end int
	key        string // in normal form
	digits     bool
}

// split cuts a text into words; an apostrophe between letters belongs to its word.
func split(text string) (out []word) {
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		digits := unicode.IsDigit(r)
		if !digits && !unicode.IsLetter(r) {
			i += n
			continue
		}
		end := i + n
		for end < len(text) {
			r, n := utf8.DecodeRuneInString(text[end:])
			next, _ := utf8.DecodeRuneInString(text[end+n:])
			if digits && !unicode.IsDigit(r) || !digits && !unicode.IsLetter(r) && !unicode.Is(unicode.Mn, r) &&
				!(strings.ContainsRune(apostrophes, r) && unicode.IsLetter(next)) {
				break
			}
			end += n
		}
		if key := normalise(text[i:end]); key != "" {
			out = append(out, word{i, end, key, digits})
		}
		i = end
	}
	return out
}

const apostrophes = "'`´‘’ʻʼ"

// scan is the search of one text.
type scan struct {
	l           *List
	text, ocean string
	words       []word
	shouted     bool // all in capitals, which therefore say nothing
}

// hit is a name at a place: n words up to end.
type hit struct {
	start, end, n int
	from          int // byte where the name begins
	key           string
	codes         []string // of every ocean
	decoy         bool     // a phrase that only looks like a fish
}

// join is two hits side by side, as in "atún rabil", with the narrower meaning.
func (h hit) join(next hit) hit {
	out := h
	if len(next.codes) < len(h.codes) {
		out.key, out.codes = next.key, next.codes
	}
	out.end, out.n = next.end, h.n+next.n
	return out
}

// inside tells whether the codes a are some, but not all, of b.
func inside(a, b []string) bool {
	return len(a) < len(b) && !slices.ContainsFunc(a, func(c string) bool { return !slices.Contains(b, c) })
}

// at is the longest name that begins with a word.
func (s scan) at(i int) hit {
	code := i > 1 && s.words[i].start == s.words[i-1].end && s.words[i-1].start == s.words[i-2].end // A7BET
	if code || s.words[i].digits {
		return hit{}
	}
	raw := s.text[s.words[i].start:s.words[i].end]
	if h := s.from(i, s.words[i].start, s.words[i].key); h.n > 0 {
		return h
	}
	// An article run together with the name: l'espadon, dell'aguglia.
	if j := strings.IndexAny(raw, apostrophes); j > 0 && j <= 4 {
		_, n := utf8.DecodeRuneInString(raw[j:])
		return s.from(i, s.words[i].start+j+n, normalise(raw[j+n:]))
	}
	return hit{}
}

// from is the longest name from a byte on, its first word in normal form given.
func (s scan) from(i, start int, first string) hit {
	keys, longest := []string{first}, 1
	for j := i + 1; j < len(s.words) && longest < s.l.longest && s.near(j) && !s.words[j].digits; j++ {
		keys, longest = append(keys, s.words[j].key), longest+1
	}
	for n := longest; n > 0; n-- {
		end := i + n
		if end < len(s.words) && s.words[end].digits && s.words[end].start == s.words[end-1].end {
			continue
		}
		phrase := strings.Join(keys[:n], " ")
		if decoys[phrase] || decoys[singular(phrase, "s")] {
			return hit{start: i, end: end, n: n, decoy: true}
		}
		key, cs := s.l.known(phrase)
		if key == "" {
			continue
		}
		h := hit{i, end, n, start, key, cs, false}
		if s.otherFish(end) {
			h.end, h.decoy = end+1, true
			return h
		}
		if _, own := s.l.aliases[key]; own || n > 1 || s.said(h) {
			return h
		}
	}
	return hit{}
}

// known is the key under which the list has a phrase, and every code that it means.
func (l *List) known(phrase string) (string, []string) {
	for _, key := range keys(phrase) {
		if code, ok := l.aliases[key]; ok {
			return key, []string{code}
		}
	}
	for _, key := range keys(phrase) {
		if ms := l.names[key]; len(ms) > 0 {
			return key, codes(ms)
		}
	}
	return "", nil
}

// near tells whether a word stands with the one before it in one phrase.
func (s scan) near(i int) bool {
	if i == 0 {
		return false
	}
	gap := s.text[s.words[i-1].end:s.words[i].start]
	if len(s.words[i-1].key) == 1 {
		gap = strings.TrimPrefix(gap, ".") // T. albacares
	}
	return gap != "" && strings.Trim(gap, " \t\u00a0-\u2010\u2011") == ""
}

func (s scan) span(h hit) Span {
	out := Span{Start: h.from, End: s.words[h.end-1].end}
	out.Name = s.text[out.Start:out.End]
	if code, ok := s.l.aliases[h.key]; ok {
		out.Match = Match{Species: s.l.byCode[code], Found: true}
	} else {
		out.Match = s.l.settle(h.key, s.l.names[h.key], s.ocean)
	}
	return out
}
