package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
)

// band is what happened at one level of speed over ground.
type band struct {
	Level     string  `json:"level"`
	Legs      int     `json:"legs"`
	BoatHours float64 `json:"boat_hours"`
	LineHours float64 `json:"line_hours"`
	Strikes   int     `json:"strikes"`
	// Strikes on legs whose lines are logged: those that belong to LineHours.
	StrikesLined int `json:"strikes_on_logged_lines"`
	boatMin      int
	lineMin      int
}

// totals are those of a log, a season or all, mistakes left out.
type totals struct {
	Trips     int     `json:"trips"`
	Legs      int     `json:"legs"`
	LinedLegs int     `json:"legs_with_lines_logged"`
	BoatHours float64 `json:"boat_hours"`
	LineHours float64 `json:"line_hours"`
	Strikes   int     `json:"strikes"`
	Hookups   int     `json:"hookups"`
	Missed    int     `json:"missed"`
	Lost      int     `json:"lost"`
	Landed    int     `json:"landed"`
	Released  int     `json:"released"`
	NotLogged int     `json:"outcome_not_logged"`
	Fish      int     `json:"fish"` // with a row, or the fish columns of a flat row
	Scaled    int     `json:"fish_with_scale_weight"`
	SetAside  int     `json:"set_aside"`
	Bands     []band  `json:"by_speed_band"`
}

var bandEdges = []int{0, 60, 80, 100, 120, 140, 160} // tenths of a knot

// newTotals adds up these trips.
func newTotals(trips []*trip, aside int) totals {
	sum := totals{Trips: len(trips), SetAside: aside, Bands: make([]band, len(bandEdges)+1)}
	for i := range sum.Bands {
		sum.Bands[i].Level = bandName(i)
	}
	for _, i := range legItems(trips) {
		if !i.bad.costs() {
			sum.addLeg(i)
		}
	}
	sum.close()
	return sum
}

func bandName(i int) string {
	switch {
	case i == len(bandEdges):
		return notLogged
	case i == len(bandEdges)-1:
		return fmt.Sprintf("%d+", bandEdges[i]/10)
	}
	return fmt.Sprintf("%d-%d", bandEdges[i]/10, bandEdges[i+1]/10)
}

func bandOf(l *leg) int {
	if !l.speedLogged || l.bad != nil && l.bad.key == "speed" {
		return len(bandEdges)
	}
	i := len(bandEdges) - 1
	for l.speed < bandEdges[i] {
		i--
	}
	return i
}

func (sum *totals) addLeg(i legItem) {
	b := &sum.Bands[bandOf(i.leg)]
	b.Legs++
	b.boatMin += i.minutes()
	if i.linesLogged {
		sum.LinedLegs++
		b.lineMin += i.minutes() * i.linesOut()
	}
	for _, s := range i.strikes {
		if s.bad.costs() || s.fishOnly && s.fish.bad.costs() || s.line.bad.costs() {
			continue
		}
		b.Strikes++
		if i.linesLogged {
			b.StrikesLined++
		}
		sum.addOutcome(s)
		sum.addFish(i, s)
	}
}

func (sum *totals) addOutcome(s *strike) {
	count := map[string]*int{missed: &sum.Missed, lost: &sum.Lost, landed: &sum.Landed,
		released: &sum.Released, notLogged: &sum.NotLogged}
	*count[s.outcome]++
}

// addFish counts a fish that the log tells of: in the flat log only one that
// was alone on its row.
func (sum *totals) addFish(i legItem, s *strike) {
	if s.fish == nil || s.fish.bad.costs() {
		return
	}
	if i.log == logEarly && newFlatItem(i.trip, i.leg, s.line).only.s == nil {
		return
	}
	sum.Fish++
	if s.fish.scaleKg > 0 {
		sum.Scaled++
	}
}

