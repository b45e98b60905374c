package meaning

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// Meanings that no column of the season file has, and that a column of a log may have.
var (
	catchColumn  = &plan.Column{Name: "catch", Parse: "catch"}   // how many of the species that heads it
	rodColumn    = &plan.Column{Name: "rod", Parse: "rod"}       // what struck at the place that heads it
	spreadColumn = &plan.Column{Name: "spread", Parse: "spread"} // the lure at the place that heads it
	asideColumn  = &plan.Column{Name: "aside", Parse: "aside"}   // what counts do not rest on
)

// Switches leave out kinds of evidence by name, to see what each is worth.
type Switches map[string]bool

// vote is what one piece of evidence says of one meaning.
type vote struct {
	Evidence string
	Weight   float64
}

// candidate is a meaning that a column may have.
type candidate struct {
	column *plan.Column // nil: none
	aside  string
	unit   unit.Unit
	score  float64
	votes  []vote
}

func (c *candidate) add(off Switches, evidence string, weight float64) {
	if weight != 0 && !off[evidence] {
		weight *= worthOf(evidence)
		c.score += weight
		c.votes = append(c.votes, vote{evidence, weight})
	}
}

const (
	sureCells = 4    // cells that tell a meaning without any word
	noWord    = -1.6 // a meaning for which no word of the heading speaks
	unsaid    = 0.5  // what having no meaning is worth
	unlike    = -2   // cells that do not fit a meaning at all
	mostCands = 9    // meanings looked at for a column
)

// candidates are the meanings that a column may have, the best first, with none among them.
// more is what the log's own legend says of its heading.
func (t *Lexicon) candidates(v *Values, more string, off Switches) []candidate {
	label := v.Label
	if v.behind != "" {
		label.Text = v.behind
	}
	said := t.said(label)
	t.sayMore(&said, more)
	if off["words"] {
		said = sayings{}
	}
	short, letters := t.shortFor(labelWithUnit(v.Label))
	if off[shortened] || said.plain() && len(v.Label.Text) >= leastPlain {
		short = sayings{}
	}
	var out []candidate
	if _, ok := t.speciesFate(v.Label.Text); ok && !off["species over counts"] && v.countsFish() {
		c := candidate{column: catchColumn}
		if isCode(v.Label.Text) && (said.tells() || short.tells()) && !t.sameFish(v.Label.Text, more) {
			c.add(off, "a code over counts", codeAlone) // its sisters speak for it: see siblings
			out = append(out, c)
		} else {
			c.add(off, "species over counts", 3.6)
			return []candidate{c, {score: unsaid}}
		}
	}
	for _, c := range t.Columns {
		s, word := said.columns[c]
		cut, isShort := short.columns[c]
		if isShort = isShort && cut.weight > s.weight; isShort {
			s.unit = cut.unit
		}
		if u, ok := unit.Lookup(v.Label.Text); ok && !word && u.Dimension() == c.Dimension &&
			(c.Name == "length_cm" || c.Name == "scale_kg") {
			s.unit = u // 35 under g are no fish of grams
		}
		p := profile(t, v, c, s.unit)
		if c.Parse == "outcome" && word && s.weight >= loosely && p <= unlike && v.codes() {
			p = -1.5 // codes that nobody explains: each is asked about
		}
		crossing := (c.Name == "length_cm" || c.Name == "girth_cm") && v.share("crossed", crossed) >= fewCrossed
		times := c.Name == "count" && strings.EqualFold(v.Label.Text, "x") && v.whole(2, mostTimes) > 0.5
		if !word && (p <= 0 || !tells(c) && p < sureCells) && (!isShort || p <= unlike) && !crossing && !times {
			continue
		}
		x := candidate{column: c, unit: s.unit}
		if times {
			x.add(off, "times", 4.5)
		}
		if crossing && c.Name == "length_cm" {
			p = max(p, 0)
			x.unit = cmp.Or(x.unit, unitAmong(v.Label.Text, unit.Length), headingUnit(v.Label))
			x.add(off, "length by girth", 4.5)
		} else if crossing {
			x.add(off, "length by girth", -6)
		}
		if c.Dimension == unit.Duration && v.dayShares() {
			x.unit = unit.DayShare
		}
		if said.guess && (c.Name == "scale_kg" || c.Name == "length_cm" || c.Name == "girth_cm") {
			x.add(off, guessHeading, guessed)
		}
		if c.Name == "scale_kg" && byTape.MatchString(v.Label.Text) && !words.Scaled(v.Label.Text) {
			x.add(off, guessHeading, guessed) // weight by tape: no scale showed it
		}
		if (c.Name == "duration_s" || c.Name == "line_hours") && otherHours(v.Label.Text) {
			x.add(off, "hours of another way of fishing", -6)
		}
		if c.Name == "line_hours" && v.share("span", spanOfClocks) > 0 {
			x.add(off, "times of the boat", -3) // 7:30 to 2 is as long for one line as for six
		}
		if c.Name == "scale_kg" && v.share("formula", workedOut) >= 0.9 {
			x.add(off, "a formula of other cells", -6) // 16*11^2/800: no scale showed it
		}
		switch {
		case isShort && letters == 1:
			x.add(off, oneLetter, cut.weight)
		case isShort:
			x.add(off, shortened, cut.weight)
		case word:
			x.add(off, "words", s.weight)
		default:
			x.add(off, "no word", noWord)
			if c.Name == "stopped_s" || c.Name == "outcome" || c.Name == "lines_out" || c.Parse == "story" {
				x.add(off, "no word", noWord/4) // hours and bites hang on them
			}
			if c.Name == "scale_kg" || c.Name == "length_cm" || c.Name == "girth_cm" || c.Name == "count" {
				x.add(off, "no word", noWord/2) // many numbers are like a fish's, or how many
			}
		}
		if c.Name == "lines_out" && !word && !isShort && p < sureCells && t.elsewhere(v) {
			x.add(off, "words of something else", noWord) // a crew of four is no number of lines
		}
		if c.Name == "kept" && word && strings.HasSuffix(v.Label.Text, "?") && v.share("yes or no", yesOrNo) >= 0.95 {
			x.add(off, "a question with its answers", 1.5)
		}
		if c.Name == "hooked_n" && word && lostBehind(v.Label.Text) {
			x.add(off, "lost at last", -2.5)
		}
		x.add(off, "cells", p)
		if (c.Parse == "quantity" || c.Parse == "count") && OnlyNumbers(v.Label.Text) && v.numbersRows() {
			x.add(off, "rows numbered", -6) // No. 1 to 24 are no hours
		}
		if u, ok := unit.Lookup(v.Label.Text); ok && !word && x.unit == u &&
			(c.Name == "length_cm" || c.Name == "scale_kg") {
			x.add(off, "a unit for a heading", 2.4)
		}
		x.add(off, "unit", units(v, c, x.unit))
		if c.Name == "scale_kg" && !word && v.share("on a scale", saysScale) >= fewScaled && v.fishes(t) < mostFish {
			x.add(off, "figures of a scale", 2.5)
		}
		if c.Name == "length_cm" && !word && v.share("feet and inches", feetInches) >= 0.8 {
			x.add(off, "feet and inches", 3)
		}
		if c.Parse == "story" && !word && saysAway(v.Label.Text, said) && v.awayBites() >= mostAway {
			x.add(off, "bites that got away", gotAway)
		}
		if (c.Name == "lost_n" || c.Name == "missed_n") && v.awayBites() >= mostAway {
			x.add(off, "bites that got away", -gotAway) // whose own words say which were lost
		}
		if c.Parse == "fishlist" && p > 0 && v.sized() == "" && (unitAmong(v.Label.Text, unit.Mass) != "" ||
			unitAmong(v.Label.Text, unit.Length) != "") {
			x.add(off, "fish and their measures", 1.5)
		}
		if c.Name == "species" && v.sized() != "" {
			x.add(off, "a fish and its length", 2.5)
		}
		out = append(out, x)
	}
	out = append(out, t.pseudo(v, said, off)...)
	if short.asideWeight > said.asideWeight {
		c := candidate{column: asideColumn, aside: short.aside}
		c.add(off, shortened, short.asideWeight)
		out = append(out, c)
	}
	out = append(out, candidate{score: unsaid})
	sortCandidates(out)
	if len(out) > mostCands {
		rest := out[mostCands:]
		out = out[:mostCands]
		for _, c := range rest {
			if c.column == nil {
				out = append(out, c)
			}
		}
	}
	return out
}

