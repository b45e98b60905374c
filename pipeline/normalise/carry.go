package normalise

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// rank orders key columns: a new boat or trip makes the date, leg and times above it
// void, a new date the leg and times, a new leg the times. A new captain, port or zone ends no trip.
var rank = map[string]int{
	"boat": 0, "captain": 0, "port": 0, "zone": 0, "trip": 1, "date": 2, "leg": 3, "start_s": 3, "end_s": 3,
	"stopped_s": 3,
}

var endsNone = map[string]bool{"captain": true, "port": true, "zone": true}

// gather takes the row's cells by target: what stands there, or what a merged
// area, a ditto mark or a column that is written once for the rows under it says
// instead.
func (r *Reader) gather() {
	fresh := math.MaxInt
	before := ""
	for i := range r.targets {
		if t := &r.targets[i]; t.Column.Name == "trip" {
			before = t.last
		}
	}
	for i := range r.targets {
		t := &r.targets[i]
		t.text = r.says(t)
		// a column that every row fills speaks where its value is another one, as does a trip's name
		if t.rank >= 0 && !endsNone[t.Column.Name] && t.text != "" &&
			(t.Carried && t.Column.Name != "trip" || t.text != t.last) {
			fresh = min(fresh, t.rank)
		}
		if r.layout.Departs && t.Column.Name == "depart_s" && t.text != "" {
			fresh = min(fresh, rank["trip"])
		}
	}
	below := r.below()
	r.under = below
	for i := range r.targets {
		t := &r.targets[i]
		switch {
		case below && t.rank >= 0:
			t.text = t.above
		case t.text == "" && t.Carried && t.rank < fresh && (t.Column.Name != "duration_s" || fresh == math.MaxInt):
			t.text = t.last
		case t.text == "" && t.Column.Parse == "date" && t.last != "" && t.given == "" && r.forgotten(t, before):
			t.text = t.last
		case t.text != "" || t.Carried:
			t.last = t.text
		}
		t.above = t.text
	}
}

// below reports whether a row of stretches and what struck names no trip, day, stretch or time, and tells
// of a fish: it is of the stretch above.
func (r *Reader) below() bool {
	if r.layout.Kind != plan.Flat {
		return false
	}
	fish, dated := false, false
	for i := range r.targets {
		switch t := &r.targets[i]; {
		case t.given != "":
		case (t.rank >= 0 || effortNames[t.Column.Name] || strings.HasSuffix(t.Column.Name, "_n")) && t.text != "":
			return false
		case t.Column.Parse == "date":
			dated = true
		case t.Column.Name == "outcome" || t.Column.Name == "species":
			fish = fish || t.text != ""
		}
	}
	return fish && dated
}

// effortNames are what a row says of a stretch of its own.
var effortNames = map[string]bool{"duration_s": true, "lines_out": true, "speed_kn": true, "line_hours": true}

// says is what a cell says by itself, or as a ditto mark. One that stands as in the
// last row is not looked at again.
func (r *Reader) says(t *target) string {
	cell := ""
	if t.given == "" && t.Index < len(r.row.Cells) {
		if cell = r.row.Cells[t.Index]; cell != "" && cell == t.raw && !r.forgetful {
			return t.said
		}
	}
	text := r.logged(t)
	if first := r.firstOf(t); first != nil && words.Ditto(text) {
		return r.says(first)
	}
	if r.layout.Kind == plan.Events && (t.Column.Name == "speed_kn" || t.Column.Name == "strike_speed_kn" ||
		t.Column.Name == "lines_out") && words.Ditto(text) {
		return "" // as it was, whatever the row above says
	}
	if r.isDitto(text) || mayRepeat(t.Column) && text != "" && !strings.ContainsAny(text, "0123456789") &&
		words.Ditto(text) {
		return t.last
	}
	if means, ok := t.Codes[strings.ToLower(text)]; ok {
		text = means
	} else if len(t.Codes) > 0 && (t.Column.Parse == "event" || t.Column.Parse == "story" ||
		t.Column.Parse == "fishlist" || t.Column.Parse == "stretches") {
		text = words.WrittenOut(text, t.Codes)
	}
	if t.Alone != "" && fishAlone(text, t.Alone) {
		text += " " + t.Alone
	}
	text = t.unbracketed(text)
	if text != "" {
		t.raw, t.said = cell, text
	}
	return text
}

