package meaning

import (
	"regexp"
	"slices"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/words"
)

// othersWord is a word for fish beside those that have columns of their own.
var othersWord = regexp.MustCompile(`(?i)\b(?:others?|otr[oa]s?|autres?|altr[ie]|outr[oa]s?|andere|sonstige|rest)\b`)

// others takes a list of fish headed by such a word for counts beside those of the columns of species:
// "2 skipjack" under "others aboard". Its fish are no part of the albacore beside them.
func (x *builder) others() {
	p := x.plan
	if p.Binds("landed_n", "kept_n", "hooked_n") {
		return // these count all
	}
	for _, b := range p.Bindings {
		if b.Column.Parse != "fishlist" && b.Column.Parse != "story" || b.Index < 0 ||
			!othersWord.MatchString(b.Heading) {
			continue
		}
		cells, counted := column(x.rows, b.Index), 0
		for _, c := range cells {
			if _, ok := phrase.CountFish(c); ok || words.Nothing(c) {
				counted++
			}
		}
		if len(cells) == 0 || counted < len(cells) {
			continue
		}
		f, _, _, ok := words.FateOf(b.Heading)
		if !ok && x.beside(b.Index) {
			p.Catch = append(p.Catch, plan.Unknown{Index: b.Index, Heading: b.Heading, Named: true})
			x.note("%s: counted beside the fish of the other columns, which do not have these in them",
				b.Heading)
			return
		}
		if !ok || f != words.Landed {
			continue // "other" alone may say again what the counts have: "BFT let go"
		}
		fate := f.String()
		if slices.ContainsFunc(p.Catch, func(u plan.Unknown) bool { return u.Fate == fate }) {
			p.Catch = append(p.Catch, plan.Unknown{Index: b.Index, Heading: b.Heading, Fate: fate, Named: true})
			x.note("%s: counted with the fish of the other columns", b.Heading)
		}
	}
}

// othersThan takes a list of fish headed by such a word, beside counts that stand in groups of one fish each, for
// counts beside these: "1 kingfish released" under "other fish", beside wahoo kept and lost. None of its fish may be
// of a group.
func (x *builder) othersThan() {
	p := x.plan
	if p.Binds("strikes_n", "hooked_n") {
		return // these count all
	}
	var fish []string
	for _, l := range x.block.Labels {
		b := slices.IndexFunc(p.Bindings, func(b plan.Binding) bool { return b.Index == l.Col })
		if b < 0 || !fishCounts[p.Bindings[b].Column.Name] {
			continue
		}
		if x.t.fishOver(l) == "" {
			return
		}
		fish = append(fish, l.Group)
	}
	for _, b := range p.Bindings {
		if len(fish) == 0 || b.Column.Parse != "fishlist" || b.Index < 0 || !othersWord.MatchString(b.Heading) {
			continue
		}
		if !slices.ContainsFunc(x.ofHand(b.Index), func(text string) bool { return x.namesOne(text, fish) }) {
			p.Others = append(p.Others, b.Index)
			x.note("%s: counted beside the fish of the other columns, which do not have these in them", b.Heading)
		}
	}
}

// fishCounts are the counts of fish that were on the hook.
var fishCounts = map[string]bool{"landed_n": true, "kept_n": true, "released_n": true, "lost_n": true}

// namesOne tells a text that names one of several fish, or may.
func (x *builder) namesOne(text string, fish []string) bool {
	for _, named := range x.t.Species.In(text) {
		if slices.ContainsFunc(fish, func(f string) bool { return mayBeOne(named.Match, x.t.Species.Find(f, "")) }) {
			return true
		}
	}
	return false
}

// beside tells a column of fish in words that no count of their row has in it: none of a species that has a
// column. Where each column of counts is of one species known to us, they cannot be in these; else somewhere
// more of them were let go than the row counts, or more than all of its fish.
func (x *builder) beside(col int) bool {
	if x.mayCount(col) {
		return false
	}
	own := column(x.rows, col)
	if x.eachOfOne() && !slices.ContainsFunc(x.ofHand(col), func(text string) bool {
		return !slices.Contains(own, text) && x.hasColumn(text)
	}) {
		return x.room(col)
	}
	if x.plan.Binds("strikes_n") {
		return false
	}
	released := x.plan.Find("released_n")
	for _, row := range x.rows {
		kept, letGo, _ := phrase.CountFates(cellOf(row, col))
		counted := 0.0
		if released != nil {
			counted, _ = number(cellOf(row, released.Index))
		}
		if released != nil && float64(letGo) > counted {
			return true
		}
		for _, c := range x.plan.Catch {
			n, _ := number(cellOf(row, c.Index))
			counted += n
		}
		if float64(kept+letGo) > counted {
			return true
		}
	}
	return false
}