// close works out what is a sum of the bands.
func (sum *totals) close() {
	boat, lines := 0, 0
	for i := range sum.Bands {
		b := &sum.Bands[i]
		b.BoatHours, b.LineHours = hours(b.boatMin), hours(b.lineMin)
		boat, lines = boat+b.boatMin, lines+b.lineMin
		sum.Legs += b.Legs
		sum.Strikes += b.Strikes
	}
	sum.BoatHours, sum.LineHours = hours(boat), hours(lines)
	sum.Hookups = sum.Lost + sum.Landed + sum.Released
}

func hours(minutes int) float64 { return round(float64(minutes)/60, 6) }

// truth is what truth.json holds.
type truth struct {
	Note    string            `json:"note"`
	Model   map[string]any    `json:"model"`
	All     totals            `json:"all"`
	Seasons map[string]totals `json:"seasons"`
	Logs    map[string]totals `json:"logs"`
	Aside   []setAside        `json:"set_aside"`
}

// newTruth adds up the model; aside are the mistakes of each log.
func newTruth(trips []*trip, aside map[string][]setAside) truth {
	early, late := ofLog(trips, logEarly), ofLog(trips, logLate)
	n25, nEarly, nLate := len(aside[log2025]), len(aside[logEarly]), len(aside[logLate])
	logs := map[string]totals{log2025: newTotals(ofLog(trips, log2025), n25),
		logEarly: newTotals(early, nEarly), logLate: newTotals(late, nLate)}
	t := truth{
		Note: "From the generator's model, without the rows that a mistake costs. " +
			"Strikes are all of them; line-hours are of legs whose lines are logged. " +
			"Fish are those that a log describes: a flat row with several fish has only counts.",
		Model:   modelFacts(),
		All:     newTotals(trips, n25+nEarly+nLate),
		Seasons: map[string]totals{"2025": logs[log2025], "2026": newTotals(append(early, late...), nEarly+nLate)},
		Logs:    logs,
	}
	for _, p := range plans {
		t.Aside = append(t.Aside, aside[p.log]...)
	}
	return t
}

// modelFacts are the effects built in.
func modelFacts() map[string]any {
	ratios := map[string]float64{}
	for _, k := range speedKinds {
		ratios[k.name] = k.factor
	}
	return map[string]any{
		"strike_rate_ratio_to_8-10_kn": ratios, "rate_at_8-10_kn": baseRate,
		"lure_weight_power": weightPower, "colour_effect": 0, "trip_effect_gamma_shape": effectShape,
		"hookup_share": hookShare, "boated_share_of_hookups": boatShare,
		"weight_scatter": sizeScatter, "own_to_common_girth_coefficient": girthBias,
		"curved_to_straight": curvedFactor,
	}
}

func writeTruth(path string, t truth) error {
	data, err := json.MarshalIndent(t, "", "  ")
	if err != nil {
		return fmt.Errorf("laying out the truth: %w", err)
	}
	return os.WriteFile(path, append(data, '\n'), 0o644)
}

// writeFishTruth writes the true length and weight of every fish boated, those of
// flat rows with several too.
func writeFishTruth(dir string, trips []*trip) (err error) {
	f, err := os.Create(filepath.Join(dir, "truth-fish.csv"))
	if err != nil {
		return err
	}
	defer func() {
		if cerr := f.Close(); err == nil {
			err = cerr
		}
	}()
	w := csv.NewWriter(f)
	rows := [][]string{{"log", "trip", "time", "species", "outcome", "straight_length_cm", "round_weight_kg"}}
	for _, i := range fishItems(trips) {
		if i.s.fish.bad.costs() || i.s.line.bad.costs() {
			continue
		}
		rows = append(rows, []string{i.t.log, strconv.Itoa(i.t.id), i.s.at.Format("2006-01-02T15:04"), i.s.species.code,
			i.s.outcome, strconv.FormatFloat(i.s.fish.trueCm, 'f', 1, 64),
			strconv.FormatFloat(i.s.fish.weightKg, 'f', 2, 64)})
	}
	return w.WriteAll(rows)
}
