package queries_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// diary is one log over its life: the files that its versions lie in.
type diary struct {
	name  string
	boat  string // of its rows; "" where --boat names it
	said  string // the boat that --boat names
	head  string
	rows  []string
	files []string // paths, the latest version last
}

func (d *diary) latest() string { return d.files[len(d.files)-1] }

// logOf is a flat log of some trips. The boats go out on other days, so that they may be
// joined.
func (h *history) logOf(boat string, year, nth int) *diary {
	d := &diary{name: fmt.Sprint(boat, year), boat: boat, head: "Boat,Date,Start,End,Speed " +
		"(kn),Lines,Strikes,Hooked,Landed"}
	if h.IntN(2) == 0 { // the log names no boat
		d.boat, d.said, d.head = "", boat, strings.TrimPrefix(d.head, "Boat,")
	}
	for trip := range 4 + h.IntN(4) {
		h.addTrip(d, time.Date(year, 6, 1+2*trip+nth, 0, 0, 0, 0, time.UTC))
	}
	d.files = []string{filepath.Join(h.dir, fmt.Sprint(boat, " ", year), "log.csv")}
	return d
}

func (h *history) addTrip(d *diary, day time.Time) {
	at := 6*60 + 5*h.IntN(12)
	for range 2 + h.IntN(2) {
		end := at + 45 + 5*h.IntN(20)
		strikes := h.IntN(4)
		hooked := h.IntN(strikes + 1)
		row := fmt.Sprintf("%s,%02d:%02d,%02d:%02d,%d.%d,%d,%d,%d,%d", day.Format("2006-01-02"), at/60, at%60, end/60,
			end%60,
			6+h.IntN(10), h.IntN(10), 3+h.IntN(4), strikes, hooked, h.IntN(hooked+1))
		if d.boat != "" {
			row = d.boat + "," + row
		}
		d.rows = append(d.rows, row)
		at = end + 10 + 5*h.IntN(6)
	}
}

// strikesOf is a log of the strikes of one of the other logs.
func (h *history) strikesOf(of *diary) *diary {
	d := &diary{name: of.name + " strikes", boat: of.boat, said: of.said, head: "Date,Time,Outcome,Species,Length (cm)"}
	for _, row := range of.rows {
		cells := strings.Split(strings.TrimPrefix(row, of.boat+","), ",")
		d.rows = append(d.rows, fmt.Sprintf("%s,%s,%s,wahoo,%d", cells[0], cells[1],
			[]string{"landed", "lost", "missed"}[h.IntN(3)], 80+h.IntN(60)))
	}
	if d.boat != "" {
		d.head = "Boat," + d.head
		for i := range d.rows {
			d.rows[i] = d.boat + "," + d.rows[i]
		}
	}
	d.files = []string{filepath.Join(filepath.Dir(of.files[0]), "strikes.csv")}
	return d
}

// trackOf is the track of a day, of a receiver that counts its files anew.
func (h *history) trackOf(year int) *diary {
	d := &diary{name: fmt.Sprint("track ", year), said: "Tern", head: "time,lat,lon"}
	at := time.Date(year, 6, 1, 14, 0, 0, 0, time.UTC)
	for i := range 80 {
		d.rows = append(d.rows, fmt.Sprintf("%s,%.5f,%.5f",
			at.Add(time.Duration(i)*20*time.Second).Format(time.RFC3339), 30+0.0007*float64(i),
			-120+0.0001*float64(h.IntN(3)+i)))
	}
	d.files = []string{filepath.Join(h.dir, fmt.Sprint("tracks ", year), "TRACK003.csv")}
	return d
}

// edit changes a cell, adds a trip or takes a row out.
func (h *history) edit(d *diary) {
	i := h.IntN(len(d.rows))
	switch n := h.IntN(3); {
	case strings.HasPrefix(d.name, "track"): // it goes on
		last := strings.Split(d.rows[len(d.rows)-1], ",")
		at, err := time.Parse(time.RFC3339, last[0])
		if err != nil {
			h.t.Fatal(err)
		}
		d.rows = append(d.rows, fmt.Sprintf("%s,%s,%s", at.Add(20*time.Second).Format(time.RFC3339), last[1], last[2]))
	case n == 0 && len(d.rows) > 8:
		d.rows = slices.Delete(d.rows, i, i+1)
	case n == 1 && !strings.HasSuffix(d.name, "strikes"):
		last, err := time.Parse("2006-01-02", strings.Split(strings.TrimPrefix(d.rows[len(d.rows)-1], d.boat+","),
			",")[0])
		if err != nil {
			h.t.Fatal(err)
		}
		h.addTrip(d, last.AddDate(0, 0, 2))
	default: // the last but one cell of a row: strikes hooked, or a name
		cells := strings.Split(d.rows[i], ",")
		if strings.HasSuffix(d.name, "strikes") {
			cells[len(cells)-1] = fmt.Sprint(60 + h.IntN(100))
		} else {
			cells[len(cells)-5] = fmt.Sprintf("%d.%d", 6+h.IntN(10), h.IntN(10))
		}
		d.rows[i] = strings.Join(cells, ",")
	}
}
