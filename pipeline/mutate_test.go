package pipeline

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/proof"
	"wakeledger/pipeline/sheet"
	"wakeledger/pipeline/unit"
)

// mutateAll hides every heading of every log of the corpus that asks nothing (minutes), and
// prints each one that changed the totals without a word.
var mutateAll = flag.Bool("mutate-all", false, "hide every heading of the corpus in turn")

// nonsense is a heading that means nothing in any tongue that is read.
const nonsense = "Kwelm"

// usually are the logs of a usual run: small ones, of counts, of fish and of both.
var usually = []string{"35-no-units", "74-japan-english", "90-fathoms", "94-effort-and-fish"}

// mostSilent is which share of the hidden headings that change a total may do so without a word.
const mostSilent = 0.1

// hiding is a book with one heading's text put in another's place.
type hiding struct {
	sheet.Book
	from, to string
	heads    map[[2]int]bool // of sheet and row number
}

func (h *hiding) Rows(i int) (sheet.Rows, error) {
	r, err := h.Book.Rows(i)
	return &hidingRows{Rows: r, of: h, sheet: i}, err
}

type hidingRows struct {
	sheet.Rows
	of    *hiding
	sheet int
	row   sheet.Row
}

func (h *hidingRows) Row() *sheet.Row {
	from := h.Rows.Row()
	if !h.of.heads[[2]int{h.sheet, from.Num}] {
		return from
	}
	h.row.CopyOf(from)
	for i, c := range h.row.Cells {
		if strings.TrimSpace(c) == h.of.from {
			h.row.Cells[i] = h.of.to
		}
	}
	return &h.row
}

// reading is what a log comes to: its totals and the totals that some question covers.
type reading struct {
	totals proof.Totals
	asked  map[string]bool
	n      int // questions
	says   []string
	heads  map[string]map[[2]int]bool // headings of its tables, with their rows
	means  map[string]string
}

// corpusLog is a log of the corpus as the test of the corpus reads it.
type corpusLog struct {
	dir                string
	Files, Flags       []string
	Ocean, Units, Zone string
}

func (c *corpusLog) season(t *testing.T) *Season {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(c.dir, "truth.json"))
	if err == nil {
		err = json.Unmarshal(b, c)
	}
	if err != nil {
		t.Fatal(err)
	}
	cfg := Config{Ocean: c.Ocean, Units: c.Units, Zone: c.Zone, Boat: "the boat"}
	if cfg.Zone == "" {
		cfg.Zone = "UTC"
	}
	for i := 0; i+1 < len(c.Flags); i += 2 {
		switch c.Flags[i+1] {
		case "day-first":
			cfg.Order = unit.DayFirst
		case "month-first":
			cfg.Order = unit.MonthFirst
		case "comma":
			cfg.Mark = unit.MarkComma
		case "us", "metric":
			cfg.Units = c.Flags[i+1]
		}
	}
	s, err := newSeason(cfg)
	if err == nil {
		s.lexicon, err = meaning.Default(s.species)
	}
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// read reads the log with a heading hidden; from "" reads it as it is. tried has the answers to
// its questions tried out, which tells what else rests on them.
func (c *corpusLog) read(s *Season, from, to string, heads map[[2]int]bool, tried bool) (*reading, error) {
	r := &reading{asked: map[string]bool{}, heads: map[string]map[[2]int]bool{}, means: map[string]string{}}
	var subjects []proof.Subject
	for _, name := range c.Files {
		path := filepath.Join(c.dir, name)
		if IsTrack(path) {
			continue
		}
		book, err := sheet.Open(path, sheet.Options{Details: true})
		if err != nil {
			return nil, err
		}
		defer book.Close()
		u, err := s.understand(&hiding{book, from, to, heads}, path, newAnswers(nil))
		if err != nil {
			return nil, err
		}
		f := &filling{understood: u, settings: s.settings(), progress: &progress{}}
		questions, err := f.answer()
		if err != nil {
			return nil, err
		}
		if tried {
			if questions, err = s.outcomes(f, path, questions); err != nil {
				return nil, err
			}
		}
		for _, q := range questions {
			if q.OfSeason() {
				continue // nothing is put together here
			}
			r.n++
			r.says = append(r.says, q.Text)
			for _, e := range q.Effect {
				r.asked[e] = true
			}
		}
		more, err := f.rehearse()
		if err != nil {
			return nil, err
		}
		subjects = append(subjects, more...)
		for _, b := range u.blocks {
			r.headings(b)
		}
	}
	r.totals = proof.TotalsOf(subjects)
	return r, nil
}

