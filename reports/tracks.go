package reports

import (
	"fmt"
	"math"
	"strings"

	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// Tracks is what the boat's tracks tell beside its logs; empty where there are
// none. It holds no position.
type Tracks struct {
	Speeds   []queries.TrackSpeed
	Currents []queries.Current
	Files    []queries.Track
	Turning  []queries.StrikeRate // by turning
}

// tracksSection says for how many hours the speed is measured and for how many
// remembered, and how far the two are apart.
func (s *season) tracksSection() (page.Section, error) {
	section := page.Section{ID: "tracks", Heading: "Speed: measured or remembered"}
	var measured, remembered, unknown, distance float64
	trips := int64(0)
	for _, t := range s.Tracks.Speeds {
		measured, remembered, unknown = measured+t.MeasuredHours, remembered+t.RememberedHours, unknown+t.UnknownHours
		if t.LegsWithTrack > 0 {
			trips++
		}
		if t.DistanceNmi != nil {
			distance += *t.DistanceNmi
		}
	}
	first := fmt.Sprintf("For %s of %s boat-hours the speed is measured by a track (%s of %s)", hours(measured),
		hours(measured+remembered+unknown),
		page.Count(trips), page.Plural(int64(len(s.Tracks.Speeds)), "trip", "trips"))
	if remembered > 0 {
		first += fmt.Sprintf("; for %s it is as somebody logged it", hours(remembered))
	}
	if unknown > 0 {
		first += fmt.Sprintf("; for %s it is not known", hours(unknown))
	}
	section.Sentences = append([]string{first + "."}, s.trackSentences(distance)...)
	section.Table = s.trackTable()
	section.Notes = s.currentNotes()
	if len(s.Tracks.Currents) > 0 {
		section.Notes = append(section.Notes, currentMethod)
	}
	section.Notes = append(section.Notes, trackNotes...)
	said := 0
	for _, f := range s.Tracks.Files {
		if f.Note == "" {
			continue
		}
		if said++; said <= mostFiles {
			section.Notes = append(section.Notes, fmt.Sprintf("Track of %s: %s.", s.Logs.name(f.File),
				strings.TrimSuffix(f.Note, "?")))
		}
	}
	if said > mostFiles {
		section.Notes = append(section.Notes, fmt.Sprintf("And %s more of which something is to be said.",
			page.Plural(int64(said-mostFiles), "track", "tracks")))
	}
	return section, nil
}

// mostFiles are named in the notes; of a folder of old exports there may be hundreds.
const mostFiles = 10

var trackNotes = []string{
	"A leg with a track has its hours at the speeds that it ran; what the track does not cover stays at the speed " +
		"logged. A strike is put at the median speed of the minute before it.",
	"Speed of a track: the receiver's own where it agrees with its positions, else the median of the ways made good " +
		"over 20 s about each ten seconds, along the arc in a turn. Medians of slopes: Theil 1950, Sen 1968. " +
		"Distances on WGS84: Vincenty 1975.",
	"Speed over ground is not speed through the water, which is what a lure feels. With a current of a knot or two " +
		"along the course the same throttle falls into the next band, so bands are compared safest between legs run " +
		"both ways, or where there is no current to speak of.",
	"Turning: a change of course of 45 degrees a minute or more.",
}

// trackSentences say how far logged and measured speeds are apart, and where the
// strikes came: in turns or on a straight course.
func (s *season) trackSentences(distance float64) []string {
	var out []string
	var worst *queries.TrackSpeed
	n, sum := 0, 0.0
	for i, t := range s.Tracks.Speeds {
		if t.DifferenceKn == nil {
			continue
		}
		n++
		sum += *t.DifferenceKn
		if worst == nil || math.Abs(*t.DifferenceKn) > math.Abs(*worst.DifferenceKn) {
			worst = &s.Tracks.Speeds[i]
		}
	}
	if worst != nil {
		out = append(out, fmt.Sprintf("On the trips with both, the boat ran %s kn %s than logged on average; the "+
			"most on %s: logged %s, ran %s.",
			page.Number(math.Abs(sum)/float64(n), 1), faster(sum), trackTrip(*worst), page.Number(*worst.LoggedKn, 1),
			page.Number(*worst.RanKn, 1)))
	}
	if stopped := s.stoppedHours(); stopped >= 0.1 {
		out = append(out, fmt.Sprintf("Stopped or drifting inside legs, below 1 kn: %s. They count as effort at the "+
			"slowest speeds.", hours(stopped)))
	}
	if distance > 0 {
		out = append(out, fmt.Sprintf("Trolled over ground in the measured hours: %s nmi.", page.Number(distance, 0)))
	}
	for _, r := range s.Tracks.Turning {
		if r.Rate != nil && (r.Level == "turning" || r.Level == "straight") {
			out = append(out, fmt.Sprintf("%s: %s in %s line-hours, %s per line-hour (%s to %s).",
				sentence.Capital(r.Level),
				page.Plural(r.Strikes-r.WithoutHours, "strike", "strikes"), hours(r.LineHours), page.Number(*r.Rate, 2),
				page.Number(*r.RateLo, 2), page.Number(*r.RateHi, 2)))
		}
	}
	return out
}

func (s *season) stoppedHours() float64 {
	all := 0.0
	for _, t := range s.Tracks.Speeds {
		all += t.StoppedHours
	}
	return all
}

func faster(kn float64) string {
	if kn < 0 {
		return "slower"
	}
	return "faster"
}

func trackTrip(t queries.TrackSpeed) string {
	if t.Date != nil {
		return day(*t.Date, "2 January")
	}
	return t.Trip
}

func (s *season) trackTable() *page.Table {
	t := &page.Table{Caption: "speed as logged and as run, of the trips with a track", Columns: []page.Column{
		{Head: "Date", Kind: page.Token}, {Head: "Trip", Kind: page.Token},
		{Head: "Measured", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "As logged", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "Logged", Unit: "kn", Kind: page.Measure, Decimals: 1},
		{Head: "Ran", Unit: "kn", Kind: page.Measure, Decimals: 1},
		{Head: "Difference", Unit: "kn", Kind: page.Measure, Decimals: 1},
		{Head: "Run", Unit: "nmi", Kind: page.Measure, Decimals: 1},
		{Head: "Change of course", Unit: "degrees a minute", Kind: page.Measure},
	}}
	for _, r := range s.Tracks.Speeds {
		if r.LegsWithTrack == 0 {
			continue
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{
			page.Words(text(r.Date)), page.Words(r.Trip), page.Value(r.MeasuredHours), page.Value(r.RememberedHours),
			page.ValueOf(r.LoggedKn), page.ValueOf(r.RanKn), page.ValueOf(r.DifferenceKn),
			page.ValueOf(r.DistanceNmi), page.ValueOf(r.TurnDegMin),
		}})
	}
	return t
}

