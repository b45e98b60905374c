package meaning

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/sheet"
)

// corpusFile is one file of a log of the corpus, whose columns' meanings are taken as known:
// the log's totals prove them.
type corpusFile struct {
	log, name string
	grids     []*layout.Grid
	means     map[string]string // by hidden heading: sheet, block and column
}

// rightLogs are the logs of the corpus that are read right, by their folders' names.
func rightLogs(t testing.TB) []string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", "right.txt"))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Fields(string(b))
}

// readCorpus reads the files of logs that are read right, with the meaning of each column as
// it is read with its heading.
func readCorpus(t testing.TB, logs []string) []*corpusFile {
	t.Helper()
	l := lexicon(t)
	var out []*corpusFile
	for _, name := range logs {
		dir := filepath.Join("..", "..", "testdata", "corpus", name)
		b, err := os.ReadFile(filepath.Join(dir, "truth.json"))
		if err != nil {
			t.Fatal(err)
		}
		var truth struct{ Files []string }
		if err := json.Unmarshal(b, &truth); err != nil {
			t.Fatal(name, err)
		}
		for _, file := range truth.Files {
			book, err := sheet.Open(filepath.Join(dir, file), sheet.Options{Details: true})
			if err != nil {
				t.Logf("%s/%s: %v", name, file, err)
				continue
			}
			f := &corpusFile{log: name, name: file, means: map[string]string{}}
			for i, info := range book.Sheets() {
				g, err := layout.Read(book, i, 1000)
				if err == nil && len(g.Rows) > 0 && !info.Hidden {
					f.grids = append(f.grids, g)
				}
			}
			book.Close()
			for _, u := range l.Infer(file, f.sheets(l), nothingSaid, nil).Data() {
				if u.Block.Shape != layout.Table {
					continue
				}
				seen := map[string]int{}
				for i, k := range u.columns {
					means := meaningOf(u.b.group.cands[k][u.choice[k]])
					if slices.Contains([]string{"catch", "rod", "spread"}, means) ||
						len(u.b.group.values[k].cells) < 3 {
						continue // their heading is part of what they say
					}
					if seen[means]++; seen[means] <= 2 { // of a form's five fish two are enough
						f.means[hidingKey(u.Block, i)] = means
					}
				}
			}
			out = append(out, f)
		}
	}
	return out
}

func hidingKey(b *layout.Block, label int) string {
	return fmt.Sprint(b.Grid.Index, " ", b.Heads, " ", b.Labels[label].Col)
}

func (f *corpusFile) sheets(l *Lexicon) []*layout.Sheet {
	var out []*layout.Sheet
	for _, g := range f.grids {
		out = append(out, layout.Take(g, layout.Likeness{Label: l.Label, Key: l.Key}))
	}
	return out
}

// hiding is a way in which headings are hidden: what is left of the nth.
type hiding struct {
	name string
	hide func(n int, l layout.Label) bool
	cut  int // letters that are left

	got, other float64 // the least and the most share of the columns
}

var hidings = []hiding{
	{"none", func(int, layout.Label) bool { return false }, 0, 1, 0},
	{"half", func(n int, _ layout.Label) bool { return n%2 == 0 }, 0, 0.6, 0.03},
	{"other half", func(n int, _ layout.Label) bool { return n%2 == 1 }, 0, 0.6, 0.03},
	{"two letters", func(int, layout.Label) bool { return true }, 2, 0.55, 0.12},
	{"all", func(int, layout.Label) bool { return true }, 0, 0.6, 0.03},
}

// counts of what became of columns: they got their meaning, were asked about, were left without
// one in silence, or taken for something else in silence.
type hiddenCounts struct {
	got, asked, left, other int
	lost                    map[string]int // what was taken for what
}

func (c *hiddenCounts) add(o hiddenCounts) {
	c.got, c.asked, c.left, c.other = c.got+o.got, c.asked+o.asked, c.left+o.left, c.other+o.other
	for k, n := range o.lost {
		c.note(k, n)
	}
}

