package queries

import (
	"math"
	"testing"
)

func TestLossPart(t *testing.T) {
	for cause, want := range map[string]string{
		"": "", "  ": "", "pulled hook": "pulled hook", "Hook pulled at the boat": "pulled hook", "broke off": "line",
		"Break-off": "line", "line parted": "line",
		"chafed leader": "leader", "leader broke": "leader", "bitten off": "leader", "hook straightened": "hook",
		"hook broke": "hook", "Bent hook": "hook",
		"crimp failed": "knot", "knot let go": "knot", "swivel broke": "knot", "shark": "other",
		"threw the hook": "pulled hook", "spooled": "line",
	} {
		if got := LossPart(cause); got != want {
			t.Errorf("%q: %q, want %q", cause, got, want)
		}
	}
}

func hook(outcome, cause string, drag, class float64, leader string) hookup {
	h := hookup{Outcome: outcome, DragKG: &drag, ClassKG: &class}
	if cause != "" {
		h.LossCause = &cause
	}
	if leader != "" {
		h.Leader = &leader
	}
	return h
}

// TestDragLevels: 15 of 60 kg is 25 %, the lower edge of its level; shares leave out
// the hook-ups whose end is not known.
func TestDragLevels(t *testing.T) {
	hookups := []hookup{
		hook("landed", "", 15, 60, ""), hook("lost", "broke off", 15.2, 60, ""), hook("lost", "", 16, 60, ""),
		hook("released", "", 17, 60, ""),
		hook("not logged", "", 15, 60, ""), hook("lost", "pulled hook", 6, 24, ""), hook("lost", "shark", 30, 60, ""),
		{Outcome: "landed"}, hook("landed", "", 0, 60, ""),
	}
	got := dragOf(hookups)
	if len(got) != 3 || got[0].Level != "[25, 30)" || got[1].Level != "35 and up" || got[2].Level != "not logged" {
		t.Fatalf("%+v", got)
	}
	d := got[0]
	if d.Hookups != 6 || d.Lost != 3 || d.EndNotKnown != 2 || d.BreakOffs != 1 || d.Pulled != 1 {
		t.Errorf("%+v", d)
	}
	if *d.BreakShare != 0.25 || *d.PulledShare != 0.25 {
		t.Errorf("shares %g %g", *d.BreakShare, *d.PulledShare)
	}
	if o := got[1]; o.Lost != 1 || o.BreakOffs != 0 || o.Pulled != 0 || o.EndNotKnown != 0 {
		t.Errorf("another cause is neither: %+v", o)
	}
	if n := got[2]; n.Hookups != 2 {
		t.Errorf("%+v", n)
	}
	var all int64
	for _, l := range got {
		all += l.Hookups
	}
	if all != int64(len(hookups)) {
		t.Errorf("the levels hold %d of %d hook-ups", all, len(hookups))
	}
	if len(dragOf(nil)) != 0 {
		t.Error("levels from nothing")
	}
}

// TestFailures: leaders in the order of their strength, all of them counted, and
// Wilson's interval for 1 of 2 at 95 %: (1 + z^2/2 -/+ z sqrt(1/2 + z^2/4)) / (2 + z^2)
// with z = 1.959964, 0.0945 to 0.9055.
func TestFailures(t *testing.T) {
	got := failuresOf([]hookup{
		hook("lost", "chafed leader", 8, 37, "136 kg"), hook("landed", "", 8, 37, "136 kg"),
		hook("landed", "", 8, 37, "91 kg"), hook("lost", "", 8, 37, "91 kg"), hook("landed", "", 8, 37, ""),
	})
	at := map[string]Failure{}
	var order []string
	for _, f := range got {
		at[f.Part+" "+f.Gear] = f
		if f.Part == partLeader {
			order = append(order, f.Gear)
		}
	}
	if len(order) != 4 || order[1] != "91 kg" || order[2] != "136 kg" || order[3] != "not logged" {
		t.Errorf("%q", order)
	}
	f := at["leader 136 kg"]
	if f.Hookups != 2 || f.Known != 2 || f.Failed != 1 || *f.Share != 0.5 || math.Abs(*f.Lo-0.0945) > 5e-5 ||
		math.Abs(*f.Hi-0.9055) > 5e-5 {
		t.Errorf("%+v", f)
	}
	if a := at["leader all"]; a.Hookups != 5 || a.Known != 4 || a.Failed != 1 {
		t.Errorf("%+v", a)
	}
	if k := at["knot all"]; k.Failed != 0 || *k.Lo != 0 {
		t.Errorf("%+v", k)
	}
	if none := failuresOf(nil); len(none) != 4 || none[0].Share != nil {
		t.Errorf("%+v", none)
	}
}
