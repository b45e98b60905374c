package spelling

import (
	"regexp"
	"strings"
)

// Two spellings of one trip's label differ by these alone, and by capitals: "Trip 03" and "3". They are
// written as regular expressions that Go and the season file's SQL read alike.
const (
	TripWord  = `^(?:trip|outing|salida|sortie|uscita|sa[ií]da|viaje|viagem|fahrt|tour|num|nr|n[o°º]|#)[ .:#°º]*([0-9])`
	TripZeros = `(^|[^0-9.])0+([0-9])`
)

var tripWord, tripZeros = regexp.MustCompile(TripWord), regexp.MustCompile(TripZeros)

// Trip is a trip's label as all its spellings have it.
func Trip(label string) string {
	label = tripWord.ReplaceAllString(strings.ToLower(strings.TrimSpace(label)), "$1")
	return tripZeros.ReplaceAllString(label, "$1$2")
}
