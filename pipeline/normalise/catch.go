package normalise

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/words"
)

// caught adds up the counts of columns that are headed by a species.
func (r *Reader) caught() {
	r.inFigures()
	if r.catch < 0 && r.freed < 0 {
		return
	}
	sum, known := int64(0), false
	released := int64(0)
	for _, c := range r.layout.Catch {
		text := ""
		if c.Index < len(r.row.Cells) {
			text = trimmed(r.row.Cells[c.Index])
		}
		if words.NotLogged(text) || len(r.figures) > 0 && c.Fate == "" {
			continue
		}
		v, ok := plainNumber(text)
		if !ok && words.Nothing(text) {
			v, ok = 0, true
		} else if kept, letGo, fish := phrase.CountFates(text); !ok && c.Named && fish {
			if v, ok = float64(kept+letGo), true; c.Fate == "" && !r.layout.Inclusive {
				v = float64(kept)
			}
			if c.Fate == "" && r.freed >= 0 {
				released += int64(letGo)
			} else if c.Fate == "" {
				r.letGoBeside(letGo)
			}
		}
		if all, letGo, among := phrase.CountAmong(text); !ok && c.Among && c.Fate == "" && among {
			if v, ok = float64(all), true; r.layout.Caught && !r.layout.Inclusive {
				v = float64(all - letGo)
			}
			if r.freed >= 0 {
				released += int64(letGo)
			} else {
				r.letGoBeside(letGo)
			}
		}
		if !ok || v != float64(int64(v)) || v > 200 {
			p := r.pos
			p.Row, p.Col = r.row.Num, c.Index+1
			r.problems = append(r.problems, record.Problem{Pos: p, Column: c.Heading, Cell: text,
				Reason: "not a count: expected a whole number from 0 to 200"})
			continue
		}
		if known = true; c.Fate == "released" && r.freed >= 0 {
			released += int64(v)
		} else if c.Fate != "lost" {
			sum += int64(v)
		}
	}
	if known && r.freed >= 0 {
		r.values[r.freed] = entry.OfInt(released)
	}
	if r.catch >= 0 && (known || r.layout.CatchBlank) {
		r.values[r.catch] = entry.OfInt(sum)
		r.countedRemarks()
	}
}

// added adds up a count that stands in several columns of a row.
func (r *Reader) added() {
	for i := range r.targets {
		t := &r.targets[i]
		if v := r.values[t.field]; t.Adds && v.Known {
			of := &r.values[r.index[t.Column.Name]]
			*of = entry.OfInt(of.Int + v.Int)
		}
	}
}

// othersBeside adds the fish of lists that stand beside counts of other fish to these counts.
func (r *Reader) othersBeside() {
	kept := "landed_n"
	if r.has("kept_n") {
		kept = "kept_n"
	}
	names := map[words.Fate]string{words.Released: "released_n", words.Lost: "lost_n", words.Missed: "missed_n"}
	for _, col := range r.layout.Others {
		if col >= len(r.row.Cells) {
			continue
		}
		for _, f := range phrase.FishList(trimmed(r.row.Cells[col]), phrase.Defaults{}) {
			name := names[f.Fate]
			if name == "" {
				name = kept
			}
			of := &r.values[r.index[name]]
			*of = entry.OfInt(of.Int + int64(max(f.N, 1)))
		}
	}
}

// bitesOfTrip makes strikes of the bites that a trip's remark tells, where the log's owner said that they count.
func (r *Reader) bitesOfTrip() {
	leg, tells := r.layout.Tells[int64(r.row.Num)]
	if !tells {
		return
	}
	text := r.value("notes").Text
	if beside := phrase.Beside(text); beside != "" {
		text = beside
	}
	for _, b := range phrase.Tell(text, phrase.Defaults{}).Bites {
		if b.Fate == words.FateUnknown {
			continue
		}
		for range max(1, b.N) {
			v := r.fishValues(b.Fish)
			if b.Cause != "" {
				v["loss_cause"] = entry.OfText(b.Cause)
			}
			if leg != "" {
				v["leg"] = entry.OfText(leg)
			}
			r.beside(plan.Strikes, v)
		}
	}
}

// letGoBeside adds fish that a cell names, and says were let go, to those that the row counts.
func (r *Reader) letGoBeside(n int) {
	if i, ok := r.index["released_n"]; ok && n > 0 {
		r.values[i] = entry.OfInt(r.values[i].Int + int64(n))
	}
}

// inFigures adds up cells of several counts, as "5-3-2" of bites, fish hooked and fish boated.
func (r *Reader) inFigures() {
	if len(r.figures) == 0 {
		return
	}
	sums, known := make([]int64, len(r.figures)), false
	for _, c := range r.layout.Catch {
		text := ""
		if c.Index < len(r.row.Cells) {
			text = trimmed(r.row.Cells[c.Index])
		}
		if words.NotLogged(text) || c.Fate != "" {
			continue
		}
		figures, reason := r.figuresOf(text)
		if reason != "" {
			p := r.pos
			p.Row, p.Col = r.row.Num, c.Index+1
			r.problems = append(r.problems, record.Problem{Pos: p, Column: c.Heading, Cell: text, Reason: reason})
			continue
		}
		known = true
		for k, v := range figures {
			sums[k] += v
		}
	}
	for k, i := range r.figures {
		if i >= 0 && (known || r.layout.CatchBlank) {
			r.values[i] = entry.OfInt(sums[k])
		}
	}
}

