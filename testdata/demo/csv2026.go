package main

import (
	"math"
	"path/filepath"
)

// The second log of 2026: five CSVs with semicolons, decimal commas, day-first
// dates and metric units. Strikes name no trip and no leg, only day and time.

func writeLate(dir string, trips []*trip) ([]setAside, error) {
	trips = ofLog(trips, logLate)
	named := func(role string) *table { return &table{file: "2026-late-" + role + ".csv"} }
	tables := []*table{named("trips"), named("legs"), named("lines"), named("strikes"), named("fish")}
	lay(tables[0], tripsLate, trips, noMistake)
	lay(tables[1], legsLate, legItems(trips), legMistake)
	lay(tables[2], linesLate, lineItems(trips), lineMistake)
	lay(tables[3], strikesLate, strikeItems(trips), strikeMistake)
	lay(tables[4], fishLate, fishItems(trips), fishMistake)
	encodings := []encoding{utf8BOM, windows1252, utf8, utf8, utf8}
	for i, t := range tables {
		if err := writeCSV(filepath.Join(dir, t.file), t, encodings[i]); err != nil {
			return nil, err
		}
	}
	return collect(tables), nil
}

// kilogram classes that the pound classes are sold as.
var classKg = map[int]int{50: 24, 80: 37, 130: 60}

var tripsLate = []column[*trip]{
	{"Boat", "boat", func(*trip) any { return boatName }},
	{"Trip no.", "trip", func(t *trip) any { return t.id }},
	{"Skipper", "captain", func(t *trip) any { return t.crew[0] }},
	{"Date", "date", func(t *trip) any { return date{t.depart} }},
	{"Port", "port", func(*trip) any { return portName }},
	{"Departure", "depart", func(t *trip) any { return clock{t.depart} }},
	{"Return", "return", func(t *trip) any { return clock{t.back} }},
	{"Crew", "anglers", func(t *trip) any { return t.inCrew() }},
	{"Time zone", "zone", func(*trip) any { return zoneName }},
	{"Remarks", "notes", func(t *trip) any { return text(t.notes) }},
}

var legsLate = []column[legItem]{
	{"Boat", "boat", func(legItem) any { return boatName }},
	{"Trip no.", "trip", func(i legItem) any { return i.id }},
	{"Leg no.", "leg", func(i legItem) any { return i.no }},
	{"Date", "date", func(i legItem) any { return date{i.start} }},
	{"Start time", "start", func(i legItem) any { return clock{i.start} }},
	{"End time", "end", func(i legItem) any { return clock{i.end} }},
	{"Speed over ground (kn)", "speed", func(i legItem) any {
		return when(i.speedLogged, fixed{float64(i.speed) / 10, 1})
	}},
	{"No. of lines", "lines", func(i legItem) any { return when(i.linesLogged, i.linesOut()) }},
	{"Course", "heading", func(i legItem) any { return i.heading }},
	{"Latitude", "lat", func(i legItem) any { return fixed{i.lat, 4} }},
	{"Longitude", "lon", func(i legItem) any { return fixed{i.lon, 4} }},
	{"Area", "area", func(i legItem) any { return i.area }},
	{"Water temp (°C)", "sst", func(i legItem) any { return fixed{i.seaC, 1} }},
	{"Wind (kn)", "wind", func(i legItem) any { return i.windKn }},
	{"Sea state", "sea", func(i legItem) any { return i.sea }},
	{"Approach", "approach", func(i legItem) any { return i.approach }},
	{"Distance to school (m)", "school", func(i legItem) any { return when(i.schoolM > 0, i.schoolM) }},
	{"Nearest boat (nmi)", "nearest", func(i legItem) any { return fixed{i.nearestNmi, 1} }},
	{"Tangle", "tangle", func(i legItem) any { return text(i.tangle) }},
	{"Remarks", "notes", func(i legItem) any { return text(i.leg.notes) }},
}

var linesLate = []column[lineItem]{
	{"Boat", "boat", func(lineItem) any { return boatName }},
	{"Trip no.", "trip", func(i lineItem) any { return i.t.id }},
	{"Leg no.", "leg", func(i lineItem) any { return i.l.no }},
	{"Date", "date", func(i lineItem) any { return date{i.l.start} }},
	{"Line", "line", func(i lineItem) any { return i.ln.name }},
	{"Lure", "lure", func(i lineItem) any { return i.ln.lure }},
	{"Lure weight (g)", "weight", func(i lineItem) any { return int(math.Round(float64(i.ln.weightOz) * gPerOz)) }},
	{"Colour", "colour", func(i lineItem) any { return i.ln.colour }},
	{"Hooks", "hooks", func(i lineItem) any { return i.ln.hooks }},
	{"Leader (kg)", "leader", func(i lineItem) any { return int(math.Round(float64(i.ln.leaderLb) * kgPerLb)) }},
	{"Line class (kg)", "class", func(i lineItem) any { return classKg[i.ln.classLb] }},
	{"Drag (kg)", "drag", func(i lineItem) any { return fixed{half(float64(i.ln.dragLb) * kgPerLb), 1} }},
	{"Setback (m)", "setback", func(i lineItem) any { return int(math.Round(i.ln.setbackM())) }},
}

var strikesLate = []column[strikeItem]{
	{"Boat", "boat", func(strikeItem) any { return boatName }},
	{"Date", "date", func(i strikeItem) any { return date{i.s.at} }},
	{"Time", "time", func(i strikeItem) any { return clock{i.s.at} }},
	{"Line", "line", strikeItem.lineName},
	{"Result", "outcome", strikeItem.outcome},
	{"Species", "species", strikeItem.speciesName},
	{"Cause of loss", "cause", func(i strikeItem) any { return text(i.s.cause) }},
	{"Fight time (min)", "fight", func(i strikeItem) any { return when(i.s.fight > 0, i.s.fight) }},
	{"Angler", "angler", func(i strikeItem) any { return text(i.s.angler) }},
}

var fishLate = []column[strikeItem]{
	{"Boat", "boat", func(strikeItem) any { return boatName }},
	{"Trip no.", "trip", func(i strikeItem) any { return i.t.id }},
	{"Date", "date", func(i strikeItem) any { return date{i.s.at} }},
	{"Time", "time", func(i strikeItem) any { return clock{i.s.at} }},
	{"Line", "line", strikeItem.lineName},
	{"Species", "species", strikeItem.speciesName},
	{"Length (cm)", "length", func(i strikeItem) any {
		return when(i.s.fish.measured, fixed{half(i.s.fish.lengthCm), 1})
	}},
	{"Length type", "kind", strikeItem.lengthKind},
	{"Girth (cm)", "girth", func(i strikeItem) any { return when(i.taped(), fixed{half(i.s.fish.girthCm), 1}) }},
	{"Scale weight (kg)", "scale", func(i strikeItem) any {
		return when(i.s.fish.scaleKg > 0, fixed{i.s.fish.scaleKg, 1})
	}},
	{"Weight state", "state", strikeItem.state},
	{"Certified scale", "certified", func(i strikeItem) any { return when(i.s.fish.certified, "yes") }},
	{"Kept or released", "kept", strikeItem.kept},
	{"Angler", "angler", func(i strikeItem) any { return text(i.s.angler) }},
}