func (c *hiddenCounts) note(what string, n int) {
	if c.lost == nil {
		c.lost = map[string]int{}
	}
	c.lost[what] += n
}

func (c hiddenCounts) String() string {
	n := max(1, c.got+c.asked+c.left+c.other)
	return fmt.Sprintf("%5d columns: %5.1f %% got their meaning, %5.1f %% asked about, %5.1f %% left without one, "+
		"%5.1f %% something else",
		n, 100*float64(c.got)/float64(n), 100*float64(c.asked)/float64(n), 100*float64(c.left)/float64(n),
		100*float64(c.other)/float64(n))
}

// hidden reads a file with headings hidden, and counts the columns that totals rest on.
func (f *corpusFile) hidden(l *Lexicon, h hiding) hiddenCounts {
	sheets := f.sheets(l)
	was := map[*layout.Block][]bool{}
	for _, s := range sheets {
		words := map[string]string{}
		for i := range s.Blocks {
			b := &s.Blocks[i]
			if b.Shape != layout.Table {
				continue
			}
			hid := make([]bool, len(b.Labels))
			for j := range b.Labels {
				label := &b.Labels[j]
				if !h.hide(j, *label) {
					continue
				}
				hid[j] = true
				full := normalise(label.Full())
				if words[full] == "" {
					n := len(words)
					words[full] = "zq" + string(rune('a'+n/26%26)) + string(rune('a'+n%26))
				}
				if h.cut > 0 && len([]rune(label.Text)) > h.cut {
					label.Text = string([]rune(label.Text)[:h.cut])
				} else if h.cut == 0 {
					label.Text = words[full]
				}
				label.Group, label.Unit = "", ""
			}
			was[b] = hid
		}
	}
	log := l.Infer(f.name, sheets, nothingSaid, nil)
	asked := map[string]bool{}
	key := func(g *group, heading string, nth int) string { return fmt.Sprintf("%p %s %d", g, heading, nth) }
	open := log.Open()
	var c hiddenCounts
	for _, u := range log.Blocks {
		g := u.b.group
		for _, o := range open {
			if slices.Equal(o.Labels, g.labels()) {
				asked[key(g, o.Heading, o.Nth)] = true
			}
		}
		for i, k := range u.columns {
			want, known := f.means[hidingKey(u.Block, i)]
			if !known || h.name != "none" && !was[u.Block][i] {
				continue
			}
			got := meaningOf(g.cands[k][u.choice[k]])
			if u.Plan.Kind == "" || u.Proof {
				got = ""
			}
			switch {
			case !slices.Contains(weighty, want) && !slices.Contains(weighty, got) &&
				!slices.Contains(alsoWeighty, want):
			case same(want, got):
				c.got++
			case asked[key(g, headingOf(g.values[k].Label), g.nth(k))]:
				c.asked++
				c.note("asked: "+want+" as "+got, 1)
			case got == "" || got == "aside" || got == "notes":
				c.left++
				c.note(want+" left", 1)
			default:
				c.other++
				c.note(want+" as "+got, 1)
			}
		}
	}
	return c
}

var alsoWeighty = []string{"species", "time_s", "line", "count", "leg", "line_hours", "story", "fishlist"}

// same tells meanings that come to the same; nothing is as good as remarks.
func same(a, b string) bool {
	plain := func(s string) string {
		switch s {
		case "strike_speed_kn":
			return "speed_kn"
		case "aside", "notes", "area":
			return ""
		}
		return s
	}
	return plain(a) == plain(b) || sameEffect("", a, b)
}

