package meaning

import "regexp"

// ofTrip are words by which hours are those of the whole trip, and fishing those by which they are not.
var (
	ofTrip = regexp.MustCompile(`\b(?:at sea|on (?:the )?water|dock|trip|away|under ?way|outing|day|boat|en mer|en mar|` +
		`in mare|no mar|auf see|salida|sortie|uscita|saida|ausfahrt|navegad[ao]s?|navigation|navigazione)\b`)
	fishing = regexp.MustCompile(`\b(?:troll|fish|lines?|lures?|in (?:the )?water|wet|curric|pesc|pech|train|corric|` +
		`angel|schlepp)`)
)

// tripHours are columns of hours that by their headings are those of the whole trip, and are taken for those with lines
// in the water: "Hours at sea".
func (l *Log) tripHours(u *Understood, g *group) []Open {
	var out []Open
	for i, v := range g.values {
		head := normalise(v.Label.Full())
		if meaningOf(g.cands[i][u.choice[i]]) != "duration_s" || !ofTrip.MatchString(head) ||
			fishing.MatchString(head) {
			continue
		}
		o := l.openOf(u, g, i)
		o.Taken, o.Others = "duration_s", []string{""}
		out = append(out, o)
	}
	return out
}
