package unit

import "testing"

func TestSpokenClock(t *testing.T) {
	for _, c := range []struct{ text, clock, rest string }{
		{"a las 7 menos cuarto echo 5 cañas", "6:45", "echo 5 cañas"},
		{"A las 10 y cuarto recojo", "10:15", "recojo"},
		{"a las 11 recojo", "11:00", "recojo"},
		{"alle 7 e mezza lenze in acqua", "7:30", "lenze in acqua"},
		{"quarter to 7 lines in", "6:45", "lines in"},
		{"at half past 6 lines in", "6:30", "lines in"},
		{"a las 7", "", ""},
		{"a 7 nudos", "", ""},
		{"a lot of weed", "", ""},
		{"as 30 boats went by", "", ""},
	} {
		clock, rest, _ := SpokenClock(c.text)
		if clock != c.clock || rest != c.rest {
			t.Errorf("%q: %q, %q, expected %q, %q", c.text, clock, rest, c.clock, c.rest)
		}
	}
}