// fewCrossed is the least share of cells with a length and a girth in a column of them: 62x38.
const fewCrossed = 0.6

var byGirthCell = regexp.MustCompile(`(?i)^(\d{2,3}(?:[.,]\d+)?) ?(?:["″]|in|cm)? ?[x×*] ?` +
	`(\d{2,3}(?:[.,]\d+)?) ?(?:["″]|in|cm)?$`)

// crossed tells a cell of a length and a girth, the longer first.
func crossed(c layout.Cell) bool {
	m := byGirthCell.FindStringSubmatch(c.Text)
	if m == nil {
		return false
	}
	length, _ := number(m[1])
	girth, _ := number(m[2])
	return length > girth
}

// fewScaled is from which share of figures with a word for the scale beside them on a column is of weights.
const fewScaled = 0.2

// mostFish is from which share of cells that name fish on a column is of fish with their weights, not of weights.
const mostFish = 0.5

// byTape is a heading of what was worked out of a length and a girth, where it is of weights.
var byTape = regexp.MustCompile(`(?i)(?:^|\PL)taped?(?:\PL|$)`)

// legendSays is how much less than a heading's own words a legend's words for it say.
const legendSays = 0.9

// sayMore adds what the log's legend says of a heading. One fate in all is told by the strongest of its
// words: of "lost = hooked, came off at the rail" it is no count of fish hooked. One of all that pulled, hooked
// or not, is of bites.
func (t *Lexicon) sayMore(said *sayings, more string) {
	if more == "" {
		return
	}
	if explainsList(more) {
		for _, c := range t.Columns {
			if c.Parse == "fishlist" {
				said.say(c, asSpelled, "")
			}
		}
		return
	}
	if sum := sumOf(more); sum != "" {
		said.say(t.named(sum, ""), legendSays*loosely, "")
		return
	}
	more, bites := core(more)
	if bites {
		said.say(t.named("strikes_n", ""), legendSays*loosely, "")
		return
	}
	told := fateCounts[t.fateOfLegend(said, more)]
	if fate, _, _, _ := words.FateOf(more); fate != words.Missed && onlyLost(said) {
		told = fateCounts[words.Lost] // "hooked, and a seal got it" says how
	} else if fate == words.Missed && onlyLost(said) {
		told = fateCounts[words.Missed] // dropped = never came tight
		delete(said.columns, t.named("lost_n", ""))
	}
	for c, s := range t.said(layout.Label{Text: more}).columns {
		if told == nil || c.Parse != "count" || slices.Contains(told, c.Name) {
			said.say(c, legendSays*s.weight, s.unit)
		}
	}
	for _, c := range t.Columns {
		if c.Parse == "count" && slices.Contains(told, c.Name) {
			said.say(c, legendSays*loosely, "")
		}
	}
}

// otherCells are the places of cells in a formula.
var otherCells = regexp.MustCompile(`\$?\b[A-Z]{1,2}\$?\d+\b`)

// workedOut tells a cell that is worked out from two others of the row or more; of one, it may be in another unit.
func workedOut(c layout.Cell) bool {
	cells := map[string]bool{}
	for _, at := range otherCells.FindAllString(c.Formula, -1) {
		cells[at] = true
	}
	return len(cells) > 1
}

// onlyLost tells a heading whose own words say of fish that they were lost, and nothing else of counts.
func onlyLost(said *sayings) bool {
	lost := false
	for c, s := range said.columns {
		if c.Parse == "count" && s.weight >= loosely && c.Name != "lost_n" {
			return false
		}
		lost = lost || c.Name == "lost_n" && s.weight >= loosely
	}
	return lost
}

// explainsList tells what explains how a list of fish is written: "name, fork length in cm, (kg on the scale)".
func explainsList(more string) bool {
	return strings.Count(more, ",") >= 2 && unitAmong(more, unit.Length) != "" && unitAmong(more, unit.Mass) != ""
}

// fateOfLegend is the fate of a legend's words for a heading, where the heading says of no count that it
// is another one: "hooked = came tight, also those lost later" is of those hooked.
func (t *Lexicon) fateOfLegend(said *sayings, more string) words.Fate {
	fate, _, _, _ := words.FateOf(more)
	for c, s := range said.columns {
		if c.Parse == "count" && s.weight >= doubtful && !slices.Contains(fateCounts[fate], c.Name) {
			return words.FateUnknown
		}
	}
	return fate
}

// fateCounts are the counts of what became of fish.
var fateCounts = map[words.Fate][]string{words.Missed: {"missed_n"}, words.Lost: {"lost_n"},
	words.Landed: {"landed_n", "kept_n"}, words.Released: {"released_n"}}

// sameFish tells a code whose legend names the fish that it is short for: "alb = albacore in the boat".
func (t *Lexicon) sameFish(code, more string) bool {
	a := t.Species.Find(code, "")
	return a.Found && slices.ContainsFunc(t.Species.In(more), func(f species.Span) bool {
		return f.Match.Found && f.Match.Species.Code == a.Species.Code
	})
}

