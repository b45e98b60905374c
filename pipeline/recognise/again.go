package recognise

import "slices"

// ofStrike are columns of what struck, which a row that leaves out its day must have.
var ofStrike = []string{"outcome", "species", "length_cm", "girth_cm", "scale_kg"}

// ofDay are columns of the day and stretch that several strikes share.
var ofDay = []string{"trip", "boat", "captain", "port", "date", "leg", "start_s", "end_s"}

// blankTogether finds columns that some rows leave out all at once, because the row
// above has said them: the second fish of a day. They are the date or trip and
// another, blank in the same rows, which have something that struck, below a row
// that has both. One alone may have been forgotten.
func (l *Layout) blankTogether(rows [][]string) map[int]bool {
	var day, struck []int
	dated := false
	for _, b := range l.Bindings {
		switch {
		case slices.Contains(ofDay, b.Column.Name):
			day = append(day, b.Index)
			dated = dated || b.Column.Name == "date" || b.Column.Name == "trip"
		case slices.Contains(ofStrike, b.Column.Name):
			struck = append(struck, b.Index)
		}
	}
	if !dated || len(day) < 2 || len(struck) == 0 {
		return nil
	}
	found := map[int]bool{}
	above := 0 // filled of day in the row above
	for _, row := range rows {
		filled := filledOf(row, day)
		switch {
		case filled == 0 && (above == 0 || filledOf(row, struck) == 0) && cells(row) > 1,
			filled > 0 && filled < len(day) && cells(row) > 1 && !isTotal(row):
			return nil // blank for another reason
		case filled == 0 && cells(row) > 1:
			for _, i := range day {
				found[i] = true
			}
		default:
			above = filled
		}
	}
	return found
}

func filledOf(row []string, indexes []int) int {
	n := 0
	for _, i := range indexes {
		if cellOf(row, i) != "" {
			n++
		}
	}
	return n
}
