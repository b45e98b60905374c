package track

import (
	"archive/zip"
	"compress/gzip"
	"encoding/binary"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"wakeledger/pipeline/record"
)

// read reads all fixes of a file.
func read(t *testing.T, file string, zone *time.Location) (fixes []Fix, problems []record.Problem, notes []string) {
	t.Helper()
	keep := func(p record.Problem) error { problems = append(problems, p); return nil }
	err := Each(file, Options{Zone: zone}, keep, func(f File) error {
		for f.Reader != nil {
			fix, ok, err := f.Reader.Next()
			if err != nil || !ok {
				notes = append(notes, f.Reader.Notes()...)
				return err
			}
			fixes = append(fixes, fix)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return fixes, problems, notes
}

func written(t *testing.T, name, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

func TestGPX(t *testing.T) {
	file := written(t, "a.gpx", `<?xml version="1.0"?>
<!-- a > b -->
<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1" xmlns:t="http://example.org/t"><metadata><time>2020-01-01T00:00:00Z</time></metadata>
<wpt lat="1" lon="2"><time>2026-07-01T00:00:00Z</time></wpt>
<trk><name><![CDATA[<trkpt lat="9" lon="9">]]></name><trkseg>
<trkpt lat="32.5" lon='-117.5'><ele>1</ele><time> 2026-07-01T13:00:00Z </time><extensions><t:X><t:speed>6.0</t:speed></t:X></extensions></trkpt>
<trkpt lon="-117.51" lat="32.51"><time>2026-07-01T06:00:01.250-07:00</time><speed>0.5</speed></trkpt>
<trkpt lat="32.5" lon="-117.5"></trkpt>
<trkpt lat="132.5" lon="-117.5"><time>2026-07-01T13:00:03Z</time></trkpt>
<trkpt lat="32.5" lon="-117.5"><time>yesterday</time></trkpt>
</trkseg><trkseg>
<trkpt lat="32.52" lon="-117.5"><time>2026-07-01T13:10:00</time></trkpt>
</trkseg></trk></gpx>`)
	fixes, problems, notes := read(t, file, nil)
	want := []Fix{
		{time.Date(2026, 7, 1, 13, 0, 0, 0, time.UTC).UnixMilli(), 32.5, -117.5, 6 * 3600 / 1852.0, true},
		{time.Date(2026, 7, 1, 13, 0, 1, 250e6, time.UTC).UnixMilli(), 32.51, -117.51, 0.5 * 3600 / 1852.0, false},
		{time.Date(2026, 7, 1, 13, 10, 0, 0, time.UTC).UnixMilli(), 32.52, -117.5, math.NaN(), true},
	}
	if len(fixes) != len(want) {
		t.Fatalf("%d fixes, want %d: %+v", len(fixes), len(want), fixes)
	}
	for i, w := range want {
		g := fixes[i]
		if g.At != w.At || g.Lat != w.Lat || g.Lon != w.Lon || g.Break != w.Break ||
			(!near(g.SpeedKn, w.SpeedKn, 1e-9) && !(math.IsNaN(g.SpeedKn) && math.IsNaN(w.SpeedKn))) {
			t.Errorf("fix %d: %+v, want %+v", i, g, w)
		}
	}
	if len(problems) != 2 || problems[0].Pos.Row != 9 || strings.Contains(problems[0].Cell, "117") {
		t.Errorf("problems %v", problems)
	}
	if len(notes) != 2 || !strings.HasPrefix(notes[0], "points without a time: 1.") ||
		!strings.Contains(notes[1], "(1 waypoint, ") {
		t.Errorf("notes %q", notes)
	}
}

func TestGPXThatEndsInTheMiddle(t *testing.T) {
	whole := `<gpx><trk><trkseg><trkpt lat="1" lon="2"><time>2026-07-01T13:00:00Z</time></trkpt><trkpt lat="1" lon="2"><ti`
	fixes, _, notes := read(t, written(t, "a.gpx", whole), nil)
	if len(fixes) != 1 || len(notes) != 1 || !strings.Contains(notes[0], "ends in the middle") {
		t.Errorf("%d fixes, notes %v", len(fixes), notes)
	}
}

// logger.gpx is by another program; testdata/make.sh tells how it was made and
// checked against the published schema.
func TestGPXOfAnotherProgram(t *testing.T) {
	for _, name := range []string{"logger.gpx", "logger.nmea"} {
		fixes, problems, _ := read(t, filepath.Join("testdata", name), nil)
		// gpsbabel writes the first RMC once more, before its GGA
		if len(fixes) < 90 || len(fixes) > 91 || len(problems) > 0 {
			t.Fatalf("%s: %d fixes, problems %v", name, len(fixes), problems)
		}
		found, sum := pieces(t, fixes, Settings{})
		for _, p := range found {
			if !near(p.RunKn, 11.6, 0.02) || !near(p.Course, 90, 0.1) {
				t.Errorf("%s: %+v, want 11.6 kn to the east", name, p)
			}
		}
		if sum.Seconds != 178 {
			t.Errorf("%s: %g s covered, want 178", name, sum.Seconds)
		}
	}
}

// The sentences are examples that go round with the standard: the first in most
// descriptions of RMC, the last with a checksum that is wrong (61 is right).
func TestNMEA(t *testing.T) {
	file := written(t, "a.nmea", strings.Join([]string{
		"$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47",
		"$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A",
		"$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48",
		"$GNRMC,113616.00,A,4724.5248557,N,00937.1063064,E,0.01,11.43,100406,11.43,E,D*1C",
		"$GPVTG,89.68,T,,M,0.00,N,0.0,K*5F",
		"$GPRMC,,V,,,,,,,,,,N*53",
		"$GPRMC,170047.00,A,4121.23302,N,00201.31654,W,2.703,,200417,,,A*64",
		"noise \xff\x00",
		"$GPRMC,120000,A,4121.0,N,00201.0,W,,,200417,,,A",
		"$GPRMC,120000,A,4121.0,N,00201.0,W,,,200417,,,A*64",
		"$GPVTG,,T,,M,7.25,N,,K,A*3D",
	}, "\r\n"))
	fixes, problems, notes := read(t, file, nil)
	if len(fixes) != 3 {
		t.Fatalf("%d fixes, want 3; problems %v", len(fixes), problems)
	}
	a := fixes[0]
	if !near(a.Lat, 48.1173, 1e-9) || !near(a.Lon, 11.51666667, 1e-8) || a.SpeedKn != 22.4 ||
		!a.Time().Equal(time.Date(1994, 3, 23, 12, 35, 19, 0, time.UTC)) {
		t.Errorf("%+v at %s", a, a.Time())
	}
	if b := fixes[1]; !near(b.Lat, 47.408747595, 1e-9) || b.SpeedKn != 0.01 ||
		!b.Time().Equal(time.Date(2006, 4, 10, 11, 36, 16, 0, time.UTC)) {
		t.Errorf("%+v at %s", b, b.Time())
	}
	if c := fixes[2]; c.SpeedKn != 7.25 || !c.Break || c.Lon >= 0 {
		t.Errorf("the speed of VTG, after a loss of reception: %+v", c)
	}
	if len(problems) != 2 || problems[0].Pos.Row != 7 || !strings.Contains(problems[0].Reason, "adds up to 61") ||
		!strings.Contains(problems[1].Reason, "no checksum") {
		t.Errorf("problems %v", problems)
	}
	if len(notes) != 1 || !strings.HasPrefix(notes[0], "1 sentences") {
		t.Errorf("notes %v", notes)
	}
}

func TestCSV(t *testing.T) {
	auckland, err := time.LoadLocation("Pacific/Auckland")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"utc": "Time,Lat,Lon,Speed (kn)\n2026-02-14T04:12:00Z,-36.6,176.1,12.5\nbad,1,1,1\n",
		"local": "\ufeffdate;time;latitude;longitude;SOG " +
			"(m/s)\n2026-02-14;17:12:00;-36,6;176,1;6,430555556\n2026-02-14;x;-36,6;176,1;\n",
		"tab":       "timestamp\tlat\tlng\tspeed km/h\n2026-02-14 04:12:00+00:00\t-36.6\t176.1\t23.15\n\t\t\t\n",
		"quotes":    "\"time\",\"lat\",\"lon\",\"speed\"\n\"2026-02-14T17:12:00+13:00\",-36.6,176.1,12.5\n1,,,\n",
		"no speed?": "utc,lat,lon\n2026-02-14T04:12:00Z,-36.6,176.1\n,,\n",
		"utc said":  "UTC time,lat,lon,speed\n2026-02-14 04:12:00,-36.6,176.1,12.5\n,,,\n",
		"utc cell":  "time,lat,lon,speed\n2026-02-14 04:12:00 UTC,-36.6,176.1,12.5\n,,,\n",
	} {
		fixes, problems, notes := read(t, written(t, "a.csv", text), auckland)
		if len(fixes) != 1 || len(problems) != 1 || problems[0].Pos.Row != 3 {
			t.Errorf("%s: %d fixes, problems %v", name, len(fixes), problems)
			continue
		}
		f := fixes[0]
		if !f.Time().Equal(time.Date(2026, 2, 14, 4, 12, 0, 0, time.UTC)) || f.Lat != -36.6 || f.Lon != 176.1 {
			t.Errorf("%s: %+v at %s", name, f, f.Time())
		}
		if !strings.Contains(name, "?") && !near(f.SpeedKn, 12.5, 1e-6) {
			t.Errorf("%s: %g kn, want 12.5", name, f.SpeedKn)
		}
		if (name == "local") != (len(notes) == 1) {
			t.Errorf("%s: notes %v", name, notes)
		}
	}
}

// UTF-16 with a byte order mark, which XML 1.0 allows: the same fixes, at the same
// lines, as in UTF-8; packed too, and with a letter beyond the 16 bits.
func TestUTF16(t *testing.T) {
	const text = `<?xml version="1.0" encoding="UTF-16"?>
<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Dérive 𝄞</name><trkseg>
<trkpt lat="32.5" lon="-117.5"><time>2026-07-01T13:00:00Z</time></trkpt>
<trkpt lat="132.5" lon="-117.5"><time>2026-07-01T13:00:01Z</time></trkpt>
<trkpt lat="32.51" lon="-117.5"><time>2026-07-01T13:00:02Z</time></trkpt>
</trkseg></trk></gpx>`
	want, wantAside, _ := read(t, written(t, "a.gpx", text), nil)
	for name, order := range map[string]binary.AppendByteOrder{"little": binary.LittleEndian, "big": binary.BigEndian} {
		b := order.AppendUint16(nil, 0xfeff)
		for _, c := range utf16.Encode([]rune(text)) {
			b = order.AppendUint16(b, c)
		}
		plain := written(t, name+".gpx", string(b))
		gz := filepath.Join(t.TempDir(), name+".gpx.gz")
		packed(t, gz, func(w io.Writer) error {
			z := gzip.NewWriter(w)
			_, err := z.Write(b)
			return errors.Join(err, z.Close())
		})
		for _, file := range []string{plain, gz} {
			if !Is(file) {
				t.Errorf("%s is no track", file)
			}
			fixes, aside, _ := read(t, file, nil)
			if len(fixes) != 2 || fixes[0].At != want[0].At ||
				fixes[1].Lat != want[1].Lat || fixes[1].Lon != want[1].Lon {
				t.Errorf("%s: %+v, want %+v", file, fixes, want)
			}
			if len(aside) != 1 || aside[0].Pos.Row != wantAside[0].Pos.Row || aside[0].Cell != wantAside[0].Cell {
				t.Errorf("%s: %+v, want %+v", file, aside, wantAside)
			}
		}
	}
	if Is(written(t, "legs.csv", "\xff\xfed\x00a\x00t\x00e\x00,\x00s\x00t\x00a\x00r\x00t\x00\n\x00")) {
		t.Error("a log in UTF-16 is taken for a track")
	}
}

// A clock put on moves the times and nothing else, and may be put back.
func TestPutOn(t *testing.T) {
	file := written(t, "a.csv", oneFix)
	err := Each(file, Options{}, func(record.Problem) error { return nil }, func(f File) error {
		fix, ok, err := PutOn(f.Reader, -24*time.Hour).Next()
		if !ok || err != nil || !fix.Time().Equal(time.Date(2026, 2, 13, 4, 12, 0, 0, time.UTC)) || fix.Lat != -36.6 {
			t.Errorf("%+v at %s, %v", fix, fix.Time(), err)
		}
		if PutOn(f.Reader, 0) != f.Reader {
			t.Error("a clock that is right costs a step for each fix")
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

const oneFix = "time,lat,lon\n2026-02-14T04:12:00Z,-36.6,176.1\n"

func TestPacked(t *testing.T) {
	dir := t.TempDir()
	gz := filepath.Join(dir, "a.csv.gz")
	packed(t, gz, func(w io.Writer) error {
		z := gzip.NewWriter(w)
		if _, err := z.Write([]byte(oneFix)); err != nil {
			return err
		}
		return z.Close()
	})
	many := filepath.Join(dir, "tracks.zip")
	packed(t, many, func(w io.Writer) error {
		z := zip.NewWriter(w)
		for name, text := range map[string]string{"a/one.csv": oneFix,
			"a/two.gpx": `<gpx><trk><trkseg><trkpt lat="1" lon="2"><time>2026-07-01T13:00:00Z</time></trkpt></trkseg></trk></gpx>`, "a/.hidden": "x"} {
			m, err := z.Create(name)
			if err != nil {
				return err
			}
			if _, err := m.Write([]byte(text)); err != nil {
				return err
			}
		}
		return z.Close()
	})
	for file, want := range map[string]int{gz: 1, many: 2} {
		if !Is(file) {
			t.Errorf("%s is no track", file)
		}
		if fixes, problems, _ := read(t, file, nil); len(fixes) != want || len(problems) > 0 {
			t.Errorf("%s: %d fixes, want %d; %v", file, len(fixes), want, problems)
		}
	}
}

func packed(t *testing.T, file string, write func(io.Writer) error) {
	t.Helper()
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := write(f); err != nil {
		t.Fatal(err)
	}
}

// Sheets of a log, which may have positions too, are no tracks.
func TestIsTellsTracksFromLogs(t *testing.T) {
	for _, text := range []string{"date,start,end,lat,lon\n", "time,lat,lon,outcome\n", "trip,date\n",
		"costs $GP,100*2\n", "", "<kml></kml>", "time;lat\n"} {
		if Is(written(t, "a.csv", text)) {
			t.Errorf("%q is taken for a track", text)
		}
	}
	if Is(filepath.Join("..", "sheet", "testdata", "legs-openpyxl.xlsx")) {
		t.Error("a workbook is taken for a track")
	}
	if Is(t.TempDir()) || Is("nowhere.gpx") {
		t.Error("what is no file is taken for a track")
	}
}

// A plain number is read as strconv reads it.
func TestDecimal(t *testing.T) {
	noise := rng(9)
	for range 20000 {
		s := strconv.FormatFloat(360*noise.Float64()-180, 'f', noise.IntN(13), 64)
		want, err := strconv.ParseFloat(s, 64)
		if got, ok := decimal([]byte(s)); err != nil || !ok || got != want {
			t.Fatalf("%s: %v, want %v", s, got, want)
		}
	}
	for _, s := range []string{"", "-", ".", "1.2.3", "1e", "x", "NaN", "Inf", "--1", "1,5"} {
		if v, ok := decimal([]byte(s)); ok {
			t.Errorf("%q is read as %v", s, v)
		}
	}
	for s, want := range map[string]float64{"1e2": 100, "-.5": -0.5, "5.": 5, "+7": 7,
		"123456789012345678": 123456789012345678} {
		if v, ok := decimal([]byte(s)); !ok || v != want {
			t.Errorf("%q: %v", s, v)
		}
	}
}
