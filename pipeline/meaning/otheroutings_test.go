package meaning

import (
	"strings"
	"testing"
)

// TestBitesOfDaysNotTrolled holds that bites of a day all of whose stretches were fished in another way are set apart,
// however each table writes its days, and though the stretches have numbers of outings too.
func TestBitesOfDaysNotTrolled(t *testing.T) {
	outings := "No|Date|Fishing|Lines in|Lines up|Rods|Knots\n1|2024-03-02|trolling|06:30|09:00|4|8\n" +
		"|2024-03-02|anchored|09:30|11:00|3|\n2|2024-03-09|anchored|06:10|10:00|3|\n" +
		"3|2024-03-16|trolling|06:00|08:30|5|7\n" +
		"4|2024-03-23|trolling|06:20|08:30|5|7\n5|2024-03-30|trolling|06:20|08:40|4|7"
	for _, days := range []string{"2-Mar 9-Mar 16-Mar", "2024-03-02 2024-03-09 2024-03-16",
		"02/03/24 09/03/24 16/03/24"} {
		day := strings.Fields(days)
		bites := "Date|Time|Species|Outcome|Length cm\n" + day[0] + "|07:10|wahoo|lost|\n" + day[1] +
			"|07:20|snapper|landed|60\n" + day[2] + "|07:30|mahi|landed|88\n" + day[2] + "|08:05|mahi|missed|"
		l := inferred(t, "book.xlsx", nil, "Outings", outings, "Bites", bites)
		u := blockOf(l, "Bites")
		if u == nil || len(u.Plan.Apart) != 1 || !u.Plan.Apart[3] {
			t.Errorf("%s: set apart are %v, expected row 3", days, u)
		}
		if o := blockOf(l, "Outings"); o == nil || !o.Plan.Binds("trip") {
			t.Errorf("%s: the numbers that stand on the first row of each outing name none", days)
		}
	}
}

// TestBitesOfAnOutingSaidNotToTroll holds that a remark that nothing was trolled sets the fish of its outing apart.
func TestBitesOfAnOutingSaidNotToTroll(t *testing.T) {
	const outings, bites = "Trip|Date|Lines in|Lines up|Rods|Knots|Remarks\n1|2024-03-02|06:30|09:00|4|8|calm\n" +
		"2|2024-03-09|||||handlines with Ann, no trolling\n3|2024-03-16|06:00|08:30|5|7|no trolling after nine\n" +
		"3|2024-03-16|10:00|11:30|5|7|",
		"Trip|Time|Species|Outcome|Length cm\n1|07:10|wahoo|lost|\n2|07:20|snapper|landed|60\n" +
			"3|06:30|mahi|landed|88\n3|10:05|mahi|missed|"
	u := blockOf(inferred(t, "book.xlsx", nil, "Outings", outings, "Bites", bites), "Bites")
	if u == nil || len(u.Plan.Apart) != 1 || !u.Plan.Apart[3] {
		t.Errorf("set apart are %v, expected row 3", u.Plan.Apart)
	}
}

// TestWeightsWithTheirScale holds that a column of weights may say in its cells which are from a scale, even under a
// heading that is money too.
func TestWeightsWithTheirScale(t *testing.T) {
	const heads = "Fecha|Hora|Especie|Destino|Largo cm|Peso\n"
	got := summary(planOf(t, "Pesca", heads+"2024-05-03|07:10|dorado|a bordo|88|4.1 kg báscula\n"+
		"2024-05-03|08:10|wahoo|soltado||\n2024-05-10|07:40|wahoo|a bordo|120|unos 9 kg\n"+
		"2024-05-10|09:10|dorado|al hielo|70|2.6 kg báscula\n2024-05-17|07:20|dorado|en hielo||11 lb báscula"))
	if !strings.Contains(got, "outcome") || !strings.Contains(got, "scale_kg") {
		t.Errorf("%s", got)
	}
}
