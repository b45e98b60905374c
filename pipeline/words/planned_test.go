package words

import "testing"

// TestPlanned holds which titles say that a table is of what is to be fished.
func TestPlanned(t *testing.T) {
	for title, want := range map[string]bool{
		"Planned": true, "Next season": true, "Salidas: previsto": true, "Trips 2024": false, "Planer boards": false,
	} {
		if got := Planned(title); got != want {
			t.Errorf("%q: %t", title, got)
		}
	}
}
