package words

var unwritten = mustLoad("unwritten")

// Unwritten is what of a log's bites a sentence says that nobody wrote down.
type Unwritten struct {
	Missed bool // those that did not hook
	Hooked bool // how many were hooked: those that came off are missing, or not told from those that missed
}

// UnwrittenIn tells what a text says that its log does not hold of bites: "misses are not counted", "only fish that
// came to the boat are in here". A column that does not count something ("not counted as landed") says nothing of the
// log.
func UnwrittenIn(text string) (u Unwritten, said bool) {
	var sentence []Token
	alone := false // a sentence names the boat's fish alone: "just what came in the boat"
	for _, t := range append(Scan(text), Token{Kind: Mark, Text: "."}) {
		if t.Kind != Mark || t.Text != "." && t.Text != "!" && t.Text != "\n" {
			sentence = append(sentence, t)
			continue
		}
		if of := unwrittenIn(sentence); of != (Unwritten{}) {
			u = u.and(of)
		}
		alone = alone || unwritten.anyKey(sentence, "boat") && unwritten.anyKey(sentence, "only")
		sentence = nil
	}
	u.Hooked = u.Hooked || u.Missed && alone
	return u, u != Unwritten{}
}

func unwrittenIn(toks []Token) (u Unwritten) {
	denied := false
	for i := range toks {
		next, ok := unwritten.atKey(toks, i, "not")
		if denied = denied || ok; ok && next < len(toks) && elsewhere[toks[next].Text] {
			return Unwritten{}
		}
	}
	if denied && unwritten.anyKey(toks, "hooked") {
		return Unwritten{Hooked: true}
	}
	from := 0
	for i := range toks {
		if last := i+1 == len(toks); last || Stops(toks[i]) {
			u = u.and(onlyIn(toks[from : i+1])).and(deniedIn(toks[from : i+1]))
			from = i + 1
		}
	}
	boat := unwritten.anyKey(toks, "boat")
	if boat && unwritten.anyKey(toks, "else") && unwritten.anyKey(toks, "wrote") { // what came in, nothing else
		return Unwritten{Missed: true, Hooked: true}
	}
	return u
}

func (u Unwritten) and(o Unwritten) Unwritten {
	return Unwritten{u.Missed || o.Missed, u.Hooked || o.Hooked}
}

// onlyIn is what is missing where a clause says which fish alone are written.
func onlyIn(toks []Token) Unwritten {
	only, ok := firstOf(toks, "only")
	if !ok || !unwritten.anyKey(toks, "wrote") {
		return Unwritten{}
	}
	fate, found := fateIn(toks[only:])
	landed := unwritten.anyKey(toks[only:], "boat") || found && fate >= Landed && fate != Lost
	return Unwritten{Missed: landed || found && fate == Hooked, Hooked: landed}
}

// deniedIn is what bites a clause names that it says are not written: "bait fish dont count" is none.
func deniedIn(toks []Token) (u Unwritten) {
	if !unwritten.anyKey(toks, "not") {
		return u
	}
	for i := range toks {
		switch f, ok := FateAt(toks, i); {
		case !ok || f.Weak:
		case f.Fate == Missed:
			u.Missed = true
		case f.Fate == Lost && i+1 < len(toks) && ofFish[toks[i+1].Text]:
			return Unwritten{Missed: true, Hooked: true}
		case f.Fate == Bit && toks[max(0, i-1)].Text != "that":
			u.Missed = true
		}
	}
	return u
}

// LostCount reports whether a row's words say that nobody counted its bites: "lots of knocks, did not count them",
// "lost count of the hits".
func LostCount(text string) bool {
	toks := Scan(text)
	if !bitesIn(toks) {
		return false
	}
	for i := range toks {
		if _, ok := unwritten.atKey(toks, i, "lost count"); ok {
			return true
		}
		next, ok := unwritten.atKey(toks, i, "not")
		if ok && (next == len(toks) || !elsewhere[toks[next].Text]) && bitesIn(clauseOf(toks, i, next)) {
			return true
		}
	}
	return false
}

// clauseOf is the clause around some tokens.
func clauseOf(toks []Token, from, to int) []Token {
	for from > 0 && !Stops(toks[from-1]) {
		from--
	}
	for to < len(toks) && !Stops(toks[to]) {
		to++
	}
	return toks[from:to]
}

// bitesIn reports whether some tokens name bites, or those that did not hook.
func bitesIn(toks []Token) bool {
	for i := range toks {
		if f, ok := FateAt(toks, i); ok && (f.Fate == Bit || f.Fate == Missed) {
			return true
		}
	}
	return false
}

// elsewhere are words behind what is not counted that say where it is not: "not counted as landed".
var elsewhere = set("as in twice again with towards toward separately apart among como dans comme come als")

// ofFish are words behind "lost" that tell it of fish, and not of gear.
var ofFish = set("fish ones one bites hookups strikes")

// firstOf is where the first phrase of a key begins.
func firstOf(toks []Token, key string) (int, bool) {
	for i := range toks {
		if _, ok := unwritten.atKey(toks, i, key); ok {
			return i, true
		}
	}
	return 0, false
}

// fateIn is the first fate that the words tell.
func fateIn(toks []Token) (Fate, bool) {
	for i := range toks {
		if f, ok := FateAt(toks, i); ok && !f.Weak {
			return f.Fate, true
		}
	}
	return 0, false
}
