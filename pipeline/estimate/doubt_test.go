package estimate

import (
	"strings"
	"testing"
)

// TestDoubts: a fish of 150 x 112 cm weighs 65.1 kg by the rule (150 x 112^2 / 28901.83).
func TestDoubts(t *testing.T) {
	c := mustDefault(t)
	sound := Fish{Species: "PBF", LengthCM: 150, LengthKind: "FL", GirthCM: 112, ScaleKG: 70, WeightState: "round"}
	for _, tt := range []struct {
		change func(*Fish)
		want   string // of the checks and reasons
	}{
		{func(*Fish) {}, ""},
		{func(f *Fish) { f.ScaleKG = 154 }, "scale and tape: pounds logged as kilograms?"},
		{func(f *Fish) { f.ScaleKG = 31.8 }, "scale and tape: kilograms logged as pounds?"},
		{func(f *Fish) { f.LengthCM, f.GirthCM = 59, 44 }, "scale and tape: inches logged as centimetres?"},
		{func(f *Fish) { f.ScaleKG, f.LengthCM, f.GirthCM = 7, 280, 200 },
			"scale and tape: centimetres logged as inches?"},
		{func(f *Fish) { f.ScaleKG = 105 }, "scale and tape: differ by more than a third"},
		{func(f *Fish) { f.LengthCM, f.GirthCM, f.ScaleKG = 90, 150, 0 }, "girth and length: swapped?"},
		{func(f *Fish) { f.GirthCM, f.ScaleKG = 30, 0 }, "girth and length: 0.2 of the length"},
		{func(f *Fish) { f.LengthCM, f.GirthCM, f.ScaleKG = 400, 0, 0 },
			"long fish: longer than any bluefin on record (300 cm)"},
		{func(f *Fish) { f.LengthCM, f.ScaleKG = 0, 900 }, "heavy fish: heavier than any bluefin on record (450 kg)"},
		// 300 x 250 cm: 648.8 kg by the rule
		{func(f *Fish) { f.LengthCM, f.GirthCM, f.ScaleKG = 300, 250, 0 },
			"heavy fish: heavier than any bluefin on record (450 kg)"},
	} {
		f := sound
		tt.change(&f)
		m := MeasuresOf(f, c.Weigh(f, nil))
		m.Name, m.LongestCM, m.HeaviestKG = "bluefin", 300, 450
		got := m.Doubts()
		check, reason, _ := strings.Cut(tt.want, ": ")
		if tt.want == "" {
			if len(got) != 0 {
				t.Errorf("%+v: %+v", f, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Check != check || !strings.Contains(got[0].Reason, reason) {
			t.Errorf("%+v: %+v, want %s", f, got, tt.want)
		}
	}
}