// headings are those of a table that is read, in one row.
func (r *reading) headings(b *table) {
	if b.Plan.Kind == "" || b.Proof || b.Block.Shape != layout.Table || len(b.Block.Heads) == 0 {
		return
	}
	for _, l := range b.Block.Labels {
		for _, h := range b.Block.Heads {
			row := b.Block.Grid.Rows[h]
			if l.Text == "" || l.Col >= len(row.Cells) || row.Cells[l.Col].Text != l.Text {
				continue
			}
			if r.heads[l.Text] == nil {
				r.heads[l.Text] = map[[2]int]bool{}
			}
			r.heads[l.Text][[2]int{b.Block.Grid.Index, row.Num}] = true
			if i := slices.IndexFunc(b.Plan.Bindings, func(x plan.Binding) bool { return x.Index == l.Col }); i >= 0 {
				r.means[l.Text] = b.Plan.Bindings[i].Column.Name + "/" + b.Plan.Bindings[i].Column.Parse
			}
		}
	}
}

// differs are the totals in which a reading differs from another and that none of its
// questions covers.
func (r *reading) differs(o *reading) (any bool, silent []string) {
	for _, d := range []struct {
		is   bool
		what string
	}{
		{r.totals.Days != o.totals.Days, "trips"}, {math.Abs(r.totals.Hours-o.totals.Hours) > 0.06, "boat_hours"},
		{math.Abs(r.totals.LineHours-o.totals.LineHours) > 0.06, "line_hours"},
		{math.Abs(r.totals.Miles-o.totals.Miles) > 1, "bands"},
		{r.totals.Bites != o.totals.Bites, "strikes"}, {r.totals.Hooked != o.totals.Hooked, "hooked"},
		{r.totals.Landed != o.totals.Landed, "landed"},
		{r.totals.Released != o.totals.Released, "released"}, {r.totals.Measures != o.totals.Measures, "fish"},
	} {
		if d.is {
			any = true
			if !r.asked[d.what] {
				silent = append(silent, d.what)
			}
		}
	}
	return any, silent
}

// TestHiddenHeadings puts a word that means nothing in the place of each heading of logs that
// are read without a question, one at a time: the totals stay, or a question covers what
// changed. How many may change without a word is bounded. It reads without storing: a fish or a
// stretch that two tables tell of counts as TotalsOf counts it.
func TestHiddenHeadings(t *testing.T) {
	if testing.Short() {
		t.Skip("'make prove' hides the headings")
	}
	dirs, err := filepath.Glob(filepath.Join("..", "testdata", "corpus", "*"))
	if err != nil {
		t.Fatal(err)
	}
	same, asked, silent, quiet := 0, 0, 0, 0
	for _, dir := range dirs {
		if _, err := os.Stat(filepath.Join(dir, "truth.json")); err != nil || !*mutateAll &&
			!slices.Contains(usually, filepath.Base(dir)) {
			continue
		}
		if only := os.Getenv("ONLY"); only != "" && !strings.Contains(dir, only) {
			continue
		}
		c := &corpusLog{dir: dir}
		s := c.season(t)
		as, err := c.read(s, "", "", nil, false)
		if err != nil || as.n > 0 {
			continue
		}
		quiet++
		var texts []string
		for text := range as.heads {
			texts = append(texts, text)
		}
		slices.Sort(texts)
		for _, text := range texts {
			r, err := c.read(s, text, nonsense, as.heads[text], false)
			if err != nil {
				t.Fatal(dir, text, err)
			}
			if _, said := r.differs(as); len(said) > 0 && r.n > 0 {
				if r, err = c.read(s, text, nonsense, as.heads[text], true); err != nil {
					t.Fatal(dir, text, err)
				}
			}
			switch any, said := r.differs(as); {
			case !any:
				same++
			case len(said) == 0:
				asked++
			default:
				silent++
				if *mutateAll {
					fmt.Printf("%s\t%q\t%s\t%v\t%v -> %v %q\n", filepath.Base(dir), text, as.means[text],
						said, as.totals, r.totals, r.says)
				}
			}
		}
	}
	if float64(silent) > mostSilent*float64(asked+silent) || asked == 0 {
		t.Errorf("%d of %d hidden headings change a total without a word", silent, asked+silent)
	}
	t.Logf(
		"%d logs that ask nothing, a heading hidden at a time: %d the same, %d asked, %d other totals without a word",
		quiet, same, asked, silent)
}