// tells tells a meaning that cells can speak for without a word of the heading.
func tells(c *plan.Column) bool {
	if c.Name == "depart_s" || c.Name == "return_s" {
		return false
	}
	switch c.Parse {
	case "date", "moment", "stretches", "species", "outcome", "fishlist", "story", "method", "event",
		"weighed", "count", "position":
		return true
	case "quantity":
		switch c.Name {
		case "speed_kn", "strike_speed_kn", "duration_s", "stopped_s", "length_cm", "girth_cm", "scale_kg":
			return true
		}
	}
	return c.Name == "line" || c.Name == "trip"
}

// guessed is what a word for a guess in its heading says of a weight or a length.
const (
	guessHeading = "a guess by its heading"
	guessed      = -8.0
)

// measuredNot is what a unit of a length or a weight in its heading says of a count.
const measuredNot = -5.0

// anotherUnit is what a unit of something else in the heading's brackets says: "Line (kg)" is no length.
const anotherUnit = -4.0

// units is what the unit of the heading or the cells says of a meaning.
func units(v *Values, c *plan.Column, heading unit.Unit) float64 {
	if _, inner, ok := brackets(v.Label.Text); ok && c.HasUnit {
		if u, ok := unit.Lookup(inner); ok && u.Dimension() != c.Dimension && heading == "" {
			return anotherUnit
		}
	}
	if !c.HasUnit {
		if _, inner, ok := brackets(v.Label.Text); ok && c.Parse == "count" {
			if u, ok := unitIn(inner); ok && (u.Dimension() == unit.Length || u.Dimension() == unit.Mass) {
				return measuredNot // no count is of centimetres
			}
		}
		if _, u := withoutUnit(v.Label.Text); c.Parse == "count" && u.Dimension() == unit.Mass {
			return measuredNot // "Total lb"
		}
		return 0
	}
	w := 0.0
	if heading != "" && heading.Dimension() == c.Dimension {
		w = 1
		if usual(c, heading) {
			w += 0.3
		}
	} else if s := v.stated(c); s > 0.5 {
		w = 1
	}
	return w
}

func usual(c *plan.Column, u unit.Unit) bool {
	return u == c.US || u == c.Metric || u == c.Unit || u == c.Bare
}

// pseudo are the meanings that are no columns of the season file.
func (t *Lexicon) pseudo(v *Values, said sayings, off Switches) []candidate {
	var out []candidate
	head := v.Label.Text
	if words.IsPlace(head) && v.texts() > 0.5 {
		fates := v.share("fate or species", func(c layout.Cell) bool {
			_, _, _, ok := words.FateOf(c.Text)
			return ok || len(t.Species.In(c.Text)) > 0
		})
		quiet := v.share("quiet marks", func(c layout.Cell) bool {
			return words.QuietMark(c.Text) || words.Nothing(c.Text)
		})
		if fates > 0 && quiet < 1 {
			fates /= 1 - quiet // of the cells that tell something
		}
		measures := v.share("lengths", func(c layout.Cell) bool { // 8'11"
			_, err := unit.ParseQuantity(c.Text, unit.Length, unit.Inch, unit.MarkPoint)
			return err == nil
		})
		if fates > 0.5 || v.spelledOut && quiet == 1 {
			c := candidate{column: rodColumn}
			c.add(off, "place over fates", 4.5)
			out = append(out, c)
		} else if measures < 0.5 {
			c := candidate{column: spreadColumn}
			c.add(off, "place over lures", 3)
			out = append(out, c)
		}
	}
	if u := unitAmong(head, unit.Mass); u != "" && said.aside == "best" {
		for _, column := range alike(t.Columns, "scale_kg", "quantity") {
			c := candidate{column: column, unit: u}
			weight := 0.5
			if slices.Contains(column.Kinds, plan.Flat) && v.whole(0, 2000) > 0.9 {
				// a row of several fish, no scale: it is asked about
				weight = -1.5
			}
			c.add(off, "the best fish's weight", weight)
			c.add(off, "cells", profile(t, v, column, u))
			c.add(off, "unit", units(v, column, u))
			out = append(out, c)
		}
	}
	if len(said.columns) == 0 && said.asideWeight == 0 && v.sentences() {
		c := candidate{column: t.named("notes", "text")} // under no heading, or one that says nothing
		c.add(off, "sentences", 2)
		if storyProfile(v, -1) > 0 {
			c.add(off, "sentences", -1.1) // it may tell the bites
		}
		out = append(out, c)
	}
	if column := t.countedByName(v); column != nil {
		c := candidate{column: column}
		c.add(off, "fish by name", 3)
		if said.columns[column].weight >= loosely {
			c.add(off, "words", 1) // and no yes or no
		}
		out = append(out, c)
	}
	if v.dates() > 0.9 && said.says("return_s") {
		c := candidate{column: asideColumn, aside: "the day the boat was back"}
		c.add(off, "the second of two days", 3.6) // out, back
		out = append(out, c)
	}
	if words.Otherwise(v.Label.Text) && v.whole(0, 200) > 0.9 {
		c := candidate{column: asideColumn, aside: "not trolled"}
		c.add(off, "another way of fishing", 4.5) // plus on bait
		out = append(out, c)
	}
	if otherHours(v.Label.Text) && v.within(t.named("stopped_s", "quantity"), "", 0, mostOtherHours) > 0.9 {
		for _, column := range alike(t.Columns, "stopped_s", "quantity") {
			c := candidate{column: column, unit: unit.Hour}
			c.add(off, "hours of another way", 5) // taken off the clock times: see offTheClock
			out = append(out, c)
		}
		c := candidate{column: asideColumn, aside: "not trolled"}
		c.add(off, "another way of fishing", 4)
		out = append(out, c)
	}
	if v.marksOf() && !slices.ContainsFunc([]string{"strikes_n", "hooked_n", "missed_n", "lost_n", "landed_n",
		"kept_n", "released_n", "lines_out"}, said.says) {
		c := candidate{column: asideColumn, aside: "marks"}
		c.add(off, "marks from the first to the last", 3) // Weed (0-4)
		out = append(out, c)
	}
	if said.asideWeight > 0 && !(said.aside == "money" && (v.scaled() >= 0.5 ||
		v.stated(t.named("scale_kg", "quantity")) >= 0.5)) { // a peso is a weight too
		c := candidate{column: asideColumn, aside: said.aside}
		c.add(off, "words", said.asideWeight)
		out = append(out, c)
	}
	return out
}

// mostOtherHours is the most hours of a day that are fished in another way.
const mostOtherHours = 16

// spanOfClocks tells a cell of two clock times: 7:30 to 2.
func spanOfClocks(c layout.Cell) bool {
	_, _, ok := phrase.Span(c.Text)
	return c.Look == layout.Text && ok
}

