package meaning

import (
	"strings"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/unit"
)

// longestText is how long a text is at the most that says one thing; of longer ones each sentence says its own.
const longestText = 200

// sentences are the texts above and beside the log's tables, long ones sentence by sentence.
func (l *Log) sentences() []string {
	var out []string
	for _, t := range l.Texts {
		if len(t) < longestText {
			out = append(out, t)
			continue
		}
		for _, s := range strings.Split(t, ". ") {
			if len(s) < longestText {
				out = append(out, s)
			}
		}
	}
	return out
}

// weightUnit is the one unit that sentences of the log say its weights are in, "Weights in kg"; "" where none does, or
// they differ.
func (l *Log) weightUnit() unit.Unit {
	said := unit.Unit("")
	for _, t := range l.sentences() {
		if massIn(t) == "" {
			continue
		}
		for _, s := range strings.FieldsFunc(t, func(c rune) bool { return c == ',' || c == ';' }) {
			in, _ := l.lexicon.concepts.found(normalise(s))
			u := massIn(s)
			if u == "" || !in["weight"] || strings.ContainsAny(s, "0123456789") {
				continue
			}
			if said != "" && said != u {
				return ""
			}
			said = u
		}
	}
	return said
}

// massIn is kilograms or pounds where a text names one of them; "in" may be a word beside it.
func massIn(text string) unit.Unit {
	for _, w := range headingWords(text) {
		if u, ok := unit.Lookup(w); ok && (u == unit.Kilogram || u == unit.Pound) {
			return u
		}
	}
	return ""
}

// kgPer is how many kilograms one of a unit of weight is.
func kgPer(u unit.Unit) float64 {
	if u == unit.Pound {
		return unit.KgPerPound
	}
	return 1
}

// fewWeights is how many fish of a list have a bare number for their weight at the least.
const fewWeights = 3

// mostOfKind is how many fish of a kind a number behind its name counts at the most: more are a measure.
const mostOfKind = 12

// bareWeights takes bare numbers behind fish for weights where the log says the unit of its weights and its lists none:
// "wahoo 18.4; mahi 6" under "Weights in kg". Half of them have a fraction, or are more than the fish of a kind.
func (l *Log) bareWeights() {
	said := l.weightUnit()
	if said == "" {
		return
	}
	lists := map[string][]*Understood{}
	for _, u := range l.Data() {
		if list := u.onlyList(); list != nil && list.Said == "" {
			lists[list.Heading] = append(lists[list.Heading], u)
		}
	}
	for heading, of := range lists {
		if _, ok := unitIn(heading); ok || !weighedBare(of, said) {
			continue
		}
		for _, u := range of {
			u.onlyList().Said = string(said)
			u.b.note("%s: a bare number behind a fish is its weight in %s, as the log says", heading, said)
		}
	}
}

// weighedBare tells lists of fish whose weights have no unit.
func weighedBare(of []*Understood, said unit.Unit) bool {
	n, own, measures := 0, 0, 0
	for _, u := range of {
		for _, c := range column(u.b.rows, u.onlyList().Index) {
			for _, f := range phrase.FishList(c, phrase.Defaults{}) {
				if f.Kg > 0 {
					own++ // it says its unit
				}
			}
			for _, f := range phrase.FishList(c, phrase.Defaults{WeightUnit: string(said)}) {
				if f.Kg > 0 {
					n++
				}
				if f.Kg > 0 && (f.Exact || f.Kg > mostOfKind*kgPer(said)) {
					measures++
				}
			}
		}
	}
	n -= own
	return n >= fewWeights && 2*measures >= n && own*4 <= n
}
