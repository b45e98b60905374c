package recognise

import (
	"strconv"
	"strings"
)

// settle lets the cells decide between candidates that read cells differently:
// "lines out" above 4 is a number of lines, above 16:40 the end of a leg.
func settle(hs []heading, rows [][]string) {
	for i := range hs {
		h := &hs[i]
		if len(h.candidates) < 2 {
			continue
		}
		cells := column(rows, i)
		if len(cells) == 0 {
			continue
		}
		var fit []*Column
		for _, c := range h.candidates {
			if fits(c.Parse, cells) {
				fit = append(fit, c)
			}
		}
		if len(fit) > 0 {
			h.candidates = fit
		}
	}
}

func column(rows [][]string, i int) []string {
	var cells []string
	for _, row := range rows {
		if i < len(row) {
			if s := strings.TrimSpace(row[i]); s != "" {
				cells = append(cells, s)
			}
		}
	}
	return cells
}

// fits tells whether most of the cells could be read in the way that parse
// names. Ways that take almost any text fit always.
func fits(parse string, cells []string) bool {
	var like func(string) bool
	switch parse {
	case "moment":
		like = likeClock
	case "count":
		like = likeCount
	case "bool", "released", "kept":
		like = func(s string) bool { return !likeMany(s) }
	default:
		return true
	}
	n := 0
	for _, c := range cells {
		if like(c) {
			n++
		}
	}
	return 2*n > len(cells)
}

func likeClock(s string) bool {
	if strings.ContainsAny(s, ":hH") || strings.HasSuffix(strings.ToLower(s), "m") {
		return true
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return false
	}
	return v != float64(int(v)) || v >= 100 // a stored time of day, a stored date and time, or 0730
}

func likeCount(s string) bool {
	v, err := strconv.ParseFloat(s, 64)
	return err == nil && v == float64(int(v)) && v >= 0 && v < 100
}

// likeMany is a count that no yes-or-no column holds.
func likeMany(s string) bool {
	v, err := strconv.Atoi(s)
	return err == nil && v > 1
}
