package normalise

import "testing"

// TestDashedOunces reads two numbers in a cell as pounds and ounces in a column of such.
func TestDashedOunces(t *testing.T) {
	rows := log{text: "Date|Time|Fish|Result|Weight (lb)\n2026-06-03|07:10|wahoo|boated|31-14\n" +
		"2026-06-03|08:10|wahoo|boated|28-0\n2026-06-04|07:40|dorado|boated|9-12"}.read(t)
	for i, want := range []string{"14.458257", "12.700586", "4.422526"} {
		if got := rows[i].values["scale_kg"]; got != want {
			t.Errorf("row %d: %s kg, expected %s: %v", i, got, want, rows[i].problems)
		}
	}
}
