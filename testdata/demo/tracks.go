package main

import (
	"archive/zip"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"time"
)

// fileTracks holds the tracks of every second trip of the late log of 2026: a
// fix each ten seconds, 3 m off, one GPX a trip.
const fileTracks = "2026-late-tracks.zip"

const (
	fixSeconds = 10
	wayMinutes = 24 // one way along a leg; then the boat turns back
	circling   = 80 // degrees a minute, about a school
	zoneHours  = 9  // the invented coast's clock is behind UTC
	// each trip's skipper reads the speed too low by up to
	misread = 1.1
	// a current along the ground sets north by up to
	setNorth = .9
)

// writeTracks writes the tracks. They have dice of their own, so that the logs
// do not change with them.
func writeTracks(dir string, trips []*trip) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	f, err := os.Create(filepath.Join(dir, fileTracks))
	if err != nil {
		return err
	}
	z := zip.NewWriter(f)
	d := newDice(seed + 6)
	for i, t := range ofLog(trips, logLate) {
		if i%2 == 1 {
			continue
		}
		w, err := z.Create(fmt.Sprintf("trip-%d.gpx", t.id))
		if err != nil {
			return err
		}
		s := &sailing{d: d, w: w, at: t.depart, lat: t.legs[0].lat + .2, lon: t.legs[0].lon,
			fast: misread * d.Float64(), set: setNorth * d.Float64()}
		if err := s.trip(t); err != nil {
			return err
		}
	}
	if err := z.Close(); err != nil {
		return err
	}
	return f.Close()
}

// sailing is the boat under way; the first error of writing stays.
type sailing struct {
	d        dice
	w        io.Writer
	err      error
	at       time.Time
	lat, lon float64
	fast     float64 // kn more than the skipper reads
	set      float64 // kn of current to the north
	fixes    int
}

func (s *sailing) print(format string, a ...any) {
	if s.err == nil {
		_, s.err = fmt.Fprintf(s.w, format, a...)
	}
}

// trip runs to each leg, along it and home.
func (s *sailing) trip(t *trip) error {
	s.print("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\" creator=\"demo\" " +
		"xmlns=\"http://www.topografix.com/GPX/1/1\">\n<trk><trkseg>\n")
	for _, l := range t.legs {
		s.to(l.start, l.lat, l.lon)
		s.leg(l)
	}
	s.to(t.back, s.lat+.15, s.lon)
	s.print("</trkseg></trk>\n</gpx>\n")
	return s.err
}

// to runs straight to a place, to be there at a time.
func (s *sailing) to(at time.Time, lat, lon float64) {
	n := float64(at.Sub(s.at)/time.Second) / fixSeconds
	dLat, dLon := (lat-s.lat)/max(n, 1), (lon-s.lon)/max(n, 1)
	for s.at.Before(at) {
		s.fix()
		s.lat, s.lon = s.lat+dLat, s.lon+dLon
	}
}

// leg trolls to and fro along its heading, or in circles about a school in the
// second half of each way.
func (s *sailing) leg(l *leg) {
	for i := 0; s.at.Before(l.end); i++ {
		minute := float64(i) * fixSeconds / 60
		way, along := math.Modf(minute / wayMinutes)
		// the last two minutes of a way it comes about
		course := float64(l.heading) + 180*(way+max(0, 1-(1-along)*wayMinutes/2))
		if l.schoolM > 0 && along > .5 && along < .9 {
			course += circling * wayMinutes * (along - .5)
		}
		kn := float64(l.speed)/10 + s.fast + .25*math.Sin(2*math.Pi*minute/.7)
		sin, cos := math.Sincos(course * math.Pi / 180)
		s.fix()
		step := fixSeconds / 3600.0 / 60 // degrees of latitude a knot makes
		s.lat += (kn*cos + s.set) * step
		s.lon += kn * sin * step / math.Cos(s.lat*math.Pi/180)
	}
}

func (s *sailing) fix() {
	const off = 3 / 111000.0
	s.fixes++
	jump := 0.0
	if s.fixes%1500 == 0 { // a receiver's slip now and then
		jump = .05
	}
	s.print("<trkpt lat=\"%.6f\" lon=\"%.6f\"><time>%s</time></trkpt>\n", s.lat+s.d.normal(0, off)+
		jump, s.lon+s.d.normal(0, off),
		s.at.Add(zoneHours*time.Hour).Format("2006-01-02T15:04:05Z"))
	s.at = s.at.Add(fixSeconds * time.Second)
}
