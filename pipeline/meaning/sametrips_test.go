package meaning

import (
	"strings"
	"testing"
)

// TestSameTrips holds that a column of a few bites is the number of their trip, or of their stretch, where it has
// the heading of another table's, and its numbers.
func TestSameTrips(t *testing.T) {
	legs := "Tr.|Part|Day|Lines|Kn|In|Up\n1|1|13 May 2023|7|5.7|07:25|11:10\n2|1|16 May 2023|5|10.5|05:15|09:00\n" +
		"2|2|16 May 2023|7|10.5|09:05|10:50\n3|1|21 May 2023|6|15|06:00|08:00\n3|2|21 May 2023|6|15|08:20|10:25\n" +
		"4|1|28 May 2023|6|15|06:00|08:00\n8|1|24 Jun 2023|6|10.5|07:25|10:45"
	bites := "Tr.|Part|Plug|Outcome|Species\n1|1|diver|landed|wahoo\n1|1|green one|missed|\n1|1|pink skirt|lost|\n" +
		"3|2|green one|missed|\nLAST|1|feather|missed|"
	for last, want := range map[string]bool{"8": true, "9": false} {
		of := strings.Replace(bites, "LAST", last, 1)
		for _, u := range inferred(t, "log", nil, "Legs", legs, "Bites", of).Data() {
			if u.Plan.Name == "Bites" && (u.Plan.Binds("trip") != want || u.Plan.Binds("leg") != want) {
				t.Errorf("last %s: trip %t, leg %t", last, u.Plan.Binds("trip"), u.Plan.Binds("leg"))
			}
		}
	}
}
