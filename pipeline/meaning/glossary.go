package meaning

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"wakeledger/pipeline/layout"
)

var (
	glossEntry   = regexp.MustCompile(`^([^\s:=,]{1,15}(?:\s?,\s?[^\s:=,]{1,4})*)\s?:\s(.+)$`)
	glossEnd     = regexp.MustCompile(`\.(?:\s+|$)|\n`)
	semicolon    = regexp.MustCompile(`;`)
	betweenCodes = regexp.MustCompile(`,|\.\s`)
	codeWords    = regexp.MustCompile(`^(\pL{1,2})\s+(\pL.*)$`)
)

// fewGlosses is how many short signs a text must explain, a sentence each, before it is a list of them.
const fewGlosses = 2

// glossary takes a text that explains short headings, a sentence each, for that: "n: the trip. in, up: lines in, lines
// up. k: how many." It returns what is left of the text.
func (l *legend) glossary(text string) string {
	var found [][]string
	var rest []string
	short := 0
	for _, sentence := range glossEnd.Split(text, -1) {
		m := glossEntry.FindStringSubmatch(strings.TrimSpace(sentence))
		switch {
		case m == nil:
			rest = append(rest, sentence)
		case isShort(m[1]):
			short++
			found = append(found, m)
		case strings.Count(m[2], "=") > 1 && codesIn(m[2]) != nil:
			found = append(found, m)
		default:
			rest = append(rest, sentence)
		}
	}
	if short < fewGlosses {
		return text
	}
	for _, m := range found {
		l.gloss(m[1], m[2])
	}
	return strings.Join(rest, ". ")
}

// isShort tells signs of one or two letters each.
func isShort(key string) bool {
	for _, h := range strings.Split(key, ",") {
		if n := utf8.RuneCountInString(normalise(h)); n == 0 || n > longestOfSeveral {
			return false
		}
	}
	return true
}

// gloss takes what one sentence of a list says of one sign, or of several: "in, up: lines in, lines up".
func (l *legend) gloss(key, means string) {
	if codes := codesIn(means); strings.Count(means, "=") > 1 && codes != nil {
		l.addList(normalise(key), codes)
		return
	}
	heads, of := strings.Split(key, ","), strings.Split(means, ",")
	if len(heads) == 1 || len(heads) != len(of) {
		of = make([]string, len(heads))
		for i := range of {
			of[i] = means
		}
	}
	for i, h := range heads {
		h = normalise(h)
		l.words[h], l.headings[h] = strings.TrimSpace(of[i]), true
	}
}

// toldApart marks the headings that differ by a number alone and of which the log says that they are different things:
// "h1, h2: lines in, lines up".
func (l *legend) toldApart(blocks []*layout.Block) {
	for _, b := range blocks {
		for i := range b.Labels {
			head := normalise(b.Labels[i].Full())
			base, n := setOf(head)
			b.Labels[i].Whole = n > 0 && l.headings[head] && slices.ContainsFunc(b.Labels, func(o layout.Label) bool {
				other := normalise(o.Full())
				of, k := setOf(other)
				return k > 0 && of == base && l.headings[other] && l.words[other] != l.words[head]
			})
		}
	}
}

// fatesBehind takes the codes among what explains a heading that say what became of a fish: "Fish: name, cm; r let
// go; x came off". Commas part many a sentence: there two codes must stand.
func (l *legend) fatesBehind(text string) {
	m := colonKey.FindStringSubmatch(text)
	if m == nil {
		return
	}
	between, few := betweenCodes, 2
	if strings.Contains(m[2], ";") {
		between, few = semicolon, 1
	}
	codes := map[string]string{}
	var rest []string
	for _, part := range between.Split(m[2], -1) {
		part = strings.Trim(part, " .")
		if c := codeWords.FindStringSubmatch(part); c != nil && isFate(c[2]) {
			codes[strings.ToLower(c[1])] = c[2]
		} else {
			rest = append(rest, part)
		}
	}
	if len(codes) >= few {
		maps.Copy(l.words, codes)
		l.words[normalise(m[1])] = strings.Join(rest, "; ")
	}
}
