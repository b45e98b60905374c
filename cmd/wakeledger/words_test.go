package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/spf13/cobra"

	"wakeledger/reports/terminal"
)

// smallLog is a season of one boat with a strike and a fish.
const smallLog = "Boat,Date,Start,End,Speed,Lines,Strikes,Species,Length (cm),Scale weight (kg)\n" +
	"Tansy Reach,2026-07-04,07:00,09:00,8.4,2,1,Pacific bluefin tuna,120,31\n" +
	"Tansy Reach,2026-07-05,07:00,09:00,9.4,2,0,,,\n"

// TestMistypedWords has every mistyped command, question, factor, column and flag of the
// table named with the nearest right word, as wrong usage.
func TestMistypedWords(t *testing.T) {
	file, err := filepath.Abs("../../testdata/words/mistyped.csv")
	if err != nil {
		t.Fatal(err)
	}
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.LazyQuotes = true
	table, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{"log.csv": smallLog, "map.toml": "", "tables": ""} {
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	tell(t, "load", "log.csv")
	if len(table) < 70 {
		t.Fatalf("only %d lines in the table", len(table))
	}
	for _, row := range table[1:] {
		var out, notes bytes.Buffer
		code := run(context.Background(), commandWords(row[0]), &out, &notes)
		if code != wrongUsage || !strings.Contains(strings.ToLower(notes.String()),
			"did you mean "+strings.ToLower(row[1])) {
			t.Errorf("wakeledger %s: exit code %d, want %d and %q named:\n%s", row[0], code, wrongUsage, row[1], &notes)
		}
	}
}

// commandWords are the words of a command line, with "two words" as one.
func commandWords(line string) []string {
	var words []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			words = append(words, part)
		} else {
			words = append(words, strings.Fields(part)...)
		}
	}
	return words
}

// answers are, by the command, what must be in the answer on the demo: a figure, and what it
// is of.
var answers = map[string]string{
	"ask strike-rate":           `12 to 14 kn +475\.0 [^\n]*\n(?s:.*)\nSpeed, leaning: 12 to 14 kn brought \d`,
	"ask strike-rate --by lure": `\nLure, not settled: .* Pintuck `,
	"weigh --species bluefin --ocean pacific --length 74in --girth 55in": `Use \d+\.\d lb, by the boat's own divisor\. 90 % of such fish weigh`,
	"ask scale-check":           `own divisor +\d+ `,
	"ask next-season":           `speed-band +12 to 14 kn +10 to 12 kn +\d+ +\d+ `,
	"ask failures":              `leader +all +\d+ +\d+ +\d+ +\d`,
	"ask strike-rate --by hour": `\nHour of day, not settled: .* 08:00 to 09:00\b`,
	"export club --id blue-7 --show-what-is-shared": `blue-7`,
	"ask set-aside": `7/28/20255`,
	"report years":  `2025[^<]*2026`,
}

// TestTenQuestions has every command of the README's table of questions answer on the demo.
func TestTenQuestions(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	db := demoFile(t)
	t.Chdir(t.TempDir())
	_, table, _ := strings.Cut(string(readme), "### Ten questions\n")
	asked := 0
	for _, line := range strings.Split(table, "\n") {
		_, command, ok := strings.Cut(line, "? | `wakeledger ")
		if !ok {
			continue
		}
		command, _, _ = strings.Cut(command, "`")
		asked++
		text := tell(t, append([]string{"--db", db}, commandWords(command)...)...)
		want, ok := answers[command]
		if strings.HasPrefix(command, "report") {
			page, err := os.ReadFile("years.html")
			if err != nil {
				t.Error(err)
			}
			text = string(page)
		}
		if !ok || !regexp.MustCompile(want).MatchString(text) {
			t.Errorf("wakeledger %s does not answer %q:\n%.2000s", command, want, text)
		}
	}
	if asked != 10 {
		t.Errorf("%d questions, want ten", asked)
	}
}

// TestTablesFit has the table of every question on the demo's seasons fit in 100 columns,
// and give its level, class and names in words.
func TestTablesFit(t *testing.T) {
	db := demoFile(t)
	asks := [][]string{}
	for _, q := range questions() {
		asks = append(asks, []string{q.name, "--units", "us"})
		if !q.takes.ratio {
			asks = append(asks, []string{q.name, "--units", "metric"})
		}
		if q.takes.factor {
			asks = append(asks, []string{q.name, "--by", "sea-temp", "--units", "us"},
				[]string{q.name, "--by", "lure", "--year", "2026"})
		}
	}
	for _, ask := range asks {
		text := tell(t, append([]string{"--db", db, "ask"}, ask...)...)
		if len(strings.Split(text, "\n")) < 3 {
			t.Errorf("ask %v shows nothing:\n%s", ask, text)
		}
		for _, line := range strings.Split(text, "\n") {
			if w := uniseg.StringWidth(line); w > fullWidth {
				t.Errorf("ask %v: %d columns: %s", ask, w, line)
			}
			if strings.Contains(line, "[") || strings.Contains(line, "line_hours") {
				t.Errorf("ask %v is not in words: %s", ask, line)
			}
		}
	}
	if all := tell(t, "--db", db, "ask", "trips", "--columns",
		"all"); len(strings.Split(strings.TrimSpace(all), "\n")) != 57 {
		t.Errorf("--columns all: one line a trip and one of headings are due:\n%s", all)
	}
}

