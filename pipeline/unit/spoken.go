package unit

import (
	"fmt"
	"regexp"
	"strings"
)

// Clock times as people say them, at the beginning of a line.
var (
	spokenRomance = regexp.MustCompile(
		`(?i)^(?:a las? |alle |all’|all'|às )(\d{1,2})(?:\s(y|menos|e|meno|e un|meno un)\s(cuarto|media|quarto|mezza|meia|\d{1,2}))?\s+(\S.*)$`)
	spokenEnglish = regexp.MustCompile(
		`(?i)^(?:at\s)?(?:(quarter|half|ten|twenty|five)\s(past|to|after)\s)(\d{1,2})\s+(\S.*)$`)
)

var spokenMinutes = map[string]int{"cuarto": 15, "quarto": 15, "quarter": 15, "media": 30, "mezza": 30, "meia": 30,
	"half": 30, "five": 5, "ten": 10, "twenty": 20}

// SpokenClock reads a clock time in words at the beginning of a text, as "6:45", and what stands
// behind it: "a las 7 menos cuarto ...", "quarter to 7 ...", "alle 7 e mezza ...".
func SpokenClock(text string) (clock, rest string, ok bool) {
	hour, minute, less := 0, 0, false
	if m := spokenRomance.FindStringSubmatch(text); m != nil {
		fmt.Sscan(m[1], &hour)
		less, rest = strings.HasPrefix(strings.ToLower(m[2]), "meno"), m[4]
		if m[3] != "" {
			minute = minutesSaid(m[3])
		}
	} else if m := spokenEnglish.FindStringSubmatch(text); m != nil {
		fmt.Sscan(m[3], &hour)
		minute, less, rest = minutesSaid(m[1]), strings.EqualFold(m[2], "to"), m[4]
	} else {
		return "", "", false
	}
	if hour > 24 || minute > 59 {
		return "", "", false
	}
	all := 60*hour + minute
	if less {
		all = 60*hour - minute
	}
	if all < 0 {
		return "", "", false
	}
	return fmt.Sprintf("%d:%02d", all/60, all%60), rest, true
}

func minutesSaid(word string) int {
	if n, ok := spokenMinutes[strings.ToLower(word)]; ok {
		return n
	}
	n := 0
	fmt.Sscan(word, &n)
	return n
}
