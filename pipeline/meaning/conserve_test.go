package meaning

import (
	"slices"
	"strings"
	"testing"
)

// openAs is the question about a heading; nil where there is none.
func openAs(l *Log, heading string) *Open {
	all := l.Open()
	i := slices.IndexFunc(all, func(o Open) bool { return o.Heading == heading })
	if i < 0 {
		return nil
	}
	return &all[i]
}

// TestColumnsAreAccountedFor holds that a column with numbers or words of a fate of which
// nothing is made is asked about, with what it may be, and that one that no total rests on
// is not.
func TestColumnsAreAccountedFor(t *testing.T) {
	fish := "Date|Species|Length (in)|Weight (lb)|"
	days := "Date|Start|End|Lines|Strikes|Landed|"
	for _, c := range []struct {
		name, text, heading string
		means               string // one of what it may be; "" where nothing is asked
	}{
		{"girth", fish + "Zark\n3/6/26|Wahoo|44|22|16.5\n4/6/26|Mahi|30|11|15\n9/6/26|Wahoo|51|31|19", "Zark",
			"girth_cm"},
		{"a second count",
			days + "Zark\n3/6/26|06:00|08:00|4|5|2|1\n4/6/26|06:00|09:00|4|3|1|0\n9/6/26|07:00|11:00|5|4|3|2", "Zark",
			"released_n"},
		{"one cell alone",
			days + "Zark\n3/6/26|06:00|08:00|4|5|2|1\n4/6/26|06:00|09:00|4|3|1|\n9/6/26|07:00|11:00|5|4|3|", "Zark",
			"lost_n"},
		{"the best fish by name", days + "Best (kg)\n3/6/26|06:00|08:00|4|5|2|tuna 9.5\n" +
			"4/6/26|06:00|09:00|4|3|1|zark 4\n9/6/26|07:00|11:00|5|4|3|tuna 12", "Best (kg)", "fishlist"},
		{"marks of fish", fish + "Zark\n3/6/26|Wahoo|44|22|y\n4/6/26|Mahi|30|11|n\n9/6/26|Wahoo|51|31|y", "Zark",
			"released"},
		{"one more species",
			"Date|Hours|Rods|Wahoo|Mahi|Zark\n3/6/26|4|4|1|0|2\n14/6/26|3.5|5|0|2|0\n15/6/26|6|5|3|1|1", "Zark",
			"catch"},
		{"who was aboard",
			days + "Pax\n3/6/26|06:00|08:00|4|5|2|3\n4/6/26|06:00|09:00|4|3|1|2\n9/6/26|07:00|11:00|5|4|3|2", "Pax",
			""},
		{"a guess", fish + "Est. lb\n3/6/26|Wahoo|44|22|20\n4/6/26|Mahi|30|11|15\n9/6/26|Wahoo|51|31|30", "Est. lb",
			""},
		{"marks of the weed", days + "Weed mats 0-4\n3/6/26|06:00|08:00|4|5|2|3\n4/6/26|06:00|09:00|4|3|1|4\n" +
			"9/6/26|07:00|11:00|5|4|3|0", "Weed mats 0-4", ""},
		{"more than marks", days + "Zark 0-2\n3/6/26|06:00|08:00|4|5|2|3\n4/6/26|06:00|09:00|4|3|1|1\n" +
			"9/6/26|07:00|11:00|5|4|3|0", "Zark 0-2", "released_n"},
		{"a running number", fish + "Zark\n3/6/26|Wahoo|44|22|1\n4/6/26|Mahi|30|11|2\n9/6/26|Wahoo|51|31|3", "Zark",
			""},
		{"a sum of two columns",
			"Date|Start|End|Lines|Landed|Lost|Zark\n3/6/26|06:00|08:00|4|2|2|4\n4/6/26|06:00|09:00|4|1|0|1\n" +
				"9/6/26|07:00|11:00|5|2|3|5", "Zark", ""},
		{"classes that add up",
			"Date|Hours|Rods|Fish|Zark|Quib|Fenn\n3/6/26|4|4|9|4|3|2\n4/6/26|3.5|5|5|0|4|1\n9/6/26|6|5|6|1|2|3\n" +
				"10/6/26|6|5|4|3|0|1", "Quib", ""},
		{"a place of the spread", "Date|Start|End|Short left|Long " +
			"left|Zark\n3/6/26|06:00|08:00|jet|plug|bullet\n4/6/26|06:00|09:00|jet|bullet|jet\n" +
			"9/6/26|07:00|11:00|plug|bullet|jet", "Zark", "spread"},
		{"noughts alone",
			days + "Zark\n3/6/26|06:00|08:00|4|5|2|0\n4/6/26|06:00|09:00|4|3|1|0\n9/6/26|07:00|11:00|5|4|3|0", "Zark",
			""},
		{"fish of the bottom",
			days +
				"Snapper (bottom)\n3/6/26|06:00|08:00|4|5|2|1\n4/6/26|06:00|09:00|4|3|1|0\n9/6/26|07:00|11:00|5|4|3|2",
			"Snapper (bottom)", ""},
	} {
		o := openAs(inferred(t, "log", nil, "", c.text), c.heading)
		switch {
		case c.means == "" && o != nil:
			t.Errorf("%s: asked for nothing: %v", c.name, o.Others)
		case c.means != "" && (o == nil || !slices.Contains(o.Others, c.means)):
			t.Errorf("%s: is not asked about as %s: %v", c.name, c.means, o)
		}
	}
}

// TestUnwordedMeanings holds that a part of a total that is read from numbers alone, with
// neither a word of its heading nor another column for it, is asked about.
func TestUnwordedMeanings(t *testing.T) {
	for _, c := range []struct {
		name, text string
		asked      bool
	}{
		{"hours by their numbers alone", "Date|Zark|Wahoo\n3/6/26|4.5|1\n4/6/26|3.25|0\n9/6/26|6|2", true},
		{"the same by their word", "Date|Hours|Wahoo\n3/6/26|4.5|1\n4/6/26|3.25|0\n9/6/26|6|2", false},
	} {
		l := inferred(t, "log", nil, "", c.text)
		heading := strings.Split(c.text, "|")[1]
		if o := openAs(l, heading); (o != nil) != c.asked {
			t.Errorf("%s: asked about %s is %v: %v", c.name, heading, o != nil, o)
		}
	}
}

// TestAColumnIsAnsweredAsASpecies holds that a count that its owner says is one of its
// heading's species is read as one.
func TestAColumnIsAnsweredAsASpecies(t *testing.T) {
	said := func(string, int) Said {
		return Said{Answers: func(heading string, _ int, _ []string) (string, bool) {
			return "catch", heading == "Zark"
		}}
	}
	text := "Date|Hours|Rods|Wahoo|Mahi|Zark\n3/6/26|4|4|1|0|2\n14/6/26|3.5|5|0|2|0\n15/6/26|6|5|3|1|1"
	l := inferredAs(t, "log", said, nil, "", text)
	if p := l.Data()[0].Plan; len(p.Catch) != 3 {
		t.Errorf("%d species are counted, expected 3: %v", len(p.Catch), p.Catch)
	}
	if o := openAs(l, "Zark"); o != nil {
		t.Errorf("it is asked about again: %v", o)
	}
}
