package words

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"
)

//go:embed lists/*.txt
var files embed.FS

// entry is one phrase of a list.
type entry struct {
	key   string
	elems []string
}

// phrases are entries by their first word.
type phrases map[string][]entry

// list is the phrases of one file by their first word, the longest first. A file is read
// when its first word is looked for: not every command reads logs.
type list struct {
	by func() phrases
}

// Hit is a phrase found among tokens.
type Hit struct {
	Key  string
	Used []int // the tokens of the phrase, in order; a gap's words are not in it
	Open bool  // the phrase has a gap
}

// Next is the token after the phrase.
func (h Hit) Next() int { return h.Used[len(h.Used)-1] + 1 }

// mustLoad is an embedded list; a fault in one shows in every test.
func mustLoad(name string) list {
	return list{sync.OnceValue(func() phrases {
		text, err := files.ReadFile("lists/" + name + ".txt")
		if err != nil {
			panic(err)
		}
		by, err := parseList(string(text))
		if err != nil {
			panic(fmt.Sprintf("words: lists/%s.txt %v", name, err))
		}
		return by
	})}
}

func parseList(text string) (phrases, error) {
	l := phrases{}
	for n, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "# ") {
			continue
		}
		key, said, ok := strings.Cut(line, ": ")
		if !ok {
			return l, fmt.Errorf("line %d: no key before a colon", n+1)
		}
		for _, p := range strings.Split(said, ", ") {
			if strings.TrimSpace(p) == "" {
				return l, fmt.Errorf("line %d: an empty phrase", n+1)
			}
			l.add(key, p)
		}
	}
	for _, es := range l {
		slices.SortStableFunc(es, func(a, b entry) int { return len(b.elems) - len(a.elems) })
	}
	return l, nil
}

// known are the words of all lists.
var known = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{}
	entries, err := files.ReadDir("lists")
	if err != nil {
		panic(err)
	}
	for _, e := range entries {
		text, err := files.ReadFile("lists/" + e.Name())
		if err != nil {
			panic(err)
		}
		for _, t := range Scan(string(text)) {
			if t.Kind == Word {
				all[t.Text] = true
			}
		}
	}
	return all
})

// Known reports whether a word, in lower case without accents, stands in any of the lists.
func Known(word string) bool { return known()[word] }

// add records a phrase with all choices of its alternatives.
func (l phrases) add(key, phrase string) {
	ways := [][]string{nil}
	for _, part := range strings.Fields(phrase) {
		var more [][]string
		for _, alt := range strings.Split(part, "|") {
			elems := []string{"_"}
			if part != "_" {
				elems = elems[:0]
				for _, t := range Scan(alt) {
					elems = append(elems, t.Text)
				}
			}
			for _, w := range ways {
				more = append(more, append(slices.Clone(w), elems...))
			}
		}
		ways = more
	}
	for _, elems := range ways {
		l[elems[0]] = append(l[elems[0]], entry{key, elems})
	}
}

// at finds the longest phrase that starts at token i; none starts before the first token or behind the last.
func (l list) at(toks []Token, i int) (Hit, bool) {
	if i < 0 || i >= len(toks) {
		return Hit{}, false
	}
	for _, e := range l.by()[toks[i].Text] {
		if used, ok := e.match(toks, i); ok {
			return Hit{e.key, used, slices.Contains(e.elems, "_")}, true
		}
	}
	return Hit{}, false
}

// atKey finds the longest phrase of one key that starts at token i.
func (l list) atKey(toks []Token, i int, key string) (next int, ok bool) {
	if i < 0 || i >= len(toks) {
		return 0, false
	}
	for _, e := range l.by()[toks[i].Text] {
		if e.key != key {
			continue
		}
		if used, ok := e.match(toks, i); ok {
			return used[len(used)-1] + 1, true
		}
	}
	return 0, false
}

// skipped are words that may stand between the words of a phrase: pulled the hook,
// let him go.
var skipped = set("nos me the a an it him her them his its that this el la lo le les los las il o os as den die das " +
	"der ihn es sie un une una um uma l")

// maxGap is how many words an underscore spans at most.
const maxGap = 6

func (e entry) match(toks []Token, i int) ([]int, bool) {
	used := make([]int, 1, len(e.elems))
	used[0] = i
	return matchRest(toks, i+1, e.elems[1:], used)
}

// matchRest matches the other words of a phrase from token j on. A gap is tried as short
// as it can be first: put a 49 in wahoo in the box.
func matchRest(toks []Token, j int, elems []string, used []int) ([]int, bool) {
	if len(elems) == 0 {
		return used, true
	}
	if elems[0] != "_" {
		for ; j < len(toks); j++ {
			if toks[j].Text == elems[0] {
				return matchRest(toks, j+1, elems[1:], append(used, j))
			}
			if !skipped[toks[j].Text] && (toks[j].Text != "-" || toks[j].Gap) {
				break
			}
		}
		return nil, false
	}
	for passed := 1; passed <= maxGap && j+passed < len(toks) && !Stops(toks[j+passed-1]); passed++ {
		if out, ok := matchRest(toks, j+passed, elems[1:], used); ok {
			return out, true
		}
	}
	return nil, false
}

// Stops reports whether a mark ends a clause.
func Stops(t Token) bool {
	return t.Kind == Mark && strings.Contains(",;.!?:\n()", t.Text)
}

// whole finds a phrase that is all of the tokens.
func (l list) whole(toks []Token) (string, bool) {
	if len(toks) == 0 {
		return "", false
	}
	for _, e := range l.by()[toks[0].Text] {
		if used, ok := e.match(toks, 0); ok && used[len(used)-1] == len(toks)-1 {
			return e.key, true
		}
	}
	return "", false
}

// any finds the first phrase anywhere.
func (l list) any(toks []Token) (Hit, bool) {
	for i := range toks {
		if h, ok := l.at(toks, i); ok {
			return h, true
		}
	}
	return Hit{}, false
}

// anyKey reports whether a phrase of one key stands anywhere.
func (l list) anyKey(toks []Token, key string) bool {
	for i := range toks {
		if _, ok := l.atKey(toks, i, key); ok {
			return true
		}
	}
	return false
}

func set(words string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w] = true
	}
	return m
}

// trimmed are the tokens without marks at both ends, but for those that say something.
func trimmed(text string) []Token {
	toks := Scan(text)
	idle := func(t Token) bool { return t.Kind == Mark && strings.Contains(".,;:!?()[]*\n", t.Text) }
	for len(toks) > 0 && idle(toks[0]) {
		toks = toks[1:]
	}
	for len(toks) > 0 && idle(toks[len(toks)-1]) {
		toks = toks[:len(toks)-1]
	}
	return toks
}
