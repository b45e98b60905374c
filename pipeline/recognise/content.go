package recognise

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"wakeledger/pipeline/unit"
)

// settle lets the cells decide between candidates that read cells differently:
// "lines out" above 4 is a number of lines, above 16:40 the end of a leg. What a
// heading is spelled as comes before what its words may mean.
func (t *Table) settle(hs []heading, rows [][]string) {
	effort := slices.ContainsFunc(hs, func(h heading) bool {
		return slices.ContainsFunc(h.candidates, func(c *Column) bool { return c.Name == "end_s" && c.Parse == "moment" })
	})
	for i := range hs {
		h := &hs[i]
		cells := column(rows, i)
		h.candidates = slices.DeleteFunc(slices.Clone(h.candidates), func(c *Column) bool { return c.doubtful[h.name] && !c.states(h.unit, cells) })
		said := func(c *Column) bool { return c.doubtful[h.name] && c.Parse == "text" }
		if effort {
			// beside a leg's end "Where" is a ground, whatever it is called
			h.candidates = slices.DeleteFunc(h.candidates, func(c *Column) bool { return said(c) && c.Name == "line" })
		}
		if i := slices.IndexFunc(h.candidates, said); i >= 0 {
			h.candidates = h.candidates[i : i+1] // its cells speak for it alone
		}
		if len(h.candidates) == 0 || len(cells) == 0 {
			continue
		}
		fit := fitting(h.candidates, cells)
		if len(fit) == 0 && len(cells) > 1 {
			fit = t.otherwise(h, cells)
		}
		if len(fit) > 0 || h.loose {
			h.candidates = fit
		}
		if len(h.candidates) == 0 {
			continue // neither the spelling nor the cells speak for it
		}
		h.candidates = byUnit(h.candidates, h.unit, cells)
		if h.candidates[0].Parse == "position" {
			h.candidates = h.candidates[:1] // of the boat, not of a line in the spread
		}
	}
	besideLure(hs)
	datedMoments(hs, rows, t)
	t.dayNames(hs, rows)
	inAndOut(hs, rows)
	fightMinutes(hs)
	t.skirts(hs)
}

// otherwise are the columns that a heading's words may mean besides those that
// do not fit its cells: those as which every cell can be read, and few texts.
func (t *Table) otherwise(h *heading, cells []string) []*Column {
	other := t.meant(h.name)
	if h.unit != "" {
		other = ofDimension(other, h.unit)
	}
	return slices.DeleteFunc(other, func(c *Column) bool {
		return !c.strict() || slices.ContainsFunc(cells, func(cell string) bool {
			fits, _ := c.fits([]string{cell})
			return !fits
		})
	})
}

// fitting are the candidates as which the cells can be read. A way of reading
// that takes few texts says more than one that takes any, and comes first.
func fitting(candidates []*Column, cells []string) []*Column {
	var strict, loose []*Column
	for _, c := range candidates {
		switch fits, isStrict := c.fits(cells); {
		case fits && isStrict:
			strict = append(strict, c)
		case fits:
			loose = append(loose, c)
		}
	}
	return append(strict, loose...)
}

// states tells whether most cells are possible in a unit that they or the heading
// state, for a count say what is counted, or speak for a column of text.
func (c *Column) states(stated unit.Unit, cells []string) bool {
	n := 0
	for _, cell := range cells {
		if c.Parse == "text" {
			n += c.said(cell)
		} else if c.Parse == "count" {
			number, word, _ := strings.Cut(cell, " ")
			if c.likeCount(number) == likely && counted[strings.ToLower(word)] {
				n++
			}
		} else if q, err := unit.ParseQuantity(cell, c.Dimension, stated, unit.MarkOf(cell)); err == nil && c.possible(q.Value, q.Unit) {
			n++
		}
	}
	return 2*n > len(cells)
}

// said is 1 where a cell speaks for a column of text: a place in the spread for a
// line, "2 boated, 1 pulled", which is more than one outcome, for notes.
func (c *Column) said(cell string) int {
	if c.Name == "line" && isPlace(normalise(cell)) || c.Name == "notes" && cell[0] >= '0' && cell[0] <= '9' && strings.Contains(cell, " ") {
		return 1
	}
	return 0
}

