package phrase

import "testing"

// TestLengthBehindItsKind holds that a bare number behind a word for how a length was taken is a length, and no weight
// and no count of what was let go, and that the number before that word keeps the list's unit.
func TestLengthBehindItsKind(t *testing.T) {
	kilos := Defaults{WeightUnit: "kg", TapeUnit: "cm"}
	for text, want := range map[string][2]float64{
		"spearfish LJ 180 released":    {180, 0},
		"1 mahi 7.4 FL 98":             {98, 7.4},
		"mahi 7.4":                     {0, 7.4},
		"marlin lower jaw 210, let go": {210, 0},
	} {
		fish := FishList(text, kilos)
		if len(fish) != 1 || fish[0].N != 1 || fish[0].LengthCm != want[0] || fish[0].Kg != want[1] {
			t.Errorf("%q: %+v, want %v", text, fish, want)
		}
	}
	inches := FishList("mahi FL 40", Defaults{WeightUnit: "lb", TapeUnit: "in"})
	if len(inches) != 1 || inches[0].LengthCm < 101 || inches[0].LengthCm > 102 {
		t.Errorf("%+v", inches)
	}
}

// TestLinesOfThem holds that a number "of them" behind the rods that go in is how many they are, and no number of fish.
func TestLinesOfThem(t *testing.T) {
	for text, want := range map[string]int{"wahoo rods in, 3 of them, 14 kts": 3, "small lines out 5 of em": 5,
		"tuna under the birds, lost 3 of them": 0} {
		got := 0
		if n := Settings(text).Lines; len(n) == 1 {
			got = n[0]
		}
		if got != want {
			t.Errorf("%q: %d lines, want %d", text, got, want)
		}
	}
}
