package meaning

import (
	"strings"
	"testing"
)

// TestOutingNumbers holds that numbers headed as those of stretches are the trips' where stretches share them, or where
// each row of a table of trips has one, and that those of stretches stay so.
func TestOutingNumbers(t *testing.T) {
	shared := "Run no.|Date|Start|Stop|Rods|Knots\n1|3/6/26|06:00|08:00|4|8\n1|3/6/26|09:00|11:00|4|9\n" +
		"2|14/6/26|06:10|09:00|4|9\n2|14/6/26|09:30|12:00|4|8\n3|15/6/26|07:00|11:30|5|8\n4|16/6/26|07:00|11:30|5|8"
	own := strings.NewReplacer("\n1|3/6/26|09", "\n2|3/6/26|09", "\n2|14/6/26|06", "\n3|14/6/26|06",
		"\n2|14/6/26|09", "\n4|14/6/26|09", "\n3|15", "\n5|15", "\n4|16", "\n6|16").Replace(shared)
	bites := "Run no.|Time|Fish|Result\n1|07:10|wahoo|landed\n2|08:40|mahi|lost\n3|08:20|tuna|landed\n4|10:10|tuna|lost"
	trips := "Run no.|Date|Left dock|Back|Skipper\n1|3/6/26|05:30|13:00|Ansa\n2|14/6/26|05:10|14:00|Olin\n" +
		"3|15/6/26|06:00|13:00|Ansa\n4|16/6/26|06:10|12:40|Olin"
	for _, c := range []struct{ name, first, trip string }{
		{"shared", shared, "trip"}, {"own", own, "leg"}, {"trips", trips, "trip"},
	} {
		for _, u := range inferred(t, "log", nil, "Runs", c.first, "Bites", bites).Data() {
			if b := u.Plan.Find("trip", "leg"); b == nil || b.Column.Name != c.trip {
				t.Errorf("%s, %s: %+v, expected %s", c.name, u.Plan.Name, b, c.trip)
			}
		}
	}
}
