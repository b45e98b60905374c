package phrase

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/words"
)

var (
	ofThem = regexp.MustCompile(`(?i)(\pL+|\d{1,2}) (?:of (?:'?em|them|those|these)|de (?:ellos|ellas)|` +
		`d'entre (?:eux|elles)|di (?:loro|questi)|davon|del[ea]s)(?:\PL|$)`)
	also = regexp.MustCompile(`(?i)\b(?:also|plus|además|ademas|también|tambien|aussi|anche|também|tambem|auch)\b`)
)

// OfThem is how many words tell of those that something else counts: "2 of them let go".
func OfThem(text string) (n int, ok bool) {
	m := ofThem.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	return words.Number(strings.ToLower(m[1]))
}

// Also tells words of something beside what something else counts: "also 1 dorado".
func Also(text string) bool { return also.MatchString(text) }