// otherHours tells a heading of hours that were fished in another way than trolling, or not at all: "hrs bottom",
// "heures palangrotte".
func otherHours(head string) bool {
	m, how := words.Method(head)
	if !(how && m != "troll" && m != "kite" || words.Otherwise(head)) {
		return false
	}
	u, _ := unitIn(head)
	return u == unit.Hour || slices.ContainsFunc(strings.Fields(normalise(head)), func(w string) bool {
		return hourWords[w]
	})
}

// hourWords are the words for hours in headings.
var hourWords = set(strings.Fields("h hr hrs hour hours hora horas ora ore heure heures stunde stunden std"))

// scaled is the share of cells that say that a weight is from a scale or guessed; a weight with its guess beside it
// is a weight.
func (v *Values) scaled() float64 {
	return v.share("scaled or hedged", func(x layout.Cell) bool {
		_, told := words.ByScale(x.Text)
		lone := !slices.ContainsFunc(strings.Fields(x.Text), func(w string) bool { return w != "c" }) // circa, alone
		return told && !lone && (v.spelledOut || !strings.ContainsAny(x.Text, "0123456789") ||
			unitAmong(x.Text, unit.Mass) != "")
	})
}

var fromTo = regexp.MustCompile(`(?:^|[^\d.,])([01])\s?(?:-|–|\.\.+|to|bis|a|à)\s?([2-9]|10)(?:$|[^\d.,])`)

// marksOf tells whole numbers that are marks, between the two that their heading names.
func (v *Values) marksOf() bool {
	m := fromTo.FindStringSubmatch(v.Label.Text)
	if m == nil {
		return false
	}
	from, _ := strconv.Atoi(m[1])
	to, _ := strconv.Atoi(m[2])
	return v.whole(float64(from), float64(to)) == 1
}

// countedByName is the count that a column holds whose heading says that fish were boated or let
// go, and whose cells name them: "1 yft, 1 mahi". nil: it is none.
func (t *Lexicon) countedByName(v *Values) *plan.Column {
	fate, _, _, ok := words.FateOf(v.Label.Text)
	if !ok || v.length() >= prose || v.fishes(t) <= 0.2 || othersWord.MatchString(v.Label.Text) {
		return nil // others are beside what is counted: see others
	}
	name := ""
	switch {
	case fate == words.Released && (v.texts() > 0.5 || v.fishes(t) >= mostFish):
		name = "released_n"
	case fate == words.Landed && v.fishes(t) >= 0.5 && v.share("fish without measures", bareFish) >= 0.9:
		name = "landed_n"
	default:
		return nil
	}
	named := v.share("fish or no", func(c layout.Cell) bool {
		_, fish := phrase.CountFish(c.Text)
		_, all := phrase.AllOf(c.Text)
		return fish || all || yesOrNo(c) || words.Nothing(c.Text)
	})
	if columns := alike(t.Columns, name, "count"); named >= 0.9 && len(columns) > 0 {
		return columns[0]
	}
	return nil
}

// bareFish tells a list of fish with their numbers and no more: "2 yft, 1 mahi".
func bareFish(c layout.Cell) bool {
	all := phrase.FishList(c.Text, phrase.Defaults{})
	return words.Nothing(c.Text) || len(all) > 0 && c.Text[0] >= '0' && c.Text[0] <= '9' &&
		!slices.ContainsFunc(all, func(f phrase.Fish) bool {
			return f.Kg+f.LengthCm+f.GirthCm > 0 || f.Fate == words.Released
		})
}

// speciesFate is what became of the fish whose species heads a column: of a heading that is
// a species' name, or one beside a fate ("Bonito released").
func (t *Lexicon) speciesFate(head string) (fate string, ok bool) {
	if t.isSpecies(head) {
		return "", true
	}
	f, _, _, told := words.FateOf(head)
	if !told || f != words.Landed && f != words.Released && f != words.Lost ||
		!t.isSpecies(t.fishOf(head)) {
		return "", false
	}
	return f.String(), true
}

// fishOf is a heading without what it says became of its fish: "wahoo" of "wahoo kept".
func (t *Lexicon) fishOf(head string) string {
	_, _, at, told := words.FateOf(head)
	if !told || t.isSpecies(head) {
		return head
	}
	rest := strings.Trim(head[:at[0]]+head[at[1]:], " ()-,:/")
	if name, ok := phrase.AllOf(rest); ok {
		return name // wahoo (all let go)
	}
	return rest
}

