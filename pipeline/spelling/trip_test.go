package spelling

import "testing"

// TestTrip holds spellings of one label to be one, and labels that differ otherwise to be two.
func TestTrip(t *testing.T) {
	for label, want := range map[string]string{"01": "1", "Trip 3": "3", "trip #07": "7",
		"NC25-01": "nc25-1", "T10": "t10",
		"#4": "4", "No. 12": "12", "Saída 2": "2", "2024-05": "2024-5", "0": "0", "100": "100", "1.05": "1.05",
		"Trip to the canyon": "trip to the canyon", " A1 ": "a1", "10b": "10b"} {
		if got := Trip(label); got != want {
			t.Errorf("Trip(%q) is %q, expected %q", label, got, want)
		}
	}
}
