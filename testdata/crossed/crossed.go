// Package crossed writes invented seasons as captains of one boat keep them, with the ways of keeping crossed: what a
// row stands for, how its hours are told, how its lines, how its bites, how its days and clock times are written. A
// reader that knows each way alone may still fail where two of them meet.
package crossed

import (
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"time"
)

// Ways of keeping a log, a value of each drawn for every log.
var (
	Rows    = []string{"trip", "stretch", "bites", "bites again", "two tables", "line", "line again", "columns", "keys"}
	Efforts = []string{"start and end", "hours", "start and hours", "start, end and hours"}
	Lines   = []string{"number", "places", "places and number", "list", "list and number"}
	Bites   = []string{"of them hooked", "boated", "missed, lost, kept, let go", "missed, lost, boated"}
)

// Log is a log with what it tells. Bands are keyed by their lower edge in knots.
type Log struct {
	Name   string
	Files  map[string]string // text by name of file
	Totals map[string]float64
	Bands  map[float64]*Band
	Fish   []map[string]any // species_words, length_cm and scale_kg, as the truth of a log of the corpus has them
}

// Band is the effort and the bites at a class of speed; Unplaced where the log does not tell at which speed fish bit.
type Band struct {
	LineHours, Strikes float64
	Unplaced           bool
}

type bite struct {
	outcome, species string
	at               float64 // hours of the day
	inches, pounds   int
	line             int // of the stretch's lines, from 0
}

type stretch struct {
	from, hours, knots float64
	lures              []string
	bites              []bite
}

type trip struct {
	day       time.Time
	stretches []stretch
}

var (
	lures = []string{"green plug", "blue plug", "red skirt", "cedar plug", "black diver", "pink feather", "white diver",
		"purple jet"}
	species  = []string{"yellowfin", "wahoo", "mahi", "albacore", "skipjack"}
	outcomes = []string{"missed", "lost", "landed", "landed", "released"}
	spreads  = [][]string{{"Short rigger", "Long rigger", "Shotgun", "Flat port", "Flat stbd"},
		{"Port long", "Port short", "Stbd short", "Stbd long", "Shotgun"}}
	days = []string{"2006-01-02", "1/2/2006", "02-Jan-06", "1/2/06"}
)

// book is a log that is being written.
type book struct {
	*rand.Rand
	rows, effort, lines, bites string
	trips                      []trip
	spread                     []string
	day                        string // layout of its days
	clock                      int    // of its clock times
	once, numbered             bool   // the day is written once for its rows; trips have numbers
	log                        *Log
}

func (b *book) one(of ...string) string { return of[b.IntN(len(of))] }

// Write is the log of a seed.
func Write(seed uint64) *Log {
	r := rand.New(rand.NewPCG(seed, 11))
	b := &book{Rand: r, log: &Log{Files: map[string]string{}, Totals: map[string]float64{}, Bands: map[float64]*Band{}}}
	b.rows, b.effort, b.lines, b.bites = b.one(Rows...), b.one(Efforts...), b.one(Lines...), b.one(Bites...)
	b.spread, b.day, b.clock = spreads[r.IntN(len(spreads))], b.one(days...), r.IntN(3)
	b.once, b.numbered = r.IntN(3) == 0, r.IntN(2) == 0
	b.season()
	b.sum()
	b.log.Name = fmt.Sprintf("%d %s, %s, %s, %s", seed, b.rows, b.effort, b.lines, b.bites)
	switch b.rows {
	case "columns", "keys":
		b.turned()
	case "line", "line again":
		b.aLine()
	default:
		b.table()
	}
	return b.log
}

// alone reports whether a row, or what stands for one, is a whole trip: of two stretches without clock times nobody
// could tell the lines apart.
func (b *book) alone() bool {
	return slices.Contains([]string{"trip", "columns", "keys"}, b.rows) ||
		strings.HasPrefix(b.rows, "line") && b.effort == "hours"
}

