package meaning

import "testing"

// TestBehindNumbered reads headings that come again behind numbered ones as those of a first and a second fish, and
// leaves them where they do not come again alike.
func TestBehindNumbered(t *testing.T) {
	const row = "2026-06-0#|6:30|9:00|5|7|2|mahi|94|7.2|kept|king|50|4|released\n"
	rows := ""
	for _, d := range "12345" {
		rows += "2026-06-0" + string(d) + row[len("2026-06-0#"):]
	}
	const head = "Date|In|Up|Rods|Knots|Bites|"
	for fish, want := range map[string]int{"Fish 1|cm|kg|Result|Fish 2|cm|kg|Result\n": 2,
		"Fish 1|cm|kg|Result|Fish 2|kg|cm|Result\n": 0} {
		p := planOf(t, "log", head+fish+rows)
		n := 0
		for _, b := range p.Bindings {
			if b.Column.Name == "length_cm" || b.Column.Name == "outcome" {
				n = max(n, b.Set+1)
			}
		}
		if want > 0 && n != want || want == 0 && n > 1 {
			t.Errorf("%s: %d of a kind, expected %d", fish, n, want)
		}
	}
}
