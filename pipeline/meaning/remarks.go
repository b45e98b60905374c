package meaning

import (
	"slices"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// toldInRemarks takes a form's remarks for its hours and bites, where they tell how long lines were
// out and the tables of its sheet were not filled in: "Trolled 4 h with 5 lines, two dorado in the box".
func (l *Log) toldInRemarks(f *Understood) {
	b := f.Plan.Find("notes")
	inWords := f.Plan.Reads("stretches")
	if b == nil || !inWords && f.Plan.Binds("start_s", "duration_s", "line_hours") ||
		len(phrase.Stretches(f.text(b.Index))) == 0 {
		return
	}
	for _, u := range l.Blocks {
		if u == f || u.Plan.Sheet != f.Plan.Sheet {
			continue
		}
		if u.fills(append([]string{"start_s", "end_s", "duration_s", "outcome"}, countNames...)...) {
			return
		}
	}
	b.Column = l.lexicon.named("notes", "story")
	if !inWords {
		f.Plan.Bindings = append(f.Plan.Bindings, plan.Binding{Index: b.Index, Heading: b.Heading,
			Column: l.lexicon.named("start_s", "stretches")})
	}
	f.Plan.Kind, f.told = plan.Flat, true
}

// fills tells a block that has a cell of one of the meanings.
func (u *Understood) fills(names ...string) bool {
	return slices.ContainsFunc(u.Plan.Bindings, func(b plan.Binding) bool {
		return slices.Contains(names, b.Column.Name) && (b.Index < 0 || len(column(u.b.rows, b.Index)) > 0)
	})
}

// bestOf tells a table of fish that may be some of those that other words tell of, the good ones: it says nothing of
// how a strike ended, but that a fish was let go.
func (u *Understood) bestOf() bool {
	return u.Plan.Kind == plan.Fish && !u.Plan.Binds("outcome", "time_s", "line")
}

// wordsTellMore tells a log whose columns of words, beside its stretches, tell of more bites than its lists of fish
// have rows, and of some that they were missed or lost: a list of fish is not where its bites stand.
func (l *Log) wordsTellMore() bool {
	bites, gone, rows := 0, 0, 0
	for _, u := range l.Data() {
		if u.bestOf() {
			rows += len(u.b.rows)
		}
		for _, b := range u.Plan.Bindings {
			if b.Column.Parse != "story" || b.Index < 0 || !u.Plan.Binds("start_s", "duration_s", "line_hours") {
				continue
			}
			for _, c := range column(u.b.rows, b.Index) {
				for _, x := range phrase.Tell(c, phrase.Defaults{}).Bites {
					if bites++; x.Fate == words.Missed || x.Fate == words.Lost {
						gone++
					}
				}
			}
		}
	}
	return gone > 0 && bites > rows
}

// fewMeasured is how many remarks must tell a fish's measure before all of them may.
const fewMeasured = 3

// fishOfRemarks takes remarks that tell how long or heavy one fish of the row was, "biggest 9.4 kg on the
// scale", for those of that fish: where the rows count fish, and neither name nor measure any elsewhere. Of
// a log that counts one species alone they may list several, each by its measures and no more, or another beside them.
func (l *Log) fishOfRemarks(u *Understood) {
	p := u.Plan
	i := slices.IndexFunc(p.Bindings, func(b plan.Binding) bool {
		return b.Column.Name == "notes" && b.Column.Parse == "text" && b.Index >= 0
	})
	if p.Kind != plan.Flat || i < 0 || len(p.Catch) == 0 || p.Binds("species", "length_cm", "scale_kg", "girth_cm") ||
		u.told {
		return
	}
	if slices.ContainsFunc(l.Data(), func(o *Understood) bool {
		return o != u && (o.Plan.Kind == plan.Fish || o.Plan.Kind == plan.Strikes)
	}) {
		return // these list them
	}
	b, measured := &p.Bindings[i], 0
	for _, c := range column(u.b.rows, b.Index) {
		fish := phrase.FishList(c, phrase.Defaults{})
		if !slices.ContainsFunc(fish, func(f phrase.Fish) bool { return f.LengthCm+f.Kg > 0 }) {
			continue
		}
		one := len(fish) == 1 && fish[0].N < 2 || oneSpecies(p) && (!slices.ContainsFunc(fish, named) || phrase.Also(c))
		if !one || slices.ContainsFunc(fish, gone) {
			return
		}
		measured++
	}
	if measured >= fewMeasured {
		b.Measured = true
		u.b.note("%s: measures in it are those of fish that the row counts", b.Heading)
	}
}

// named tells a fish of a list that has a name, or of which there are several.
func named(f phrase.Fish) bool { return f.Name != "" || f.N > 1 }

// gone tells a fish that was not brought to the boat.
func gone(f phrase.Fish) bool { return f.Fate == words.Lost || f.Fate == words.Missed }

// oneSpecies tells a table that counts fish of one species in a column of its own, and names others at most.
func oneSpecies(p *plan.Block) bool {
	n := 0
	for _, c := range p.Catch {
		if !c.Named {
			n++
		}
	}
	return n == 1
}

// goneInRemarks takes the bites that were missed or lost from remarks, where rows list the fish that came to the boat
// in words and count nothing, and no other table of the log has its bites: who has one column for the catch writes
// there what he got, and in the remarks what he did not.
func (l *Log) goneInRemarks(u *Understood) {
	p := u.Plan
	i := slices.IndexFunc(p.Bindings, func(b plan.Binding) bool {
		return b.Column.Name == "notes" && b.Column.Parse == "text" && b.Index >= 0
	})
	list := slices.IndexFunc(p.Bindings, func(b plan.Binding) bool { return b.Column.Parse == "fishlist" })
	elsewhere := slices.ContainsFunc(l.Data(), func(o *Understood) bool {
		return o != u && (o.Plan.Kind == plan.Fish || o.Plan.Kind == plan.Strikes)
	})
	if p.Kind != plan.Flat || i < 0 || list < 0 || len(p.Catch) > 0 || elsewhere {
		return
	}
	told := 0
	for _, row := range u.b.rows {
		if slices.ContainsFunc(phrase.FishList(cellOf(row, p.Bindings[list].Index), phrase.Defaults{}), gone) {
			return // the list has them itself
		}
		counts := slices.ContainsFunc(p.Bindings, func(b plan.Binding) bool {
			return slices.Contains(countNames, b.Column.Name) && cellOf(row, b.Index) != ""
		})
		bites := phrase.Tell(cellOf(row, p.Bindings[i].Index), phrase.Defaults{}).Bites
		if !counts && slices.ContainsFunc(bites, func(b phrase.Bite) bool { return gone(b.Fish) }) {
			told++
		}
	}
	if told > 0 {
		p.Bindings[i].Gone = true
		u.b.note("%s: bites that were missed or lost are counted from it, where a row counts none",
			p.Bindings[i].Heading)
	}
}