// profile is what the cells say of a meaning: above 0 they fit, far below 0 they do not.
func profile(t *Lexicon, v *Values, c *plan.Column, heading unit.Unit) float64 {
	const not = -6
	if len(v.cells) == 0 {
		switch c.Parse {
		case "event", "stretches", "story", "fishlist":
			return not // cells alone tell these
		}
		return -0.6
	}
	pick := func(ok bool, w float64) float64 {
		if ok {
			return w
		}
		return not
	}
	ofHour := func(x layout.Cell) bool {
		return words.WholeHour(x.Text) || words.Nothing(x.Text) || fraction.MatchString(x.Text)
	}
	if c.Name == "duration_s" && words.PartOfHour(v.Label.Text) && v.share("parts of an hour", ofHour) >= 0.8 {
		return 1.2
	}
	switch c.Parse {
	case "moment":
		if v.dotted {
			return pick(v.clockShare() >= 0.9, 0.9)
		}
		if hoursBehind.MatchString(v.Label.Text) {
			return pick(v.clockShare() >= 0.6, 0) // 2h35 under "with lures out (h)"
		}
		if v.running() || isID(v.Label.Text) {
			return not // the number of each row
		}
		if v.share("bare figures", func(x layout.Cell) bool { return digits(x.Text) == len(x.Text) }) >= 0.9 {
			return pick(v.clockShare() >= 0.6, 1) // 850 may be money
		}
		return pick(v.clockShare() >= 0.6, 1.5)
	case "date":
		return dateProfile(v, not)
	case "quantity":
		if measures[c.Name] && v.quantities(c) < 0.5 && v.texts() >= 0.5 && v.fishes(t) >= 0.5 {
			return not // fish with their measures, in words
		}
		return quantityProfile(v, c, heading, not)
	case "count":
		if v.fishes(t) >= 0.5 {
			return not // 1 dolphin: a list of fish
		}
		return countProfile(v, c, not)
	case "outcome":
		if fates := v.fates(); fates < 0.5 && (fates >= fewFates || v.length() <= longestCode && v.texts() > 0.9) &&
			v.closed() && !v.otherLetters() {
			return -0.4 // words or codes of his own: each is asked about
		}
		return pick(v.fates() >= 0.5 && (v.length() < 34 || v.spelledOut) && !v.otherLetters() &&
			eventProfile(v, not) < 0, 2.2)
	case "species":
		if v.share("yes or no", yesOrNo) >= 0.9 {
			return not // "Did we fish?"
		}
		return speciesProfile(t, v, not)
	case "fishlist":
		if v.oneBites() {
			return not
		}
		if v.length() > prose {
			return pick(v.fishes(t) >= 0.4, 1.2)
		}
		return pick(v.fishes(t) >= 0.4 && v.share("plain species",
			func(x layout.Cell) bool { return t.isSpecies(x.Text) }) < 0.7, 2.4)
	case "story":
		return storyProfile(v, not)
	case "stretches":
		if v.loneHours() {
			return 0
		}
		return pick(v.dates() < 0.9 && v.share("stretch",
			func(x layout.Cell) bool { return tellsStretch(x.Text) }) >= 0.6, 4)
	case "weighed":
		told := v.scaled()
		switch fish := v.fishes(t) >= 0.4; {
		case !fish && told >= 0.5:
			return 2.5
		case !fish && v.share("yes or no", yesOrNo) >= 0.9:
			return 1.5 // Scale? yes
		case !fish && v.ticks() >= 0.9 && (words.Hedged(v.Label.Text) || words.Scaled(v.Label.Text)):
			return 1.5 // Est.: x
		case !fish && told >= 0.15 && v.closed():
			return 1.5 // whose scale it was: ours, the club's
		}
		return pick(v.coded(), 0.2)
	case "method":
		if v.codesOfFates() {
			return not
		}
		if v.waysOfFishing() {
			return sureCells
		}
		if _, asked := words.Method(v.Label.Text); !asked && 2*len(v.cells) < len(v.Rows) {
			return 0 // remarks on a few: "jigged one hour", under a heading that does not ask for a way
		}
		return pick(v.share("method", func(x layout.Cell) bool { _, ok := words.Method(x.Text); return ok }) >= 0.6,
			3.4)
	case "event":
		return eventProfile(v, not)
	case "position":
		return pick(v.positions(), 2.5)
	case "latitude", "longitude":
		return pick(v.share("degrees", func(x layout.Cell) bool { return likeDegrees(x.Text) }) >= 0.6, 0.8)
	case "kept":
		if v.share("kept or let go", func(x layout.Cell) bool {
			f, _, _, ok := words.FateOf(x.Text)
			return ok && (f == words.Landed || f == words.Released) && !phrase.OneBite(x.Text)
		}) >= 0.95 {
			return 4.4 // no fish of it was lost: what became of them, and no more
		}
		if v.counts() {
			return not
		}
		return pick(v.share("few", func(x layout.Cell) bool { return len(x.Text) < 24 && !likeMany(x.Text) }) >= 0.6,
			0.5)
	case "bool", "released", "tagcapture":
		if v.counts() {
			return not
		}
		return pick(v.share("few", func(x layout.Cell) bool { return len(x.Text) < 24 && !likeMany(x.Text) }) >= 0.6,
			0.5)
	case "zone":
		if v.share("time zone", func(x layout.Cell) bool { return timeZone.MatchString(x.Text) }) < 0.5 {
			return not // a part of the sea: "Zone" is both
		}
		return pick(v.texts() > 0.6, 0.4)
	case "lengthkind", "weightstate":
		return pick(v.texts() > 0.6, 0.4)
	}
	if c.Parse == "text" && c.Name != "notes" && v.codesOfFates() {
		return not
	}
	return textProfile(v, c, not)
}

// codesOfFates tells cells that are codes of what became of bites, as the log itself says: "how" over 1, 2 and 3.
func (v *Values) codesOfFates() bool {
	return v.spelledOut && v.length() < 34 && v.fates() >= 0.9
}

// timeZone is how a time zone is written: Pacific/Auckland, UTC-9, +02:00, AKDT.
var timeZone = regexp.MustCompile(`^(?:(?i:utc|gmt).*|[+-]\d{1,2}(?::?\d\d)?|\pL[\w+-]+/[\w/+-]+|[A-Z]{2,5}|Z)$`)

// lettered tells cells that number something by letters: A, B, C, with none left out.
func (v *Values) lettered() bool {
	seen := map[byte]bool{}
	for _, c := range v.cells {
		if len(c.Text) != 1 || c.Text[0]|0x20 < 'a' || c.Text[0]|0x20 > 'z' {
			return false
		}
		seen[c.Text[0]|0x20] = true
	}
	for i := range len(seen) {
		if !seen['a'+byte(i)] {
			return false
		}
	}
	return len(seen) > 1
}

// waysOfFishing tells cells each of which is the name of a way of fishing, of two at least, and trolling one of
// them.
func (v *Values) waysOfFishing() bool {
	all := v.share("way of fishing", func(x layout.Cell) bool { return wayOf(x.Text) != "" })
	troll := v.share("trolling", func(x layout.Cell) bool { return wayOf(x.Text) == "troll" })
	return len(v.cells) > 2 && all >= 0.9 && troll > 0 && troll < all
}

// wayOf is the way of fishing that is all of a text; "" for others.
func wayOf(text string) string {
	m, ok := words.Method(text)
	if !ok || m != "troll" && !words.AnotherMethod(text) || len(strings.Fields(text)) > 2 {
		return ""
	}
	return m
}

// positions tells cells with a latitude and a longitude.
func (v *Values) positions() bool {
	return v.share("position", func(x layout.Cell) bool { return likePosition(x.Text) }) >= 0.6
}

// coded tells two or three codes of a letter or two, again and again.
func (v *Values) coded() bool {
	kinds := v.distinct() * float64(len(v.cells))
	return len(v.cells) > 5 && kinds > 1.5 && kinds < 3.5 && v.texts() > 0.9 && v.length() <= 2.5
}

// yesOrNo tells the answer to a question that names no fish.
// feetInches tells a length such as a fish's: 3'6".
func feetInches(c layout.Cell) bool { return inFeet.MatchString(c.Text) }

var inFeet = regexp.MustCompile(`^[1-9]['’′]\s*\d{1,2}(?:[.,]\d|\s?1/2|½)?\s*(?:["”″]|''|’’)?$`)

func yesOrNo(c layout.Cell) bool {
	switch normalise(c.Text) {
	case "nope", "nah", "yep", "none", "yes", "no", "y", "n", "si", "oui", "non", "sim", "nao", "ja", "nein":
		return true
	}
	return false
}

// prose is from which usual length in bytes on texts are told rather than listed.
const prose = 60

func dateProfile(v *Values, not float64) float64 {
	switch {
	case v.dates() >= 0.6 && v.clockShare() >= 0.6:
		return 0.6 // a day and a clock: a moment before it is a day
	case v.dates() >= 0.6:
		return 2.2 // a table's day, whatever it is called
	case v.monthly && v.numeric() >= 0.9 && v.whole(1, 31) >= 0.9:
		return 1
	}
	return not
}

