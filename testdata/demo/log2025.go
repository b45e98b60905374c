package main

import "path/filepath"

// The log of 2025: a workbook with one sheet a role, US units, a title row
// above each header, real dates and times, merged trip and leg cells on the
// lines sheet and a totals row under the legs.

const file2025 = "2025-log.xlsx"

func write2025(dir string, trips []*trip) ([]setAside, error) {
	trips = ofLog(trips, log2025)
	sheet := func(name string) *table {
		return &table{file: file2025, sheet: name, title: boatName + ", season 2025: " + name}
	}
	tables := []*table{sheet("Trips"), sheet("Legs"), sheet("Lines"), sheet("Strikes"), sheet("Fish")}
	lay(tables[0], trips2025, trips, noMistake)
	lay(tables[1], legs2025, legItems(trips), legMistake)
	tables[1].totalled = "Hours"
	lines := lineItems(trips)
	lay(tables[2], lines2025, lines, lineMistake)
	tables[2].merged = mergeKeys(lines)
	lay(tables[3], strikes2025, strikeItems(trips), strikeMistake)
	lay(tables[4], fish2025, fishItems(trips), fishMistake)
	return collect(tables), writeWorkbook(filepath.Join(dir, file2025), tables)
}

// mergeKeys merges the trip cells of a trip's lines and the leg cells of a leg's.
func mergeKeys(lines []lineItem) []span {
	spans := runs(0, lines, func(i, j lineItem) bool { return i.t == j.t })
	return append(spans, runs(1, lines, func(i, j lineItem) bool { return i.l != nil && i.l == j.l })...)
}

// runs finds the runs of two rows or more that are the same.
func runs(column int, lines []lineItem, same func(i, j lineItem) bool) []span {
	var spans []span
	first := 0
	for i := 1; i <= len(lines); i++ {
		if i < len(lines) && same(lines[first], lines[i]) {
			continue
		}
		if i-first > 1 {
			spans = append(spans, span{column, first, i - 1})
		}
		first = i
	}
	return spans
}

var trips2025 = []column[*trip]{
	{"Trip", "trip", func(t *trip) any { return t.id }},
	{"Boat", "boat", func(*trip) any { return boatName }},
	{"Captain", "captain", func(t *trip) any { return t.crew[0] }},
	{"Date", "date", func(t *trip) any { return date{t.depart} }},
	{"Port", "port", func(*trip) any { return portName }},
	{"Depart", "depart", func(t *trip) any { return clock{t.depart} }},
	{"Return", "return", func(t *trip) any { return clock{t.back} }},
	{"Anglers", "anglers", func(t *trip) any { return t.inCrew() }},
	{"Time zone", "zone", func(*trip) any { return zoneName }},
	{"Notes", "notes", func(t *trip) any { return text(t.notes) }},
}

var legs2025 = []column[legItem]{
	{"Trip", "trip", func(i legItem) any { return i.id }},
	{"Leg", "leg", func(i legItem) any { return i.no }},
	{"Date", "date", func(i legItem) any { return date{i.start} }},
	{"Start", "start", func(i legItem) any { return clock{i.start} }},
	{"End", "end", func(i legItem) any { return clock{i.end} }},
	{"Hours", "hours", func(i legItem) any { return round(float64(i.minutes())/60, 2) }},
	{"Speed (kts)", "speed", func(i legItem) any { return when(i.speedLogged, float64(i.speed)/10) }},
	{"Lines out", "lines", func(i legItem) any { return when(i.linesLogged, i.linesOut()) }},
	{"Heading", "heading", func(i legItem) any { return i.heading }},
	{"Lat", "lat", func(i legItem) any { return i.lat }},
	{"Lon", "lon", func(i legItem) any { return i.lon }},
	{"Area", "area", func(i legItem) any { return i.area }},
	{"Sea temp (F)", "sst", func(i legItem) any { return fahrenheit(i.seaC) }},
	{"Wind (kts)", "wind", func(i legItem) any { return i.windKn }},
	{"Sea state", "sea", func(i legItem) any { return i.sea }},
	{"Approach", "approach", func(i legItem) any { return i.approach }},
	{"Distance to school (yd)", "school", func(i legItem) any {
		return when(i.schoolM > 0, round(float64(i.schoolM)/(3*mPerFt), 0))
	}},
	{"Nearest boat (nm)", "nearest", func(i legItem) any { return i.nearestNmi }},
	{"Tangle", "tangle", func(i legItem) any { return text(i.tangle) }},
	{"Notes", "notes", func(i legItem) any { return text(i.leg.notes) }},
}

