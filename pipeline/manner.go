package pipeline

import (
	"encoding/json"
	"fmt"
	"slices"
	"time"

	"wakeledger/pipeline/track"
	"wakeledger/pipeline/unit"
)

// manner is how a log is read: what its owner said of it. It is kept with the log, so that
// what was said once need not be said again. What is empty was not said.
type manner struct {
	Boat       string        `json:"boat,omitempty"`
	Zone       string        `json:"zone,omitempty"`
	Units      string        `json:"units,omitempty"`
	Dates      string        `json:"dates,omitempty"`   // day-first or month-first
	Decimal    string        `json:"decimal,omitempty"` // comma or point
	Ocean      string        `json:"ocean,omitempty"`
	TrackClock *int64        `json:"track_clock_s,omitempty"`
	TrackGap   float64       `json:"track_gap_s,omitempty"`
	Sheets     []MappedSheet `json:"sheets,omitempty"`        // of a mapping
	Beside     []string      `json:"beside,omitempty"`        // files of its folder that are tables of the same book
	BesideSums []string      `json:"beside_sha256,omitempty"` // the hashes of their bytes, in order
}

var (
	orderNames = map[unit.Order]string{unit.DayFirst: "day-first", unit.MonthFirst: "month-first"}
	markNames  = map[unit.Mark]string{unit.MarkComma: "comma", unit.MarkPoint: "point"}
)

// manner is what the configuration says of a log. A track has no
// units, a log no clock.
func (c *Config) manner(log string, ofTrack bool) manner {
	m := manner{Boat: c.Boat, Zone: c.Zone, Dates: orderNames[c.Order]}
	if ofTrack {
		if c.TrackClock != 0 || c.TrackClockSaid {
			s := int64(c.TrackClock / time.Second)
			m.TrackClock = &s
		}
		m.TrackGap = c.TrackGap.Seconds()
		return m
	}
	m.Units, m.Decimal, m.Ocean, m.Sheets = c.Units, markNames[c.Mark], c.Ocean, c.Mapping.of(log)
	return m
}

// or has what an earlier manner says where m says nothing.
func (m manner) or(earlier manner) manner {
	for _, f := range []struct{ to, from *string }{{&m.Boat, &earlier.Boat},
		{&m.Zone, &earlier.Zone}, {&m.Units, &earlier.Units},
		{&m.Dates, &earlier.Dates}, {&m.Decimal, &earlier.Decimal}, {&m.Ocean, &earlier.Ocean}} {
		if *f.to == "" {
			*f.to = *f.from
		}
	}
	if m.TrackClock == nil {
		m.TrackClock = earlier.TrackClock
	}
	if m.TrackGap == 0 {
		m.TrackGap = earlier.TrackGap
	}
	if len(m.Sheets) == 0 {
		m.Sheets = earlier.Sheets
	}
	if len(m.Beside) == 0 {
		m.Beside, m.BesideSums = earlier.Beside, earlier.BesideSums
	}
	return m
}

// full has the gap that holds where none was said, for comparing; what files are called that are
// read beside it is nothing to it.
func (m manner) full() manner {
	m.Beside = nil
	if m.TrackGap == 0 {
		m.TrackGap = track.DefaultGap.Seconds()
	}
	return m
}

// under is the configuration for a log of some name, with a manner of reading in place of
// its own.
func (c Config) under(m manner, log string) Config {
	c.Boat, c.Zone, c.Units, c.Ocean, c.Order, c.Mark = m.Boat, m.Zone, m.Units, m.Ocean,
		unit.OrderUnknown, unit.MarkUnknown
	for order, name := range orderNames {
		if name == m.Dates {
			c.Order = order
		}
	}
	for mark, name := range markNames {
		if name == m.Decimal {
			c.Mark = mark
		}
	}
	c.beside = m.Beside
	c.TrackClock = 0
	if m.TrackClock != nil {
		c.TrackClock = time.Duration(*m.TrackClock) * time.Second
	}
	c.TrackGap = time.Duration(m.TrackGap * float64(time.Second))
	c.Mapping = Mapping{Sheets: slices.Clone(m.Sheets)}
	for i := range c.Mapping.Sheets {
		c.Mapping.Sheets[i].Log = log // which may have another name by now
	}
	return c
}

// String is how the season file keeps it.
func (m manner) String() string {
	b, err := json.Marshal(m)
	if err != nil { // of strings and numbers: there is none
		return ""
	}
	return string(b)
}

// parseManner reads what String wrote; "" is a manner that says nothing.
func parseManner(text string) (manner, error) {
	var m manner
	if text == "" {
		return m, nil
	}
	if err := json.Unmarshal([]byte(text), &m); err != nil {
		return m, fmt.Errorf("the season file's settings of a log: %w", err)
	}
	return m, nil
}

func (c *Config) trackGap() time.Duration {
	if c.TrackGap == 0 {
		return track.DefaultGap
	}
	return c.TrackGap
}
