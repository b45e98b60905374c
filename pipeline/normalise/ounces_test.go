package normalise

import (
	"strings"
	"testing"
)

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

// TestWeightOfALot holds that the weight of several fish together is none of one's, and that where it may be of one it
// is set aside.
func TestWeightOfALot(t *testing.T) {
	const text = "Date|Time|Fish|Result|No.|Weight (lb)\n2026-06-03|07:10|wahoo|boated|1|31\n" +
		"2026-06-03|08:10|wahoo|boated|1|28\n2026-06-04|07:40|wahoo|boated|3|93\n2026-06-05|07:25|wahoo|boated|2|52\n" +
		"2026-06-06|07:25|dorado|boated|1|9"
	rows := log{text: text}.read(t)
	if got := rows[2].values["scale_kg"]; got != "" || len(rows[2].problems) > 0 || rows[2].sides != 2 {
		t.Errorf("three fish together: %q kg, %d more fish, %v", got, rows[2].sides, rows[2].problems)
	}
	other := strings.NewReplacer("1|31", "1|", "1|28", "1|").Replace(text)
	if got := (log{text: other}).read(t)[2]; got.values["scale_kg"] != "" || !got.told("all of them") {
		t.Errorf("no fish to compare with: %v", got)
	}
}

// TestLengthAmongWeights holds that a length with its unit, where the weights of other fish stand, is the fish's
// length, and that a bare figure is not.
func TestLengthAmongWeights(t *testing.T) {
	rows := log{text: "Date|Time|Fish|Result|Weight\n2026-06-03|07:10|wahoo|boated|31 lb\n" +
		"2026-06-03|08:10|wahoo|boated|40 in\n2026-06-04|07:40|dorado|boated|12 lb\n" +
		"2026-06-04|08:40|dorado|boated|9000 in\n2026-06-05|07:40|dorado|boated|14 lb\n" +
		"2026-06-06|07:40|dorado|boated|18 lb\n2026-06-07|07:40|dorado|boated|22 lb"}.read(t)
	if v := rows[1].values; v["length_cm"] != "101.6" || v["scale_kg"] != "" || len(rows[1].problems) > 0 {
		t.Errorf("40 in: %v %v", v, rows[1].problems)
	}
	if v := rows[0].values; v["length_cm"] != "" || v["scale_kg"] != "14.061363" {
		t.Errorf("31 lb: %v", v)
	}
	if len(rows[3].problems) == 0 {
		t.Errorf("no fish is 9000 in long: %v", rows[3].values)
	}
}
