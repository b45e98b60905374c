package phrase

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"testing"

	"wakeledger/pipeline/words"
)

// sums are what a log's truth tells of all its bites.
type sums struct{ strikes, hooked, landed, released int }

func told(t *testing.T, file string, d Defaults) (sums, []Bite, []string) {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var n sums
	var bites []Bite
	var left []string
	for _, row := range rows[1:] {
		s := Tell(row[1], d)
		own := 0
		for _, b := range s.Bites {
			own += b.N
			n.strikes += b.N
			switch b.Fate {
			case words.Released:
				n.released += b.N
				fallthrough
			case words.Landed:
				n.landed += b.N
				fallthrough
			case words.Lost, words.Hooked:
				n.hooked += b.N
			}
		}
		if s.Strikes >= 0 && s.Strikes != own {
			t.Errorf("%q: %d strikes told, %d read", row[1], s.Strikes, own)
		}
		bites, left = append(bites, s.Bites...), append(left, s.Left...)
	}
	return n, bites, left
}

// measured are the lengths in cm and scale weights in kg of named fish, in the order told.
func measured(bites []Bite) (out [][2]float64) {
	for _, b := range bites {
		if b.Name == "" {
			continue
		}
		kg := b.Kg
		if !b.Scaled {
			kg = 0
		}
		for range b.N {
			out = append(out, [2]float64{b.LengthCm, kg})
		}
	}
	return out
}

// Log 08 tells its bites in prose; the expectations are its truth.json.
func TestTellProseLog(t *testing.T) {
	n, bites, left := told(t, "prose08.csv", Defaults{})
	checkLog(t, n, sums{28, 22, 15, 6}, measured(bites), [][2]float64{{109.22, 7.121}, {83.82, 3.992}, {}, {},
		{114.3, 9.026}, {119.38, 11.204}, {}, {124.46, 0}, {}, {}, {}, {}, {99.06, 0}, {}, {}, {}, {68.58, 0}, {}},
		left)
}

// Log 16 tells its bites in phrases; its title says that weights are from the dock scale.
func TestTellPhrasesLog(t *testing.T) {
	n, bites, left := told(t, "phrases16.csv", Defaults{Scaled: true})
	checkLog(t, n, sums{34, 19, 16, 0}, measured(bites), [][2]float64{{0, 3.629}, {0, 2.722}, {147.32, 62.596},
		{0, 81.193}, {0, 73.936}, {0, 28.576}, {0, 9.979}, {109.22, 26.762}, {}, {0, 44.906}, {}, {}, {0, 57.606},
		{0, 131.995}, {0, 138.799}, {101.6, 18.144}}, left)
}

func checkLog(t *testing.T, n, want sums, fish, wantFish [][2]float64, left []string) {
	t.Helper()
	if n != want {
		t.Errorf("read %+v, want %+v", n, want)
	}
	if len(left) > 0 {
		t.Errorf("left over: %q", left)
	}
	if len(fish) != len(wantFish) {
		t.Fatalf("%d fish, want %d: %v", len(fish), len(wantFish), fish)
	}
	for i := range fish {
		if math.Abs(fish[i][0]-wantFish[i][0]) > .01 || math.Abs(fish[i][1]-wantFish[i][1]) > .001 {
			t.Errorf("fish %d is %v, want %v", i, fish[i], wantFish[i])
		}
	}
}

// Hours and line-hours of both logs, from stretches and settings; the expectations are
// boat_hours and line_hours of their truth.json. What the caller does is done here: clocks
// without am or pm are put into one day, and log 08's usual six lines hold until told else.
func TestEffortOfLogs(t *testing.T) {
	for file, want := range map[string][2]float64{"prose08.csv": {95.417, 527.75},
		"phrases16.csv": {104.667, 552.917}} {
		f, err := os.Open("testdata/" + file)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		rows, err := csv.NewReader(f).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		hours, lineHours := 0., 0.
		for _, row := range rows[1:] {
			told := Settings(row[1]).Lines
			for k, s := range Stretches(row[0]) {
				h := dayHours(s)
				hours += h
				lines := s.Lines
				if lines < 0 {
					lines = 6
				}
				if len(told) > 0 {
					lines = told[min(k, len(told)-1)]
				}
				lineHours += h * float64(lines)
			}
		}
		if math.Abs(hours-want[0]) > .001 || math.Abs(lineHours-want[1]) > .001 {
			t.Errorf("%s: %.3f hours and %.3f line-hours, want %v", file, hours, lineHours, want)
		}
	}
}

// dayHours is how long a stretch of a day lasts.
func dayHours(s Stretch) float64 {
	a, b := s.Start.Seconds, s.End.Seconds
	if a < 5*3600 && !s.Start.Sure {
		a += 12 * 3600
	}
	if b < a && !s.End.Sure {
		b += 12 * 3600
	}
	return float64(b-a) / 3600
}

// Settings must not take fish, clocks or depths for lines and speeds: the speeds that log
// 08 tells, by row.
func TestSettingsOfProse(t *testing.T) {
	f, err := os.Open("testdata/prose08.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"[]", "[8 14]", "[8 12]", "[8 10]", "[10 8]", "[7]", "[8 10]", "[]", "[]", "[]", "[]", "[8 9]",
		"[9]", "[]", "[12 8]", "[]", "[8 10]", "[10 8]"}
	for i, row := range rows[1:] {
		if got := fmt.Sprint(Settings(row[1]).Speeds); got != want[i] {
			t.Errorf("%q: speeds %s, want %s", row[1], got, want[i])
		}
	}
}
