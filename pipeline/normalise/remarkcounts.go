package normalise

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/words"
)

// countedRemarks takes what a remark says of the fish that the row's columns of species count, and of others: "2 of
// them undersized, let go", "also 1 dorado". Where it does not say whether they are among those counted, it is set
// aside.
func (r *Reader) countedRemarks() {
	if r.letGoTold < 0 {
		return
	}
	for i := range r.targets {
		t := &r.targets[i]
		if t.Column.Name != "notes" || t.Column.Parse != "text" || t.given != "" {
			continue
		}
		text := phrase.OfCount(r.values[t.field].Text, int(r.values[r.catch].Int))
		told := phrase.Tell(text, r.defaults(t))
		bites := told.Bites
		for _, left := range told.Left { // of them in words that are not understood otherwise
			fate, _, _, _ := words.FateOf(left)
			if _, ofThem := phrase.OfThem(left); ofThem || fate == words.Released ||
				phrase.Also(left) && slices.ContainsFunc(phrase.FishList(left, phrase.Defaults{}),
					func(f phrase.Fish) bool { return f.Name != "" }) {
				r.countedRemark(t, "", left, phrase.Bite{Fish: phrase.Fish{Fate: fate, N: 1}})
			}
		}
		for k, b := range bites {
			end := len(text)
			if k+1 < len(bites) {
				end = max(bites[k+1].Told, b.Told)
			}
			r.countedRemark(t, text[:b.Told], text[b.Told:end], b)
		}
	}
}

// uncountedBites adds the bites that a remark says the row's counts do not have: "plus one missed, not counted".
func (r *Reader) uncountedBites() {
	if r.layout.Kind != plan.Flat || slices.ContainsFunc(r.side, func(s Side) bool {
		return s.Kind == plan.Strikes && s.Values["outcome"].Text == words.Missed.String()
	}) {
		return // told one by one already
	}
	add := func(name string, n int64) {
		if i, ok := r.index[name]; ok && (r.values[i].Known || r.none(i)) {
			r.values[i] = entry.OfInt(r.values[i].Int + n)
		}
	}
	for i := range r.targets {
		t := &r.targets[i]
		if t.Column.Name != "notes" || t.Column.Parse != "text" && t.Column.Parse != "fishlist" || t.given != "" ||
			t.text == "" {
			continue
		}
		bites := phrase.Uncounted(t.text)
		switch {
		case r.missedTold >= 0:
			bites = phrase.MissedIn(t.text) // no column has these
		case t.Column.Parse == "text" && !t.Gone && r.noCount(): // lists of fish tell theirs
			r.awayIn(t)
			continue
		}
		for _, b := range bites {
			n := int64(max(b.N, 1))
			counts := []string{"strikes_n", "missed_n"}
			switch {
			case r.missedTold >= 0:
				r.values[r.missedTold] = entry.OfInt(r.values[r.missedTold].Int + n)
				continue
			case b.Fate == words.Lost:
				counts = []string{"strikes_n", "hooked_n", "lost_n"}
			}
			for _, name := range counts {
				add(name, n)
			}
			r.doubts = append(r.doubts, r.problem(t, t.text,
				fmt.Sprintf("tells of %s that the row does not count: added", plural(int(n), "a bite", "bites"))))
		}
	}
}

// noCount reports whether a row of a log that counts bites has no number of them, nor of those that got away.
func (r *Reader) noCount() bool {
	return r.layout.Binds("strikes_n") && !r.value("strikes_n").Known && !r.value("hooked_n").Known &&
		!r.value("lost_n").Known && !r.value("missed_n").Known
}

// awayIn makes bites of those that a remark says were missed or lost.
func (r *Reader) awayIn(t *target) {
	for _, b := range phrase.AwayIn(t.text) {
		v := r.fishValues(b.Fish)
		for range max(b.N, 1) {
			r.beside(plan.Strikes, v)
		}
		r.doubts = append(r.doubts, r.problem(t, t.text, fmt.Sprintf("tells of %s that no count of the row has: "+
			"added", plural(max(b.N, 1), "a bite", "bites"))))
	}
}

// none reports whether a count's cell says that there were none: a dash, or nothing.
func (r *Reader) none(field int) bool {
	return slices.ContainsFunc(r.targets, func(t target) bool { return t.field == field && dashed(t.text) })
}

// letGoAmong takes fish that a remark says were let go off those that the row counts in the boat, where it says that
// they are among these ("3 skipjack let go, in the counts"), or tells as many fish as these are and more of them let
// go than are counted: "wahoo kept, skipjack let go without a tag" beside 2 boated and 0 tagged.
func (r *Reader) letGoAmong() {
	released, ok := r.index["released_n"]
	if r.letGoIn < 0 && !ok || !r.value("landed_n").Known {
		return
	}
	landed := r.index["landed_n"]
	listed := r.layout.Binds("species") || r.layout.Reads("fishlist") || len(r.layout.Catch) > 0
	for i := range r.targets {
		t := &r.targets[i]
		if t.Column.Name != "notes" || t.Column.Parse != "text" || t.given != "" || t.text == "" {
			continue
		}
		counted := r.letGoIn >= 0 && phrase.Counted(t.text)
		kept, free := int64(0), int64(0)
		text := phrase.OfCount(t.text, int(r.values[landed].Int))
		for _, b := range phrase.Tell(text, r.defaults(t)).Bites {
			n := int64(max(b.N, 1))
			switch {
			case b.Method != "" && b.Method != "troll":
			case b.Fate == words.Landed:
				kept += n
			case b.Fate == words.Released && counted && free+n > r.values[landed].Int:
			case b.Fate == words.Released:
				free += n
			}
		}
		switch {
		case counted && free > 0:
			r.values[landed] = entry.OfInt(r.values[landed].Int - free)
			r.values[r.letGoIn] = entry.OfInt(r.values[r.letGoIn].Int + free)
		case words.NamesOther(t.text) || words.Otherwise(t.text):
		case r.letGoIn >= 0 && free > 0 && free <= r.values[landed].Int && kept == 0:
			r.letGoOf(landed, free)
		case r.letGoIn >= 0 || kept+free < 2 && listed: // one may be another fish
		case free > r.values[released].Int && kept+free == r.values[landed].Int+r.values[released].Int:
			r.values[landed], r.values[released] = entry.OfInt(kept), entry.OfInt(free)
		}
	}
}

