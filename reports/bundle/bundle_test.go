package bundle

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/factors"
)

// trips is a source of n trips over some months, with fish on each.
func trips(n int) Source {
	src := Source{Top: 3}
	for i := range n {
		month := fmt.Sprintf("2026-%02d", 5+i/4)
		day := fmt.Sprintf("%s-%02d", month, 3+5*(i%4))
		p := Piece{Trip: int64(i + 1), Start: day, Day: day, Level: month, BoatHours: 5, LineHours: 20, Strikes: 2,
			Hookups: 2, Landed: 1, Released: 1}
		src.Months = append(src.Months, p)
		p.BoatHours, p.Level = 0, factors.Level([]float64{0, 6, 8, 10}, float64(6+i%5))
		src.Speeds = append(src.Speeds, p)
		p.Level = "[0, 250)"
		src.Lures = append(src.Lures, p)
		kg := 20 + 3.07*float64(i)
		src.Fish = append(src.Fish, Piece{Trip: p.Trip, Start: day, Day: day, Fish: 1, Landed: 1, OnScale: 1,
			Species: []string{"PBF", "YFT", "ALB"}[i%3], Month: month, WeightKG: kg, List: Dock},
			Piece{Trip: p.Trip, Start: day, Day: day, Fish: 1, Released: 1, Species: "BLM", Month: month,
				WeightKG: 99, List: Estimate})
		src.Sizes = append(src.Sizes, factors.Level([]float64{0, 25, 50}, kg), NoWeight)
	}
	return src
}

