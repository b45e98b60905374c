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
	boated := r.value("landed_n").Int + r.value("released_n").Int
	if held, ok := r.held(r.value("strikes_n"), r.value("missed_n"), boated); ok {
		r.values[r.notMissed] = held
	}
}

// held are the bites that were not missed. A cell of those missed that is blank is none where no cell says so in a
// figure.
func (r *Reader) held(strikes, missed entry.Value, boated int64) (entry.Value, bool) {
	held := strikes.Int - missed.Int
	return entry.OfInt(held), r.notMissed >= 0 && strikes.Known && (missed.Known || r.layout.MissedBlank) &&
		held >= boated
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
