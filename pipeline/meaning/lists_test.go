package meaning

import "testing"

// tripsAndBites is a log of stretches and strikes beside which other sheets stand.
const (
	someLegs = `Date|Lines in|Lines up|Lines|Speed
3/6/26|06:00|08:00|4|8
3/6/26|09:00|12:00|4|9
14/6/26|06:10|13:00|4|9
15/6/26|07:00|11:30|5|8.5
21/6/26|06:00|12:00|5|8`
	someStrikes = `Date|Time|Lure|Outcome|Species|Length (in)|Weight (lb)
3/6/26|06:40|jet|landed|Wahoo|44|22
14/6/26|07:40|jet|lost|||
15/6/26|08:10|plug|missed|||
21/6/26|08:10|plug|landed|Yellowfin|40|38`
)

// TestNoRecords holds that lists beside a log, of gear, money, work on the boat, crew or sums,
// are no records.
func TestNoRecords(t *testing.T) {
	for name, text := range map[string]string{
		"Maintenance": "Date|Engine hrs|Work done|Parts|By\n10/5/26|2310|impeller|pump kit|me\n20/6/26|2344|oil " +
			"and filters|4 l|yard\n2/8/26|2390|zincs|2|me",
		"Fuel":     "Date|Litres|Price|Total\n3/6/26|160|1.61|257.6\n17/6/26|228|1.58|360.2\n23/6/26|274|1.6|438.4",
		"Expenses": "Date|Item|Amount\n2/6/26|ice and bait|31\n9/6/26|mooring|220\n20/6/26|leader and hooks|64.5",
		"Crew":     "Name|Phone|Boots|Seasick?\nOlin|555 0101|9|no\nAnsa|555 0102|7|yes\nBrec|555 0103|11|no",
		"Lures": "Lure|Colour|Weight g|Hooks|Strikes|Hours " +
			"out\nJet|purple|85|7/0|9|52.9\nPlug|green|70|7/0|4|45.8\nSlant|blue|160|9/0|7|47.2\n" +
			"Cone|black|110|8/0|4|37.1",
		"Tally":    "Species|Landed|Released|Biggest lb\nWahoo|12|1|44\nYellowfin|9|4|61\nMahi|20|6|22",
		"Shopping": "Item|Qty|Got\nhooks 9/0|12|y\nleader 130 lb|2|y\nskirts|6|n",
		"Spots":    "Place|Lat|Lon|Depth m\nElbow|28.1|-13.9|210\nBank|28.3|-13.8|95\nWreck|28.0|-14.0|60",
		"Weather": "Date|Wind|Sea|Baro\n3/6/26|NE 3|1 m|1018\n4/6/26|NE 5|2 m|1016\n5/6/26|N " +
			"2|0.5|1020\n6/6/26|E 3|1 m|1019\n7/6/26|E 3|1 m|1019",
	} {
		for _, u := range inferred(t, "log", nil, "Legs", someLegs, "Strikes", someStrikes, name, text).Data() {
			if u.Plan.Name == name {
				t.Errorf("%s: read as %s, because %s", name, summary(u.Plan), u.Plan.Why)
			}
		}
	}
}
