package normalise

import (
	"slices"
	"strings"
)

// hoursAgain takes the hours, lines and speed of a row with a bite for those of the stretch that the row above it is
// of, where the rows of a stretch repeat them: they are counted once.
func (r *Reader) hoursAgain() {
	if !r.layout.EffortOnce {
		return
	}
	key := r.above[:0:0]
	bite, hours := false, false
	for i := range r.targets {
		switch t := &r.targets[i]; {
		case t.given != "" || t.text == "":
		case t.OfStrike():
			bite = true
		case t.Column.Name == "speed_kn":
		case effortNames[t.Column.Name] || t.rank >= 0:
			key = append(key, t.Column.Name+"\x00"+strings.ToLower(t.text))
			hours = hours || t.Column.Name == "duration_s"
		}
	}
	if bite && hours && slices.Equal(key, r.above) {
		for i := range r.targets {
			if t := &r.targets[i]; t.given == "" && effortNames[t.Column.Name] {
				t.text = ""
			}
		}
	} else if hours {
		r.above = key
	}
}
