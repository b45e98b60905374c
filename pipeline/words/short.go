package words

import (
	"strings"

	"wakeledger/pipeline/spelling"
)

// ShortMethod is the way of fishing that a code is short for: "tr", "jg", "bt". A way's own name
// comes before other words for it; a code of two ways is none.
func ShortMethod(code string) (string, bool) {
	own, any := map[string]bool{}, map[string]bool{}
	code = Fold(code)
	for _, es := range methods.by() {
		for _, e := range es {
			if !spelling.Short(code, e.elems) {
				continue
			}
			any[e.key] = true
			if e.key == strings.Join(e.elems, " ") {
				own[e.key] = true
			}
		}
	}
	if len(own) > 0 {
		any = own
	}
	return only(any)
}

// ShortWeighed is "scale" or "estimated" for a code of how a fish's weight was found.
func ShortWeighed(code string) (string, bool) {
	found := map[string]bool{}
	for word, means := range weighedWords {
		if spelling.Short(Fold(code), []string{word}) {
			found[means] = true
		}
	}
	return only(found)
}

// MayBeGuess reports whether a code may be short for a weight that no scale gave.
func MayBeGuess(code string) bool {
	for word, means := range weighedWords {
		if means == "estimated" && spelling.Short(Fold(code), []string{word}) {
			return true
		}
	}
	return false
}

// weighedWords are words for how a weight was found, in the tongues of the lists.
var weighedWords = map[string]string{"scale": "scale", "scales": "scale", "weighed": "scale", "bascula": "scale",
	"balanza": "scale", "bilancia": "scale", "balance": "scale",
	"balanca": "scale", "waage": "scale", "gewogen": "scale", "estimate": "estimated", "estimated": "estimated",
	"guess": "estimated", "guessed": "estimated", "formula": "estimated",
	"tape": "estimated", "eye": "estimated", "occhio": "estimated", "ojo": "estimated", "oeil": "estimated",
	"olho": "estimated", "augenmass": "estimated",
	"estimado": "estimated", "estime": "estimated", "calculated": "estimated",
	"calc": "estimated", "computed": "estimated", "calculado": "estimated", "calculada": "estimated",
	"calcule": "estimated", "calculee": "estimated", "calcolato": "estimated", "calcolata": "estimated",
	"berechnet": "estimated", "errechnet": "estimated"}

// ShortFate is what became of a bite by a code of two letters or more that is short for one
// fate's name, or else for one fate's words alone: "rel", "lnd".
func ShortFate(code string) (string, bool) {
	if len(code) < 2 {
		return "", false
	}
	own, any := fatesNamed(code), map[string]bool{}
	code = Fold(code)
	for word, es := range fates.by() {
		if word == "" || code == "" || word[0] != code[0] {
			continue // what is cut short begins as the whole does
		}
		for _, e := range es {
			if f := fateOfKey(e.key); f >= Missed && spelling.Short(code, e.elems) {
				any[f.String()] = true
			}
		}
	}
	if len(own) > 0 {
		any = own
	}
	return only(any)
}

// PlainFate reports whether a code is short for a fate's own name: "rel", and not "bo".
func PlainFate(code string) bool { return len(fatesNamed(code)) > 0 }

// fatesNamed are the fates of whose own names a code is short.
func fatesNamed(code string) map[string]bool {
	own := map[string]bool{}
	for f := Missed; f <= Released; f++ {
		if spelling.Short(Fold(code), []string{f.String()}) {
			own[f.String()] = true
		}
	}
	return own
}

func only(found map[string]bool) (string, bool) {
	if len(found) != 1 {
		return "", false
	}
	for x := range found {
		return x, true
	}
	return "", false
}