func (b *book) season() {
	day := time.Date(2025, time.Month(4+b.IntN(3)), 1+b.IntN(25), 0, 0, 0, 0, time.UTC)
	for range 9 + b.IntN(6) {
		day = day.AddDate(0, 0, 2+b.IntN(8))
		t := trip{day: day}
		at := []float64{5.5, 6, 6.5, 7}[b.IntN(4)]
		for range []int{1, 1, 2, 3}[b.IntN(4)] {
			s := stretch{from: at, hours: []float64{1, 1.5, 2, 2.5, 3}[b.IntN(5)],
				knots: []float64{6, 6.5, 7, 7.5, 8, 8.5, 9, 12}[b.IntN(8)]}
			for _, i := range b.Perm(len(lures))[:3+b.IntN(3)] {
				s.lures = append(s.lures, lures[i])
			}
			for range []int{0, 0, 1, 1, 2, 3}[b.IntN(6)] {
				s.bites = append(s.bites, b.aBite(s))
			}
			slices.SortFunc(s.bites, func(x, y bite) int { return int(60 * (x.at - y.at)) })
			at += s.hours + []float64{0.25, 0.5, 1}[b.IntN(3)]
			if t.stretches = append(t.stretches, s); b.alone() {
				break
			}
		}
		b.trips = append(b.trips, t)
	}
}

func (b *book) aBite(s stretch) bite {
	x := bite{outcome: b.one(outcomes...), at: s.from + float64(1+b.IntN(int(10*s.hours)-1))/10,
		line: b.IntN(len(s.lures))}
	if x.outcome != "missed" {
		x.species = b.one(species...)
	}
	if x.outcome == "landed" && b.IntN(2) == 0 {
		x.inches, x.pounds = 28+b.IntN(20), 12+b.IntN(20)
	}
	return x
}

// sum takes the truth from the season, as far as the log tells it.
func (b *book) sum() {
	l, counted := b.log, b.counted()
	l.Totals["trips"] = float64(len(b.trips))
	for _, t := range b.trips {
		for _, s := range t.stretches {
			edge := 0.0
			for _, e := range []float64{6, 8, 10, 12} {
				if s.knots >= e {
					edge = e
				}
			}
			if l.Bands[edge] == nil {
				l.Bands[edge] = &Band{Unplaced: b.rows == "two tables" && b.effort == "hours"}
			}
			l.Totals["boat_hours"] += s.hours
			l.Totals["line_hours"] += s.hours * float64(len(s.lures))
			l.Bands[edge].LineHours += s.hours * float64(len(s.lures))
			l.Bands[edge].Strikes += float64(len(s.bites))
			l.Totals["strikes"] += float64(len(s.bites))
			for name, n := range s.fates() {
				l.Totals[name] += float64(n)
			}
			for _, x := range s.bites {
				if !counted && x.outcome != "missed" {
					l.Fish = append(l.Fish, x.fish())
				}
			}
		}
	}
	if counted && b.bites == "boated" {
		l.Totals["hooked"], l.Totals["released"] = l.Totals["landed"], 0
	} else if counted && b.bites == "missed, lost, boated" {
		l.Totals["released"] = 0
	}
}

// counted reports whether bites are counted and not told one by one.
func (b *book) counted() bool { return !strings.HasPrefix(b.rows, "bites") && b.rows != "two tables" }

// fates are what became of a stretch's bites; landed has the released too.
func (s stretch) fates() map[string]int {
	n := map[string]int{}
	for _, x := range s.bites {
		n[x.outcome]++
	}
	return map[string]int{"hooked": len(s.bites) - n["missed"], "landed": n["landed"] + n["released"],
		"released": n["released"]}
}

func (x bite) fish() map[string]any {
	f := map[string]any{"species_words": x.species, "length_cm": nil, "girth_cm": nil, "scale_kg": nil,
		"fate": x.outcome, "trolled": true}
	if x.inches > 0 {
		f["length_cm"], f["scale_kg"] = float64(x.inches)*2.54, float64(x.pounds)*0.45359237
	}
	return f
}

