package queries

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
	"wakeledger/queries/stats"
)

// Drag is how hook-ups ended at one drag, as a part of the line class. Shares are
// of the hook-ups whose end is known: a lost one without a cause is in neither part.
type Drag struct {
	Level       string   `json:"level"` // per cent of the line class, "[25, 30)"
	Hookups     int64    `json:"hookups"`
	Lost        int64    `json:"lost"`
	EndNotKnown int64    `json:"end_not_known"` // lost without a cause, or nobody wrote down how it ended
	BreakOffs   int64    `json:"break_offs"`    // line, leader or knot parted
	BreakShare  *float64 `json:"break_off_share"`
	BreakLo     *float64 `json:"break_off_lo"` // 95 % interval, Wilson 1927
	BreakHi     *float64 `json:"break_off_hi"`
	Pulled      int64    `json:"pulled_hooks"`
	PulledShare *float64 `json:"pulled_hook_share"`
	PulledLo    *float64 `json:"pulled_hook_lo"`
	PulledHi    *float64 `json:"pulled_hook_hi"`
}

// Failure is how often one part of the gear failed, over all hook-ups ("all") or
// over those on one leader or hook rig as logged.
type Failure struct {
	Part    string   `json:"part"` // line, leader, knot, hook
	Gear    string   `json:"gear"` // "all", or the leader or hooks as logged
	Hookups int64    `json:"hookups"`
	Known   int64    `json:"end_known"` // of them, how it ended is logged
	Failed  int64    `json:"failed"`
	Share   *float64 `json:"share"` // failed / end_known
	Lo      *float64 `json:"lo"`    // 95 % interval, Wilson 1927
	Hi      *float64 `json:"hi"`
}

// Parts of the gear, and the other ways to lose a fish.
const (
	partLine   = "line"
	partLeader = "leader"
	partKnot   = "knot"
	partHook   = "hook"
	pulledHook = "pulled hook"
	otherCause = "other"
)

// causeWords tell a cause of loss by the words that crews write; the first part
// whose word is in the text is taken. Common practice, no source.
var causeWords = []struct {
	part  string
	words []string
}{
	{partHook, []string{"straighten", "bent", "opened", "hook broke", "broken hook", "broke hook",
		"hook failed", "hook snapped"}},
	{partKnot, []string{"knot", "crimp", "sleeve", "swivel", "snap swivel", "clip", "splice", "wind-on"}},
	{partLeader, []string{"leader", "chaf", "trace", "bitten", "bite", "bit off", "bit through"}},
	{pulledHook, []string{"pull", "threw", "thrown", "spat", "spit", "came off", "came out",
		"unbutton", "shook", "jumped off"}},
	{partLine, []string{"brok", "break", "part", "snap", "cut", "spool"}},
}

// LossPart is the part that failed, "pulled hook", "other", or "" where no cause is
// logged.
func LossPart(cause string) string {
	cause = strings.ToLower(strings.TrimSpace(cause))
	if cause == "" {
		return ""
	}
	for _, c := range causeWords {
		for _, w := range c.words {
			if strings.Contains(cause, w) {
				return c.part
			}
		}
	}
	return otherCause
}

// hookup is one hook-up as the gear questions see it.
type hookup struct {
	Outcome   string   `json:"outcome"`
	LossCause *string  `json:"loss_cause"`
	DragKG    *float64 `json:"drag_kg"`
	ClassKG   *float64 `json:"line_class_kg"`
	Leader    *string  `json:"leader"`
	Hooks     *string  `json:"hooks"`
}

// part is what was lost by; known is false where the log does not tell how the
// hook-up ended.
func (h hookup) part() (part string, known bool) {
	switch h.Outcome {
	case "landed", "released":
		return "", true
	case "lost":
		if h.LossCause != nil {
			part = LossPart(*h.LossCause)
		}
		return part, part != ""
	}
	return "", false
}

// drag are the lower edges of the levels of drag, in per cent of the line class.
func drag() []float64 { return factors.Of(factors.Drag).Classes.Edges }

// dragLevel is the level of a hook-up and its order.
func (h hookup) dragLevel() (string, int) {
	if h.DragKG == nil || h.ClassKG == nil || *h.DragKG <= 0 || *h.ClassKG <= 0 {
		return "not logged", len(drag())
	}
	share := math.Round(1000**h.DragKG / *h.ClassKG) / 10 // to 0.1 % before it meets an edge
	return factors.Level(drag(), share), factors.Within(drag(), share)
}