// currentNotes say what running both ways over the same ground tells.
func (s *season) currentNotes() []string {
	var out []string
	for _, c := range strongest(s.Tracks.Currents) {
		when := c.Trip
		if c.Date != nil {
			when = day(*c.Date, "2 January")
		}
		out = append(out, fmt.Sprintf("%s: %s kn towards %s and %s kn towards %s over the same ground (%s): a "+
			"current of about %s kn setting %s, if the throttle was the same both ways%s.",
			when, page.Number(c.OutKn, 1), compass(c.CourseDeg), page.Number(c.BackKn, 1),
			compass(c.CourseDeg+180), runsOf(c),
			page.Number(c.CurrentKn, currentDecimals(c)), compass(c.SetDeg), sureness(c)))
	}
	return out
}

// runsOf says how often a current's ground was run over.
func runsOf(c queries.Current) string {
	if c.OutRuns == 1 && c.BackRuns == 1 {
		return "once each way"
	}
	return fmt.Sprintf("%s out, %s back", page.Plural(c.OutRuns, "run", "runs"), page.Count(c.BackRuns))
}

// sureness is a current's interval in words.
func sureness(c queries.Current) string {
	switch {
	case c.CurrentLo == nil:
		return "; how sure that is cannot be told, because no trip ran there a second time"
	case *c.CurrentLo < 0:
		return fmt.Sprintf("; not told apart from none (95 %%: %s kn to the %s to %s kn to the %s)",
			page.Number(-*c.CurrentLo, 1), compass(c.SetDeg+180), page.Number(*c.CurrentHi, 1), compass(c.SetDeg))
	}
	d := currentDecimals(c)
	return fmt.Sprintf(" (95 %%: %s to %s kn)", page.Number(*c.CurrentLo, d), page.Number(*c.CurrentHi, d))
}

// currentDecimals are so many that the ends of a current's interval differ.
func currentDecimals(c queries.Current) int {
	if c.CurrentLo != nil && *c.CurrentHi-*c.CurrentLo < 0.2 {
		return 2
	}
	return 1
}

const currentMethod = "Current: the slope of the speeds of straight runs over the same ground (within a nautical " +
	"mile) on their direction, out or back, which is half the difference of the two ways; by least squares, an " +
	"intercept and a slope for each trip and line. Interval: Student's t at 95 % on what the runs of all the boat's " +
	"lines leave over. A throttle that differs from run to run is in it; one that is always higher the same way is not."

// worthSaying is the current, in knots, from which one is named.
const worthSaying = 0.3

// strongest is the strongest current of each trip, where it is worth saying.
func strongest(all []queries.Current) []queries.Current {
	var out []queries.Current
	for _, c := range all {
		n := len(out)
		switch {
		case c.CurrentKn < worthSaying:
		case n > 0 && out[n-1].Trip == c.Trip && out[n-1].Boat == c.Boat:
			if c.CurrentKn > out[n-1].CurrentKn {
				out[n-1] = c
			}
		default:
			out = append(out, c)
		}
	}
	return out
}

// compass is a course in words, to an eighth.
func compass(degrees int64) string {
	return []string{"north", "north-east", "east", "south-east", "south", "south-west", "west",
		"north-west"}[(degrees+22)/45%8]
}