// letGoOf takes fish that a remark says were let go off those that the row counts in the boat, where it tells what
// became of all its bites; else it is not said whether they are among these, and asked about.
func (r *Reader) letGoOf(landed int, free int64) {
	all, boated := r.value("strikes_n"), r.values[landed].Int
	if hooked := r.value("hooked_n"); hooked.Known {
		all = entry.OfInt(hooked.Int + r.value("missed_n").Int)
	}
	if all.Known && boated+r.value("lost_n").Int+r.value("missed_n").Int == all.Int {
		r.values[landed] = entry.OfInt(boated - free)
		r.values[r.letGoIn] = entry.OfInt(r.values[r.letGoIn].Int + free)
	}
}

// countedRemark takes one fish, or several of a kind, of a remark; before is what stands before it.
func (r *Reader) countedRemark(t *target, before, text string, b phrase.Bite) {
	n := int64(max(b.N, 1))
	sum, room := r.values[r.catch], r.value("strikes_n")
	sentence := before[strings.LastIndexAny(before, ".;\n")+1:] + text
	also := phrase.Also(sentence) && b.Name != "" && !r.hasColumn(b.Name)
	some, ofThem := phrase.OfThem(sentence)
	if ofThem {
		n = int64(some)
	}
	fits := !room.Known || sum.Int+r.value("lost_n").Int+r.value("missed_n").Int+n <= room.Int
	switch {
	case b.Method != "" && b.Method != "troll" || words.Otherwise(text):
	case b.Fate == words.Released && n <= sum.Int && (ofThem || !also && r.amongCounted(b, n)):
		r.values[r.catch] = entry.OfInt(sum.Int - n)
		r.values[r.letGoTold] = entry.OfInt(r.values[r.letGoTold].Int + n)
	case also && fits && b.Fate == words.Landed:
		r.values[r.catch] = entry.OfInt(sum.Int + n)
	case also && fits && b.Fate == words.Released:
		r.values[r.letGoTold] = entry.OfInt(r.values[r.letGoTold].Int + n)
	case also, b.Fate == words.Released, b.Name == "" && phrase.Also(sentence):
		r.aside = append(r.aside, r.problem(t, text, fmt.Sprintf("tells of %s: among those that the row counts, or "+
			"beside them? Not used", plural(int(n), "a fish", "fish"))))
	}
}

// amongCounted tells fish of a remark that are among those which the row's columns of species count: the log says of
// these that they were kept but for what remarks say, or the row has no room for more on the hook.
func (r *Reader) amongCounted(b phrase.Bite, n int64) bool {
	hooked := r.value("hooked_n")
	full := hooked.Known && r.values[r.catch].Int+r.freedCounted()+r.value("lost_n").Int+n > hooked.Int
	return (r.layout.KeptUnless || full) && n <= r.countOf(b.Name)
}

// freedCounted is how many fish the row's columns of species count as let go.
func (r *Reader) freedCounted() int64 {
	if r.freed < 0 {
		return 0
	}
	return r.values[r.freed].Int
}

// countOf is how many fish the row's columns count that may be of a name.
func (r *Reader) countOf(name string) int64 {
	is, n := r.set.Species.Find(name, r.set.Ocean), int64(0)
	for _, c := range r.layout.Catch {
		if c.Fate != "" || c.Index >= len(r.row.Cells) || !mayBeOne(is, r.set.Species.Find(c.Heading, r.set.Ocean)) {
			continue
		}
		if v, ok := plainNumber(trimmed(r.row.Cells[c.Index])); ok {
			n += int64(v)
		}
	}
	return n
}

// hasColumn tells the name of a fish that has a column of its own, or may have.
func (r *Reader) hasColumn(name string) bool {
	is := r.set.Species.Find(name, r.set.Ocean)
	return slices.ContainsFunc(r.layout.Catch, func(c plan.Unknown) bool {
		return mayBeOne(is, r.set.Species.Find(c.Heading, r.set.Ocean))
	})
}

// mayBeOne reports whether two names may be of one species, or one of them is not known.
func mayBeOne(a, b species.Match) bool {
	of := func(m species.Match) []string {
		if m.Found {
			return []string{m.Species.Code}
		}
		return m.Candidates
	}
	if len(of(a)) == 0 || len(of(b)) == 0 {
		return true
	}
	return slices.ContainsFunc(of(a), func(code string) bool { return slices.Contains(of(b), code) })
}

// mendsAnother says of a row's remark that it mends another row.
func (r *Reader) mendsAnother() {
	if i := slices.IndexFunc(r.targets, func(t target) bool { return t.Column.Name == "notes" }); i >= 0 {
		t := &r.targets[i]
		r.aside = append(r.aside, r.problem(t, t.text, "seems to mend what another row says: mend it there"))
	}
}