// AskDrag answers gear: break-offs and pulled hooks by drag as a part of the line
// class.
func AskDrag(ctx context.Context, db *store.DB) ([]Drag, error) {
	hookups, err := ask[hookup](ctx, db, "gear_strikes")
	return dragOf(hookups), err
}

// AskFailures answers failures: what broke per hook-up, over all and by the leader
// or the hooks it broke on.
func AskFailures(ctx context.Context, db *store.DB) ([]Failure, error) {
	hookups, err := ask[hookup](ctx, db, "gear_strikes")
	return failuresOf(hookups), err
}

func dragOf(hookups []hookup) []Drag {
	levels := make([]Drag, len(drag())+1)
	for _, h := range hookups {
		name, at := h.dragLevel()
		d := &levels[at]
		d.Level = name
		d.Hookups++
		if h.Outcome == "lost" {
			d.Lost++
		}
		switch part, known := h.part(); {
		case !known:
			d.EndNotKnown++
		case part == partLine || part == partLeader || part == partKnot:
			d.BreakOffs++
		case part == pulledHook:
			d.Pulled++
		}
	}
	levels = slices.DeleteFunc(levels, func(d Drag) bool { return d.Hookups == 0 })
	for i := range levels {
		d := &levels[i]
		d.BreakShare, d.BreakLo, d.BreakHi = wilson(d.BreakOffs, d.Hookups-d.EndNotKnown)
		d.PulledShare, d.PulledLo, d.PulledHi = wilson(d.Pulled, d.Hookups-d.EndNotKnown)
	}
	return levels
}

func failuresOf(hookups []hookup) []Failure {
	out := []Failure{}
	for _, part := range []string{partLine, partLeader, partKnot, partHook} {
		out = append(out, failure(part, "all", hookups))
		for _, gear := range gearNames(part, hookups) {
			on := slices.DeleteFunc(slices.Clone(hookups), func(h hookup) bool { return h.gear(part) != gear })
			out = append(out, failure(part, gear, on))
		}
	}
	return out
}

func failure(part, gear string, hookups []hookup) Failure {
	f := Failure{Part: part, Gear: gear, Hookups: int64(len(hookups))}
	for _, h := range hookups {
		p, ok := h.part()
		if ok {
			f.Known++
		}
		if p == part {
			f.Failed++
		}
	}
	f.Share, f.Lo, f.Hi = wilson(f.Failed, f.Known)
	return f
}

// gear is the leader or the hooks of a hook-up as logged, by the part asked about.
func (h hookup) gear(part string) string {
	name := map[string]*string{partLeader: h.Leader, partHook: h.Hooks}[part]
	if name == nil || *name == "" {
		return "not logged"
	}
	return *name
}

// gearNames are the leaders or hooks in the log, in order, what is not logged last;
// none for the parts that a log does not name.
func gearNames(part string, hookups []hookup) []string {
	var names []string
	if part != partLeader && part != partHook {
		return nil
	}
	for _, h := range hookups {
		if g := h.gear(part); g != "not logged" && !slices.Contains(names, g) {
			names = append(names, g)
		}
	}
	slices.SortFunc(names, natural)
	if slices.ContainsFunc(hookups, func(h hookup) bool { return h.gear(part) == "not logged" }) {
		names = append(names, "not logged")
	}
	return names
}

// natural orders "91" before "136": by the number that a name begins with, then by
// the name.
func natural(a, b string) int {
	var x, y float64
	na, _ := fmt.Sscanf(a, "%g", &x)
	nb, _ := fmt.Sscanf(b, "%g", &y)
	switch {
	case na == 1 && nb == 1 && x != y:
		if x < y {
			return -1
		}
		return 1
	case na != nb:
		return nb - na
	}
	return strings.Compare(a, b)
}

// wilson is a share with its 95 % interval; nil without cases.
func wilson(r, n int64) (share, lo, hi *float64) {
	s, iv, ok := stats.Wilson(r, n, confidence)
	if !ok {
		return nil, nil, nil
	}
	return &s, &iv.Lo, &iv.Hi
}
