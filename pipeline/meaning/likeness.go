package meaning

import (
	"maps"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"unicode"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/spelling"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

var (
	northing = regexp.MustCompile(`(?i)\d\s*[°º'"]*\s*[NS]\b|\b[NS]\s*\d`)
	easting  = regexp.MustCompile(`(?i)\d\s*[°º'"]*\s*[EWO]\b|\b[EWO]\s*\d`)
)

// likePosition is a cell with a latitude and a longitude: numbers with their
// hemispheres, or two with a fraction and nothing else.
func likePosition(s string) bool {
	if northing.MatchString(s) && easting.MatchString(s) {
		return true
	}
	numbers := strings.FieldsFunc(s, func(r rune) bool { return !unicode.IsDigit(r) && r != '.' })
	fractions := 0
	for _, n := range numbers {
		if len(n) > 3 && strings.Contains(n, ".") {
			fractions++
		}
	}
	return fractions == 2 && len(numbers) == 2 && !hasLetter(s)
}

// likeDegrees is a coordinate: not a length in feet and inches, which a heading
// such as "Long" may mean too.
func likeDegrees(s string) bool {
	if digits(s) == 0 {
		return false
	}
	if strings.ContainsAny(s, "°ºNSEWnsew") {
		return true
	}
	return !strings.ContainsAny(s, "\"'″′”’")
}

// likeMany is a count that no yes-or-no column holds.
func likeMany(s string) bool {
	v, err := strconv.Atoi(s)
	return err == nil && v > 1
}

// saying is what a heading's words say of a meaning.
type saying struct {
	weight float64
	unit   unit.Unit
}

// sayings are all that a heading's words say.
type sayings struct {
	columns     map[*plan.Column]saying
	aside       string
	asideWeight float64
	guess       bool
}

// leastPlain is how long a heading is at least that can be a word in full: "rel" and "so" may be
// short for others.
const leastPlain = 4

// plain reports whether a heading is a word in full, and so is short for nothing.
func (s *sayings) plain() bool {
	for _, c := range s.columns {
		if c.weight >= loosely {
			return true
		}
	}
	return false
}

const (
	asSpelled = 3.2 // a heading that is a known spelling of the meaning
	loosely   = 2.4 // one that has its words, in another order or beside others
	doubtful  = 1.4 // a spelling that means it only where the cells agree
	second    = 0.3 // less for each meaning that a spelling has before this one
)

// said looks a label up: as it is spelled, by its words, and by their concepts. Logs of one hand
// have the same ones.
func (t *Lexicon) said(l layout.Label) sayings {
	l.Col = 0
	s := t.labels.of(l, func() sayings {
		s := t.look(l)
		t.mistyped(&s, l)
		return s
	})
	s.columns = maps.Clone(s.columns)
	return s
}

func (t *Lexicon) look(l layout.Label) sayings {
	s := sayings{columns: map[*plan.Column]saying{}}
	if l.Glued {
		t.glued(&s, l.Text)
	}
	if l.Text == "" || len(l.Text) > maxHeading {
		return s
	}
	if m := setInside.FindStringSubmatch(normalise(l.Text)); m != nil {
		_, rest, _ := strings.Cut(l.Text, m[2])
		l.Text = strings.TrimLeft(rest, " -–:.)") // of "Strike 2 - what fish?" what it asks
	}
	if m := ofBoat.FindStringSubmatch(l.Text); m != nil {
		l.Text = m[1]
	}
	l.Text = withoutRemark(l.Text)
	if parts, outer := t.partsIn(l.Text); len(parts) > 0 {
		l.Text = outer
	}
	if isRate(l.Text) {
		return sayings{columns: s.columns, aside: "rate", asideWeight: asSpelled}
	}
	texts := []string{l.Text}
	if l.Unit != "" {
		texts = []string{l.Text + " (" + l.Unit + ")"}
	}
	if l.Group != "" && !t.isSpecies(l.Text) {
		texts = append(texts, l.Group+" "+texts[0])
	}
	for i, text := range texts {
		said := sayings{columns: map[*plan.Column]saying{}}
		into := &s
		if i > 0 && !numberWords[normalise(l.Text)] {
			into = &said
		}
		t.spelled(into, text)
		if into == &said {
			s.take(said)
		}
	}
	return s
}

// isRate tells a heading of so many an hour, a line or a strike: what the log worked out itself.
func isRate(text string) bool {
	m := perWhat.FindStringSubmatch(text)
	if m == nil {
		return false
	}
	_, speed := unit.Lookup(strings.TrimSpace(m[0]))
	return !speed && !perDistance[normalise(m[1])]
}

// perDistance are what an hour has of a speed.
var perDistance = map[string]bool{"km": true, "mi": true, "miles": true, "nm": true, "nmi": true, "sm": true,
	"litres": true, "l": true, "gal": true, "gallons": true}

var perWhat = regexp.MustCompile(
	`(?i)(\pL+)\s*(?:/|\bper\b|\bpor\b|\bpar\b|\bpro\b|\ball')\s*(?:\d+\s*)?(?:h|hr|hrs|hour|hours|hora|horas|heure|ora|stunde|(?:line|rod)[- ]hours?|strikes?)\.?\)?$`)

// numberWords are headings that number what their group names: Trip, No.
var numberWords = map[string]bool{"": true, "no": true, "nr": true, "n": true, "num": true, "number": true, "id": true,
	"numero": true, "ref": true, "name": true, "nom": true, "#": true}

// take adds what a group's heading says with its column's: of what stands under "Trip" not
// each is the trip's number.
func (s *sayings) take(of sayings) {
	for c, x := range of.columns {
		if c.Name != "trip" {
			s.say(c, x.weight, x.unit)
		}
	}
	if of.asideWeight > s.asideWeight {
		s.aside, s.asideWeight = of.aside, of.asideWeight
	}
	s.guess = s.guess || of.guess
}

// withoutRemark leaves out what a long question says in brackets, where that is no unit:
// "How many bites did you get? (count every one, even those that never stuck)".
func withoutRemark(text string) string {
	outer, inner, ok := brackets(text)
	if !ok || len(text) < prose {
		return text
	}
	for _, w := range headingWords(inner) {
		if _, unit := unit.Lookup(w); unit {
			return outer + " (" + w + ")"
		}
	}
	return outer
}

// ofBoat is a heading that says first that it is of the boat or the trip as a whole: "Boat: lines", "Trip: hours".
var ofBoat = regexp.MustCompile(`(?i)^(?:(?:the |whole )*(?:boat|trip|day|outing)|barco|barca|bateau|boot|salida|sortie|uscita|saida)\s*:\s*(\S.*)$`)

// countedConcepts are what bites are counted by in headings.
var countedConcepts = []string{"miss", "lose", "hook", "land", "keep", "release"}

// countsAlso is a heading with what else is among what it counts.
var countsAlso = regexp.MustCompile(`(?i)^(\pL.*\S)\s+\(?(?:incl?\.?|including|with|plus|inkl\.?|y compris|incluid[oa]s?|` +
	`compres[ie])\s+(\pL.*?)\)?$`)

// partsIn are the fates that a heading's brackets add up, "Landed (kept + let go)", and the heading without them. One
// fate alone says what the heading itself means: "Caught (kept)".
func (t *Lexicon) partsIn(text string) (parts []string, outer string) {
	if m := countsAlso.FindStringSubmatch(text); m != nil {
		in, _ := t.concepts.found(normalise(m[2]))
		of, _ := t.concepts.found(normalise(m[1]))
		if delete(of, "first"); in["release"] && len(of) > 0 { // of "AM incl. released" it is all that is said
			return []string{"release"}, m[1] // "Boated incl. released"
		}
	}
	outer, inner, ok := brackets(text)
	if !ok || !strings.ContainsAny(inner, "+&/,") && len(strings.Fields(inner)) < 3 {
		return nil, ""
	}
	in, _ := t.concepts.found(normalise(inner))
	for _, c := range countedConcepts {
		if in[c] {
			parts = append(parts, c)
		}
	}
	if len(parts) < 2 {
		return nil, ""
	}
	return parts, outer
}

func (t *Lexicon) spelled(s *sayings, text string) {
	h := t.heading(text)
	for i, c := range h.candidates {
		w := asSpelled
		switch {
		case c.Doubtful[h.name]:
			w = doubtful
		case h.loose:
			w = loosely
		}
		s.say(c, w-second*float64(i), h.unit)
	}
	columns, aside, weight := t.concepts.says(normalise(splitCamel(text)))
	if len(columns) == 0 && weight == 0 {
		columns, aside, weight = t.concepts.says(normalise(text)) // hPa
	}
	for c, w := range columns {
		u := h.unit
		if c.HasUnit && (u == "" || u.Dimension() != c.Dimension) {
			u = unitAmong(text, c.Dimension)
		}
		s.say(c, w, u)
	}
	if weight > s.asideWeight {
		s.aside, s.asideWeight = aside, weight
	}
	if strings.ContainsAny(text, "$€£") && 4 > s.asideWeight {
		s.aside, s.asideWeight = "money", 4
	}
	in, _ := t.concepts.found(normalise(text))
	s.guess = s.guess || in["guess"] && !aroundIt.MatchString(text) && !guessMark.MatchString(text) &&
		!words.Scaled(text) // "off the scales, ~ if a guess" is a scale's
}

// guessMark is what a heading says of a mark at some of its figures: "Lbs (~ = guess)".
var guessMark = regexp.MustCompile(`[~*?^]\s*=`)

// aroundIt is a heading of a girth that begins with a word which a guess may have too: "Around", "Around (cm)".
var aroundIt = regexp.MustCompile(`(?i)^\s*around(?:\s+(?:it|the fish|fish))?[\s,/]*\(?(?:cms?|ins?\.?|inch(?:es)?|")?\)?\s*$`)

// says tells whether the words may mean a column of a name.
func (s *sayings) says(name string) bool {
	for c, of := range s.columns {
		if c.Name == name && of.weight >= loosely {
			return true
		}
	}
	return false
}

// means are the moments and counts that a label says.
func (t *Lexicon) means(l layout.Label) map[*plan.Column]bool {
	all := map[*plan.Column]bool{}
	for c, of := range t.said(l).columns {
		if of.weight >= loosely && (c.Parse == "moment" || c.Parse == "count") {
			all[c] = true
		}
	}
	return all
}

func (s *sayings) say(c *plan.Column, w float64, u unit.Unit) {
	if u != "" && (!c.HasUnit || u.Dimension() != c.Dimension) {
		if c.HasUnit {
			return
		}
		u = ""
	}
	if old, ok := s.columns[c]; !ok || w > old.weight {
		s.columns[c] = saying{w, u}
	}
}

// unitAmong is the unit of a dimension that stands among a heading's words.
func unitAmong(text string, d unit.Dimension) unit.Unit {
	for _, w := range headingWords(partSign(text)) {
		if u, ok := unit.Lookup(w); ok && u.Dimension() == d &&
			(len(w) > 1 || w == "h") && !strings.EqualFold(w, "in") {
			return u
		}
	}
	if _, inner, ok := brackets(text); ok {
		if u, ok := unit.Lookup(inner); ok && u.Dimension() == d {
			return u
		}
	}
	if all := headingWords(text); d == unit.Length && len(all) > 1 && all[len(all)-1] == "m" {
		return unit.Metre // "Talla, m"
	}
	return ""
}

// Label is how much a text is like a heading, 0 to 1.
func (t *Lexicon) Label(text string) float64 {
	if len(text) > maxHeading || text == "" {
		return 0
	}
	if t.isSpecies(text) {
		return 0.6
	}
	s := t.said(layout.Label{Text: text})
	best := s.asideWeight
	for _, x := range s.columns {
		best = max(best, x.weight)
	}
	if digits(text) > 1 {
		best /= 3 // a value, such as 5 lines 0640-1120 @10
	}
	if len(text) > 4 && strings.EqualFold(text[:4], "the ") {
		best /= 2 // a place or a name: the Corner
	}
	return min(1, best/3)
}

func digits(s string) int {
	n := 0
	for _, r := range s {
		if unicode.IsDigit(r) {
			n++
		}
	}
	return n
}

// Key tells a heading that may name a day or a trip.
func (t *Lexicon) Key(text string) bool {
	for c, x := range t.said(layout.Label{Text: text}).columns {
		if (c.Name == "date" || c.Name == "trip") && x.weight >= loosely {
			return true
		}
	}
	return false
}

func sortCandidates(c []candidate) {
	sort.SliceStable(c, func(i, j int) bool { return c[i].score > c[j].score })
}

// Event is what words before a clock time tell of the lines or the boat, in words that are
// understood beside others: "up" alone is "lines up". It is "" for words that tell neither.
func (t *Lexicon) Event(text string) string {
	switch words.EntryOf(text).Event {
	case words.EventIn:
		return "lines in"
	case words.EventUp:
		return "lines up"
	case words.EventOut, words.EventLeave, words.EventHome, words.EventClear, words.EventWeigh,
		words.EventDrop:
		return text
	}
	return ""
}

// Hourly is what a text says of the hours of a log, as [layout.Likeness] has it.
func (t *Lexicon) Hourly(text string) string { return words.Hourly(text) }

// The evidence of letters that stand right behind each figure.
const (
	gluedUnit  = 3.2 // 9k: the words of a cell know it for a speed
	gluedLines = 1.2 // 4L: but fish landed or lost are counted so, too
)

// glued takes what letters say that are written right behind each figure of a column: a unit of speed, or the first of
// a name for the lines.
func (t *Lexicon) glued(s *sayings, letters string) {
	u, ok := unit.Lookup(strings.ToLower(letters))
	if !ok && len(phrase.Settings("9"+letters).Speeds) > 0 {
		u = unit.Knot
	}
	for _, c := range alike(t.Columns, "speed_kn", "quantity") {
		if u != "" && u.Dimension() == unit.Speed {
			s.say(c, gluedUnit, u)
		}
	}
	for i := range t.shorts {
		x := &t.shorts[i]
		if len(x.columns) == 0 || x.columns[0].Name != "lines_out" {
			continue
		}
		for _, n := range x.names {
			if len(n.words) == 1 && spelling.Short(strings.ToLower(letters), n.words) {
				for _, c := range x.columns {
					s.say(c, gluedLines, "")
				}
			}
		}
	}
}
