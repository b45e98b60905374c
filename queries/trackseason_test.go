package queries_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"wakeledger/pipeline"
	"wakeledger/queries"
)

// outings are three days with nights at the dock between: where the boat is each ten
// seconds.
type outings struct {
	from     time.Time
	lat, lon []float64
}

func (o *outings) run(minutes, kn, course float64) {
	lat, lon := o.lat[len(o.lat)-1], o.lon[len(o.lon)-1]
	for range int(minutes * 6) {
		step := kn / 360 / 60
		lat += step * math.Cos(course*math.Pi/180) * 1852 / 1849.5
		lon += step * math.Sin(course*math.Pi/180) / math.Cos(36.5*math.Pi/180) * 1852 / 1857.7
		o.lat, o.lon = append(o.lat, lat), append(o.lon, lon)
	}
}

// csv is a receiver's export of some of the time: a fix each every tens of seconds,
// noise in metres.
func (o *outings) csv(from, to float64, every int, noise float64, rng *rand.Rand,
	write func(at time.Time, lat, lon float64) string) string {
	var b strings.Builder
	n := float64(len(o.lat))
	for i := int(from * n); i < int(to*n); i += every {
		b.WriteString(write(o.from.Add(time.Duration(i)*10*time.Second), o.lat[i]+noise*rng.NormFloat64()/111000,
			o.lon[i]+noise*rng.NormFloat64()/89000))
	}
	return b.String()
}

// A season in one export with nights at the dock, beside exports of two devices that
// overlap, newest first or noisy: hours, way run and areas are those of one clean
// track a day, to a hundredth.
func TestASeasonOfManyExports(t *testing.T) {
	// 05:00 at UTC+13
	o := &outings{from: time.Date(2026, 2, 13, 16, 0, 0, 0, time.UTC), lat: []float64{-36.5}, lon: []float64{176.2}}
	legs := "trip,leg,date,start,end,speed kn,lines out\n"
	for day := range 3 {
		o.run(60, 0, 0) // at the dock until 06:00
		o.run(60, 20, 60)
		o.run(120, 9, 30)
		o.run(120, 13, 210)
		o.run(60, 20, 240)
		o.run(17*60, 0, 0)
		date := time.Date(2026, 2, 14+day, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
		legs += fmt.Sprintf("T%d,1,%s,07:00,09:00,9,4\nT%d,2,%s,09:00,11:00,13,4\n", day, date, day, date)
	}
	plain := func(at time.Time, lat, lon float64) string {
		return fmt.Sprintf("%s,%.6f,%.6f\n", at.Format(time.RFC3339), lat, lon)
	}
	point := func(at time.Time, lat, lon float64) string {
		return fmt.Sprintf("<trkpt lat=\"%.6f\" lon=\"%.6f\"><time>%s</time></trkpt>\n",
			lat, lon, at.Format(time.RFC3339))
	}
	const head = "time,lat,lon\n"
	rng := rand.New(rand.NewPCG(15, 15))
	reversed := strings.Split(strings.TrimSpace(o.csv(0.3, 0.8, 1, 2, rng, plain)), "\n")
	for i, j := 0, len(reversed)-1; i < j; i, j = i+1, j-1 {
		reversed[i], reversed[j] = reversed[j], reversed[i]
	}
	dir := t.TempDir()
	file := func(name, text string) string { return writeText(t, dir, name, text) }
	figures := func(tracks ...string) (hours, nmi float64, areas map[string]float64) {
		s := open(t, pipeline.Config{Boat: "Petrel", Zone: "UTC+13"})
		defer s.DB.Close()
		load(t, s, append([]string{file("legs.csv", legs)}, tracks...)...)
		for _, trip := range answer(t, s, queries.AskTrackSpeed) {
			hours, nmi = hours+trip.MeasuredHours, nmi+*trip.DistanceNmi
		}
		cells, err := queries.AskArea(context.Background(), s.DB, queries.AreaMinutes)
		if err != nil {
			t.Fatal(err)
		}
		areas = map[string]float64{}
		for _, c := range cells {
			areas[fmt.Sprint(c.LatDeg, c.LonDeg)] = c.BoatHours
		}
		return hours, nmi, areas
	}
	wantHours, wantNmi, wantAreas := figures(file("clean.csv", head+o.csv(0, 1, 1, 0, rng, plain)))
	season := "<gpx><trk><trkseg>\n" + o.csv(0, 1, 1, 1, rng, point) + "</trkseg></trk><trk><trkseg>\n" +
		o.csv(0, 0.5, 1, 1, rng, point) + "</trkseg></trk></gpx>"
	gotHours, gotNmi, gotAreas := figures(
		file("season.gpx", season),
		file("phone.csv", head+o.csv(0.2, 0.7, 3, 15, rng, plain)),
		file("march.csv", head+strings.Join(reversed, "\n")+"\n"))
	t.Logf("hours %.3f of %.3f, nautical miles %.2f of %.2f, %d areas of %d", gotHours, wantHours, gotNmi, wantNmi,
		len(gotAreas), len(wantAreas))
	if math.Abs(wantHours-12) > 0.01 || math.Abs(wantNmi-132) > 0.7 {
		t.Errorf("the clean track: %.3f h and %.2f nmi, want 12 and 132", wantHours, wantNmi)
	}
	if math.Abs(gotHours-wantHours) > 0.01*wantHours || math.Abs(gotNmi-wantNmi) > 0.01*wantNmi {
		t.Errorf("%.3f h and %.2f nmi, want %.3f and %.2f", gotHours, gotNmi, wantHours, wantNmi)
	}
	for cell, want := range wantAreas {
		if got := gotAreas[cell]; math.Abs(got-want) > max(0.01*want, 0.01) {
			t.Errorf("area %s: %.3f h, want %.3f", cell, got, want)
		}
	}
}