func textProfile(v *Values, c *plan.Column, not float64) float64 {
	switch c.Name {
	case "trip":
		switch {
		case v.monthly && v.whole(1, 31) >= 0.9:
			return -0.4 // days of the month that the sheet's name states
		case v.numeric() > 0.99 && v.stepwise() && v.distinct() < 0.95:
			return 2.4
		case v.numeric() >= 0.8 && v.whole(1, 9999) >= 0.8 && v.rising():
			return 1.6
		case v.numeric() >= 0.8, v.dates() > 0.6 || v.clockShare() > 0.6:
			return -2.5
		case v.weekdays() > 0.3:
			return -6 // beside the titles of what stands below the table
		case v.comeAgain():
			return -2.5
		}
		return -0.2
	case "port":
		if words.IsPlace(v.Label.Text) && strings.Contains(v.Label.Text, " ") {
			return -3 // port long is a rod
		}
	case "area":
		if v.placesOfSpread() {
			return -3 // and none of the sea
		}
	case "leg":
		if v.restarts() {
			return sureCells // those of a day's stretches, where there are any: see legAnew
		}
		if v.whole(1, 40) >= 0.9 || v.whole(1, 9999) >= 0.9 && v.rising() {
			return 1.4
		}
		if v.lettered() {
			return 1
		}
		return -0.4
	case "line":
		if v.clockShare() > 0.6 || v.dates() > 0.6 || v.positions() {
			return -4
		}
		if v.share("place", func(x layout.Cell) bool { return words.IsPlace(x.Text) }) >= 0.5 {
			if len(v.cells) < 3 {
				return 1.4
			}
			return 1.8
		}
		switch {
		case v.whole(1, 12) > 0.9:
			return 0.4
		case v.numeric() > 0.8:
			return -4 // no boat has a line 24: a class
		}
		return -0.6
	case "lure", "colour":
		if v.numeric() > 0.8 {
			return -3
		}
	case "boat":
		if v.numeric() > 0.8 && v.whole(0, 0) > 0 || v.counts() && len(v.cells) < len(v.Rows) {
			return -6 // no boat is called 0, and one with a number has it on each row: fish in the boat
		}
	case "approach":
		if v.waysOfFishing() || v.share("lines at places", linesAtPlaces) >= 0.9 {
			return -3 // how it was fished, or where the lines were, and not how the boat came to the fish
		}
	case "wind":
		if force, ok := windForce(v.Label); ok && v.whole(0, 12) > 0.9 {
			return force
		}
	case "notes":
		if v.texts() > 0.6 {
			return 0.6
		}
		return -2
	}
	if v.clockShare() > 0.6 || v.dates() > 0.6 {
		return -3
	}
	if v.texts() <= 0.6 {
		return 0
	}
	hues := v.share("colour", func(x layout.Cell) bool { return words.Colour(x.Text) })
	switch {
	case c.Name == "colour" && hues >= 0.5:
		return 1.4
	case c.Name == "colour" && hues < 0.2, c.Name == "lure" && hues >= 0.7:
		return -0.6
	}
	return 0.6
}

// usualRange is what quantities usually are, in the units in which they are written
// without one, us and metric together (common practice, no source).
var usualRange = map[string][2]float64{
	"speed_kn": {2, 25}, "strike_speed_kn": {2, 25}, "letout_kn": {1, 15}, "duration_s": {0, 30},
	"stopped_s": {0, 400}, "line_hours": {0, 400},
	"length_cm": {8, 420}, "girth_cm": {5, 260}, "scale_kg": {0.4, 1500},
	"lure_weight_g": {1, 2000}, "sea_temp_c": {5, 100},
	"fight_s": {0, 600}, "drag_kg": {1, 60}, "line_class_kg": {4, 200}, "setback_m": {2, 2000},
	"count_s": {2, 120}, "heading_deg": {0, 360},
}

func quantityProfile(v *Values, c *plan.Column, heading unit.Unit, not float64) float64 {
	if measures[c.Name] && v.running() {
		return not // the number of each row
	}
	if v.quantities(c) < 0.5 && (v.numeric() < 0.5 || c.Name == "sea_temp_c") {
		if c.Name == "duration_s" && v.clockShare() >= 0.6 && v.share("duration", isDuration) >= 0.6 {
			return 1
		}
		if (c.Name == "duration_s" || c.Name == "fight_s") && v.clockShare() >= 0.6 {
			return -0.8 // 4:30 under Hours, where no clock time is meant
		}
		if measures[c.Name] && heading != "" && v.quantities(c)*float64(len(v.cells)) >= fewMeasured {
			return 0.2 // words in place of most measures: "too big for the scale"
		}
		return not
	}
	r, ok := usualRange[c.Name]
	if ok && v.within(c, heading, r[0], r[1]) < 0.85 {
		return not
	}
	w := 0.7
	switch c.Name {
	case "scale_kg":
		if v.share("tackle", inOunces) > 0.6 {
			w = -0.5
		}
		if (heading == unit.Gram || heading == unit.Ounce) && v.below(600) > 0.6 {
			w = -2.5 // no fish that is trolled for: a lure
		}
	case "speed_kn", "strike_speed_kn":
		w = 1.1
		if v.whole(0, 99) < 0.95 {
			w = 1.4
		}
	case "duration_s":
		w = 0.6
		if v.share("duration", isDuration) > 0.5 {
			w = 2.2
		}
	}
	return w
}

// measures are what is measured of a fish.
var measures = map[string]bool{"scale_kg": true, "length_cm": true, "girth_cm": true}

// inOunces tells a weight that is a lure's more likely than a fish's.
func inOunces(c layout.Cell) bool {
	q, err := unit.ParseQuantity(c.Text, unit.Mass, "", unit.MarkOf(c.Text))
	return err == nil && q.Stated && (q.Unit == unit.Ounce || q.Unit == unit.Gram) && q.Value < 600
}

func isDuration(c layout.Cell) bool {
	if c.Look == layout.Duration {
		return true
	}
	_, ok := phrase.Duration(c.Text)
	return ok && hasLetter(c.Text)
}

// loneHours tells cells that are nothing but a time each, some of which no clock shows, with an h: "3h45", "5h".
func (v *Values) loneHours() bool {
	like := func(shape *regexp.Regexp) func(layout.Cell) bool {
		return func(c layout.Cell) bool { return shape.MatchString(strings.TrimSpace(c.Text)) }
	}
	return v.share("one time", like(hoursAlone)) == 1 && v.share("no clock", like(noClock)) > 0
}

var (
	hoursAlone = regexp.MustCompile(`(?i)^\d{1,2}\s*h\s*(?:\d\d)?(?:\s*m(?:in)?)?$`)
	noClock    = regexp.MustCompile(`(?i)^\d{1,2}\s*h$|^[0-3]h`)
)