// longestName is how many words the name of a fish has at the most.
const longestName = 3

// fishAlone tells an entry that names one fish and says nothing of what became of it.
func fishAlone(text, fate string) bool {
	if len(strings.Fields(text)) > longestName {
		return false
	}
	told := phrase.Tell(text+" "+fate, phrase.Defaults{})
	return len(told.Bites) == 1 && len(told.Left) == 0 && told.Bites[0].N <= 1 &&
		strings.EqualFold(told.Bites[0].Name, text)
}

// mayRepeat tells a column in which a word such as "same" stands for the cell above, and says nothing else.
func mayRepeat(c *plan.Column) bool {
	return c.Key || c.Parse == "quantity" || c.Name == "lines_out" || c.Name == "area" || c.Name == "anglers"
}

// firstOf is the same column of a row's first stretch, for one of its further stretches.
func (r *Reader) firstOf(t *target) *target {
	if t.Set == 0 {
		return nil
	}
	i := slices.IndexFunc(r.targets, func(o target) bool { return o.Set == 0 && o.Column == t.Column })
	if i < 0 {
		return nil
	}
	return &r.targets[i]
}

// isDitto tells the marks for "the same as above".
func (r *Reader) isDitto(text string) bool {
	if text == "" || len(text) > len("ditto") || text[0] < 0x80 && !strings.Contains("\"'dD", text[:1]) {
		return false
	}
	_, ok := r.words["ditto"][strings.ToLower(text)]
	return ok
}

// logged is a cell's text; a key column takes it from the merged area's corner,
// a given one from above the table.
func (r *Reader) logged(t *target) string {
	if t.given != "" {
		return t.given
	}
	s := ""
	if t.Index < len(r.row.Cells) {
		s = trimmed(r.row.Cells[t.Index])
	}
	if s == "" && t.Column.Key && r.row.Merged != nil {
		s = strings.TrimSpace(r.row.Merged[t.Index])
	}
	if t.By != nil {
		return t.By[strings.ToLower(s)]
	}
	if t.Rest != nil && t.Rest.Index < len(r.row.Cells) {
		return withRest(s, t, trimmed(r.row.Cells[t.Rest.Index]))
	}
	if whole, rest, ok := unit.Pair(s); ok && t.Paired != "" {
		smaller, _, _ := unit.Divided(t.Paired)
		return fmt.Sprintf("%g %s %g %s", whole, t.Paired, rest, smaller)
	}
	return s
}

// withRest puts a quantity together of two cells: 31 under lb and 8 under oz.
func withRest(s string, t *target, rest string) string {
	switch {
	case words.NotLogged(rest):
		return s
	case words.NotLogged(s):
		return rest + " " + string(t.Rest.Unit)
	}
	return s + " " + string(t.Unit) + " " + rest + " " + string(t.Rest.Unit)
}

// forgotten tells a row of effort whose day alone is blank: it is of the day above, which
// is said. One that names its trip is, where that is the trip of the row above.
func (r *Reader) forgotten(t *target, trip string) bool {
	for i := range r.targets {
		o := &r.targets[i]
		said := r.says(o) // blank under a trip that is written once
		if o.Column.Name == "trip" && said != "" && said != trip || o.Column.Parse == "date" && o != t && o.text != "" {
			return false
		}
	}
	for i := range r.targets {
		if o := &r.targets[i]; o.given == "" && o.text != "" &&
			(o.Column.Name == "start_s" || o.Column.Name == "duration_s") {
			if m, err := r.moment(o.text); err == nil && m.HasDate {
				return false // its clock time has a day of its own
			}
			day := t.last
			if m, err := r.moment(day); err == nil && m.HasDate {
				day = m.Date.String() // a workbook's number says nothing
			}
			r.doubts = append(r.doubts, r.problem(t, "", "no day: that of the row above, "+day+", was taken"))
			return true
		}
	}
	return false
}
