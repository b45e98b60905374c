package normalise

import (
	"slices"
	"strings"
)

// hoursAgain takes the hours, lines, speed and counts of a row with a bite for those of the stretch that the row above
// it is of, where the rows of a stretch repeat them: they are counted once. A stretch with clock times is known by
// these.
func (r *Reader) hoursAgain() {
	if !r.layout.EffortOnce {
		return
	}
	key := r.above[:0:0]
	bite, told := false, false
	clocked := r.has("start_s") || r.has("end_s") || r.has("leg") && r.has("trip")
	for i := range r.targets {
		switch t := &r.targets[i]; {
		case t.given != "" || t.text == "":
		case t.OfStrike():
			bite = true
		case t.Column.Name == "speed_kn":
		case wholeStretch(t) || t.rank >= 0:
			key = append(key, t.Column.Name+"\x00"+strings.ToLower(t.text))
			told = told || t.rank < 0
		}
	}
	if bite && told && slices.Equal(key, r.above) {
		for i := range r.targets {
			if t := &r.targets[i]; t.given == "" && wholeStretch(t) && !(clocked && effortNames[t.Column.Name]) {
				t.text = ""
			}
		}
	} else if told {
		r.above = key
	}
}

// lureLine names the line of a row by its lure, where lures of one day were out together.
func (r *Reader) lureLine() {
	if r.layout.LureLines && r.value("lure").Known {
		r.put("line", r.value("lure"))
	}
}

// wholeStretch tells a column of a stretch as a whole: its effort, or a count of what struck.
func wholeStretch(t *target) bool {
	return effortNames[t.Column.Name] || strings.HasSuffix(t.Column.Name, "_n")
}
