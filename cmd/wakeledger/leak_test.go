package main

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/pipeline/species"
	"wakeledger/reports"
	"wakeledger/testdata/seasons"
)

// closed are the columns of entries whose texts are words of a closed list. All
// other texts are secrets.
var closed = []string{"kind", "outcome", "species", "length_kind", "weight_state"}

// tell runs the program and gives its standard output; it must be done, questions open or not.
func tell(t *testing.T, args ...string) string {
	t.Helper()
	var out, notes bytes.Buffer
	if code := run(context.Background(), args, &out, &notes); code != done && code != notSettled {
		t.Fatalf("wakeledger %s: exit code %d\n%s", strings.Join(args, " "), code, &notes)
	}
	return out.String()
}

// secretsOf are the texts, positions and days of all logs of a season file, and
// the names of the logs.
func secretsOf(t *testing.T, db string) []string {
	t.Helper()
	s, err := pipeline.Open(context.Background(), db, pipeline.Config{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.DB.Close()
	found := map[string]bool{}
	for _, q := range []string{"SELECT * FROM entry ORDER BY ALL",
		"SELECT cell, file, sheet FROM set_aside ORDER BY ALL", "SELECT name FROM log ORDER BY ALL",
		"SELECT notes FROM leg ORDER BY ALL",
		"SELECT lat, lon FROM fix ORDER BY ALL LIMIT 200"} {
		eachValue(t, s, q, func(column string, v any) {
			switch v := v.(type) {
			case string:
				if !slices.Contains(closed, column) {
					found[v] = true
				}
			case float64:
				if column == "lat" || column == "lon" {
					found[fmt.Sprintf("%.2f", v)], found[fmt.Sprint(v)] = true, true
				}
			case interface{ Format(string) string }:
				found[v.Format("2006-01-02")], found[v.Format("2 January")] = true, true
			}
		})
	}
	var out []string
	for v := range found {
		out = append(out, v)
	}
	slices.Sort(out)
	return out
}

func eachValue(t *testing.T, s *pipeline.Season, query string, f func(column string, v any)) {
	t.Helper()
	rows, err := s.DB.Query(context.Background(), query)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		t.Fatal(err)
	}
	for rows.Next() {
		values, into := make([]any, len(columns)), make([]any, len(columns))
		for i := range values {
			into[i] = &values[i]
		}
		if err := rows.Scan(into...); err != nil {
			t.Fatal(err)
		}
		for i, c := range columns {
			f(c, values[i])
		}
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
}

// opened is all that a bundle says: its bytes as they are and unzipped, with its
// manifest, and every value of its tables, read by the database's own reader of
// Parquet.
func opened(t *testing.T, path string) (raw, said string) {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	s, err := pipeline.Open(context.Background(), "", pipeline.Config{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.DB.Close()
	raw = string(b)
	values := 0
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		part, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		raw, said = raw+"\n"+string(part), said+f.Name+"\n"
		if filepath.Ext(f.Name) != ".parquet" {
			said += string(part) + "\n"
			continue
		}
		name := filepath.Join(t.TempDir(), f.Name)
		if err := os.WriteFile(name, part, 0o600); err != nil {
			t.Fatal(err)
		}
		eachValue(t, s, "SELECT * FROM read_parquet('"+name+"') ORDER BY ALL", func(_ string, v any) {
			said += fmt.Sprintf("%v\n", v)
			values++
		})
	}
	if values < 20 { // counts that are not shown are none
		t.Fatalf("%d values in the bundle: it was not read", values)
	}
	return raw, said
}

var (
	code   = regexp.MustCompile(`^[A-Z]{3}$`)               // of a species, as a log may write it
	figure = regexp.MustCompile(`^[0-9]*[.,:]?[0-9]{0,3}$`) // a number of a trip, a time: found in anything
)

// holds tells whether a text is said somewhere, as a word or words of its own. A
// short one would be found in anything: it is not looked for.
func holds(where, secret string, shortest int) bool {
	if secret = strings.TrimSpace(secret); len(secret) < shortest ||
		code.MatchString(secret) || figure.MatchString(secret) {
		return false
	}
	found, err := regexp.MatchString(`(?i)(^|[^\pL\pN.])`+regexp.QuoteMeta(secret)+`($|[^\pL\pN])`, where)
	return err == nil && found
}

// shared writes the bundle, the page of the bundle, the page of the season file,
// and the list that is read first, and gives all of it as text.
func shared(t *testing.T, db string, flags ...string) (raw, said string) {
	t.Helper()
	dir := t.TempDir()
	file, page := filepath.Join(dir, "a.zip"), filepath.Join(dir, "club.html")
	tell(t, append([]string{"--db", db, "export", "club", "--id", "q7", file}, flags...)...)
	raw, said = opened(t, file)
	said += tell(t, append([]string{"--db", db, "export", "club", "--show-what-is-shared"}, flags...)...)
	for _, from := range [][]string{{file}, {"--db", db}} {
		tell(t, append(append([]string{"report", "club", "--out", page}, from...), flags...)...)
		b, err := os.ReadFile(page)
		if err != nil {
			t.Fatal(err)
		}
		said += withoutLibrary(string(b))
	}
	return raw, said
}

// withoutLibrary leaves out of a page what is the same in every page.
func withoutLibrary(html string) string {
	html = regexp.MustCompile(`(?s)<style>.*?</style>|<pre.*?</pre>|<script>.*?</script>`).ReplaceAllString(html, "")
	return html
}

// ourWords are the words of our own in a bundle and a page, which a log may use too.
func ourWords(t *testing.T) string {
	t.Helper()
	var buf bytes.Buffer
	if err := reports.Club(&buf, reports.ClubInput{Units: "metric"}); err != nil {
		t.Fatal(err)
	}
	fish, err := species.Default()
	if err != nil {
		t.Fatal(err)
	}
	names := ""
	for _, x := range fish.All() { // a species is shared under its name in our list, not as its log has it
		names += " " + x.Name + ";"
	}
	return withoutLibrary(buf.String()) + names + " season months speeds lures species sizes heaviest people merged " +
		"other not told trips strikes boated landed released legs lines"
}

// checkLeaks searches what is shared for every secret of the season file.
func checkLeaks(t *testing.T, db string) {
	t.Helper()
	secrets := secretsOf(t, db)
	raw, said := shared(t, db)
	if len(secrets) < 10 {
		t.Fatalf("%d secrets: the test shows nothing", len(secrets))
	}
	search(t, secrets, raw, said)
}

func search(t *testing.T, secrets []string, raw, said string) {
	t.Helper()
	ours := ourWords(t)
	for _, s := range secrets {
		if (holds(said, s, 3) || holds(raw, s, 6)) && !holds(ours, s, 3) {
			t.Errorf("what is shared holds %q of the logs", s)
		}
	}
}

func TestClubLeaksNothingOfTheDemo(t *testing.T) {
	db := filepath.Join(t.TempDir(), "demo.duckdb")
	logs, err := filepath.Glob("../../testdata/demo/logs/*")
	if err != nil || len(logs) == 0 {
		t.Fatal("no demo logs", err)
	}
	tell(t, append([]string{"--db", db, "load", "--ocean", "pacific"}, logs...)...)
	checkLeaks(t, db)
}

// telltale is a log with a word of its own in every text that a log can hold.
const telltaleTrips = `Trip,Boat,Date,Depart,Return,Captain,Port,Anglers,Notes
%[1]s-zqtrip,Zqboat,2026-07-%02[2]d,06:00,15:00,Zqcaptain,Zqport,Zqangler,Zqtripnote
`

const telltaleLegs = `Trip,Boat,Date,Leg,Start,End,Speed (kts),Lines out,Lat,Lon,Area,Wind,Sea state,Approach,Tangled lines,Notes,Zqowncolumn
%[1]s-zqtrip,Zqboat,2026-07-%02[2]d,zqleg%[2]d,07:00,11:00,%[3]d,2,41.234%[2]d,-128.765%[2]d,Zqarea,Zqwind,Zqsea,Zqapproach,zqtangle,"=zqnote(""x"") %[2]d",Zqcell
`

const telltaleLines = `Trip,Leg,Line,Lure,Lure wt (g),Color,Hooks,Leader
%[1]s-zqtrip,zqleg%[2]d,zqline,Zqlure,300,Zqcolour,Zqhooks,Zqleader
`

const telltaleStrikes = `Trip,Leg,Date,Time,Line,Outcome,Species,Cause of loss,Angler
%[1]s-zqtrip,zqleg%[2]d,2026-07-%02[2]d,08:00,zqline,landed,%[4]s,zqcause,Zqstriker
`

const telltaleFish = `Trip,Date,Time,Line,Species,Fork length cm,Scale weight kg,Angler
%[1]s-zqtrip,2026-07-%02[2]d,08:00,zqline,%[4]s,120,31.7,Zqweigher
`

// telltale writes the logs of n trips and loads them; crew is who struck.
func telltale(t *testing.T, n int, crew string) (db string) {
	t.Helper()
	dir := t.TempDir()
	args := []string{"--db", filepath.Join(dir, "zq.duckdb"), "load", "--zone", "UTC-9"}
	for name, form := range map[string]string{"trips": telltaleTrips, "legs": telltaleLegs, "lines": telltaleLines,
		"strikes": telltaleStrikes, "fish": telltaleFish} {
		head, row, _ := strings.Cut(form, "\n")
		text := head + "\n"
		for i := range n {
			species := "yellowfin tuna"
			if i%4 == 3 {
				species = "zqspecies"
			}
			text += strings.ReplaceAll(fmt.Sprintf(row, fmt.Sprint(i), i+1, 9+i%2, species), "Zqstriker", crew)
		}
		file := filepath.Join(dir, "zqfile-"+name+".csv")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, file)
	}
	tell(t, args...)
	return args[1]
}

func TestClubLeaksNoTelltale(t *testing.T) {
	db := telltale(t, 12, "Zqstriker")
	checkLeaks(t, db)
	secret := regexp.MustCompile(`(?i)zq\w*|41\.23\d*|128\.76\d*|2026-07-\d\d|\d+ July`)
	raw, said := shared(t, db)
	if found := secret.FindAllString(said+regexp.MustCompile(`(?i)zq\w\w\w+`).FindString(raw), -1); found != nil {
		t.Errorf("what is shared holds %q", found)
	}
	// The same search with --names: the names, and nothing else.
	want := []string{"zqangler", "zqboat", "zqcaptain", "zqstriker", "zqweigher"}
	got := map[string]bool{}
	_, said = shared(t, db, "--names")
	for _, f := range secret.FindAllString(said, -1) {
		got[strings.ToLower(f)] = true
	}
	for _, w := range want {
		if !got[w] {
			t.Errorf("--names does not show %s: the search sees nothing", w)
		}
	}
	if len(got) != len(want) {
		t.Errorf("--names shows %v, want %v", got, want)
	}
}

func TestClubLeaksNothingOfAnySeason(t *testing.T) {
	seeds := uint64(6)
	if testing.Short() {
		seeds = 1 // 'make prove' has them all
	}
	for seed := uint64(1); seed <= seeds; seed++ {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			model := seasons.New(seed)
			dir := t.TempDir()
			w, err := seasons.Write(dir, "zqlog", model, seasons.Sample(rand.New(rand.NewPCG(seed, 5)), 1)[0])
			if err != nil {
				t.Fatal(err)
			}
			db := filepath.Join(dir, "s.duckdb")
			cfg := pipeline.Config{Boat: w.Boat, Zone: model.Zone, Units: w.Units}
			if err := loadInto(db, cfg, w); err != nil {
				t.Fatal(err)
			}
			for _, boat := range boatNames(t, db) {
				checkBoatLeaks(t, db, boat)
			}
		})
	}
}

func loadInto(db string, cfg pipeline.Config, w seasons.Written) (err error) {
	ctx := context.Background()
	s, err := pipeline.Open(ctx, db, cfg)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	if _, err := s.Load(ctx, w.Files); err != nil {
		return err
	}
	return s.Derive(ctx)
}

func boatNames(t *testing.T, db string) []string {
	t.Helper()
	s, err := pipeline.Open(context.Background(), db, pipeline.Config{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.DB.Close()
	boats, err := boatsOf(context.Background(), s)
	if err != nil {
		t.Fatal(err)
	}
	return boats
}

func checkBoatLeaks(t *testing.T, db, boat string) {
	t.Helper()
	file := filepath.Join(t.TempDir(), "b.zip")
	var out, notes bytes.Buffer
	code := run(context.Background(), []string{"--db", db, "export", "club", "--boat", boat, "--id", "q7", file}, &out,
		&notes)
	if code == failed && strings.Contains(notes.String(), "fewer than 3 trips") {
		return
	}
	if code != 0 {
		t.Fatalf("export club --boat %s: exit code %d: %s", boat, code, &notes)
	}
	raw, said := opened(t, file)
	search(t, secretsOf(t, db), raw, said)
}
