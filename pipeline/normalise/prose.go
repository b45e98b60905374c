package normalise

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// told makes strikes and fish of the row's phrases.
func (r *Reader) told(stretches []phrase.Stretch) {
	r.letGoInWords()
	r.fatesInWords()
	fish, _, counted := r.boated()
	var listed []map[string]entry.Value // fish of the row's lists
	r.heads = r.heads[:0]
	for _, s := range r.worded {
		if s.t.Column.Name != "lost_n" && weighed(phrase.FishList(s.text, r.defaults(s.t))) > 0 {
			listed = r.fishOf(s.t, s.text, listed, fish, counted)
			r.weights(s.t, s.text)
		}
	}
	r.stories(stretches)
	for i := range r.targets {
		t := &r.targets[i]
		text := r.values[t.field].Text
		if text == "" {
			continue
		}
		switch t.Column.Parse {
		case "fishlist":
			listed = r.fishOf(t, text, listed, fish, counted)
			r.weights(t, text)
			r.note(text)
		case "text":
			if t.Gone && !counted {
				r.gone(t, text)
			}
			if t.Measured && tellsMeasure(text, r.defaults(t)) && !words.Otherwise(text) {
				listed = r.fishOf(t, text, listed, fish, counted)
				r.weights(t, text)
			}
		}
	}
}

// gone makes a strike of each bite of a remark that was missed or lost.
func (r *Reader) gone(t *target, text string) {
	for _, b := range phrase.Tell(text, r.defaults(t)).Bites {
		if b.Fate != words.Missed && b.Fate != words.Lost || b.Method != "" && b.Method != "troll" {
			continue
		}
		for range max(b.N, 1) {
			r.beside(plan.Strikes, r.fishValues(b.Fish))
		}
	}
}

// stories takes the columns that tell bites in words.
func (r *Reader) stories(stretches []phrase.Stretch) {
	session := 1 // of several columns of bites, one for each stretch
	for i := range r.targets {
		t := &r.targets[i]
		text := r.values[t.field].Text
		if t.Column.Parse != "story" || text == "" {
			continue
		}
		r.storied(t, text, stretches, session)
		session++
		r.weights(t, text)
		r.conserved(t, text, stretches)
		r.note(text)
	}
	r.nameless = len(r.side)
	if slices.ContainsFunc(r.side, func(s Side) bool {
		return s.Kind == plan.Strikes && s.Values["species_logged"].Known
	}) {
		r.nameless = 0
	}
}

// names gives a fish of a list that was lost or missed to a bite of the row that its words tell, where these name no
// fish at all: the list says then what some of them were. It reports whether there was one.
func (r *Reader) names(v map[string]entry.Value) bool {
	for _, s := range r.side[:r.nameless] {
		if s.Kind == plan.Strikes && !s.Values["species_logged"].Known &&
			s.Values["outcome"].Text == v["outcome"].Text {
			fillIn(s.Values, v)
			return true
		}
	}
	return false
}

// tellsMeasure tells a remark of a fish with a length or a weight.
func tellsMeasure(text string, d phrase.Defaults) bool {
	return slices.ContainsFunc(phrase.FishList(text, d),
		func(f phrase.Fish) bool { return f.LengthCm+f.Kg > 0 })
}

// endless tells one stretch whose end nobody wrote down: it is no effort, but its bites came at its speed.
func endless(all []phrase.Stretch) bool { return len(all) == 1 && !all[0].HasEnd && all[0].Hours == 0 }

