package proof

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"

	"wakeledger/pipeline/meaning"
)

// Question is something that only the log's owner can settle.
type Question struct {
	ID      string
	Kind    string
	Sheet   string
	About   string   // the heading, or the rows
	Text    string   // in the owner's words
	Options []string // what it may be; empty where the log itself must be mended
	Effect  []string // the totals that rest on it

	Brief   string                // the text without cells, files and sheets
	Choices []string              // what reading makes of each option
	Taken   string                // of a heading: what it is read as
	of      []*meaning.Understood // the blocks that it is about
	listed  []*meaning.Understood // of two tellings: those with rows of strikes
	rows    []int64               // of them, that an answer may leave out
}

// The totals that may rest on a question.
var (
	hours   = []string{"boat_hours", "line_hours", "bands"}
	lines   = []string{"line_hours", "bands"}
	bites   = []string{"strikes", "hooked", "landed", "released", "bands"}
	all     = []string{"trips", "boat_hours", "line_hours", "strikes", "hooked", "landed", "released", "bands", "fish"}
	listing = []string{"strikes", "hooked", "landed", "released", "bands", "fish"}
)

// weight orders questions: what moves line-hours and strikes most comes first.
func (q *Question) weight() int {
	w := len(q.Effect)
	for _, e := range q.Effect {
		if e == "line_hours" || e == "strikes" || e == "boat_hours" {
			w += 10
		}
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
