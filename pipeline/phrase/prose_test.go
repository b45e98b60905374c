package phrase

import (
	"fmt"
	"strings"
	"testing"
)

func TestClocksInWords(t *testing.T) {
	for text, want := range map[string]string{
		"at ten past seven": "7:10?", "quarter to eleven": "10:45?",
		"a quarter past 6": "6:15?", "half past five": "5:30?",
		"at six thirty": "6:30?", "20 past 7": "7:20?", "a las siete y media": "7:30?",
		"à sept heures moins le quart": "6:45?",
		"alle sette e mezza":           "7:30?", "às sete e meia": "7:30?",
		"um halb sieben": "6:30?", "zehn nach acht": "8:10?",
		"quarter past twelve": "12:15?", "at 8.20": "8:20?", "midnight": "0:00",
		"from ten to eleven": "", "ten to twelve lines": "", "2 horas y media": "", "five lines at 8.25 kn": "",
		"half a day": "", "a quarter mile": "",
	} {
		var got []string
		for _, c := range Clocks(text) {
			got = append(got, showClock(c))
		}
		if g := strings.Join(got, " "); g != want {
			t.Errorf("%q has the clocks %q, want %q", text, g, want)
		}
	}
}

// Paragraphs tell times, speeds and lines between other things; a speed that no stretch takes
// is named as more.
func TestStretchesInProse(t *testing.T) {
	for _, c := range [][2]string{
		{"Lines in at 6.15 with five rods at 8 knots. First bite at ten past seven. Lines up at 11.45.",
			"6:15? to 11:45? 5 lines at 8"},
		{"On my own, 3 lines at 8 kts from 6 to 9:30.", "6:00? to 9:30? 3 lines at 8"},
		{"6 lignes à 8,5 noeuds de 5h45 à 12h15.", "5:45 to 12:15 6 lines at 8.5"},
		{"Two lines in at 6:45, ran the ledge at 12 knots looking for wahoo, lines up 8:00.",
			"6:45? to 8:00? 2 lines at 12"},
		{"2 lines at 13 kts from 6:15 to 7:15. Then 4 lines at 8.5, 7:25 till 9:55.",
			"6:15? to 7:15? 2 lines at 13; 7:25? to 9:55? 4 lines at 8.5"},
		{"Lines in 6:30, four of them, 7 knots, worked outside to 9:30. Back in 9:45, bumped it up to 7.5, till 1:50.",
			"6:30? to 9:30? 4 lines at 7; 9:45? to 1:50? 4 lines at 7.5"},
		{"0500-1030, 5 rods, 5.5 kt. Quiet, so at 0800 we went up to 7 kt.",
			"5:00 to 8:00 5 lines at 5.5; 8:00 to 10:30 5 lines at 7"},
		{"Lines in 0545, six out at 9 knots, out of the water at 1215.", "5:45 to 12:15 6 lines at 9"},
		{"In the water 6:45, out quarter to eleven. 7 knots all day.", "6:45? to 10:45? at 7"},
		{"Trolled 0600 to 0930, 5 lines at 8 kn, slowed to 6 off the point.", "6:00 to 9:30 5 lines at 8 more 6"},
		{"Lines in 5:50, out 9:20, 6 lines at 9 kts, 1 bite no hook up. Lines in 10:00, out 12:30, 6 lines at 10 " +
			"kts: 1 fish", "5:50? to 9:20? 6 lines at 9; 10:00? to 12:30? 6 lines at 10"},
	} {
		text, want := c[0], c[1]
		all := Stretches(text)
		got := showStretches(all)
		for _, s := range all {
			if len(s.More) > 0 {
				got += " more " + strings.Join(s.More, " ")
			}
		}
		if got != want {
			t.Errorf("%q\n  is %s\nwant %s", text, got, want)
		}
	}
}

// Counts that break one another down are one set of bites, and the clocks of a stretch are none of its bites.
func TestTellProse(t *testing.T) {
	for _, c := range [][2]string{
		{"4 strikes, 3 hooked up, 2 in the boat: bluefin 55 in, bluefin 48 in. Third one pulled the hook.",
			"bite 1; landed 1 bluefin; landed 1 bluefin; lost 1"},
		{"2 bites, 2 hooked, 1 landed (bluefin 47 in), 1 broke off.", "landed 1 bluefin; lost 1"},
		{"Two knockdowns, one stuck: bluefin, 51 in", "missed 1; landed 1 bluefin"},
		{"2 knockdowns no hookup, 1 wahoo", "missed 2; landed 1 wahoo"},
		{"Trolled 0600 to 0930, one bite, missed", "missed 1"},
		{"First bite at ten past seven but it never stuck.", "missed 1 at 7:10?"},
	} {
		text, want := c[0], c[1]
		s := Tell(text, Defaults{})
		var got []string
		for _, b := range s.Bites {
			one := fmt.Sprint(b.Fate, " ", b.N)
			if b.Name != "" {
				one += " " + b.Name
			}
			if b.At != nil {
				one += " at " + showClock(*b.At)
			}
			got = append(got, one)
		}
		if g := strings.Join(got, "; "); g != want || len(s.Left) > 0 {
			t.Errorf("%q\n  is %s, left %q\nwant %s", text, g, s.Left, want)
		}
	}
}

func TestLooseClocks(t *testing.T) {
	for text, want := range map[string]string{
		"In at 7:00. Temp alarm at 8:00 so home.":    "8:00",
		"0600 to 0930, wahoo at 8:10. Home by 10:30": "10:30",
		"Lines in 6:30, up 10:10, 8 kts":             "",
	} {
		if got := strings.Join(LooseClocks(text), " "); got != want {
			t.Errorf("%q leaves %q, want %q", text, got, want)
		}
	}
}

func TestExactWeight(t *testing.T) {
	for text, want := range map[string]bool{"wahoo 17.5 kg": true, "wahoo 17 kg": false, "wahoo 38 lb 4 oz": true} {
		if s := Tell(text, Defaults{}); len(s.Bites) != 1 || s.Bites[0].Exact != want {
			t.Errorf("%q is %+v", text, s.Bites)
		}
	}
}
