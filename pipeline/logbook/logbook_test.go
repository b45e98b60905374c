package logbook_test

import (
	"archive/zip"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/logbook"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/species"
)

func blank(t *testing.T, units string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "blank.xlsx")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := logbook.Blank(f, units); err != nil {
		t.Fatal(err)
	}
	return name
}

// lists are the lists that logs are read with.
func lists(t *testing.T) *meaning.Lexicon {
	t.Helper()
	fish, err := species.Default()
	if err != nil {
		t.Fatal(err)
	}
	lexicon, err := meaning.Default(fish)
	if err != nil {
		t.Fatal(err)
	}
	return lexicon
}

// read reads every sheet of a book. It fails on a heading that is not understood, and
// returns the rows kept and passed over by sheet.
func read(t *testing.T, name string) (kept, skipped map[string]int, problems []record.Problem) {
	t.Helper()
	lexicon := lists(t)
	book, err := sheet.Open(name, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	var sheets []*layout.Sheet
	for i := range book.Sheets() {
		g, err := layout.Read(book, i, 1000)
		if err != nil {
			t.Fatal(err)
		}
		sheets = append(sheets, layout.Take(g, layout.Likeness{Label: lexicon.Label,
			Key: lexicon.Key, Event: lexicon.Event}))
	}
	kept, skipped = map[string]int{}, map[string]int{}
	for _, u := range lexicon.Infer(filepath.Base(name), sheets,
		func(string, int) meaning.Said { return meaning.Said{} }, nil).Data() {
		understood(t, u.Plan)
		info := u.Block.Grid.Info
		r, err := normalise.New(u.Plan, info, record.Pos{File: "blank.xlsx", Sheet: info.Name}, &normalise.Evidence{},
			normalise.Settings{Species: lexicon.Species})
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range u.Block.Rows {
			values, skip, bad := r.Row(rowOf(row))
			problems = append(problems, bad...)
			switch {
			case values == nil && len(bad) > 0:
			case skip != normalise.NotASkip:
				skipped[info.Name]++
			default:
				kept[info.Name]++
			}
		}
	}
	return kept, skipped, problems
}

// understood holds that a sheet is of the kind that its name says, with each heading known.
func understood(t *testing.T, p *plan.Block) {
	t.Helper()
	if len(p.Unknown) > 0 {
		t.Errorf("sheet %s: headings not understood: %v", p.Name, p.Unknown)
	}
	if want := strings.ToLower(p.Name); string(p.Kind) != want {
		t.Errorf("sheet %s was taken for %s", p.Name, p.Kind)
	}
}

func rowOf(row layout.Row) *sheet.Row {
	r := &sheet.Row{Num: row.Num, Merged: row.Merged}
	for _, c := range row.Cells {
		r.Cells = append(r.Cells, c.Text)
	}
	return r
}

func TestTheEmptyBookHoldsNothing(t *testing.T) {
	for _, units := range []string{"us", "metric"} {
		kept, skipped, problems := read(t, blank(t, units))
		if len(problems) > 0 || len(kept) > 0 {
			t.Errorf("%s: kept %v, problems %v", units, kept, problems)
		}
		for _, s := range []string{"Trips", "Legs", "Lines", "Strikes", "Fish"} {
			if skipped[s] != 1 {
				t.Errorf("%s: sheet %s passes over %d rows, want the example alone", units, s, skipped[s])
			}
		}
	}
	if err := logbook.Blank(io.Discard, "nautical"); err == nil {
		t.Error("units that are not known: no error")
	}
}

// Every word of every drop-down, and the example itself without its mark, must
// load.
func TestWhatTheDropDownsOfferLoads(t *testing.T) {
	name := blank(t, "us")
	f, err := excelize.OpenFile(name)
	if err != nil {
		t.Fatal(err)
	}
	offered := 0
	for _, s := range []string{"Trips", "Legs", "Lines", "Strikes", "Fish"} {
		rows, err := f.GetRows(s)
		if err != nil {
			t.Fatal(err)
		}
		example := rows[1]
		example[0] = "T1"
		put := func(row int, cells []string) {
			for i, c := range cells {
				cell, _ := excelize.CoordinatesToCellName(i+1, row)
				if err := f.SetCellStr(s, cell, c); err != nil {
					t.Fatal(err)
				}
			}
		}
		put(3, example)
		next := 4
		validations, err := f.GetDataValidations(s)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range validations {
			col, _, err := excelize.CellNameToCoordinates(strings.Split(v.Sqref, ":")[0])
			if err != nil {
				t.Fatal(err)
			}
			for _, word := range strings.Split(strings.Trim(v.Formula1, `"`), ",") {
				row := append([]string(nil), example...)
				for len(row) < col {
					row = append(row, "")
				}
				row[col-1] = word
				put(next, row)
				next++
				offered++
			}
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	kept, _, problems := read(t, name)
	total := 0
	for _, n := range kept {
		total += n
	}
	if len(problems) > 0 || total != offered+5 || offered < 20 {
		t.Errorf("kept %d of %d rows, problems %v", total, offered+5, problems)
	}
}

// The drop-downs must survive another program: LibreOffice reads the book and
// writes it in its own format, in which each list can be counted.
func TestLibreOfficeKeepsTheDropDowns(t *testing.T) {
	office, err := exec.LookPath("soffice")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("LibreOffice (soffice) is needed here and was not found")
		}
		t.Skip("LibreOffice (soffice) was not found: its reading of the drop-downs is not checked here")
	}
	name := blank(t, "metric")
	dir := filepath.Dir(name)
	c := exec.Command(office, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"), "--headless",
		"--convert-to", "ods", "--outdir", dir, name)
	if out, err := c.CombinedOutput(); err != nil {
		t.Fatalf("soffice: %v\n%s", err, out)
	}
	z, err := zip.OpenReader(filepath.Join(dir, "blank.ods"))
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	content, err := z.Open("content.xml")
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(content)
	if err != nil {
		t.Fatal(err)
	}
	text := string(b)
	for _, words := range []string{"missed", "pulled hook", "kept", "lower jaw to fork",
		"gilled and gutted", "circling a school"} {
		if !strings.Contains(text, "cell-content-is-in-list") || !strings.Contains(text, "&quot;"+words+"&quot;") {
			t.Errorf("the list with %q did not survive", words)
		}
	}
}
