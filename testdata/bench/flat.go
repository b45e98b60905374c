package bench

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"
)

// Columns of a flat log, with the type that a database's own reader is told.
var Columns = []struct{ Heading, Type string }{
	{"Trip", "VARCHAR"}, {"Boat", "VARCHAR"}, {"Date", "DATE"}, {"Start", "TIME"},
	{"End", "TIME"}, {"Speed (kn)", "DOUBLE"},
	{"Lat", "DOUBLE"}, {"Lon", "DOUBLE"}, {"SST (C)", "DOUBLE"}, {"Approach", "VARCHAR"},
	{"Line", "VARCHAR"}, {"Lure", "VARCHAR"},
	{"Lure weight (g)", "DOUBLE"}, {"Colour", "VARCHAR"}, {"Drag (kg)", "DOUBLE"}, {"Setback (m)", "DOUBLE"},
	{"Strikes", "BIGINT"}, {"Hooked", "BIGINT"}, {"Landed", "BIGINT"}, {"Released", "BIGINT"},
}

const numbersFrom = 5 // of Columns: those before are texts in a workbook too

// Rows calls put with each of n rows: five legs a trip, four lines a leg. The
// slice is used again.
func Rows(n int, put func(row []string) error) error {
	rng := rand.New(rand.NewPCG(1, 2))
	lures := []string{"Blue Ferrule", "Tin Gusset", "Pintuck", "Treadle", "Basting Iron"}
	places := []string{"port long", "port short", "starboard short", "starboard long"}
	day := time.Date(1990, 1, 1, 0, 0, 0, 0, time.UTC)
	row := make([]string, len(Columns))
	for i := range n {
		line, leg, trip := i%4, i/4%5, i/20
		if line == 0 {
			start := 360 + leg*120
			end := start + 30 + rng.IntN(60)
			row[0], row[1] = fmt.Sprint("T", trip), fmt.Sprint("Boat ", trip%7)
			row[2] = day.AddDate(0, 0, trip/7).Format("2006-01-02")
			row[3], row[4] = clock(start), clock(end)
			row[5] = fmt.Sprintf("%.1f", 6+rng.Float64()*10)
			row[6], row[7] = fmt.Sprintf("%.4f", 30+5*rng.Float64()), fmt.Sprintf("%.4f", -140-5*rng.Float64())
			row[8], row[9] = fmt.Sprintf("%.1f", 16+8*rng.Float64()), "straight"
		}
		row[10], row[11] = places[line], lures[rng.IntN(len(lures))]
		row[12], row[13] = fmt.Sprint(150+50*rng.IntN(12)), []string{"blue", "pink", "black"}[rng.IntN(3)]
		row[14], row[15] = fmt.Sprintf("%.1f", 8+rng.Float64()*8), fmt.Sprint(40+rng.IntN(160))
		strike := rng.IntN(10) / 9
		hooked := strike * (rng.IntN(10) / 3 % 2)
		row[16], row[17], row[18], row[19] = fmt.Sprint(strike), fmt.Sprint(hooked), fmt.Sprint(hooked*rng.IntN(2)), "0"
		if err := put(row); err != nil {
			return err
		}
	}
	return nil
}

// clock is minutes since midnight as hh:mm.
func clock(minutes int) string { return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60) }

func headings() []string {
	head := make([]string, len(Columns))
	for i, c := range Columns {
		head[i] = c.Heading
	}
	return head
}

// CSV writes a flat log of n rows, some 120 bytes each.
func CSV(path string, n int) error {
	return written(path, func(w io.Writer) error {
		line := func(row []string) error {
			_, err := fmt.Fprintln(w, strings.Join(row, ","))
			return err
		}
		if err := line(headings()); err != nil {
			return err
		}
		return Rows(n, line)
	})
}

// Workbook writes a flat log of n rows.
func Workbook(path string, n int) (err error) {
	f := excelize.NewFile()
	defer func() { err = errors.Join(err, f.Close()) }()
	// a stream leaves the dimension at one cell, which is all that openpyxl would then read
	if err := f.SetSheetDimension("Sheet1", fmt.Sprint("A1:T", n+1)); err != nil {
		return err
	}
	w, err := f.NewStreamWriter("Sheet1")
	if err != nil {
		return err
	}
	at := 0
	put := func(row []string) error {
		at++
		cells := make([]any, len(row))
		for i, c := range row {
			cells[i] = c
			if v, err := strconv.ParseFloat(c, 64); err == nil && i >= numbersFrom {
				cells[i] = v
			}
		}
		return w.SetRow(fmt.Sprint("A", at), cells)
	}
	if err := put(headings()); err != nil {
		return err
	}
	if err := Rows(n, put); err != nil {
		return err
	}
	return errors.Join(w.Flush(), f.SaveAs(path))
}

// written makes a file of what fill writes.
func written(path string, fill func(io.Writer) error) (err error) {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	w := bufio.NewWriter(f)
	return errors.Join(fill(w), w.Flush())
}