// storied makes a strike of each bite that a text tells of.
func (r *Reader) storied(t *target, text string, stretches []phrase.Stretch, nth int) {
	s := phrase.Tell(text, r.defaults(t))
	n, boated := 0, 0
	for _, b := range s.Bites {
		for range max(b.N, 1) {
			v := r.fishValues(b.Fish)
			if b.Cause != "" {
				v["loss_cause"] = entry.OfText(b.Cause)
			}
			if b.Method != "" && b.Method != "troll" {
				continue
			}
			if n := toldIn(b, stretches); t.withTimes && n > 0 {
				v["leg"] = entry.OfText(strconv.Itoa(n))
			} else if n := b.Session; len(stretches) > 1 && (n > 0 ||
				r.layout.Stories() == len(stretches) && !phrase.OneBite(text)) {
				if n == 0 {
					n = nth
				}
				v["leg"] = entry.OfText(strconv.Itoa(n))
			}
			if speed := oneSpeed(stretches); speed > 0 && (len(stretches) > 1 || endless(stretches)) {
				v["strike_speed_kn"] = entry.OfReal(speed)
			}
			if told := phrase.Settings(text).Speeds; len(stretches) == 0 && len(told) == 1 &&
				!r.value("speed_kn").Known && !r.timed() {
				v["strike_speed_kn"] = entry.OfReal(told[0]) // whose words say it
			}
			r.beside(plan.Strikes, v)
			n++
			if b.Fate == words.Landed || b.Fate == words.Released {
				boated++
			}
		}
	}
	r.nothing = r.nothing || s.Nothing && n == 0
	switch {
	case s.Strikes >= 0 && s.Strikes != n:
		r.aside = append(r.aside, r.problem(t, text, fmt.Sprintf("says %d bites, and %d were found in its words",
			s.Strikes, n)))
	case s.Landed >= 0 && s.Landed != boated:
		r.aside = append(r.aside, r.problem(t, text, fmt.Sprintf("says %d to the boat, and %d were found in its words",
			s.Landed, boated)))
	}
	for _, left := range s.Left {
		r.aside = append(r.aside, r.problem(t, left, "it tells of fish or bites in words that are not understood"))
	}
}

// timed reports whether a row has its hours: a start and an end, or how long.
func (r *Reader) timed() bool {
	return r.at(r.slots.duration).Known || r.at(r.slots.start).Known && r.at(r.slots.end).Known
}

// toldIn is the stretch, from 1, of which the text was telling when it told the bite; 0 where
// there is one alone, or the bite has a clock or a session of its own.
func toldIn(b phrase.Bite, stretches []phrase.Stretch) int {
	if len(stretches) < 2 || b.Session > 0 || b.At != nil {
		return 0
	}
	n := 1
	for k, s := range stretches {
		if s.Place <= b.Told {
			n = k + 1
		}
	}
	return n
}

// oneSpeed is the speed that all stretches have; 0 where they differ.
func oneSpeed(all []phrase.Stretch) float64 {
	speed := 0.0
	for i, s := range all {
		if i > 0 && s.SpeedLo != speed || s.SpeedLo != s.SpeedHi {
			return 0
		}
		speed = s.SpeedLo
	}
	return speed
}

// conserved sets aside what a paragraph says of times, speed and lines that no stretch took.
func (r *Reader) conserved(t *target, text string, stretches []phrase.Stretch) {
	if !t.withTimes {
		return
	}
	left := phrase.LooseClocks(text)
	for _, s := range stretches {
		left = append(left, s.More...)
	}
	if len(left) > 0 {
		r.aside = append(r.aside, r.problem(t, text, "not used: "+strings.Join(left, ", ")))
	}
}

// weights sets weights aside that words tell and nobody says are from a scale.
func (r *Reader) weights(t *target, text string) {
	if n := r.unweighed; n > 0 && r.layout.Guesses {
		r.doubts = append(r.doubts, r.problem(t, text, plural(n, "a weight", "weights")+
			" without a word for the scale: a guess, as the log says"))
	} else if n > 0 {
		r.aside = append(r.aside, r.problem(t, text, fmt.Sprintf(
			"%s: from a scale, or a guess? Not taken for one of a scale", plural(n, "a weight", "weights"))))
	}
	r.unweighed = 0
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return fmt.Sprintf("%d %s", n, many)
}
