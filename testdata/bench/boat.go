package bench

import (
	"fmt"
	"io"
	"math/rand/v2"
	"time"
)

// Boat writes a season of one boat as a flat log: so many trips of four legs with
// four lines each, a strike on one line in eight, every second one boated and taped,
// every fourth of those on a dock scale. Each number is a season of its own.
func Boat(path string, number, trips int) error {
	rng := rand.New(rand.NewPCG(7, uint64(number)))
	return written(path, func(w io.Writer) error {
		_, err := fmt.Fprintln(w, "Date,Start,End,Speed (kn),Line,Lure,Lure weight (g),Setback "+
			"(m),Strikes,Outcome,Species,Length (cm),Girth (cm),Scale weight (kg)")
		for t := range trips {
			date := time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, t*5)
			for l := range 4 {
				start := 360 + 120*l
				stretch := fmt.Sprintf("%s,%s,%s,%.1f", date.Format("2006-01-02"), clock(start),
					clock(start+60+rng.IntN(50)), 7+8*rng.Float64())
				for line := range 4 {
					if _, err := fmt.Fprintf(w, "%s,%d,lure %d,%d,%d,%s\n", stretch, line+1, rng.IntN(9),
						150+50*rng.IntN(12), 40+20*line, hit(rng)); err != nil {
						return err
					}
				}
			}
		}
		return err
	})
}

// hit is the cells of what struck a line.
func hit(rng *rand.Rand) string {
	switch n := rng.IntN(32); {
	case n >= 4:
		return "0,,,,,"
	case n >= 2:
		return "1,lost,,,,"
	default:
		length := 90 + 90*rng.Float64()
		girth := length * (0.62 + 0.08*rng.Float64())
		scale := ""
		if rng.IntN(4) == 0 {
			scale = fmt.Sprintf("%.1f", 1.9e-5*length*length*length)
		}
		return fmt.Sprintf("1,landed,albacore,%.0f,%.0f,%s", length, girth, scale)
	}
}
