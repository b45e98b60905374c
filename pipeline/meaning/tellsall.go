package meaning

import (
	"regexp"
	"slices"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// fewTold is in how many rows a list must tell all bites, before it tells them in each.
const fewTold = 5

// tellsAll takes a list of fish that tells as many bites as its rows count, some of them lost or missed, for what
// became of these bites: "1 wahoo + 1 thrown + 2 short strikes" beside 4 bites and 1 boated.
func (u *Understood) tellsAll() {
	p := u.Plan
	bites, list := p.Find("strikes_n"), u.onlyList()
	if bites == nil || list == nil || p.Binds("hooked_n", "lost_n", "missed_n") {
		return
	}
	told, gone, same := 0, 0, 0
	for _, row := range u.b.rows {
		n, ok := number(cellOf(row, bites.Index))
		text := cellOf(row, list.Index)
		if !ok || n == 0 || text == "" {
			continue
		}
		told++
		all := 0
		for _, b := range phrase.Tell(text, phrase.Defaults{}).Bites {
			all += max(b.N, 1)
			if b.Fate == words.Lost || b.Fate == words.Missed {
				gone++
			}
		}
		if float64(all) == n {
			same++
		}
	}
	if gone > 0 && same >= fewTold && 10*same >= 9*told {
		p.ListsAll = true
		u.b.note("%s: tells each bite that the row counts, also those lost or missed", list.Heading)
	}
}

// tellsAway tells a column of bites that got away beside a count of all of them, where no other column counts those.
func (u *Understood) tellsAway(b *plan.Binding) bool {
	i := slices.IndexFunc(u.b.group.values, func(v *Values) bool { return v.Label.Col == b.Index })
	return i >= 0 && b.Column.Parse == "story" && u.b.group.values[i].awayBites() >= mostAway &&
		u.Plan.Binds("strikes_n") && !u.Plan.Binds("hooked_n", "lost_n", "missed_n")
}

// onlyList is the one column of fish in words; nil where there is none, or several.
func (u *Understood) onlyList() *plan.Binding {
	var list *plan.Binding
	for i := range u.Plan.Bindings {
		b := &u.Plan.Bindings[i]
		if b.Column.Parse != "fishlist" || b.Index < 0 {
			continue
		}
		if list != nil {
			return nil
		}
		list = b
	}
	return list
}

var (
	bareBracket = regexp.MustCompile(`\(\s*(\d{2,3}(?:[.,]\d+)?)\s*\)`)
	saidLength  = regexp.MustCompile(`(\d{2,3}(?:[.,]\d+)?)\s*cm(?:\PL|$)`)
)

// bracketLengths takes numbers alone in brackets behind fish for lengths, where the same list says others with their
// unit, and these are about as long: "1 mahi (88)" beside "1 wahoo 112 cm 9 kg".
func (u *Understood) bracketLengths() {
	list := u.onlyList()
	if list == nil || list.Said != "" {
		return
	}
	var bare, said []float64
	for _, c := range column(u.b.rows, list.Index) {
		bare = append(bare, numbersOf(bareBracket, c)...)
		said = append(said, numbersOf(saidLength, c)...)
	}
	if len(bare) < 3 || len(said) < 3 {
		return
	}
	slices.Sort(said)
	shortest, longest := said[0]/2.5, said[len(said)-1]*2.5
	if slices.Min(bare) < shortest || slices.Max(bare) > longest || slices.Max(bare) < said[0] {
		return // weights, or what nobody knows
	}
	list.Said = "(cm)"
	u.b.note("%s: a number in brackets is a length, as others with cm are", list.Heading)
}

// numbersOf are the numbers that a pattern finds in a text.
func numbersOf(of *regexp.Regexp, text string) []float64 {
	var all []float64
	for _, m := range of.FindAllStringSubmatch(text, -1) {
		if n, ok := number(m[1]); ok {
			all = append(all, n)
		}
	}
	return all
}
