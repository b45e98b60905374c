package proof

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"

	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
)

// Question is something that only the log's owner can settle.
type Question struct {
	ID      string
	Kind    string
	Sheet   string
	About   string   // the heading, or the rows
	Text    string   // in the owner's words
	Options []string // what it may be; empty where the log itself must be mended
	Totals  []string // what each option makes of the log's totals; empty where they were not worked out
	Effect  []string // the totals that rest on it

	Brief   string                // the text without cells, files and sheets
	Choices []string              // what reading makes of each option
	Taken   string                // of a heading: what it is read as
	of      []*meaning.Understood // the blocks that it is about
	listed  []*meaning.Understood // of two tellings: those with rows of strikes
	rows    []int64               // of them, that an answer may leave out
	cell    plan.Cell             // of the first of them, that an answer may fill
	cells   map[plan.Cell]string  // several that an answer fills, with what
	column  *plan.Binding         // under which that is, or whose words are asked about
	trips   map[int64]string      // of rows, that an answer may name
	left    []left                // rows of several blocks that an answer may leave out
	unread  bool                  // of a heading whose cells read as none of its options
	word    string                // of that column, in lower case
	words   []string              // or several
	off     map[int64]float64     // seconds of rows that an answer may take off
}

// The totals that may rest on a question.
var (
	hours   = []string{"boat_hours", "line_hours", "bands"}
	lines   = []string{"line_hours", "bands"}
	bites   = []string{"strikes", "hooked", "landed", "released", "bands"}
	all     = []string{"trips", "boat_hours", "line_hours", "strikes", "hooked", "landed", "released", "bands", "fish"}
	listing = []string{"strikes", "hooked", "landed", "released", "bands", "fish"}
)

// Shown are the options with what each makes of the totals.
func (q *Question) Shown() []string {
	out := slices.Clone(q.Options)
	for i, t := range q.Totals {
		if t != "" && i < len(out) {
			out[i] += ": " + t
		}
	}
	return out
}

// weight orders questions: what moves line-hours and strikes most comes first.
func (q *Question) weight() int {
	w := len(q.Effect)
	for _, e := range q.Effect {
		if e == "line_hours" || e == "strikes" || e == "boat_hours" {
			w += 10
		}
	}
	if len(q.Options) < 2 {
		w -= 20 // there is nothing to choose between
	}
	return w
}

// id names a question by what it is of and the headings that it is about, so that next
// year's log of the same hand has the same one.
func id(kind string, about ...string) string {
	h := sha256.Sum256([]byte(strings.ToLower(kind + "\x00" + strings.Join(about, "\x00"))))
	return "q" + hex.EncodeToString(h[:3])
}

// ordered puts the weightiest first; the same one of several blocks is asked once.
func ordered(qs []Question) []Question {
	var out []Question
	for _, q := range qs {
		i := slices.IndexFunc(out, func(o Question) bool { return o.ID == q.ID })
		if i < 0 {
			out = append(out, q)
			continue
		}
		for _, e := range q.Effect {
			if !slices.Contains(out[i].Effect, e) {
				out[i].Effect = append(slices.Clone(out[i].Effect), e)
			}
		}
		out[i].of = append(out[i].of, q.of...)
	}
	slices.SortStableFunc(out, func(a, b Question) int { return b.weight() - a.weight() })
	return out
}