// linesAtPlaces tells lines that are counted at their places: 2 long, 1 shotgun.
func linesAtPlaces(c layout.Cell) bool {
	_, ok := words.LinesAt(c.Text)
	return ok
}

func countProfile(v *Values, c *plan.Column, not float64) float64 {
	if at := v.share("lines at places", linesAtPlaces); c.Name == "lines_out" && at >= 0.9 {
		return sureCells
	} else if c.Name == "lines_out" && at >= 0.6 {
		return 2.5
	}
	if c.Name == "lines_out" && v.share("sums", func(x layout.Cell) bool {
		_, ok := words.Summed(x.Text)
		return ok
	}) >= 0.6 {
		return 1
	}
	if c.Name == "lines_out" && v.share("beside teasers", besideTeaser) > 0 &&
		v.share("lines or beside teasers", func(x layout.Cell) bool {
			_, err := strconv.Atoi(x.Text)
			return err == nil || besideTeaser(x)
		}) >= 0.8 {
		return 1
	}
	ticks := v.ticks()
	if v.texts() > 0.4 && ticks > 0.9 && (c.Name == "kept_n" || c.Name == "released_n") {
		return -0.4 // a fish's yes or no more likely than a count of one
	}
	if v.texts() > 0.4 && ticks > 0.9 && c.Name != "lines_out" && c.Name != "count" {
		return 0.4
	}
	if len(v.cells) > 1 && v.rising() && v.distinct() > 0.9 && v.orNone() < v.numeric()+0.1 &&
		(len(v.cells) > 3 || len(v.numbers) > 1 && 5*len(v.cells) >= 4*len(v.Rows) &&
			v.numbers[0] == 1 && v.numbers[1] == 2) {
		return not // a running number
	}
	if v.restarts() || v.stepwise() {
		return not // of the fish of each trip, or of the trip
	}
	different := v.distinct() * float64(len(v.cells))
	if len(v.numbers) > 8 && v.rising() && v.numeric() > 0.9 && (slices.Max(v.numbers) > 20 && different > 5.5 ||
		different > 7.5 && len(v.numbers) > 12) {
		return not // the number of a stretch or a trip
	}
	if c.Name != "lines_out" && c.Name != "count" && v.whole(1, 200) > 0.99 &&
		10*len(v.cells) > 9*len(v.Rows) && len(v.cells) >= 8 {
		return 0 // bites in every row are rare
	}
	lo, hi := 0.0, 200.0
	if c.Name == "lines_out" {
		hi = 20
	}
	if v.whole(0, 1000) >= 0.6 && v.whole(lo, hi) >= 0.9*v.whole(0, 1000) {
		if c.Name == "lines_out" {
			return 1
		}
		return 0.8
	}
	return not
}

// stepwise tells numbers that begin at one, and are each the one before or the next: those of trips,
// of each of which some rows tell.
func (v *Values) stepwise() bool {
	numbers := v.forward()
	for i, x := range numbers {
		if i == 0 && x != 1 || i > 0 && x != numbers[i-1] && x != numbers[i-1]+1 {
			return false
		}
	}
	return len(numbers) > 0 && numbers[len(numbers)-1] > 5
}

// comeAgain tells texts of which a few come again and again after others: kinds of trips, "half day", and no trips.
func (v *Values) comeAgain() bool {
	runs, seen := 0, map[string]bool{}
	for i, c := range v.cells {
		if i == 0 || c.Text != v.cells[i-1].Text {
			runs++
		}
		seen[c.Text] = true
	}
	return v.texts() > 0.6 && runs > 8 && runs > 2*len(seen)
}

// restarts tells numbers that count on by one, and begin at one again and again. Words for another way of fishing
// may stand in the place of some.
func (v *Values) restarts() bool {
	ones, on, most := 0, 0, 0.0
	ways := int(v.share("way of fishing", wayCell)*float64(len(v.cells)) + 0.5)
	for i, x := range v.numbers {
		switch {
		case x == 1:
			ones++
		case i > 0 && x == v.numbers[i-1]+1:
			on++
		}
		most = max(most, x)
	}
	return len(v.cells) >= 10 && ones >= 3 && most >= 3 && 2*on >= ones && 5*ways <= len(v.cells) &&
		20*(ones+on+ways) >= 19*len(v.cells)
}

// wayCell tells a cell that names a way of fishing.
func wayCell(c layout.Cell) bool {
	_, ok := words.Method(c.Text)
	return ok
}

// ticks is the part of the cells that are marks, or a yes or a no.
func (v *Values) ticks() float64 {
	return v.share("tick", func(x layout.Cell) bool {
		switch strings.ToLower(x.Text) {
		case "y", "n", "yes", "no", "x", "✓", "✔", "√", "1", "0", "si", "sì", "oui", "non", "ja", "nein", "sim":
			return true
		}
		return false
	})
}

func (v *Values) fates() float64 {
	answered := v.share("answers", func(c layout.Cell) bool { return words.Answers(c.Text) }) > 0
	told := v.share("fate", func(c layout.Cell) bool {
		if answered && words.Yes(c.Text) {
			return true // beside "yes, let it go" and "no, came off"
		}
		_, cause, _, ok := words.FateOf(c.Text) // "lost, hook pulled" is one fate
		return ok && (c.Look != layout.Text || digits(c.Text) == 0 &&
			(cause != "" || fateFirst(c.Text) || words.Answers(c.Text)))
	})
	return v.orNothing(told)
}

// counts tells whole numbers of which some are above one: no yes and no.
func (v *Values) counts() bool {
	return v.numeric() > 0.9 && v.whole(0, 60) > 0.9 &&
		slices.ContainsFunc(v.numbers, func(x float64) bool { return x > 1 })
}

// fewFates is the least share of fates that are known, of one who has words of his own for most.
const fewFates = 0.2

// closed tells texts of which a few stand again and again.
func (v *Values) closed() bool {
	const most, longest = 12, 34
	return len(v.cells) >= 4 && v.texts() > 0.9 && v.length() < longest && v.distinct() <= 0.5 &&
		v.distinct()*float64(len(v.cells)) <= most
}

// codes tells a few short texts or numbers that stand again and again.
func (v *Values) codes() bool {
	return len(v.cells) >= 6 && v.length() <= longestCode && v.distinct() <= 0.5 &&
		v.distinct()*float64(len(v.cells)) <= 8
}

// otherLetters tells cells of one letter each of which a few are no fate's: M and F are no bites.
func (v *Values) otherLetters() bool {
	letters := v.share("letter", func(c layout.Cell) bool { return len(c.Text) == 1 && hasLetter(c.Text) })
	return letters > 0.9 && v.fates() < 0.9
}

