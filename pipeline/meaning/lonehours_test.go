package meaning

import "testing"

// TestLoneHours holds that cells of one time each, some of which no clock shows, are hours and no times of trolling.
func TestLoneHours(t *testing.T) {
	if v := valuesOf(t, "Horas a corricar", "3h45", "7h15", "5h"); !v.loneHours() {
		t.Error("hours are taken for times")
	}
	if v := valuesOf(t, "Traine", "3h45", "6h15-9h", "5h"); v.loneHours() {
		t.Error("times are taken for hours")
	}
	log := inferred(t, "log", nil, "", "Data|Horas a corricar|Canas|Nós|O que gritou\n"+
		"20/05/2023|3h45|5|8|10h30 wahoo ferrado e foi-se. 11h05 dourado dentro, 108 cm\n"+
		"26/05/2023|7h15|6|7.5|10h36 gaiado dentro, 61 cm. 11h31 bateu no shotgun e não ferrou\n"+
		"03/06/2023|5h|4|6.5|10h11 wahoo dentro, 13 kg")
	if b := log.Data()[0].Plan.Find("duration_s"); b == nil || b.Heading != "Horas a corricar" {
		t.Errorf("%v", bound(log.Data()[0].Plan))
	}
}
