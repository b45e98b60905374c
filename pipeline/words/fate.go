package words

import (
	"maps"
	"slices"
	"strings"
	"sync"
)

// Fate is what became of a bite.
type Fate int

// The fates, weaker before stronger: of several in one clause the last in this order holds,
// since a fish is bitten, hooked, landed or lost, and released in that order.
const (
	FateUnknown Fate = iota
	Bit              // a bite; whether it was hooked is not told
	Hooked           // hooked; what became of it is not told
	Missed
	Landed
	Lost
	Released
)

var fateNames = [...]string{"", "bite", "hooked", "missed", "landed", "lost", "released"}

// String is the fate as the lists write it; empty for FateUnknown.
func (f Fate) String() string { return fateNames[f] }

var fates = mustLoad("fates")

// FateHit is a fate found in a text.
type FateHit struct {
	Fate  Fate
	Cause string // of a loss, where the words tell it
	After bool   // it only tells how a bite went on: "no hookup", "line parted"
	Weak  bool   // a common word that is a fate only in a cell of its own or beside a fish: "box"
	Open  bool   // the phrase has a gap: put _ in the box
	Used  []int  // the tokens; what stands between them is not the phrase's
}

// FateAt finds the fate whose words start at token i.
func FateAt(toks []Token, i int) (FateHit, bool) {
	h, ok := fates.at(toks, i)
	if !ok {
		return FateHit{}, false
	}
	name, cause, _ := strings.Cut(h.Key, " ")
	name, after := strings.CutSuffix(name, "+")
	name, weak := strings.CutSuffix(name, "?")
	f := FateHit{Cause: cause, After: after, Weak: weak, Open: h.Open, Used: h.Used}
	f.Fate = fateOfKey(name)
	return f, true
}

// fateOfKey is the fate that a list's key begins with.
func fateOfKey(key string) Fate {
	name, _, _ := strings.Cut(key, " ")
	name = strings.TrimRight(name, "+?")
	for i, n := range fateNames {
		if n == name {
			return Fate(i)
		}
	}
	return FateUnknown
}

// FatePhrases are the plain phrases of a fate: those that stand on their own and have no gap.
func FatePhrases(f Fate) []string {
	var out []string
	for _, es := range fates.by() {
		for _, e := range es {
			name, _, _ := strings.Cut(e.key, " ")
			if name == fateNames[f] && !slices.Contains(e.elems, "_") {
				out = append(out, strings.Join(e.elems, " "))
			}
		}
	}
	return out
}

// letters are the fates that a cell gives as a letter alone.
var letters = map[string]Fate{"r": Released, "k": Landed, "l": Lost, "m": Missed}

// pointless leaves out a pronoun at the end: "bumped it".
func pointless(toks []Token) []Token {
	if n := len(toks); n > 1 {
		if next, ok := GlueIs(toks, n-1, "pronoun"); ok && next == n {
			if _, whole := alones.whole(toks); !whole {
				return toks[:n-1]
			}
		}
	}
	return toks
}

// FateOnly is the fate that a clause tells which tells nothing else: "released it", "she came off".
func FateOnly(text string) (Fate, bool) {
	f, _, at, ok := FateOf(text)
	if !ok {
		return FateUnknown, false
	}
	toks := Scan(text)
	for i := 0; i < len(toks); {
		next, idle := GlueIs(toks, i, "pronoun")
		if !idle {
			next, idle = GlueIs(toks, i, "glue")
		}
		if told := toks[i].At >= at[0] && toks[i].End <= at[1]; told {
			next = i + 1
		} else if !idle {
			return FateUnknown, false
		}
		i = next
	}
	return f, true
}

// FateAlone is the fate that words tell only where they are all of a text: "back over".
func FateAlone(text string) Fate {
	key, ok := alones.whole(pointless(trimmed(text)))
	if !ok {
		return FateUnknown
	}
	return fateOfKey(key)
}

