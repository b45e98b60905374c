package queries

import (
	"cmp"
	"context"
	"slices"

	"wakeledger/pipeline/store"
)

// Fate is one way in which strikes ended.
type Fate struct {
	Fate    string `json:"fate"`
	Strikes int64  `json:"strikes"`
}

// The fates of strikes, in the order in which AskFates gives them. Those of a lost fish
// come from the cause as logged: see LossPart.
const (
	FateLanded    = "landed"
	FateReleased  = "released"
	FatePulled    = "hook pulled"
	FateLine      = "line broke"
	FateLeader    = "leader broke"
	FateKnot      = "knot or crimp gave"
	FateHook      = "hook failed"
	FateOther     = "lost, other cause"
	FateNoCause   = "lost, cause not logged"
	FateHooked    = "hooked, end not logged"
	FateMissed    = "missed"
	FateNotLogged = "not logged"
)

var fates = []string{FateLanded, FateReleased, FatePulled, FateLine, FateLeader, FateKnot, FateHook, FateOther,
	FateNoCause, FateHooked, FateMissed, FateNotLogged}

var lossFates = map[string]string{partLine: FateLine, partLeader: FateLeader, partKnot: FateKnot, partHook: FateHook,
	pulledHook: FatePulled, otherCause: FateOther, "": FateNoCause}

// AskFates counts all strikes of the season by how they ended, in one order; a fate that
// no strike met is left out.
func AskFates(ctx context.Context, db *store.DB) ([]Fate, error) {
	rows, err := ask[struct {
		Outcome string  `json:"outcome"`
		Hooked  bool    `json:"hooked"`
		Cause   *string `json:"loss_cause"`
		Strikes int64   `json:"strikes"`
	}](ctx, db, "fates")
	if err != nil {
		return nil, err
	}
	count := map[string]int64{}
	for _, r := range rows {
		cause := ""
		if r.Cause != nil {
			cause = *r.Cause
		}
		count[fateOf(r.Outcome, r.Hooked, cause)] += r.Strikes
	}
	var out []Fate
	for _, f := range fates {
		if count[f] > 0 {
			out = append(out, Fate{f, count[f]})
		}
	}
	return out, nil
}

func fateOf(outcome string, hooked bool, cause string) string {
	switch {
	case outcome == "landed":
		return FateLanded
	case outcome == "released":
		return FateReleased
	case outcome == "lost":
		return lossFates[LossPart(cause)]
	case outcome == "missed":
		return FateMissed
	case hooked:
		return FateHooked
	}
	return FateNotLogged
}

// Pair is the effort and the strikes where a level of one factor meets one of another.
type Pair struct {
	A, B    string
	Hours   float64 // line-hours
	Strikes int64   // that belong to them
}

// AskPairs crosses a factor of the boat (a) with one of the lines (b), both in the order
// of their levels. A strike whose line is not logged stands at "not logged" of b.
func AskPairs(ctx context.Context, db *store.DB, a, b string) ([]Pair, error) {
	across, err := ask[TripCell](ctx, db, "cells", a)
	if err != nil {
		return nil, err
	}
	lines, err := ask[TripCell](ctx, db, "cells", b)
	if err != nil {
		return nil, err
	}
	of := map[int64]string{} // the level of each line
	for _, c := range lines {
		if c.Line != 0 {
			of[c.Line] = c.Level
		}
	}
	var out []Pair
	for _, c := range across {
		level := cmp.Or(of[c.Line], "not logged")
		at := slices.IndexFunc(out, func(p Pair) bool { return p.A == c.Level && p.B == level })
		if at < 0 {
			at, out = len(out), append(out, Pair{A: c.Level, B: level})
		}
		out[at].Hours, out[at].Strikes = out[at].Hours+c.Hours, out[at].Strikes+c.Strikes
	}
	return out, nil
}
