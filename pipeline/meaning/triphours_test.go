package meaning

import (
	"strings"
	"testing"
)

// TestHoursOfTheTrip holds that hours which by their heading are those of the whole trip are asked about, and that
// hours trolled, or of a bare heading, are not.
func TestHoursOfTheTrip(t *testing.T) {
	for head, want := range map[string]bool{"Hours at sea": true, "Trip hours": true, "Horas en mar": true,
		"Hours": false, "Hours trolled": false, "Hours lines in water that day": false} {
		asked := askedOf(t, "Date|"+head+"|Lines|Knots|Bites|Boated\n2026-06-01|8|4|7|3|1\n2026-06-02|9|4|7|0|0\n"+
			"2026-06-03|8.5|5|7|2|2")
		if _, got := asked[head]; got != want {
			t.Errorf("%s: asked %v", head, asked)
		}
	}
}

// TestGearLost holds that lures lost are asked about: a lure that is gone need have had no fish on.
func TestGearLost(t *testing.T) {
	for head, want := range map[string]bool{"Lures lost": true, "Leaders lost": true, "Lost": false,
		"Fish lost": false} {
		asked := askedOf(t, "Date|In|Out|Lines|Knots|Bites|"+head+"|Boated\n2026-06-01|06:00|11:00|4|7|3|1|1\n"+
			"2026-06-02|06:00|11:30|4|7|1|0|0\n2026-06-03|06:10|11:00|5|7|2|0|2\n2026-06-04|06:10|11:00|5|7|2|1|1")
		if got := strings.Contains(asked[head], "aside"); got != want {
			t.Errorf("%s: asked %v", head, asked)
		}
	}
}
