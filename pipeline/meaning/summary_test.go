package meaning

import "testing"

// TestSummed holds a table whose sums are those of the log's rows to be no data, and one that
// has sums of its own to be data.
func TestSummed(t *testing.T) {
	const rows = "Date|Start|End|Knots|Bites|Kept\n2026-06-03|06:00|08:00|8|3|2\n2026-06-04|06:00|08:00|9|4|1\n" +
		"2026-06-05|06:00|08:00|8|5|4\n2026-06-06|06:00|08:00|9|1|0\n2026-06-07|06:00|08:00|8|2|1\n2026-06-08|06:00|08:00|9|3|2"
	for _, c := range []struct {
		what, table string
		want        bool
	}{
		{"sums by speed", "Knots|Bites|Kept\n8|10|7\n9|8|3", true},
		{"sums by speed, with their own", "Knots|Bites|Kept\n8|10|7\n9|8|3\nboth|18|10", true},
		{"a row a month, of what was weighed", "Month|Bites|Fish\nJune|9|2\nJuly|9|4\nAugust|9|1", true},
		{"a row a month, with hours", "Month|Hours trolled|Fish\nJune|12|2\nJuly|14|4\nAugust|9|1", false},
		{"other counts", "Knots|Bites|Kept\n8|11|7\n9|8|4", false},
	} {
		l := inferred(t, "log.xlsx", nil, "Trips", rows, "Best speeds", c.table)
		proof := false
		for _, u := range l.Blocks {
			proof = proof || u.Proof
			if u.Proof && dated(u.Block) {
				t.Errorf("%s: the rows themselves are held to be sums", c.what)
			}
		}
		if proof != c.want {
			t.Errorf("%s: held to be sums %v, expected %v", c.what, proof, c.want)
		}
	}
}