// FateOf is the fate that a cell tells of one bite, with the cause of a loss and the bytes
// of the words that tell it. Of several the strongest holds: "tailed, released".
func FateOf(text string) (f Fate, cause string, at [2]int, ok bool) {
	toks := unanswered(trimmed(text))
	unhooked, weak, never, on := false, false, false, false // never, on: words that it was not hooked; that it was
	for i := 0; i < len(toks); i++ {
		h, found := FateAt(toks, i)
		if !found {
			continue
		}
		if h.Weak && h.Fate == Lost && unhooked {
			continue
		}
		if h.Fate == Missed && f == Lost && weak {
			f, cause = FateUnknown, "" // something pulled, no hook-up
		}
		last := h.Used[len(h.Used)-1]
		if !denied(toks, i) {
			if cause == "" {
				cause = h.Cause
			}
			unhooked = unhooked || h.Fate == Missed && !h.Weak
			never, on = never || h.Fate == Missed && h.After, on || h.Fate == Hooked
			if h.Fate > f {
				weak = h.Weak
				f, at = h.Fate, [2]int{toks[i].At, toks[last].End}
			}
		}
		if len(h.Used) == last-i+1 {
			i = last
		}
	}
	if key, whole := alones.whole(pointless(toks)); whole && !unhooked {
		_, cause, _ = strings.Cut(key, " ")
		f, at = fateOfKey(key), [2]int{toks[0].At, toks[len(toks)-1].End}
	}
	if f == Lost && cause == "" && never && !on { // dropped, never on
		f = Missed
	}
	if f == FateUnknown && len(toks) == 1 {
		f, at = lone(toks[0])
	}
	if f != Lost {
		cause = ""
	}
	return f, cause, at, f != FateUnknown
}

var (
	yeses = set("yes yep yeah si sì oui sim ja")
	noes  = set("no nope nah non nao não nein")
	buts  = set("and but & y e et und pero ma mais mas aber")
)

// unanswered leaves out the yes or no with which a cell answers whether the fish was got, where more follows: "no, came
// off", "yes but let go".
func unanswered(toks []Token) []Token {
	if len(toks) < 3 || !yeses[toks[0].Text] && !noes[toks[0].Text] {
		return toks
	}
	if next := toks[1]; Stops(next) || next.Text == "-" || next.Text == "–" || next.Text == "," || buts[next.Text] {
		return toks[2:]
	}
	return toks
}

// Yes reports whether a text is a yes and no more.
func Yes(text string) bool {
	toks := trimmed(text)
	return len(toks) == 1 && yeses[toks[0].Text]
}

// Answers reports whether a text begins with a yes or a no and goes on.
func Answers(text string) bool {
	toks := trimmed(text)
	return len(unanswered(toks)) < len(toks)
}

// lone is the fate of a cell of one word: a letter, or a word with one slip of the pen.
func lone(t Token) (Fate, [2]int) {
	at := [2]int{t.At, t.End}
	if f, ok := letters[t.Text]; ok {
		return f, at
	}
	if len(t.Text) >= leastSlip {
		for _, w := range fateWords()[t.Text[0]] {
			if Similar(w.text, t.Text) && !inflected(w.text, t.Text) {
				return w.fate, at
			}
		}
	}
	return FateUnknown, at
}

// fateWord is a word that is a fate on its own.
type fateWord struct {
	text string
	fate Fate
}

// fateWords are the words in which a slip of the pen may stand, by their first letter, in order.
var fateWords = sync.OnceValue(func() map[byte][]fateWord {
	out := map[byte][]fateWord{}
	for _, word := range slices.Sorted(maps.Keys(fates.by())) {
		if len(word) < leastSlip {
			continue
		}
		if h, ok := FateAt([]Token{{Text: word}}, 0); ok {
			out[word[0]] = append(out[word[0]], fateWord{word, h.Fate})
		}
	}
	return out
})

// denied reports whether a word of denial stands before token i: not landed.
func denied(toks []Token, i int) bool {
	for j := i - 1; j >= 0 && j >= i-2 && !Stops(toks[j]); j-- {
		if _, ok := GlueIs(toks, j, "no"); ok {
			return true
		}
	}
	return false
}

// leastSlip is how many letters the shorter of two words has at least that differ by a slip.
const leastSlip = 5

// inflected reports whether two words differ in the letter of their ending alone: "taken" is no slip for "taker".
func inflected(a, b string) bool {
	const endings, last = "dnrs", 1
	n := len(a) - last
	return len(a) == len(b) && a[:n] == b[:n] && strings.Contains(endings, a[n:]) && strings.Contains(endings, b[n:])
}

// Similar reports whether two words of five letters or more differ by one slip: a letter
// more, less or other, or two letters changed about.
func Similar(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(a) < leastSlip || len(b)-len(a) > 1 || a[0] != b[0] {
		return false
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	if len(a) < len(b) {
		return a[i:] == b[i+1:]
	}
	return i == len(a) || a[i+1:] == b[i+1:] || i+1 < len(a) && a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
}
