package track

import (
	"slices"
	"sort"
	"time"

	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// A heading with one of these words is of a log of fishing and of no track.
var logWords = set("strike", "strikes", "hit", "hits", "bite", "bites", "hookup", "hookups", "hooked", "landed",
	"released", "missed", "boated", "gaffed", "tagged", "outcome",
	"species", "fish", "caught", "catch", "catches", "lure", "lures", "bait", "baits", "rod", "rods", "reel", "setback",
	"spread", "angler", "anglers", "girth", "weight", "kg", "kilos", "lb", "lbs",
	"leader", "drag", "tangle", "tangles", "tangled", "hooks", "dropback",
	"especie", "pez", "peces", "picada", "picadas", "captura", "capturas", "senuelo", "senuelos", "cana",
	"canas", "carnada", "peso", "talla",
	"espece", "poisson", "poissons", "touche", "touches", "prise", "prises", "leurre", "leurres",
	"canne", "cannes", "poids", "taille",
	"specie", "pesce", "pesci", "abboccata", "abboccate", "cattura", "catture", "esca", "esche", "canna", "peixe",
	"peixes", "isca", "iscas", "amostra", "linha", "linhas",
	"fisch", "fische", "biss", "bisse", "koder", "koeder", "rute", "ruten", "gewicht", "fang")

// These are of a log too, unless the rows come as close as a track's fixes do.
var looseWords = set("lines", "line", "lost", "leg", "legs", "trip", "start", "end", "begin", "stop", "in", "out", "up",
	"length", "count", "colour", "color", "outing", "hours", "event", "what", "result", "port", "crew",
	"captain", "skipper", "approach",
	"lineas", "linea", "lignes", "ligne", "lenze", "lenza", "leinen", "leine", "inicio", "fin", "debut", "inizio",
	"fine", "fim", "beginn", "anfang", "ende", "salida", "salidas", "sortie", "uscita", "saida", "ausfahrt")

// Headings of a track: a table that has no others is one however few its rows.
var trackWords = set("time", "timestamp", "datetime", "date", "utc", "gps", "speed", "sog", "course", "cog", "heading",
	"hdg", "bearing", "ele", "elevation", "alt", "altitude", "depth",
	"hdop", "vdop", "pdop", "sat", "sats", "satellites", "name", "accuracy", "fix", "id", "no", "segment", "trkseg",
	"temp", "temperature", "kn", "kts", "kt", "knots", "m", "s", "km", "h", "kmh", "mps", "mph", "ft",
	"deg", "degrees", "true", "magnetic", "local", "over", "ground", "point", "trackpoint", "track", "index",
	"description", "engine", "rpm", "battery", "voltage", "distance", "m/s", "km/h", "fecha", "hora", "heure", "datum",
	"uhrzeit", "zeit", "data", "ora")

func set(all ...string) map[string]bool {
	m := map[string]bool{}
	for _, w := range all {
		m[w] = true
	}
	return m
}

// few rows are too few to tell how close they come.
const few = 12

// ofLog tells whether the table is a sheet of a log, which may have times and
// places too: by its headings, by words in its cells that tell of lines or fish,
// and by rows that come as a boat's notes do.
func (t *sample) ofLog() bool {
	loose, clean := false, true
	for c := range t.looks {
		for _, w := range t.looks[c].heading {
			if logWords[w] {
				return true
			}
			loose = loose || looseWords[w]
			clean = clean && (trackWords[w] || slices.Contains(latWords, w) || slices.Contains(lonWords, w))
		}
		if t.told(c) {
			return true
		}
	}
	rows := len(t.rows) - t.first
	if t.close() && rows >= few {
		return false
	}
	if loose {
		return true
	}
	return !clean && (rows < few || t.remarks())
}

// told tells whether a column's cells speak of lines, strikes or fish. One text in all
// rows is a name, and so is one that is numbered.
func (t *sample) told(c int) bool {
	spoken, texts := false, map[string]bool{}
	for _, row := range t.rows[t.first:] {
		text := lettersOf(row[c])
		if len(texts) < mostTexts && !texts[text] {
			texts[text] = true
			spoken = spoken || len(row[c]) > 1 && ofFishing(string(row[c]))
		}
	}
	return spoken && len(texts) > 1
}

// mostTexts of a column are looked at.
const mostTexts = 50

// ofFishing tells whether a cell speaks of lines, strikes or fish. A signal may be
// lost too, and a track started.
func ofFishing(cell string) bool {
	toks := words.Scan(cell)
	letters := false
	for i, tok := range toks {
		letters = letters || tok.Kind == words.Word && len(tok.Text) > 2
		if _, ok := words.LineAt(toks, i, "line"); ok && tok.Kind == words.Word {
			return true
		}
		if kind, _, ok := words.FishAt(toks, i); ok && kind != "" && tok.Kind == words.Word && len(tok.Text) > 3 {
			return true
		}
	}
	if !letters {
		return false
	}
	f, _, _, ok := words.FateOf(cell)
	return ok && f != words.Lost && f != words.FateUnknown
}

// remarks tells whether a column of no role holds words of its own in many rows.
func (t *sample) remarks() bool {
	for c := range t.looks {
		if slices.Contains(t.at[:], c) || t.looks[c].words < 0.1 {
			continue
		}
		seen := map[string]bool{}
		for _, row := range t.rows[t.first:] {
			seen[lettersOf(row[c])] = true
		}
		if len(seen) > 3 {
			return true
		}
	}
	return false
}

// lettersOf is a cell without its digits: the names of numbered points are alike.
func lettersOf(cell []byte) string {
	var b []byte
	for _, c := range cell {
		if c < '0' || c > '9' {
			b = append(b, c)
		}
	}
	return string(b)
}

// close tells whether the rows come as close in time as a track's fixes: half of
// them within ten minutes of the one before.
func (t *sample) close() bool {
	if t.timeless {
		return false
	}
	var gaps []int64
	var before int64
	for _, row := range t.rows[t.first:] {
		order := t.order
		if t.unsure {
			order = unit.DayFirst
		}
		f, column, _ := t.fix(row, order)
		if column != "" {
			continue
		}
		if before != 0 {
			gaps = append(gaps, abs(f.at-before))
		}
		before = f.at
	}
	sort.Slice(gaps, func(i, j int) bool { return gaps[i] < gaps[j] })
	return len(gaps) > 0 && gaps[len(gaps)/2] <= (10*time.Minute).Milliseconds()
}
