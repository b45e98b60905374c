package normalise_test

import (
	"slices"
	"strings"
	"testing"
)

// TestDiaryOfShortLines holds what a diary of short lines without capitals tells: full hours as an hour alone, what the
// boat did between two stretches in another way, a bite that ends with "nothing", and a day of the season in its title.
func TestDiaryOfShortLines(t *testing.T) {
	told, aside := readEvents(t, "diario.txt", "DIARIO TEMPORADA 23/24\n\n5/11 dom\nmar llana\n"+
		"6h40 líneas al agua, 4 líneas, 7 nudos\n7h15 toque en la caña, nada\n8h10 atún a bordo, 12 kg en báscula\n"+
		"9h recogí las líneas\nen la piedra, jig: 2 pargos a bordo\n9h45 líneas al agua, 4 líneas, 6 nudos\n"+
		"10h20 dorado 80cm, lo solté\n11h recogí todo\n\n14/1 dom\n7h05 líneas al agua, 4 líneas, 7 nudos\n"+
		"8h20 peto a bordo\n9h recogí todo\n")
	var legs, landed int
	for _, s := range told {
		if strings.Contains(s, " at ") {
			legs++
		}
		if strings.Contains(s, "landed") {
			landed++
		}
	}
	if legs != 3 || landed != 2 || len(told) != 7 || len(aside) > 0 {
		t.Errorf("%d stretches, %d landed of\n%s\nset aside %v", legs, landed, strings.Join(told, "\n"), aside)
	}
	if !slices.ContainsFunc(told, func(s string) bool { return strings.Contains(s, "released") }) {
		t.Errorf("none was let go: %v", told)
	}
}

// TestNightUnderADay holds that a line right under a day which says that the boat stayed out makes one trip of it and
// the day before, and that another does not.
func TestNightUnderADay(t *testing.T) {
	const diary = "Log 2026\n\n5/16 sat\n06:10 lines in, 4 lines, 7 kn\n07:00 wahoo boated\n09:00 lines up\n\n" +
		"5/17 sun\n%\n06:00 lines in, 4 lines, 7 kn\n10:00 lines up\n\n" +
		"5/23 sat\n06:00 lines in, 4 lines, 7 kn\n09:00 lines up\n"
	for words, want := range map[string]bool{"third day, slept aboard": true, "flat calm": false} {
		told, _ := readEvents(t, "log.txt", strings.Replace(diary, "%", words, 1))
		n := 0
		for _, s := range told {
			if strings.Contains(s, "overnight") {
				n++
			}
		}
		if (n > 0) != want || len(told) != 4 {
			t.Errorf("%s: %q", words, told)
		}
	}
}
