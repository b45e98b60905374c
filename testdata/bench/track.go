package bench

import (
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"time"
)

const (
	hours   = 9 // of a trip
	legMins = 90
)

// Track writes a GPX track with a fix each second of so many trips of nine hours,
// and a log of their legs, whose speeds and courses the track runs with an error of
// 3 m. It returns the number of fixes.
func Track(gpx, legs string, trips int) (fixes int, err error) {
	var plan []leg
	for d := range trips {
		plan = append(plan, outing(d)...)
	}
	err = written(legs, func(w io.Writer) error {
		fmt.Fprintln(w, "Trip,Date,Time zone,Start,End,Speed (kn),Lines out,Strikes")
		for _, l := range plan {
			fmt.Fprintf(w, "%d,%s,UTC,%s,%s,%.1f,4,%d\n", l.day, l.date().Format("2006-01-02"), clock(l.start),
				clock(l.start+legMins-5), l.knots, l.day%3)
		}
		return nil
	})
	if err != nil {
		return 0, err
	}
	rng := rand.New(rand.NewPCG(3, 4))
	err = written(gpx, func(w io.Writer) error {
		fmt.Fprintln(w,
			`<?xml version="1.0"?><gpx version="1.1" creator="bench" xmlns="http://www.topografix.com/GPX/1/1">`)
		lat, lon, day := 31.0, -150.0, -1
		for _, l := range plan {
			if l.day != day {
				if day >= 0 {
					fmt.Fprintln(w, "</trkseg></trk>")
				}
				fmt.Fprintln(w, "<trk><trkseg>")
				day = l.day
			}
			at := l.date().Add(time.Duration(l.start) * time.Minute)
			for s := range legMins * 60 {
				step := l.knots / 3600 / 60 // degrees of arc
				lat += step * math.Cos(l.course)
				lon += step * math.Sin(l.course) / math.Cos(lat*math.Pi/180)
				const metre = 1 / 111111.0
				_, err := fmt.Fprintf(w, "<trkpt lat=\"%.7f\" lon=\"%.7f\"><ele>1.2</ele><time>%s</time></trkpt>\n",
					lat+3*metre*rng.NormFloat64(), lon+3*metre*rng.NormFloat64(),
					at.Add(time.Duration(s)*time.Second).Format(time.RFC3339))
				if err != nil {
					return err
				}
				fixes++
			}
		}
		_, err := fmt.Fprintln(w, "</trkseg></trk></gpx>")
		return err
	})
	return fixes, err
}

// leg is an hour and a half at one speed on one course.
type leg struct {
	day, start int // start in minutes since midnight
	knots      float64
	course     float64 // radians
}

func (l leg) date() time.Time {
	return time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, l.day)
}

// outing is the legs of a day, out and back by turns.
func outing(day int) []leg {
	rng := rand.New(rand.NewPCG(5, uint64(day)))
	var legs []leg
	for start := 6 * 60; start < (6+hours)*60; start += legMins {
		legs = append(legs, leg{day, start, math.Round(10*(7+8*rng.Float64())) / 10,
			0.7 + math.Pi*float64(len(legs)%2)})
	}
	return legs
}
