// Package zone reads time zones as logs name them: by the IANA list, or as a
// fixed offset such as UTC-9.
package zone

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
	_ "time/tzdata" // a boat's computer may have no zone data of its own
)

var errZone = errors.New("not a time zone: expected a name of the IANA list such as Pacific/Auckland, or UTC-9")

// letters are short names of one offset, which a place with summer time has for a part of
// the year only, and a place that may be meant (IANA time zone database). Those of places
// that change no clocks are not among them.
var letters = map[string]string{
	"EST": "America/New_York", "EDT": "America/New_York", "CST": "America/Chicago", "CDT": "America/Chicago",
	"MST": "America/Denver", "MDT": "America/Denver", "PST": "America/Los_Angeles", "PDT": "America/Los_Angeles",
	"AKST": "America/Anchorage", "AKDT": "America/Anchorage", "AST": "America/Halifax", "ADT": "America/Halifax",
	"NST": "America/St_Johns", "NDT": "America/St_Johns",
	"BST": "Europe/London", "IST": "Europe/Dublin", "WEST": "Europe/Lisbon",
	"CEST": "Europe/Madrid", "EEST": "Europe/Athens",
	"NZST": "Pacific/Auckland", "NZDT": "Pacific/Auckland", "AEST": "Australia/Sydney", "AEDT": "Australia/Sydney",
	"ACST": "Australia/Adelaide", "ACDT": "Australia/Adelaide",
}

// Name is the zone's name in one spelling. The error says what would be right.
func Name(text string) (string, error) {
	text = strings.TrimSpace(text)
	if s, ok := fixed(text); ok {
		return Offset(s), nil
	}
	if text == "" || strings.EqualFold(text, "local") {
		return "", errZone
	}
	short := strings.ToUpper(text)
	if place, ok := letters[short]; ok {
		return "", fmt.Errorf("%s is one offset all year, and an hour off for as long as the clocks are changed: "+
			"name the place that is meant, such as %s, or the offset itself, %s",
			short, place, offsetAs(short, place))
	}
	loc, err := time.LoadLocation(text)
	if err != nil {
		return "", errZone
	}
	return loc.String(), nil
}

// offsetAs is the offset of a place when its clocks go by a short name, "" where they
// never do.
func offsetAs(short, place string) string {
	loc, err := time.LoadLocation(place)
	if err != nil {
		return ""
	}
	for _, month := range []time.Month{time.January, time.July} {
		if name, seconds := time.Date(2026, month, 1, 0, 0, 0, 0, loc).Zone(); name == short {
			return Offset(seconds)
		}
	}
	return ""
}

// Load is the location of a name that Name has given.
func Load(name string) (*time.Location, error) {
	if s, ok := fixed(name); ok {
		return time.FixedZone(name, s), nil
	}
	loc, err := time.LoadLocation(name)
	if err != nil {
		return nil, fmt.Errorf("%q is %w", name, errZone)
	}
	return loc, nil
}

// fixed reads UTC-9, GMT+5:30, UTC+0930, +12: seconds east of UTC.
func fixed(text string) (int, bool) {
	s := strings.ToUpper(strings.ReplaceAll(text, "\u2212", "-"))
	s = strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(s, "UTC"), "GMT"))
	if len(s) < 2 || (s[0] != '+' && s[0] != '-') {
		return 0, false
	}
	digits := strings.ReplaceAll(s[1:], ":", "")
	if len(digits) > 2 {
		digits = strings.Repeat("0", max(0, 4-len(digits))) + digits
	} else {
		digits = strings.Repeat("0", 2-len(digits)) + digits + "00"
	}
	v, err := strconv.ParseUint(digits, 10, 16)
	if err != nil || v/100 > 14 || v%100 > 59 {
		return 0, false
	}
	seconds := int(v/100)*3600 + int(v%100)*60
	if s[0] == '-' {
		seconds = -seconds
	}
	return seconds, true
}

// Offset names an offset from UTC, in seconds to the east: UTC+5:30.
func Offset(seconds int) string {
	sign := '+'
	if seconds < 0 {
		sign, seconds = '-', -seconds
	}
	if m := seconds % 3600 / 60; m != 0 {
		return fmt.Sprintf("UTC%c%d:%02d", sign, seconds/3600, m)
	}
	return fmt.Sprintf("UTC%c%d", sign, seconds/3600)
}