// TestHiddenHeadings measures how often columns still get their meaning when nothing or little
// is left of their headings: cells and neighbours must do. What they do not settle is asked
// about, and hardly ever taken for something else in silence. ALL=1 reads every log that is
// read right, ONLY those of a name, LOST=1 tells what went astray.
func TestHiddenHeadings(t *testing.T) {
	logs := rightLogs(t)
	if os.Getenv("ALL") == "" {
		var some []string
		for i, name := range logs {
			if i%16 == 3 {
				some = append(some, name)
			}
		}
		logs = some
	}
	if only := os.Getenv("ONLY"); only != "" {
		logs = slices.DeleteFunc(logs, func(s string) bool { return !strings.Contains(s, only) })
	}
	files := readCorpus(t, logs)
	for _, h := range hidings {
		var c hiddenCounts
		for _, f := range files {
			x := f.hidden(lexicon(t), h)
			if os.Getenv("ONLY") != "" {
				t.Logf("%s %s %s: %v %v", f.log, f.name, h.name, x, x.lost)
			}
			c.add(x)
		}
		t.Logf("%-12s %v", h.name, c)
		n := float64(c.got + c.asked + c.left + c.other)
		if got, other := float64(c.got)/n, float64(c.other)/n; got < h.got || other > h.other {
			t.Errorf("%s: %.3f got their meaning, expected %.2f; %.3f something else, expected %.2f at most",
				h.name, got, h.got, other, h.other)
		}
		if os.Getenv("LOST") != "" {
			var all []string
			for k := range c.lost {
				all = append(all, k)
			}
			slices.SortFunc(all, func(a, b string) int {
				return c.lost[b]*1000 - c.lost[a]*1000 +
					strings.Compare(a, b)
			})
			for _, k := range all[:min(len(all), 40)] {
				t.Logf("    %4d %s", c.lost[k], k)
			}
		}
	}
}

// value is what a reading of columns is worth: a meaning in silence that is not theirs costs
// most, a question little.
func (c hiddenCounts) value() float64 {
	return float64(c.got) + 0.3*float64(c.asked) - 2*float64(c.other)
}

// TestWorth measures what each piece of evidence is worth: how many columns whose headings are
// hidden get their meaning without it, and which factor suits best, each writer's logs judged by
// the factors of the others. It takes minutes: LEARN=1 runs it, LEARN=0 a shorter one.
func TestWorth(t *testing.T) {
	if os.Getenv("LEARN") == "" {
		t.Skip("LEARN is not set: it takes minutes")
	}
	var logs []string
	for i, name := range rightLogs(t) {
		if i%8 == 2 {
			logs = append(logs, name)
		}
	}
	files := readCorpus(t, logs)
	const folds = 3
	type result struct {
		all   hiddenCounts
		value [folds]float64
	}
	run := func() (r result) {
		for _, h := range hidings[:3] {
			for i, f := range files {
				c := f.hidden(lexicon(t), h)
				if h.name == "none" {
					r.value[i%folds] -= 5 * float64(c.asked+c.left+c.other)
					continue
				}
				r.all.add(c)
				r.value[i%folds] += c.value()
			}
		}
		return r
	}
	base := run()
	t.Logf("%-36s %v", "all evidence", base.all)
	names := []string{"words", "no word", "cells", "unit"}
	for _, r := range relations {
		names = append(names, r.name)
	}
	for _, name := range names {
		was, listed := worths[name]
		if !listed {
			was = 1
		}
		factors := []float64{0, 0.7, 1.4}
		if slices.Contains(names[:4], name) {
			factors = []float64{0.6, 0.8, 1.3}
		}
		if os.Getenv("LEARN") == "0" && !slices.Contains(names[:4], name) {
			factors = factors[:1] // what each is worth alone
		}
		for _, f := range factors {
			worths[name] = f * was
			x := run()
			var gain [folds]float64
			for i := range gain {
				gain[i] = x.value[i] - base.value[i]
			}
			t.Logf("%-36s x %.1f: %+5.1f %v, %v", name, f, x.all.value()-base.all.value(), gain, x.all)
		}
		delete(worths, name)
		if listed {
			worths[name] = was
		}
	}
}