func season(t *testing.T, id string, n int) Season {
	t.Helper()
	s, err := Make(id, trips(n), nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func written(t *testing.T, s Season) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := Write(&buf, s); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// Seven trips, months of 4 and 3: by hand, both stand. Ten trips: 4, 4 and 2;
// the 2 may not stand, and with nothing else merged they would be had from the
// total, so that one of the fours (the first, all being equal) goes with them.
func TestMergeByHand(t *testing.T) {
	levels := func(s Season) string {
		var out []string
		for _, c := range s.Months {
			out = append(out, fmt.Sprintf("%s=%d", c.Level, c.Trips))
		}
		return strings.Join(out, " ")
	}
	for n, want := range map[int]string{7: "2026-05=4 2026-06=3", 10: "2026-06=4 merged=6", 5: "merged=5"} {
		if got := levels(season(t, "a", n)); got != want {
			t.Errorf("%d trips: %s, want %s", n, got, want)
		}
	}
	for n := range 3 {
		if _, err := Make("a", trips(n), nil); !errors.Is(err, ErrTooFew) {
			t.Errorf("%d trips: %v, want ErrTooFew", n, err)
		}
	}
}

// A fish's month and species say no more than the tables do.
func TestHeaviestSaysNoMoreThanTheTables(t *testing.T) {
	src := trips(10)
	src.Fish[0].WeightKG, src.Fish[0].Species = 300.04, "SWO" // the only one, in a month that is merged
	s, err := Make("a", src, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := Heavy{List: Dock, Species: Other, When: "2026", WeightKG: 300}
	if s.Heaviest[0] != want {
		t.Errorf("%+v, want %+v", s.Heaviest[0], want)
	}
	src.Top = 0
	if s, err = Make("a", src, nil); err != nil || len(s.Heaviest) != 0 {
		t.Errorf("no list asked for: %d fish, %v", len(s.Heaviest), err)
	}
}

func TestBundleThereAndBack(t *testing.T) {
	s := season(t, "blue-7", 13)
	lo := 90.5
	s.Heaviest[0].LoKG = &lo
	s.People = []Person{{"boat", "Grey Heron"}, {"crew", `=cmd|"x"</script>`}}
	b := written(t, s)
	if !bytes.Equal(b, written(t, s)) {
		t.Error("the same season gives other bytes")
	}
	got, err := Read(b)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, s) {
		t.Errorf("read\n%+v, wrote\n%+v", got, s)
	}
}

// repack writes a bundle anew after edit has changed its parts.
func repack(t *testing.T, b []byte, edit func(parts map[string][]byte)) []byte {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	parts := map[string][]byte{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if parts[f.Name], err = io.ReadAll(r); err != nil {
			t.Fatal(err)
		}
	}
	edit(parts)
	var buf bytes.Buffer
	w := zip.NewWriter(&buf)
	for name, part := range parts {
		if err := writePart(w, name, part); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// rename replaces a part and its hash, as someone who knows the form would.
func replace(t *testing.T, parts map[string][]byte, name string, part []byte) {
	t.Helper()
	var m manifest
	if err := json.Unmarshal(parts[manifestName], &m); err != nil {
		t.Fatal(err)
	}
	for i := range m.Resources {
		if m.Resources[i].Name == name {
			m.Resources[i].Hash = hashOf(part)
		}
	}
	parts[name+".parquet"] = part
	b, err := json.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	parts[manifestName] = b
}

// A doubt of the boat travels; a bundle of form 2, which had none, is read without.
func TestDoubtTravels(t *testing.T) {
	s := season(t, "blue-7", 13)
	why := "scale and tape"
	s.Heaviest[0].Doubt = &why
	now := written(t, s)
	got, err := Read(now)
	if err != nil || got.Heaviest[0].Doubt == nil || *got.Heaviest[0].Doubt != why {
		t.Fatalf("read back: %+v, %v", got.Heaviest, err)
	}
	old := repack(t, now, func(p map[string][]byte) {
		var fish []heavyOfForm2
		for _, f := range s.Heaviest {
			fish = append(fish, heavyOfForm2{f.List, f.Species, f.When, f.WeightKG, f.LoKG, f.HiKG})
		}
		b, err := writeParquet(fish)
		if err != nil {
			t.Fatal(err)
		}
		p[manifestName] = bytes.Replace(p[manifestName], []byte(`"version": "3"`), []byte(`"version": "2"`), 1)
		replace(t, p, "heaviest", b)
	})
	if got, err = Read(old); err != nil || len(got.Heaviest) != len(s.Heaviest) ||
		got.Heaviest[0].WeightKG != s.Heaviest[0].WeightKG || got.Heaviest[0].Doubt != nil {
		t.Errorf("form 2: %+v, %v", got.Heaviest, err)
	}
	text := "off the point"
	s.Heaviest[0].Doubt = &text
	if err := s.Check(); err == nil {
		t.Error("a doubt in a log's own words is shared")
	}
}

func TestBundleRefuses(t *testing.T) {
	good := written(t, season(t, "blue-7", 13))
	table := func(rows any) []byte {
		b, err := writeParquet(rows)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	var other bytes.Buffer
	z := zip.NewWriter(&other)
	if err := errors.Join(writePart(z, "xl/workbook.xml", []byte("<workbook/>")), z.Close()); err != nil {
		t.Fatal(err)
	}
	edited := func(edit func(parts map[string][]byte)) []byte { return repack(t, good, edit) }
	for name, c := range map[string]struct {
		file []byte
		want error
	}{
		"empty":      {nil, ErrForeign},
		"text":       {[]byte("trip,date\n1,2026-05-01\n"), ErrForeign},
		"a workbook": {other.Bytes(), ErrForeign},
		"cut short":  {good[:len(good)/2], ErrDamaged},
		"another program": {edited(func(p map[string][]byte) {
			p[manifestName] = []byte(`{"profile":"tabular-data-package"}`)
		}), ErrForeign},
		"a later version": {edited(func(p map[string][]byte) {
			p[manifestName] = bytes.Replace(p[manifestName], []byte(`"version": "3"`), []byte(`"version": "4"`), 1)
		}), ErrLater},
		"an earlier version": {edited(func(p map[string][]byte) {
			p[manifestName] = bytes.Replace(p[manifestName], []byte(`"version": "3"`), []byte(`"version": "1"`), 1)
		}), ErrEarlier},
		"a part is gone":  {edited(func(p map[string][]byte) { delete(p, "months.parquet") }), ErrDamaged},
		"a byte is other": {edited(func(p map[string][]byte) { p["months.parquet"][40] ^= 1 }), ErrDamaged},
		"no Parquet": {edited(func(p map[string][]byte) {
			replace(t, p, "months", []byte("PAR1 and no more PAR1"))
		}), ErrDamaged},
		"other columns": {edited(func(p map[string][]byte) {
			replace(t, p, "months", table([]Person{{"boat", "x"}}))
		}), ErrDamaged},
		"one trip": {edited(func(p map[string][]byte) {
			replace(t, p, "season", table([]Total{{Trips: 1}}))
		}), ErrDamaged},
		"a level of two trips": {edited(func(p map[string][]byte) {
			replace(t, p, "species", table([]FishCell{{Level: "PBF", Fish: 2}}))
		}), ErrDamaged},
		"text as a level": {edited(func(p map[string][]byte) {
			replace(t, p, "species", table([]FishCell{{Level: "off the point", Fish: 5}}))
		}), ErrDamaged},
		"not the sum": {edited(func(p map[string][]byte) {
			replace(t, p, "lures", table([]Cell{{Level: "[0, 250)", Trips: 5, LineHours: 1}}))
		}), ErrDamaged},
		"a path elsewhere": {edited(func(p map[string][]byte) {
			p[manifestName] = bytes.Replace(p[manifestName], []byte(`"path": "months.parquet"`),
				[]byte(`"path": "../months.parquet"`), 1)
		}), ErrDamaged},
		"an id that is a path": {edited(func(p map[string][]byte) {
			p[manifestName] = bytes.Replace(p[manifestName], []byte(`"boat": "blue-7"`), []byte(`"boat": "../blue"`), 1)
		}), ErrDamaged},
	} {
		if _, err := Read(c.file); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
	if _, err := Read(repack(t, good, func(map[string][]byte) {})); err != nil {
		t.Errorf("packed again and unchanged: %v", err)
	}
}

// Every single byte of a bundle changed: refused, or without effect.
func TestBundleWithAnyByteChanged(t *testing.T) {
	s := season(t, "blue-7", 13)
	good := written(t, s)
	for i := 0; i < len(good); i += 7 {
		b := slices.Clone(good)
		b[i] ^= 0x5a
		if got, err := Read(b); err == nil && !reflect.DeepEqual(got, s) {
			t.Fatalf("byte %d changed: read as another season", i)
		}
	}
}

func TestMatch(t *testing.T) {
	a, b := season(t, "a", 13), season(t, "b", 9)
	later := season(t, "a", 13)
	for i := range later.Months {
		later.Months[i].Level = strings.Replace(later.Months[i].Level, "2026", "2027", 1)
	}
	boats, repeats, err := Match([]Given{{"b.zip", b}, {"a.zip", a}, {"again.zip", a}, {"2027.zip", later}})
	if err != nil || len(boats) != 2 || boats[0].ID != "a" || len(boats[0].Seasons) != 2 || len(boats[1].Seasons) != 1 {
		t.Errorf("boats %+v, %v", boats, err)
	}
	if len(repeats) != 1 || !strings.Contains(repeats[0], "again.zip holds the same as a.zip") {
		t.Errorf("repeats %q", repeats)
	}
	grown := season(t, "a", 17)
	if _, _, err := Match([]Given{{"a.zip", a}, {"grown.zip", grown}}); err == nil ||
		!strings.Contains(err.Error(), "a.zip and grown.zip") {
		t.Errorf("two summaries of the same months: %v", err)
	}
	bare := a
	bare.Heaviest = nil
	if boats, repeats, err = Match([]Given{{"bare.zip", bare}, {"a.zip", a}}); err != nil || len(repeats) != 1 ||
		len(boats[0].Seasons[0].Heaviest) == 0 {
		t.Errorf("the same with and without the list: %v, %q", err, repeats)
	}
}

func TestListSaysAll(t *testing.T) {
	s := season(t, "blue-7", 13)
	s.People = []Person{{"boat", "Grey Heron"}}
	var buf strings.Builder
	if err := List(&buf, s); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"blue-7", "2026-07", "[6, 8)", "[0, 250)", "BLM", "56.8", "Grey Heron"} {
		if !strings.Contains(buf.String(), want) {
			t.Errorf("the list does not show %q:\n%s", want, &buf)
		}
	}
}
