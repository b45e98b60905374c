package evidence

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"wakeledger/queries/stats"
)

// Row is effort on one trip with all that varied together, and its strikes.
// Levels are in the order of Season.Factors.
type Row struct {
	Trip      int64
	Levels    []string
	LineHours float64
	Strikes   int64
}

// Season is effort and strikes by several factors at once.
type Season struct {
	Factors []string
	Rows    []Row
}

// The rule by which factors enter the regression.
const (
	minLogged      = 0.8 // share of line-hours and of strikes for which the factor is logged
	strikesAColumn = 10  // Peduzzi and others 1996, Journal of Clinical Epidemiology 49:1373-1379
	tripsAColumn   = 3   // so that trips, as clusters, well outnumber what is estimated; a choice
	// With fewer trips at a level, errors robust to clusters come out far too small
	// (Cameron and Miller 2015, Journal of Human Resources 50:317-372).
	minLevelTrips   = stats.MinTrips
	otherLevel      = "other levels"
	adjustedRuleFor = "A factor enters where four fifths of line-hours and strikes have it logged and two levels have enough effort, in the order of the list, " +
		"as long as there are ten strikes and three trips to each level to be estimated. Levels with little effort, or fished on fewer than eight trips, are taken together."
)

// AdjustRule is the rule by which factors enter, in words.
func AdjustRule() string { return adjustedRuleFor }

// AdjustedLevel is one level's rate with the other factors held as they were.
type AdjustedLevel struct {
	Factor, Level string
	Count         stats.Count
	Rate          float64 // standardised; NaN where it cannot be told
	Interval      stats.Interval
	Ratio         stats.RateRatio // to the factor's reference level
	Told          bool            // Ratio and its interval are known
	Reference     bool
	Why           string // the level has no adjusted rate
}

// LeftOut is a factor that did not enter, and why.
type LeftOut struct{ Factor, Why string }

// Adjusted is the outcome of the regression.
type Adjusted struct {
	Entered []string
	Left    []LeftOut
	Levels  []AdjustedLevel
	Notes   []string // separation, collinearity, warnings, as plain sentences
	Strikes int64    // that entered
	Trips   int
	Phi     float64
}

// Adjust fits strikes to several factors at once: Poisson regression with the
// logarithm of line-hours as offset (Maunder and Punt 2004, Fisheries Research
// 70:141-159), standard errors robust to clusters by trip. Which factors enter
// is settled before the fit by effort and strikes alone; see AdjustRule. text words
// a level of a factor.
func Adjust(s Season, text func(factor, level string) string) (Adjusted, error) {
	a := Adjusted{Phi: math.NaN()}
	s = s.withEffort(&a)
	chosen := s.choose(&a)
	if len(chosen) == 0 {
		return a, nil
	}
	data, columns := s.design(chosen)
	fit, err := stats.PoissonRegression(data)
	if err != nil {
		return a, fmt.Errorf("adjusted rates: %w", err)
	}
	a.Phi = fit.Phi
	for _, f := range columns {
		a.Levels = append(a.Levels, f.rates(fit)...)
	}
	a.Notes = append(a.Notes, fitNotes(fit, text)...)
	return a, nil
}

// withEffort adds up the rows that agree in trip and levels and leaves out those
// without hours, whose strikes are counted in a note.
func (s Season) withEffort(a *Adjusted) Season {
	out := Season{Factors: s.Factors}
	at := map[string]int{}
	for _, r := range s.Rows {
		key := fmt.Sprint(r.Trip, "|", strings.Join(r.Levels, "|"))
		i, ok := at[key]
		if !ok {
			i = len(out.Rows)
			at[key] = i
			out.Rows = append(out.Rows, Row{Trip: r.Trip, Levels: r.Levels})
		}
		out.Rows[i].LineHours += r.LineHours
		out.Rows[i].Strikes += r.Strikes
	}
	lost, trips := int64(0), map[int64]bool{}
	out.Rows = slices.DeleteFunc(out.Rows, func(r Row) bool {
		if r.LineHours > 0 {
			a.Strikes += r.Strikes
			trips[r.Trip] = true
			return false
		}
		lost += r.Strikes
		return true
	})
	a.Trips = len(trips)
	if lost > 0 {
		a.Notes = append(a.Notes, fmt.Sprintf("%s could not be put with the hours they belong to, for want of a line or a time in the log, and did not enter.", plural(lost, "strike")))
	}
	return out
}

// entering is a factor that enters, its thin levels taken together.
type entering struct {
	factor    string
	at        int
	levels    []string // of the fit, most effort first, so the first with strikes is the reference
	counts    map[string]stats.Count
	thin      map[string]bool
	trips     map[string]map[int64]bool
	reference string
}

func (e entering) level(r Row) string {
	if l := r.Levels[e.at]; !e.thin[l] {
		return l
	}
	return otherLevel
}

// choose applies the rule.
func (s Season) choose(a *Adjusted) []entering {
	var total stats.Count
	for _, r := range s.Rows {
		total.Events += r.Strikes
		total.Effort += r.LineHours
	}
	budget := min(int(total.Events)/strikesAColumn, a.Trips/tripsAColumn)
	var out []entering
	for i, name := range s.Factors {
		e := s.entering(i, Enough(total))
		cost := len(e.levels) - 1
		missing := e.counts[NotLogged]
		why := ""
		switch {
		case missing.Effort > (1-minLogged)*total.Effort || float64(missing.Events) > (1-minLogged)*float64(total.Events):
			why = "not logged for more than a fifth of the hours or strikes"
		case e.known() < 2:
			why = "fewer than two levels with enough effort"
		case e.reference == "":
			why = "no strikes"
		case cost > budget:
			why = fmt.Sprintf("it needs %d levels estimated, and the strikes and trips left bear %d", cost, max(0, budget))
		}
		if why != "" {
			a.Left = append(a.Left, LeftOut{name, why})
			continue
		}
		budget -= cost
		a.Entered = append(a.Entered, name)
		out = append(out, e)
	}
	return out
}

