package normalise

import (
	"strconv"
	"strings"

	"wakeledger/pipeline/plan"
)

// hoursAgain takes the hours, lines, speed and counts of a row with a bite for those of the stretch that the row above
// it is of, where the rows of a stretch repeat them: they are counted once. A stretch with clock times is known by
// these.
func (r *Reader) hoursAgain() {
	if !r.layout.EffortOnce {
		return
	}
	key := map[string]string{}
	bite, told := false, false
	clocked := r.has("start_s") || r.has("end_s") || r.has("leg") && r.has("trip")
	for i := range r.targets {
		switch t := &r.targets[i]; {
		case t.given != "" || t.text == "":
		case t.OfStrike():
			bite = true
		case t.Column.Name == "speed_kn":
		case wholeStretch(t) || t.rank >= 0:
			key[t.Column.Name+" "+strconv.Itoa(t.Index)] = strings.ToLower(t.text)
			told = told || t.rank < 0
		}
	}
	for _, u := range r.layout.Unknown {
		if u.Aside == plan.SeveralLures && u.Index < len(r.row.Cells) {
			key[u.Aside] = strings.ToLower(r.row.Cells[u.Index])
		}
	}
	if r.sameHours = bite && told && r.above != nil && saysAgain(key, r.above); r.sameHours {
		for i := range r.targets {
			t := &r.targets[i]
			// lines said again are not those of this row's lure
			kept := clocked && effortNames[t.Column.Name] && t.Column.Name != "lines_out"
			if t.given == "" && wholeStretch(t) && !kept {
				t.text = ""
			}
		}
	} else if told {
		if r.above = key; !bite {
			r.above = nil // a stretch without a bite has no further row
		}
	}
}

// boatsHours leaves out the hours, lines and speed of a man's row where the row above is of another man on the same day
// and says the same of them: they are the boat's.
func (r *Reader) boatsHours() {
	if !r.layout.HoursOnce {
		return
	}
	key := map[string]string{}
	for i := range r.targets {
		if t := &r.targets[i]; t.given == "" && t.text != "" && (effortNames[t.Column.Name] || t.rank >= 0) {
			key[t.Column.Name] = strings.ToLower(t.text)
		}
	}
	if r.above != nil && saysAgain(key, r.above) {
		for i := range r.targets {
			if t := &r.targets[i]; t.given == "" && effortNames[t.Column.Name] {
				t.text = ""
			}
		}
		return
	}
	r.above = key
}

// saysAgain reports whether a row says what the one above it does: of a port or boat it may say nothing more.
func saysAgain(row, above map[string]string) bool {
	for name, text := range row {
		if above[name] != text {
			return false
		}
	}
	for name := range above {
		column, _, _ := strings.Cut(name, " ")
		if _, key := rank[column]; row[name] == "" && !key {
			return false
		}
	}
	return true
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