// TestColumnsAreThere has the columns of every question's table among those of its rows.
func TestColumnsAreThere(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.WriteFile("log.csv", []byte(smallLog), 0o666); err != nil {
		t.Fatal(err)
	}
	tell(t, "load", "log.csv")
	for _, q := range questions() {
		names := strings.Split(strings.SplitN(tell(t, "ask", q.name, "--format", "csv"), "\n", 2)[0], ",")
		for _, c := range columnsOf(q.columns) {
			name, _, _ := strings.Cut(c, "|")
			for _, end := range strings.Split(strings.TrimSuffix(name, "%"), "..") {
				if !contains(strings.Join(names, " "), end) {
					t.Errorf("%s: its table has a column %q, its rows have %v", q.name, end, names)
				}
			}
		}
	}
}

// TestHelpFits has every page of help fit in 100 columns and name an example.
func TestHelpFits(t *testing.T) {
	var pages func(c *cobra.Command) []string
	pages = func(c *cobra.Command) (all []string) {
		if c.IsAvailableCommand() && c.Name() != "completion" {
			all = append(all, strings.TrimSpace(strings.TrimPrefix(c.CommandPath(), "wakeledger")))
			for _, sub := range c.Commands() {
				all = append(all, pages(sub)...)
			}
		}
		return all
	}
	all := pages((&app{}).root())
	if len(all) < 40 {
		t.Fatalf("only %d pages of help: %q", len(all), all)
	}
	for _, p := range all {
		text := tell(t, append(strings.Fields(p), "--help")...)
		if !strings.Contains(text, "Examples:\n  wakeledger") {
			t.Errorf("%s --help gives no example", p)
		}
		for _, line := range strings.Split(text, "\n") {
			if strings.ContainsFunc(line, isControl) || strings.Contains(line, "␀") {
				t.Errorf("%s --help holds a control character: %q", p, line)
			}
			if len([]rune(line)) > fullWidth {
				t.Errorf("%s --help: %d columns: %s", p, len([]rune(line)), line)
			}
		}
	}
}

// TestUnitsAreRemembered has questions follow the units that season was given, and JSON and
// CSV stay as they are.
func TestUnitsAreRemembered(t *testing.T) {
	t.Chdir(t.TempDir())
	if err := os.WriteFile("log.csv", []byte(smallLog), 0o666); err != nil {
		t.Fatal(err)
	}
	tell(t, "load", "log.csv")
	if text := tell(t, "ask", "fish"); !strings.Contains(text, " 31.0 ") {
		t.Errorf("no kilograms before any units are given:\n%s", text)
	}
	json := tell(t, "ask", "fish", "--format", "json")
	tell(t, "season", "--units", "us", "log.csv")
	if text := tell(t, "ask", "fish"); !strings.Contains(text, " 68.3 ") || !strings.Contains(text, "lb") {
		t.Errorf("no pounds after season --units us:\n%s", text)
	}
	if text := tell(t, "ask", "fish", "--units", "metric"); !strings.Contains(text, " 31.0 ") {
		t.Errorf("--units metric is not heard:\n%s", text)
	}
	if got := tell(t, "ask", "fish", "--format", "json"); got != json {
		t.Errorf("JSON has changed with the units:\n%s\n%s", json, got)
	}
	page, err := os.ReadFile("season.html")
	if err != nil || !bytes.Contains(page, []byte("lb")) {
		t.Errorf("the page is not in pounds: %v", err)
	}
}

func TestVerdictsAreColoured(t *testing.T) {
	type row struct {
		Factor  string `json:"factor"`
		Verdict string `json:"verdict"`
	}
	rows := []row{{"settled", "settled"}, {"lure", "leaning"}, {"hook", "not settled"}}
	var plain, coloured bytes.Buffer
	for w, paint := range map[*bytes.Buffer]func(string, string) string{&plain: nil, &coloured: paintVerdict} {
		if err := terminal.Write(w, rows, terminal.View{Width: fullWidth, Paint: paint}); err != nil {
			t.Fatal(err)
		}
	}
	want := strings.NewReplacer("settled  settled", "settled  \x1b[1;32msettled\x1b[0m", "leaning",
		"\x1b[33mleaning\x1b[0m").Replace(plain.String())
	if strings.Contains(plain.String(), "\x1b") || coloured.String() != want {
		t.Errorf("plain %q, coloured %q, want %q", &plain, &coloured, want)
	}
	screen, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0) // a terminal's own end, which is one too
	if err != nil {
		t.Logf("NO_COLOR not tried on a terminal: %v", err)
	} else {
		defer screen.Close()
		t.Setenv("TERM", "xterm")
		for word, want := range map[string]bool{"": true, "1": false} {
			t.Setenv("NO_COLOR", word)
			if got := (&app{stdout: screen}).verdictPaint() != nil; got != want {
				t.Errorf("NO_COLOR=%q on a terminal: coloured %v, want %v", word, got, want)
			}
		}
	}
	a := &app{stdout: &plain}
	if a.verdictPaint() != nil {
		t.Error("verdicts are coloured where there is no terminal")
	}
}