func (b *book) time(hours float64) string {
	h, m := int(hours), int(60*(hours-float64(int(hours)))+0.5)
	switch b.clock {
	case 1:
		return fmt.Sprintf("%02d%02d", h, m)
	case 2:
		return time.Date(2025, 1, 1, h, m, 0, 0, time.UTC).Format("3:04 pm")
	}
	return fmt.Sprintf("%02d:%02d", h, m)
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// when are the headings of a stretch's hours and speed, and their cells.
func (b *book) when() (heads []string, cells func(stretch) []string) {
	start, end := b.one("Lines in", "Start", "Time in"), b.one("End", "Stop", "Time out")
	hours := b.one("Hours", "Hrs trolled")
	if b.effort != "hours" {
		heads = append(heads, start)
	}
	if strings.Contains(b.effort, "end") {
		heads = append(heads, end)
	}
	if strings.Contains(b.effort, "hours") {
		heads = append(heads, hours)
	}
	return append(heads, b.one("Speed kn", "Knots", "Kts")), func(s stretch) (out []string) {
		if b.effort != "hours" {
			out = append(out, b.time(s.from))
		}
		if strings.Contains(b.effort, "end") {
			out = append(out, b.time(s.from+s.hours))
		}
		if strings.Contains(b.effort, "hours") {
			out = append(out, number(s.hours))
		}
		return append(out, number(s.knots))
	}
}

// out are the headings of a stretch's lines, and their cells.
func (b *book) out() (heads []string, cells func(stretch) []string) {
	lines := b.lines
	if b.rows == "columns" || b.rows == "keys" {
		lines = "number"
	}
	if strings.Contains(lines, "number") {
		heads = append(heads, b.one("Lines", "Rods", "# lines"))
	}
	if strings.Contains(lines, "list") {
		heads = append(heads, b.one("Lures", "Lures used", "Lures out"))
	}
	if strings.Contains(lines, "places") {
		heads = append(heads, b.spread...)
	}
	return heads, func(s stretch) (out []string) {
		if strings.Contains(lines, "number") {
			out = append(out, strconv.Itoa(len(s.lures)))
		}
		if strings.Contains(lines, "list") {
			out = append(out, strings.Join(s.lures, ", "))
		}
		if strings.Contains(lines, "places") {
			out = append(out, s.lures...)
			for range len(b.spread) - len(s.lures) {
				out = append(out, "")
			}
		}
		return out
	}
}

// counts are the headings of counted bites, and their cells.
func (b *book) counts() (heads []string, cells func([]bite) []string) {
	struck := b.one("Strikes", "Bites")
	heads = map[string][]string{
		"of them hooked":             {struck, "Hooked", b.one("Landed", "Boated"), "Of those released"},
		"boated":                     {struck, b.one("Landed", "Boated")},
		"missed, lost, kept, let go": {"Missed", "Lost", "Kept", b.one("Released", "Let go")},
		"missed, lost, boated":       {struck, "Missed", "Lost", b.one("Landed", "Boated")},
	}[b.bites]
	return heads, func(bites []bite) (out []string) {
		n := map[string]int{}
		for _, x := range bites {
			n[x.outcome]++
		}
		all, boated := len(bites), n["landed"]+n["released"]
		for _, v := range map[string][]int{
			"of them hooked":             {all, all - n["missed"], boated, n["released"]},
			"boated":                     {all, boated},
			"missed, lost, kept, let go": {n["missed"], n["lost"], n["landed"], n["released"]},
			"missed, lost, boated":       {all, n["missed"], n["lost"], boated},
		}[b.bites] {
			out = append(out, strconv.Itoa(v))
		}
		return out
	}
}

// of are the number and the day of a trip, as they stand on a row of it, the first or a later one.
func (b *book) of(i int, first bool) (out []string) {
	show := func(text string) string {
		if b.once && !first {
			return ""
		}
		return text
	}
	if b.numbered {
		out = append(out, show(strconv.Itoa(i+1)))
	}
	return append(out, show(b.trips[i].day.Format(b.day)))
}

func (b *book) ofHeads() []string {
	if b.numbered {
		return []string{"Trip", "Date"}
	}
	return []string{"Date"}
}

// told is a bite with its time, as a row of bites has it.
func (b *book) told(x bite) []string {
	out := []string{b.time(x.at), x.species, x.outcome, "", ""}
	if x.inches > 0 {
		out[3], out[4] = strconv.Itoa(x.inches), strconv.Itoa(x.pounds)
	}
	return out
}

var toldHeads = []string{"Bite time", "Species", "Result", "Length in", "Scale lb"}

// table writes a row a trip, a stretch or a bite, or stretches and bites in two files.
func (b *book) table() {
	when, whenOf := b.when()
	out, outOf := b.out()
	counts, countsOf := b.counts()
	heads := slices.Concat(b.ofHeads(), when, out)
	switch {
	case b.counted():
		heads = append(heads, counts...)
	case b.rows != "two tables":
		heads = append(heads, toldHeads...)
	}
	rows := [][]string{heads}
	bites := [][]string{slices.Concat(b.ofHeads(), toldHeads)}
	for i, t := range b.trips {
		for k, s := range t.stretches {
			row := slices.Concat(b.of(i, k == 0), whenOf(s), outOf(s))
			switch {
			case b.counted():
				rows = append(rows, slices.Concat(row, countsOf(s.bites)))
			case b.rows == "two tables":
				rows = append(rows, row)
				for _, x := range s.bites {
					bites = append(bites, slices.Concat(b.of(i, true), b.told(x)))
				}
			case len(s.bites) == 0:
				rows = append(rows, slices.Concat(row, make([]string, len(toldHeads))))
			default:
				for n, x := range s.bites {
					if n > 0 && b.rows == "bites" {
						row = make([]string, len(row))
					}
					rows = append(rows, slices.Concat(row, b.told(x)))
				}
			}
		}
	}
	b.file("log.csv", rows)
	if b.rows == "two tables" {
		b.file("bites.csv", bites)
	}
}

// aLine writes a row for each line of a stretch, whose hours stand on the first or on each of them.
func (b *book) aLine() {
	when, whenOf := b.when()
	counts, countsOf := b.counts()
	rows := [][]string{slices.Concat(b.ofHeads(), when, []string{b.one("Line", "Position", "Spot"), "Lure"}, counts)}
	for i, t := range b.trips {
		for _, s := range t.stretches {
			for n, lure := range s.lures {
				var bites []bite
				for _, x := range s.bites {
					if x.line == n {
						bites = append(bites, x)
					}
				}
				row := slices.Concat(b.of(i, true), whenOf(s))
				if n > 0 && b.rows == "line" {
					row = make([]string, len(row))
				}
				rows = append(rows, slices.Concat(row, []string{b.spread[n], lure}, countsOf(bites)))
			}
		}
	}
	b.file("log.csv", rows)
}

// turned writes a column, or a paragraph of keys and values, for each trip.
func (b *book) turned() {
	when, whenOf := b.when()
	out, outOf := b.out()
	counts, countsOf := b.counts()
	all := [][]string{slices.Concat([]string{"Date"}, when, out, counts)}
	for _, t := range b.trips {
		s := t.stretches[0]
		all = append(all, slices.Concat([]string{t.day.Format(b.day)}, whenOf(s), outOf(s), countsOf(s.bites)))
	}
	if b.rows == "keys" {
		var text strings.Builder
		for _, values := range all[1:] {
			for k, v := range values {
				fmt.Fprintf(&text, "%s: %s\n", all[0][k], v)
			}
			text.WriteString("\n")
		}
		b.log.Files["log.txt"] = text.String()
		return
	}
	rows := make([][]string, len(all[0]))
	for _, column := range all {
		for k, v := range column {
			rows[k] = append(rows[k], v)
		}
	}
	b.file("log.csv", rows)
}

func (b *book) file(name string, rows [][]string) {
	var text strings.Builder
	w := csv.NewWriter(&text)
	w.WriteAll(rows) // into a builder: it can't fail
	b.log.Files[name] = text.String()
}
