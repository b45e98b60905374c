package unit_test

import (
	"testing"

	"wakeledger/pipeline/unit"
)

func BenchmarkParseNumber(b *testing.B) {
	for name, text := range map[string]string{"plain": "187.5", "integer": "12", "comma": "187,5", "grouped": "1 234,5",
		"exponent": "1.0416E-2", "text": "yellow"} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = unit.ParseNumber(text, unit.MarkUnknown)
			}
		})
	}
}

func BenchmarkParseMoment(b *testing.B) {
	for name, text := range map[string]string{"clock": "22:30", "bare": "2230", "iso": "2026-06-25",
		"iso_clock": "2026-06-25 22:30", "meridiem": "10:30 pm", "slashed_clock": "25/06/2026 22:30",
		"named": "25 Jun 2026 22:30", "text": "yellow"} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = unit.ParseMoment(text, unit.OrderUnknown)
			}
		})
	}
}

func BenchmarkParseQuantity(b *testing.B) {
	for name, text := range map[string]string{"bare": "187.5", "unit": "187 lb", "folded": "187 LBS."} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				_, _ = unit.ParseQuantity(text, unit.Mass, unit.Pound, unit.MarkUnknown)
			}
		})
	}
}

// TestNoAllocation: a large log holds tens of millions of these cells.
func TestNoAllocation(t *testing.T) {
	parsers := map[string]func(string){
		"number":   func(s string) { _, _ = unit.ParseNumber(s, unit.MarkUnknown) },
		"quantity": func(s string) { _, _ = unit.ParseQuantity(s, unit.Mass, unit.Pound, unit.MarkUnknown) },
		"moment":   func(s string) { _, _ = unit.ParseMoment(s, unit.DayFirst) },
	}
	cells := map[string][]string{
		"number":   {"12", "-187.5", "187,5", "1 234,5", "1.0416E-2", "yellow"},
		"quantity": {"187", "187.5", "187 lb", "187 LBS."},
		"moment": {"2026-06-25", "22:30", "2230", "2026-06-25 22:30:15", "10:30 pm", "25/06/2026",
			"25/06/2026 22:30", "yellow"},
	}
	for name, parse := range parsers {
		for _, s := range cells[name] {
			if n := testing.AllocsPerRun(100, func() { parse(s) }); n != 0 {
				t.Errorf("%s %q: %v allocations, want none", name, s, n)
			}
		}
	}
}