// fateFirst tells a cell that is no list, or one whose first part is a fate and no more:
// "lost, hook pulled".
func fateFirst(text string) bool {
	first, _, list := strings.Cut(text, ",")
	if !list {
		return true
	}
	_, _, _, ok := words.FateOf(first)
	return ok && len(strings.Fields(first)) <= 2
}

// fishes is the share of cells that name fish, or say that there were none where others name them.
func (v *Values) fishes(t *Lexicon) float64 {
	named := v.share("species in", func(c layout.Cell) bool { return len(t.Species.In(c.Text)) > 0 })
	return v.orNothing(named)
}

// orNothing is a share of cells with those that say "none" among them, which tell nothing of their own.
func (v *Values) orNothing(share float64) float64 {
	if share == 0 {
		return 0
	}
	return share + v.share("nothing", func(c layout.Cell) bool { return words.Nothing(c.Text) })
}

// orNone is the part of the cells that are numbers, or say "none" in words.
func (v *Values) orNone() float64 {
	return v.numeric() + v.share("none in words", func(c layout.Cell) bool {
		_, figure := number(c.Text)
		return !figure && words.Nothing(c.Text)
	})
}

// severalKinds are so many that one of them would be a fish that is known.
const severalKinds = 3

func speciesProfile(t *Lexicon, v *Values, not float64) float64 {
	plain := v.share("plain species", func(c layout.Cell) bool { return t.isSpecies(c.Text) || c.Text == "?" })
	switch {
	case v.weekdays() > 0.6:
		return -6 // Fri and Sat are codes of fish too
	case plain >= 0.5:
		return 2.4
	case len(v.cells) > 4 && v.fishes(t) == 0:
		if v.distinct()*float64(len(v.cells)) >= severalKinds {
			return -4.5 // as many kinds, and no fish among them
		}
		return -2.9 // kinds of something else
	case v.texts() > 0.6 && v.length() < 20 && v.fishes(t) > 0.2:
		return 0.4
	case v.texts() > 0.6 && v.length() < 16:
		return -0.6
	}
	return not
}

// mostTimes is how often a row under "x" stands for the like at most.
const mostTimes = 30

// gotAway is what a heading of bites that got away, over cells that tell of such in words, says for these words.
const gotAway = 2.5

// saysAway tells a heading whose words speak of bites that were lost or missed.
func saysAway(heading string, said sayings) bool {
	fate := words.FateAlone(heading)
	if fate == words.Lost || fate == words.Missed {
		return true
	}
	for c, s := range said.columns {
		if (c.Name == "lost_n" || c.Name == "missed_n") && s.weight >= loosely {
			return true
		}
	}
	return false
}

// mostAway is from which share of the cells that tell of bites which got away alone, each with its count, a column is
// of these: "1 off", "1 miss, off dorado".
const mostAway = 0.9

// awayBites is the share of cells that tell in words of bites which were missed or lost, and of nothing else.
func (v *Values) awayBites() float64 {
	if len(v.cells) < 3 {
		return 0
	}
	return v.share("away", func(c layout.Cell) bool {
		s := phrase.Tell(c.Text, phrase.Defaults{})
		return hasLetter(c.Text) && len(s.Bites) > 0 && len(s.Left) == 0 &&
			!slices.ContainsFunc(s.Bites, func(b phrase.Bite) bool {
				return b.Fate != words.Missed && b.Fate != words.Lost
			})
	})
}

// lostBehind tells a heading of fish that were hooked and then lost, "hooked then lost", from one that counts both in
// one cell.
func lostBehind(heading string) bool {
	fate, _, _, ok := words.FateOf(heading)
	return ok && fate == words.Lost && !strings.ContainsAny(heading, "/&+-")
}

// hoursBehind is a heading that says that its cells are hours or minutes.
var hoursBehind = regexp.MustCompile(`(?i)\((?:h|hrs?|hours|min|mins|minutes|horas|heures|ore|std|stunden)\.?\)\s*$`)

// mostOneBite is from which share of cells that tell one bite each, and where it came, a column is of bites.
const mostOneBite = 0.6

// oneBites tells cells each of which tells of one bite, and where it came, but for those that say there was none.
func (v *Values) oneBites() bool {
	ones, of := 0, 0
	for _, c := range v.cells {
		if phrase.OneBite(c.Text) {
			ones, of = ones+1, of+1
		} else if !words.Nothing(c.Text) {
			of++
		}
	}
	return ones > 0 && float64(ones) >= mostOneBite*float64(of)
}

func storyProfile(v *Values, not float64) float64 {
	if v.texts() < 0.6 && v.awayBites() < mostAway {
		return not
	}
	told := v.share("told", func(c layout.Cell) bool {
		s := phrase.Tell(c.Text, phrase.Defaults{})
		return len(s.Bites) > 0 || s.Nothing || s.Strikes >= 0
	})
	if told >= 0.4 {
		if v.oneBites() {
			return 5 // whose words are of what became of it, too
		}
		if v.length() > prose {
			return 2.6
		}
		return 2
	}
	return -1
}

func eventProfile(v *Values, not float64) float64 {
	in, up := 0, 0
	for _, c := range v.cells {
		if words.Hourly(c.Text) == "idle" && words.EntryOf(c.Text).Event == words.EventIn {
			continue // no lines in this hour
		}
		switch words.EntryOf(c.Text).Event {
		case words.EventIn:
			in++
		case words.EventUp:
			up++
		case words.EventOut: // some write it for the one, others for the other
			if in > up {
				up++
			} else {
				in++
			}
		}
	}
	if n := len(v.cells); 25*in > n && 25*up > n {
		return 3
	}
	return not
}

// tellsStretch tells a text that says more of its stretches than how long one was, which a column of hours does.
func tellsStretch(text string) bool {
	all := phrase.Stretches(text)
	if len(all) != 1 {
		return len(all) > 1
	}
	return all[0].HasStart || all[0].HasEnd || all[0].SpeedLo > 0 || all[0].Lines >= 0
}

// besideTeaser tells a number of lines with what was towed beside them.
func besideTeaser(c layout.Cell) bool {
	_, ok := words.BesideTeasers(c.Text)
	return ok
}

// fraction is a part of one.
var fraction = regexp.MustCompile(`^(?:[1-3]/[2-4]|[¼½¾])$`)

// countsFish tells cells that are counts, some perhaps with those of them that were let go: "3 (rel 1)".
func (v *Values) countsFish() bool {
	among := v.share("let go among them", letGoAmongThem)
	return v.orNone()+among >= 0.6 && v.whole(0, 60)+among >= 0.9
}

// letGoAmongThem tells a count with another behind it in brackets: of those let go, or of what a word says that nobody
// here knows, and which is set aside.
func letGoAmongThem(c layout.Cell) bool { return phrase.CountsBoth(c.Text) }
