package track

import (
	"math"
	"time"

	"wakeledger/pipeline/record"
)

// Fix is one position of a track.
type Fix struct {
	At       int64   // milliseconds since 1970, UTC
	Lat, Lon float64 // degrees, WGS84
	// SpeedKn is over ground as the receiver gave it; NaN where it gave none.
	SpeedKn float64
	// Break tells that reception was lost or the unit was off before this fix:
	// nothing is known of the way to it.
	Break bool
}

// Time is the fix's instant.
func (f Fix) Time() time.Time { return time.UnixMilli(f.At).UTC() }

// Reader gives a track's fixes as they stand in the file.
type Reader interface {
	// Next is the next fix; ok is false after the last. A fix that cannot be
	// used is not given but told to the problems' keeper.
	Next() (f Fix, ok bool, err error)
	// Notes are what the user should be told of how the track was read, once it is.
	Notes() []string
}

// Keeper is told each fix or sentence that could not be used.
type Keeper func(record.Problem) error

const endsEarly = "the file ends in the middle: what stands before is read"

// place tells whether a position can be.
func place(lat, lon float64) bool {
	return math.Abs(lat) <= 90 && math.Abs(lon) <= 180 && (lat != 0 || lon != 0)
}

const mostShown = 120 // bytes of a bad cell

// shorten keeps the beginning of what is shown of a bad row.
func shorten(s string) string {
	if len(s) > mostShown {
		return s[:mostShown]
	}
	return s
}