// counted are the words behind a number of lines out, as in "4 lines".
var counted = map[string]bool{"line": true, "lines": true, "rod": true, "rods": true, "lure": true, "lures": true, "pole": true, "poles": true}

// byUnit puts those first whose usual unit the heading or most cells state:
// ounces are a lure's, pounds a fish's.
func byUnit(candidates []*Column, stated unit.Unit, cells []string) []*Column {
	var usual, other []*Column
	for _, c := range candidates {
		n := 0
		for _, cell := range cells {
			if stated != "" {
				break
			}
			if q, err := unit.ParseQuantity(cell, c.Dimension, "", unit.MarkPoint); err == nil && c.usual(q.Unit) {
				n++
			}
		}
		if c.usual(stated) || 2*n > len(cells) {
			usual = append(usual, c)
		} else {
			other = append(other, c)
		}
	}
	return append(usual, other...)
}

func (c *Column) usual(u unit.Unit) bool { return u != "" && (u == c.US || u == c.Metric) }

// besideLure takes a weight without a unit, right after the lure, for the
// lure's, where the sheet has another weight for fish, or nothing of fish.
func besideLure(hs []heading) {
	for i := range hs {
		if i > 0 && hs[i-1].means("lure") || strings.Contains(hs[i].name, "lure") {
			continue
		}
		// among strikes a weight elsewhere is the fish's, whatever its unit
		hs[i].candidates = slices.DeleteFunc(slices.Clone(hs[i].candidates), func(c *Column) bool { return c.Name == "lure_weight_g" && !c.In(Lines) })
	}
	weights, fish := 0, false
	for _, h := range hs {
		switch {
		case h.means("scale_kg"):
			weights++
		case h.means("lure_weight_g"):
			return
		case h.means("species"), h.means("length_cm"), h.means("girth_cm"), h.means("outcome"), h.means("angler"):
			fish = true
		}
	}
	for i := 1; i < len(hs) && (weights > 1 || !fish); i++ {
		h := &hs[i]
		if h.unit == "" && hs[i-1].means("lure") && h.means("scale_kg") {
			h.candidates = slices.DeleteFunc(slices.Clone(h.candidates), func(c *Column) bool { return c.Name != "lure_weight_g" })
			return
		}
	}
}

// means tells what a heading is first of all.
func (h heading) means(name string) bool {
	return len(h.candidates) > 0 && h.candidates[0].Name == name
}

func column(rows [][]string, i int) []string {
	var cells []string
	for _, row := range rows {
		if s := cellOf(row, i); s != "" {
			cells = append(cells, s)
		}
	}
	return cells
}

// fits tells whether most of the cells could be read as the column is, and
// whether that says much, since the column does not take any text.
func (c *Column) fits(cells []string) (fits, strict bool) {
	like := func(string) likeness { return likely }
	switch c.Parse {
	case "moment":
		like = likeMoment
	case "date":
		like = likeDate
	case "count":
		like = c.likeCount
	case "position":
		like = likePosition
	case "latitude", "longitude":
		like = likeDegrees
	case "span":
		like = likeSpan
	case "quantity":
		like = c.likeQuantity
	case "bool", "released", "kept", "tagcapture":
		like = func(s string) likeness { return likelyIf(!likeMany(s)) }
	case "species":
		like = func(s string) likeness { return likelyIf(strings.IndexFunc(s, unicode.IsLetter) >= 0) }
	}
	n, sure := 0, false
	for _, cell := range cells {
		l := like(cell)
		if l != unlikely {
			n++
		}
		sure = sure || l == likely
	}
	return 2*n > len(cells) && sure, c.strict()
}

// strict tells a column that few texts fit.
func (c *Column) strict() bool {
	switch c.Parse {
	case "moment", "date", "count", "position", "span", "quantity", "latitude", "longitude":
		return true
	}
	return false
}

// likeness is whether a cell could be read in some way; possible is no evidence
// by itself.
type likeness int

const (
	unlikely likeness = iota
	possible
	likely
)

func likelyIf(b bool) likeness {
	if b {
		return likely
	}
	return unlikely
}

