package normalise

import (
	"slices"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/words"
)

// counts tells whether the sheet counts its strikes or what became of them.
func (r *Reader) counts() bool {
	return slices.ContainsFunc([]string{"strikes_n", "hooked_n", "landed_n", "released_n", "lost_n", "missed_n"}, r.has)
}

// hookedOf has the bites of a row that were not missed be those hooked, where the row counts both and says no more of
// them than how many came to the boat.
func (r *Reader) hookedOf() {
	strikes, missed := r.value("strikes_n"), r.value("missed_n")
	if r.notMissed < 0 || !strikes.Known || !missed.Known && !r.layout.NoneMissed {
		return
	}
	if held := strikes.Int - missed.Int; held >= r.value("landed_n").Int+r.value("released_n").Int {
		r.values[r.notMissed] = entry.OfInt(held)
	}
}

// noted takes what became of a fish from its notes, where a clause of them says just
// that ("released, 25 min") and no other contradicts it.
func (r *Reader) noted() {
	if r.fate < 0 || !r.value("species_logged").Known {
		return
	}
	told := ""
	for _, clause := range strings.FieldsFunc(r.value("notes").Text,
		func(c rune) bool { return strings.ContainsRune(",;.()", c) }) {
		f, ok := words.FateOnly(clause)
		switch {
		case !ok || f == words.Bit || f == words.Hooked:
		case told != "" && told != f.String():
			return
		default:
			told = f.String()
		}
	}
	if told != "" {
		r.values[r.fate] = entry.OfText(told)
	}
}
