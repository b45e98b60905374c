package normalise

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// tell reads the bites of an entry. At a clock time, with lines out, words that alone would be
// no bite are one: "left rigger went down, never came tight", or a fish on its line: "blue
// marlin right rigger!".
func (r *Reader) tell(t *target, text string, timed bool) phrase.Story {
	told := phrase.Tell(text, r.defaults(t))
	if name, off := r.cameOff(text); off && timed && r.events.open {
		switch {
		case len(told.Bites) == 0:
			told.Bites, told.Left = []phrase.Bite{{Fish: phrase.Fish{Name: name, Fate: words.Lost}}}, nil
		case len(told.Bites) == 1 && told.Bites[0].Fate == words.Hooked:
			told.Bites[0].Fate = words.Lost
		}
	}
	if timed {
		oneBite(&told)
		if len(told.Bites) == 1 && told.Bites[0].N <= 1 && told.Bites[0].Place == "" {
			told.Bites[0].Place = onlyPlace(text) // king, left short, in the box
		}
	}
	if timed && r.events.open && len(told.Bites)+len(told.Left) == 0 && !told.Nothing {
		told.Bites = mistyped(text)
	}
	if len(told.Bites) > 0 || len(told.Left) != 1 || !timed || !r.events.open || words.OfBoat(told.Left[0]) {
		return told
	}
	fate, cause, _, ok := words.FateOf(told.Left[0])
	if ok && (fate == words.Missed || fate == words.Lost || fate == words.Hooked) {
		told.Bites, told.Left = []phrase.Bite{{Fish: phrase.Fish{Fate: fate}, Cause: cause}}, nil
		return told
	}
	fish := phrase.FishList(text, r.defaults(t))
	if !ok && len(fish) == 1 && fish[0].Name != "" && fish[0].Place != "" && fish[0].N <= 1 {
		fish[0].Fate = words.FateUnknown
		told.Bites, told.Left = []phrase.Bite{{Fish: fish[0]}}, nil
	}
	return told
}

// mistyped is the bite of an entry that says what became of it and no more, with a slip of the pen: "mised", "in teh
// box".
func mistyped(text string) []phrase.Bite {
	fate, ok := words.FateOnly(text)
	if !ok || fate < words.Missed || words.FateAlone(text) != words.FateUnknown { // back over: of the lines, perhaps
		return nil
	}
	return []phrase.Bite{{Fish: phrase.Fish{Fate: fate}}}
}

// onlyPlace is the place in the spread that a text names; "" where it names none or several.
func onlyPlace(text string) string {
	toks, place := words.Scan(text), ""
	for i := 0; i < len(toks); i++ {
		next, ok := words.PlaceAt(toks, i, words.AfterOn(toks, i))
		if !ok {
			continue
		}
		if place != "" {
			return ""
		}
		place, i = text[toks[i].At:toks[next-1].End], next-1
	}
	return place
}

// oneBite puts together what an entry at one clock time tells of a bite in several sentences: "strike,
// left rigger. Fish on.", "knockdown, missed", "pulled the hook. Fish lost.", "line parted. Wahoo lost."
func oneBite(told *phrase.Story) {
	b := told.Bites
	if len(b) == 2 && goesOn(b[0], b[1]) {
		first := b[0]
		b[0] = b[1]
		if b[0].Name == "" {
			b[0].Name = first.Name
		}
		if b[0].Place == "" {
			b[0].Place = first.Place
		}
		if b[0].Cause == "" && b[0].Fate == words.Lost {
			b[0].Cause = first.Cause
		}
		told.Bites = b[:1]
	}
	switch {
	case len(told.Left) != 1:
	case len(told.Bites) == 1 && told.Bites[0].N <= 1:
		leftOf(told)
	case len(told.Bites) > 1:
		kindOf(told)
	}
}

// kindOf gives several bites the name of the one kind of fish that their entry tells: "double, dorado. Boxed
// one, lost one."
func kindOf(told *phrase.Story) {
	fish := phrase.FishList(told.Left[0], phrase.Defaults{})
	if len(fish) != 1 || !strings.EqualFold(strings.TrimSpace(told.Left[0]), fish[0].Name) ||
		slices.ContainsFunc(told.Bites, func(b phrase.Bite) bool { return b.Name != "" }) {
		return
	}
	for i := range told.Bites {
		told.Bites[i].Name = fish[0].Name
	}
	told.Left = nil
}

// leftOf gives a bite what the only other words of its entry say of it: the cause of its loss, or its name.
func leftOf(told *phrase.Story) {
	b := &told.Bites[0]
	fate, cause, _, ok := words.FateOf(told.Left[0])
	fish := phrase.FishList(told.Left[0], phrase.Defaults{})
	switch {
	case ok && fate == words.Lost && b.Fate == words.Lost && cause != "" && b.Cause == "" && len(fish) == 0:
		b.Cause, told.Left = cause, nil
	case ok || b.Name != "" || b.Fate <= words.Missed || len(fish) != 1 || fish[0].N > 1:
	case strings.EqualFold(strings.TrimSpace(told.Left[0]), fish[0].Name): // alongside, dorado. Released.
		b.Name, told.Left = fish[0].Name, nil
	case fish[0].Name != "" && fish[0].Place != "" && b.Place == "": // dorado on the flat line, jumped and got off
		b.Name, b.Place, told.Left = fish[0].Name, fish[0].Place, nil
	}
}

