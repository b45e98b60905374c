package main

import (
	"fmt"
	"math"
	"path/filepath"
)

// The first log of 2026: a workbook with one flat sheet, a row a line on a
// leg, counts of what it did and the fish where there was just one; lengths in
// feet and inches, weights as 212#, dates and times as text, blank rows
// between trips.

const fileEarly = "2026-early.xlsx"

func writeEarly(dir string, trips []*trip) ([]setAside, error) {
	sheet := &table{file: fileEarly, sheet: "Log"}
	for _, t := range ofLog(trips, logEarly) {
		if len(sheet.rows) > 0 {
			sheet.rows = append(sheet.rows, nil)
		}
		lay(sheet, flatColumns, flatItems(t), func(i flatItem) *bad { return i.ln.bad })
	}
	tables := []*table{sheet}
	return collect(tables), writeWorkbook(filepath.Join(dir, fileEarly), tables)
}

// flatItem is a line on a leg with what it did.
type flatItem struct {
	t                                 *trip
	l                                 *leg
	ln                                *line
	strikes, hooked, landed, released int
	noOutcome                         bool       // someone wrote the strikes and no more
	only                              strikeItem // the row's one fish, if s is not nil
	cause                             string
}

func flatItems(t *trip) []flatItem {
	var items []flatItem
	for _, li := range legItems([]*trip{t}) {
		for _, ln := range li.lines {
			items = append(items, newFlatItem(li.trip, li.leg, ln))
		}
	}
	return items
}

func newFlatItem(t *trip, l *leg, ln *line) flatItem {
	i := flatItem{t: t, l: l, ln: ln}
	for _, s := range onLine(l, ln) {
		i.strikes++
		switch s.outcome {
		case landed:
			i.landed++
		case released:
			i.released++
		case lost:
			i.hooked++
			i.cause = s.cause
		case notLogged:
			i.noOutcome = true
		}
		if s.fish != nil {
			i.only = strikeItem{t, l, s}
		}
	}
	i.hooked += i.landed + i.released
	if i.landed+i.released != 1 {
		i.only = strikeItem{}
	}
	return i
}

// counted is an outcome's count, left empty where nothing struck or nobody
// wrote down what became of it.
func (i flatItem) counted(n int) any { return when(i.strikes > 0 && !i.noOutcome, n) }

// ofFish is a cell about the row's one fish.
func ofFish(value func(strikeItem) any) func(flatItem) any {
	return func(i flatItem) any {
		if i.only.s == nil {
			return nil
		}
		return value(i.only)
	}
}

var flatColumns = []column[flatItem]{
	{"Trip #", "trip", func(i flatItem) any { return i.t.id }},
	{"Boat", "boat", func(flatItem) any { return boatName }},
	{"Date", "date", func(i flatItem) any { return i.l.start.Format("2006-01-02") }},
	{"Time zone", "zone", func(flatItem) any { return zoneName }},
	{"Lines in", "start", func(i flatItem) any { return i.l.start.Format("15:04") }},
	{"Lines up", "end", func(i flatItem) any { return i.l.end.Format("15:04") }},
	{"SOG kn", "speed", func(i flatItem) any { return when(i.l.speedLogged, float64(i.l.speed)/10) }},
	{"Lat", "lat", func(i flatItem) any { return degreesMinutes(i.l.lat, "N", "S") }},
	{"Long", "lon", func(i flatItem) any { return degreesMinutes(i.l.lon, "E", "W") }},
	{"Area", "area", func(i flatItem) any { return i.l.area }},
	{"SST F", "sst", func(i flatItem) any { return fahrenheit(i.l.seaC) }},
	{"Wind", "wind", func(i flatItem) any { return fmt.Sprintf("%s %d kn", i.l.windFrom, i.l.windKn) }},
	{"Approach", "approach", func(i flatItem) any { return i.l.approach }},
	{"Line", "line", func(i flatItem) any { return i.ln.name }},
	{"Lure", "lure", func(i flatItem) any { return i.ln.lure }},
	{"Lure wt oz", "weight", func(i flatItem) any { return i.ln.weightOz }},
	{"Colour", "colour", func(i flatItem) any { return i.ln.colour }},
	{"Hooks", "hooks", func(i flatItem) any { return i.ln.hooks }},
	{"Leader lb", "leader", func(i flatItem) any { return i.ln.leaderLb }},
	{"Line class lb", "class", func(i flatItem) any { return i.ln.classLb }},
	{"Drag lb", "drag", func(i flatItem) any { return i.ln.dragLb }},
	{"Setback ft", "setback", func(i flatItem) any { return math.Round(i.ln.setbackM() / mPerFt) }},
	{"Strikes", "strikes", func(i flatItem) any { return i.strikes }},
	{"Hooked", "hooked", func(i flatItem) any { return i.counted(i.hooked) }},
	{"Landed", "landed", func(i flatItem) any { return i.counted(i.landed) }},
	{"Released", "released", func(i flatItem) any { return i.counted(i.released) }},
	{"Cause of loss", "cause", func(i flatItem) any { return when(i.hooked-i.landed-i.released == 1, i.cause) }},
	{"Species", "species", ofFish(strikeItem.speciesName)},
	{"Fork length", "length", ofFish(func(i strikeItem) any {
		return when(i.s.fish.measured, feetInches(i.s.fish.lengthCm))
	})},
	{"Girth in", "girth", ofFish(func(i strikeItem) any { return when(i.taped(), half(i.s.fish.girthCm/cmPerIn)) })},
	{"Scale weight", "scale", ofFish(func(i strikeItem) any {
		return when(i.s.fish.scaleKg > 0, fmt.Sprintf("%.0f#", i.s.fish.scaleKg/kgPerLb))
	})},
	{"Angler", "angler", ofFish(func(i strikeItem) any { return i.s.angler })},
	{"Remarks", "notes", func(i flatItem) any { return text(i.l.notes) }},
}