// ofThose are counts of which each has the next in it.
var ofThose = []string{"strikes_n", "hooked_n", "landed_n"}

// figuresOf are the counts of a cell; a reason where it has others than the log says.
func (r *Reader) figuresOf(text string) (figures []int64, reason string) {
	for _, n := range phrase.Figures(text) {
		figures = append(figures, int64(n))
	}
	if len(figures) == 0 || slices.Max(figures) > 200 {
		return nil, "not counts: expected whole numbers from 0 to 200"
	}
	if len(figures) == 1 && r.layout.Alone {
		for len(figures) < len(r.figures) {
			figures = append(figures, figures[0])
		}
	}
	if len(figures) != len(r.figures) {
		return nil, fmt.Sprintf("%d counts where the log says that there are %d", len(figures), len(r.figures))
	}
	more := int64(-1)
	for _, name := range ofThose {
		k := slices.Index(r.layout.Figures, name)
		if k >= 0 && more >= 0 && figures[k] > more {
			return nil, "a count of some of the others is greater than they are"
		}
		if k >= 0 {
			more = figures[k]
		}
	}
	return figures, ""
}

// letGoInWords counts the fish that a row's lists say were let go, where its columns count
// those that were kept alone: of those hooked, and not said to be lost, no more.
func (r *Reader) letGoInWords() {
	if r.letGo < 0 || !r.value("kept_n").Known {
		return
	}
	n := int64(0)
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Parse == "fishlist" {
			for _, f := range phrase.FishList(r.values[t.field].Text, r.defaults(t)) {
				if f.Fate == words.Released {
					n += int64(max(f.N, 1))
				}
			}
		}
	}
	room := r.value("hooked_n")
	if strikes := r.value("strikes_n"); !room.Known && strikes.Known {
		room = entry.OfInt(strikes.Int - r.value("missed_n").Int)
	}
	if room.Known {
		n = min(n, room.Int-r.value("kept_n").Int-r.value("lost_n").Int)
	}
	if n > 0 {
		r.values[r.letGo] = entry.OfInt(n)
	}
}

// listsFish tells a layout with a column whose heading says that its words are of fish, and no remarks.
func (r *Reader) listsFish() bool {
	return slices.ContainsFunc(r.layout.Bindings, func(b plan.Binding) bool {
		if b.Column.Parse != "fishlist" {
			return false
		}
		toks := words.Scan(b.Heading)
		for i := range toks {
			if _, _, ok := words.FishAt(toks, i); ok {
				return true
			}
		}
		return catchWord.MatchString(b.Heading)
	})
}

// catchWord is a word for what was caught.
var catchWord = regexp.MustCompile(`(?i)catch|caught|captur|prises?|fang\b|fänge|pescat|pescad`)

// fatesInWords counts the bites that a row's list, or its column of those that got away, says were lost or missed,
// where its columns count the bites and perhaps the fish in the boat, and no more than these are told.
func (r *Reader) fatesInWords() {
	if !r.fatesTold && !r.awayTold || !r.value("strikes_n").Known {
		return
	}
	told := map[words.Fate]int64{}
	all := int64(0)
	for i := range r.targets {
		t := &r.targets[i]
		if t.Column.Parse != "fishlist" && !t.Away {
			continue
		}
		text := r.values[t.field].Text
		if t.Away {
			text = r.logged(t) // remarks share their field
		}
		for _, b := range phrase.Tell(beforeOtherwise(text), r.defaults(t)).Bites {
			if all += int64(max(b.N, 1)); t.Away || r.fatesTold {
				told[b.Fate] += int64(max(b.N, 1))
			}
		}
	}
	held := r.value("landed_n").Int + r.value("kept_n").Int + r.value("released_n").Int
	if gone := told[words.Lost] + told[words.Missed]; max(all, gone+held) > r.value("strikes_n").Int {
		return
	}
	for name, n := range map[string]int64{"lost_n": told[words.Lost], "missed_n": told[words.Missed]} {
		if n > 0 {
			r.values[r.index[name]] = entry.OfInt(n)
		}
	}
}

// beforeOtherwise is a list up to where it goes on with another way of fishing: "1 dorado lost;
// then on the bottom, 2 snappers".
func beforeOtherwise(text string) string {
	at := 0
	for _, part := range strings.FieldsFunc(text, func(c rune) bool { return c == ';' || c == '\n' }) {
		if words.Otherwise(part) {
			return text[:at]
		}
		at = strings.Index(text[at:], part) + at + len(part)
	}
	return text
}

// measured holds that of several strikes, of which nothing else is counted, one was
// landed where the row has a fish's weight or length.
func (r *Reader) measured() {
	s := &r.slots
	if r.layout.Kind != plan.Flat || s.landed < 0 || r.at(s.strikes).Int < 2 || r.at(s.hooked).Known ||
		r.at(s.landed).Known || r.at(s.released).Known {
		return
	}
	kept := r.value("kept")
	if (r.value("scale_kg").Known || r.value("length_cm").Known) && !r.value("outcome").Known &&
		(!kept.Known || kept.Int == 1) {
		r.values[s.landed] = entry.OfInt(1)
	}
}
