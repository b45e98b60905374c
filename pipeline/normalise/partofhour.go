package normalise

import (
	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// partsOfHour are fractions of an hour as they are written, in seconds.
var partsOfHour = map[string]float64{"1/4": 900, "1/3": 1200, "1/2": 1800, "2/3": 2400, "3/4": 2700, "¼": 900,
	"½": 1800, "¾": 2700}

// partOfHour takes a fraction alone, in a column of hours, for that of an hour; and under a heading that asks how much
// of the hour was trolled, "all" and "none".
func (r *Reader) partOfHour(t *target, text string) bool {
	seconds, ok := partsOfHour[text]
	if of := t.Unit == "" || t.Unit == unit.Hour; ok && of {
		r.values[t.field] = entry.OfReal(seconds)
		return true
	}
	whole, none := words.WholeHour(text), words.Nothing(text)
	if !whole && !none || !words.PartOfHour(t.Heading) {
		return false
	}
	if whole {
		r.values[t.field] = entry.OfReal(3600)
	} else {
		r.values[t.field] = entry.OfReal(0)
	}
	return true
}