// known is the number of levels of a name with enough effort.
func (e entering) known() int {
	n := 0
	for _, l := range e.levels {
		if l != NotLogged && l != otherLevel {
			n++
		}
	}
	return n
}

func mark(trips map[string]map[int64]bool, level string, trip int64) {
	if trips[level] == nil {
		trips[level] = map[int64]bool{}
	}
	trips[level][trip] = true
}

func (s Season) entering(at int, enough float64) entering {
	e := entering{factor: s.Factors[at], at: at, counts: map[string]stats.Count{}, thin: map[string]bool{}, trips: map[string]map[int64]bool{}}
	raw, trips := map[string]float64{}, map[string]map[int64]bool{}
	for _, r := range s.Rows {
		raw[r.Levels[at]] += r.LineHours
		mark(trips, r.Levels[at], r.Trip)
	}
	for l, h := range raw {
		e.thin[l] = l != NotLogged && (h < enough || len(trips[l]) < minLevelTrips)
	}
	for _, r := range s.Rows {
		l := e.level(r)
		c := e.counts[l]
		c.Events += r.Strikes
		c.Effort += r.LineHours
		e.counts[l] = c
		mark(e.trips, l, r.Trip)
	}
	for l := range e.counts {
		e.levels = append(e.levels, l)
	}
	sort.Slice(e.levels, func(i, j int) bool {
		a, b := e.counts[e.levels[i]], e.counts[e.levels[j]]
		if a.Effort != b.Effort {
			return a.Effort > b.Effort
		}
		return e.levels[i] < e.levels[j]
	})
	for _, l := range e.levels {
		if e.counts[l].Events > 0 && l != NotLogged && l != otherLevel {
			e.reference = l
			break
		}
	}
	return e
}

// design is the regression's data and the factors in it.
func (s Season) design(chosen []entering) (stats.RegressionData, []entering) {
	var d stats.RegressionData
	for _, r := range s.Rows {
		d.Events = append(d.Events, r.Strikes)
		d.Effort = append(d.Effort, r.LineHours)
		d.Clusters = append(d.Clusters, fmt.Sprint(r.Trip))
	}
	for _, e := range chosen {
		levels := make([]string, len(s.Rows))
		for i, r := range s.Rows {
			levels[i] = e.level(r)
		}
		d.Columns = append(d.Columns, stats.Treatment(e.factor, levels, e.reference)...)
	}
	return d, chosen
}

// rates are the factor's adjusted rates and ratios.
func (e entering) rates(fit *stats.PoissonFit) []AdjustedLevel {
	var out []AdjustedLevel
	for _, l := range e.levels {
		a := AdjustedLevel{Factor: e.factor, Level: l, Count: e.counts[l], Reference: l == e.reference}
		set := map[string]float64{}
		for _, other := range e.levels {
			if other != e.reference {
				set[e.factor+"="+other] = 0
			}
		}
		if !a.Reference {
			set[e.factor+"="+l] = 1
			a.Ratio, a.Told = fit.RateRatio(e.factor+"="+l, stats.RobustSE, Confidence)
		}
		var ok bool
		a.Rate, a.Interval, ok = fit.StandardisedRate(set, stats.RobustSE, Confidence)
		switch {
		case len(e.trips[l]) < minLevelTrips:
			a.Told, a.Interval, a.Why = false, stats.Interval{Lo: math.NaN(), Hi: math.NaN()}, "fished on fewer than eight trips: no interval can be trusted"
		case ok:
		case a.Count.Events == 0:
			a.Why = "no strike at this level: its rate cannot be adjusted"
		default:
			a.Why = "it cannot be told from the other factors"
		}
		out = append(out, a)
	}
	return out
}

// fitNotes are what to beware of in the fit, as sentences.
func fitNotes(fit *stats.PoissonFit, text func(factor, level string) string) []string {
	word := func(column string) string {
		factor, level, _ := strings.Cut(column, "=")
		return phrase(factor, text(factor, level))
	}
	var out []string
	for _, c := range fit.Coefficients {
		switch c.Status {
		case stats.Aliased:
			var with []string
			for _, w := range c.With {
				if w != stats.Intercept {
					with = append(with, word(w))
				}
			}
			out = append(out, fmt.Sprintf("The hours at %s are just those at %s: the log cannot tell them apart.", word(c.Name), list(with)))
		case stats.RunsOff:
			out = append(out, fmt.Sprintf("There is no strike to estimate %s by, so that it has no adjusted rate.", word(c.Name)))
		}
	}
	for _, w := range fit.Warnings {
		switch w {
		case stats.WarnNotConverged, stats.WarnFewClusters, stats.WarnOneCluster, stats.WarnSaturated:
			out = append(out, capital(string(w))+".")
		}
	}
	return out
}

// list joins words as a sentence does.
func list(words []string) string {
	if len(words) == 0 {
		return "all the others together"
	}
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