// likeMoment takes clock times, dates and a workbook's serials. 100 may be one
// o'clock, but as well a distance.
func likeMoment(s string) likeness {
	if v, err := strconv.ParseFloat(s, 64); err == nil {
		switch {
		case v >= 20000 && v < 80000, v > 0 && v < 2 && v != 1:
			return likely
		case v == 0 || v == 1:
			return possible
		}
	}
	if _, err := unit.ParseMoment(s, unit.DayFirst); err == nil {
		if len(s) == 3 && strings.IndexFunc(s, func(r rune) bool { return !unicode.IsDigit(r) }) < 0 {
			return possible
		}
		return likely
	} else if errors.Is(err, unit.ErrDateOrder) {
		return likely
	}
	return unlikely
}

func likeDate(s string) likeness {
	if v, err := strconv.ParseFloat(s, 64); err == nil && v >= 20000 && v < 80000 {
		return likely
	}
	m, err := unit.ParseMoment(s, unit.DayFirst)
	return likelyIf(err == nil && m.HasDate || errors.Is(err, unit.ErrDateOrder) || yearless(s))
}

// yearless tells a day and month without a year.
func yearless(s string) bool {
	_, err := unit.ParseDayMonth(s, unit.OrderUnknown)
	return err == nil || errors.Is(err, unit.ErrAmbiguousDate)
}

// likeCount takes whole numbers and a yes or no of what can only have been one;
// a fish that was not kept was released, which is more than a count says.
func (c *Column) likeCount(s string) likeness {
	switch strings.ToLower(s) {
	case "y", "n", "yes", "no", "x":
		return likelyIf(c.Name != "landed_n" && c.Name != "released_n")
	}
	if number, word, ok := strings.Cut(s, " "); ok && c.Name == "lines_out" && counted[strings.ToLower(word)] {
		s = number
	}
	v, err := strconv.ParseFloat(s, 64)
	return likelyIf(err == nil && v == float64(int(v)) && v >= 0 && v < 100)
}

func (c *Column) likeQuantity(s string) likeness {
	_, err := unit.ParseQuantity(s, c.Dimension, c.Unit, unit.MarkPoint)
	return likelyIf(err == nil)
}

// likePosition is a cell with a latitude and a longitude: four numbers or more,
// or two with a fraction.
func likePosition(s string) likeness {
	numbers := strings.FieldsFunc(s, func(r rune) bool { return !unicode.IsDigit(r) && r != '.' })
	hemispheres := strings.IndexFunc(s, func(r rune) bool { return strings.ContainsRune("NSns", r) }) >= 0 &&
		strings.IndexFunc(s, func(r rune) bool { return strings.ContainsRune("EWew", r) }) >= 0
	fractions := 0
	for _, n := range numbers {
		if len(n) > 2 && strings.Contains(n, ".") {
			fractions++
		}
	}
	return likelyIf(len(numbers) >= 2 && (hemispheres || fractions >= 2))
}

// likeDegrees is a coordinate: not a length in feet and inches, which a heading
// such as "Long" may mean too.
func likeDegrees(s string) likeness {
	if strings.ContainsAny(s, "°ºNSEWnsew") {
		return likely
	}
	return likelyIf(!strings.ContainsAny(s, "\"'″′”’"))
}

// likeSpan is two clock times with a dash or a word between.
func likeSpan(s string) likeness {
	from, to, ok := Span(s)
	if !ok {
		return unlikely
	}
	_, err := unit.ParseMoment(from, unit.DayFirst)
	_, also := unit.ParseMoment(to, unit.DayFirst)
	return likelyIf(err == nil && also == nil)
}

// Span parts a cell such as "0610-0755" or "6:10 to 7:55" into its two times.
func Span(s string) (from, to string, ok bool) {
	for _, sep := range []string{" to ", " - ", "–", "-"} {
		if strings.Count(s, sep) == 1 {
			from, to, ok = strings.Cut(s, sep)
			return strings.TrimSpace(from), strings.TrimSpace(to), ok
		}
	}
	return "", "", false
}

// likeMany is a count that no yes-or-no column holds.
func likeMany(s string) bool {
	v, err := strconv.Atoi(s)
	return err == nil && v > 1
}