// surelyBeside is how many rows must name fish that none of their counts can have in it, for names that may be of
// several species to be other fish too: a cuda is a king somewhere, and not beside both words.
const surelyBeside = 2

// mayCount tells a column of fish in words that the counts of their rows may have in them.
func (x *builder) mayCount(col int) bool {
	may, beside := false, 0
	for _, row := range x.rows {
		text := cellOf(row, col)
		fish := x.mayHold(row, text)
		switch {
		case len(fish) == 0 || len(x.t.Species.In(text)) == 0:
		case !x.namesOne(text, fish):
			beside++
		case x.namesSurely(text, fish):
			return true
		default:
			may = true
		}
	}
	return may && beside < surelyBeside
}

// namesSurely tells a text that names a fish of one species, or one by a name that may be of the same several species
// as that of one of the fish given.
func (x *builder) namesSurely(text string, fish []string) bool {
	return slices.ContainsFunc(x.t.Species.In(text), func(n species.Span) bool {
		return n.Match.Found || slices.ContainsFunc(fish, func(f string) bool {
			return slices.Equal(n.Match.Candidates, x.t.Species.Find(f, "").Candidates)
		})
	})
}

// mayHold are the fish that a row counts by species and may have one in them that it names in words: of the same fate
// where the column's heading says one.
func (x *builder) mayHold(row []string, text string) []string {
	kept, letGo, _ := phrase.CountFates(text)
	var out []string
	for _, c := range x.plan.Catch {
		n, ok := number(cellOf(row, c.Index))
		if ok && n == 0 || cellOf(row, c.Index) == "" || c.Fate == words.Landed.String() && kept == 0 && letGo > 0 ||
			c.Fate == words.Released.String() && letGo == 0 && kept > 0 {
			continue
		}
		out = append(out, x.t.fishOf(c.Heading))
	}
	return out
}

// room tells whether each row's bites, where it counts them, are as many as its fish with those that a column has in
// words.
func (x *builder) room(col int) bool {
	bites := x.plan.Find("strikes_n")
	for _, row := range x.rows {
		kept, letGo, _ := phrase.CountFates(cellOf(row, col))
		if bites == nil || kept+letGo == 0 {
			continue
		}
		all, ok := number(cellOf(row, bites.Index))
		fish := float64(kept + letGo)
		for _, c := range x.plan.Catch {
			n, _ := number(cellOf(row, c.Index))
			fish += n
		}
		if ok && fish > all {
			return false
		}
	}
	return true
}

// ofHand are the cells of a column in all tables of the same hand.
func (x *builder) ofHand(col int) []string {
	var cells []string
	i := slices.IndexFunc(x.block.Labels, func(l layout.Label) bool { return l.Col == col })
	for _, v := range x.group.values {
		if i >= 0 && normalise(v.Label.Full()) == normalise(x.block.Labels[i].Full()) {
			for _, c := range v.cells {
				cells = append(cells, c.Text)
			}
		}
	}
	return cells
}

// eachOfOne tells several columns of counts that are each headed by a species, in words that say nothing else but what
// became of it.
func (x *builder) eachOfOne() bool {
	return len(x.plan.Catch) > 1 && !slices.ContainsFunc(x.plan.Catch, func(c plan.Unknown) bool {
		_, fish := x.t.speciesFate(c.Heading)
		return c.Fate != "" && !fish || c.Named || othersWord.MatchString(c.Heading) || words.IsTotal(c.Heading)
	})
}

// hasColumn tells a text that names a fish of a species that heads a column of counts, or may.
func (x *builder) hasColumn(text string) bool {
	var fish []string
	for _, c := range x.plan.Catch {
		fish = append(fish, x.t.fishOf(c.Heading))
	}
	return x.namesOne(text, fish)
}

// mayBeOne reports whether two names may be of one species: a bonito is one of several.
func mayBeOne(a, b species.Match) bool {
	of := func(m species.Match) []string {
		if m.Found {
			return []string{m.Species.Code}
		}
		return m.Candidates
	}
	return slices.ContainsFunc(of(a), func(code string) bool { return slices.Contains(of(b), code) })
}