var lines2025 = []column[lineItem]{
	{"Trip", "trip", func(i lineItem) any { return i.t.id }},
	{"Leg", "leg", func(i lineItem) any {
		if i.l == nil {
			return nil
		}
		return i.l.no
	}},
	{"Line", "line", func(i lineItem) any { return i.ln.name }},
	{"Lure", "lure", func(i lineItem) any { return i.ln.lure }},
	{"Lure weight (oz)", "weight", func(i lineItem) any { return i.ln.weightOz }},
	{"Color", "colour", func(i lineItem) any { return i.ln.colour }},
	{"Hooks", "hooks", func(i lineItem) any { return i.ln.hooks }},
	{"Leader (lb)", "leader", func(i lineItem) any { return i.ln.leaderLb }},
	{"Line class (lb)", "class", func(i lineItem) any { return i.ln.classLb }},
	{"Drag (lb)", "drag", func(i lineItem) any { return i.ln.dragLb }},
	{"Count (s)", "count", func(i lineItem) any { return i.ln.count }},
	{"Let-out speed (kts)", "letout", func(i lineItem) any { return i.ln.letOut }},
}

var strikes2025 = []column[strikeItem]{
	{"Trip", "trip", func(i strikeItem) any { return i.t.id }},
	{"Leg", "leg", func(i strikeItem) any { return i.l.no }},
	{"Time", "time", func(i strikeItem) any { return when(i.s.timeLogged, clock{i.s.at}) }},
	{"Line", "line", strikeItem.lineName},
	{"Outcome", "outcome", strikeItem.outcome},
	{"Species", "species", strikeItem.speciesName},
	{"Cause of loss", "cause", func(i strikeItem) any { return text(i.s.cause) }},
	{"Fight time (min)", "fight", func(i strikeItem) any { return when(i.s.fight > 0, i.s.fight) }},
	{"Angler", "angler", func(i strikeItem) any { return text(i.s.angler) }},
}

var fish2025 = []column[strikeItem]{
	{"Trip", "trip", func(i strikeItem) any { return i.t.id }},
	{"Date", "date", func(i strikeItem) any { return date{i.s.at} }},
	{"Time", "time", func(i strikeItem) any { return clock{i.s.at} }},
	{"Line", "line", strikeItem.lineName},
	{"Species", "species", strikeItem.speciesName},
	{"Length (in)", "length", func(i strikeItem) any {
		return when(i.s.fish.measured, half(i.s.fish.lengthCm/cmPerIn))
	}},
	{"Length kind", "kind", strikeItem.lengthKind},
	{"Girth (in)", "girth", func(i strikeItem) any { return when(i.taped(), half(i.s.fish.girthCm/cmPerIn)) }},
	{"Scale weight (lb)", "scale", func(i strikeItem) any {
		return when(i.s.fish.scaleKg > 0, round(i.s.fish.scaleKg/kgPerLb, 1))
	}},
	{"Weight state", "state", strikeItem.state},
	{"Certified", "certified", func(i strikeItem) any { return when(i.s.fish.certified, "yes") }},
	{"Kept/Released", "kept", strikeItem.kept},
	{"Angler", "angler", func(i strikeItem) any { return text(i.s.angler) }},
}

// taped says that the girth is logged.
func (i strikeItem) taped() bool { return i.s.fish.measured && i.s.fish.girthCm > 0 }