// goesOn tells whether a bite is the one told before it in the same entry: that one has no end yet, or the
// same, and they are not of two lines or two fish.
func goesOn(a, b phrase.Bite) bool {
	if a.N > 1 || b.N > 1 || a.Place != "" && b.Place != "" || a.Name != "" && b.Name != "" ||
		a.Kg+a.LengthCm > 0 || a.At != nil && b.At != nil {
		return false
	}
	switch a.Fate {
	case words.Bit:
		return a.Name == "" && b.Fate > words.Bit
	case words.Missed:
		return b.Fate == words.Missed && a.Name+b.Name == ""
	case words.Lost:
		return b.Fate == words.Lost && a.Name == ""
	}
	return false
}

// cameOff reports whether a short entry ends with a fish that came off, and its name where it has
// one: "off", "on then off", "wahoo off".
func (r *Reader) cameOff(text string) (name string, ok bool) {
	text = strings.TrimRight(text, ".! ")
	toks := words.Scan(text)
	if n := len(toks); n == 0 || n > 4 || words.Fold(toks[n-1].Text) != "off" {
		return "", false
	}
	for i := 0; i < len(toks)-1; i++ {
		if next := r.fishAt(text, toks, i); next > i && name == "" {
			name, i = text[toks[i].At:toks[next-1].End], next-1
			continue
		}
		if !slices.Contains([]string{"on", "then", "and", "hook", "hooked", "up", "came", "fish", "one", "hookup"},
			words.Fold(toks[i].Text)) {
			return "", false
		}
	}
	return name, true
}

// corrected reports whether words mend what was written before: "only had 4 out, not 5".
func corrected(text string) bool {
	return slices.ContainsFunc(words.Scan(text), func(t words.Token) bool {
		return slices.Contains([]string{"not", "only", "actually", "really", "correction", "wrong", "meant"},
			words.Fold(t.Text))
	})
}

// onScale gives what a line without a time says of the scale to the fish of the day: "weighed
// wahoo 23.6, 40", "scale: the 818 yft 123.7". It reports whether the line is one of the scale.
// A weight of which no fish of the day can be found is said.
func (r *Reader) onScale(t *target, text string) bool {
	if !words.Scaled(text) || !strings.ContainsAny(text, "0123456789") || words.Hedged(text) {
		return false
	}
	if words.Otherwise(text) {
		return true // chunked
	}
	from := r.scaleUnit()
	toks := words.Scan(text)
	species, clock, given := "", int64(-1), false
	for i := 0; i < len(toks); i++ {
		if next := r.fishAt(text, toks, i); next > i {
			species, i = text[toks[i].At:toks[next-1].End], next-1
			continue
		}
		kg, next, ok := r.weightAt(toks, i, from)
		switch {
		case !ok:
		case r.isClock(toks, i):
			clock = clockOf(toks[i].Text)
		case !r.giveWeight(species, clock, kg):
			r.aside = append(r.aside, r.problem(t, toks[i].Text, "a weight for which no fish of that day was found"))
			fallthrough
		default:
			i, given = next-1, true
		}
	}
	if !given {
		r.aside = append(r.aside, r.problem(t, text, "tells of the scale, and no weight of it was understood"))
	}
	return true
}

// fishAt is the token behind a fish's name at token i, i where there is none.
func (r *Reader) fishAt(text string, toks []words.Token, i int) int {
	for n := min(3, len(toks)-i); n > 0; n-- {
		name := text[toks[i].At:toks[i+n-1].End]
		if len(name) > 2 && name[0] > '9' && r.set.Species.Find(name, r.set.Ocean).Found {
			return i + n
		}
	}
	return i
}

// weightAt is the weight that a number at token i says, in kilograms, with its unit or without.
func (r *Reader) weightAt(toks []words.Token, i int, from unit.Unit) (kg float64, next int, ok bool) {
	v, err := strconv.ParseFloat(strings.TrimSpace(toks[i].Text), 64)
	if err != nil || v <= 0 {
		return 0, i, false
	}
	next = i + 1
	if next < len(toks) {
		if symbol, after, ok := words.UnitAt(toks, next); ok && (symbol == "lb" || symbol == "kg") {
			from, next = unit.Unit(symbol), after
		}
	}
	if from == "" {
		return 0, next, false
	}
	if from == unit.Pound {
		v *= 0.45359237
	}
	return v, next, true
}

// isClock reports whether a number names a fish by when it came: the 818 yft, the two from 857.
func (r *Reader) isClock(toks []words.Token, i int) bool {
	at := clockOf(toks[i].Text)
	return at >= 0 && slices.ContainsFunc(r.events.struck, func(v map[string]entry.Value) bool {
		return v["time_s"].Known && v["time_s"].Int%(day/2) == at%(day/2)
	})
}

// clockOf is a clock time of digits alone, -1 for other texts.
func clockOf(text string) int64 {
	n, err := strconv.Atoi(text)
	if err != nil || n < 100 || n > 2400 || n%100 > 59 {
		return -1
	}
	return int64(n/100*3600 + n%100*60)
}

// giveWeight gives a scale's weight to the first fish of the day without one, of a species and
// a time where they are told.
func (r *Reader) giveWeight(species string, clock int64, kg float64) bool {
	is := r.fishValues(phrase.Fish{Name: species})["species"]
	for _, v := range r.events.struck {
		switch outcome := v["outcome"].Text; {
		case outcome != "landed" || v["scale_kg"].Known:
		case clock >= 0 && (!v["time_s"].Known || v["time_s"].Int%(day/2) != clock%(day/2)):
		case clock < 0 && (species == "" || v["species"] != is && v["species_logged"].Text != species):
		default:
			v["scale_kg"] = entry.OfReal(math.Round(kg*1e6) / 1e6)
			return true
		}
	}
	return false
}
