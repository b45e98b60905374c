package evidence

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// nouns are the factors as a sentence names them.
var nouns = map[string]string{
	"speed-band": "speed", "lure": "lure", "lure-weight": "lure weight", "colour": "colour", "hooks": "hooks",
	"setback": "setback", "position": "place in the spread", "approach": "approach", "month": "month", "hour": "hour of day",
	"light": "light", "moon": "moon", "sea-temp": "sea temperature", "sea-state": "sea state", "turning": "turning", "boat": "boat", "angler": "angler",
}

// Noun is a factor as a sentence names it.
func Noun(factor string) string {
	if n, ok := nouns[factor]; ok {
		return n
	}
	return factor
}

// plain are the factors whose levels say by themselves what they are of.
var plain = map[string]bool{"light": true, "moon": true, "month": true, "sea-state": true, "turning": true, "boat": true}

// phrase is a level with its factor, for the middle of a sentence.
func phrase(factor, level string) string {
	if plain[factor] {
		return level
	}
	return Noun(factor) + " " + level
}

// Sentence is the finding in plain words: the verdict, what it rests on, and
// never more than its interval says. text words a level.
func (f Finding) Sentence(text func(level string) string) string {
	head := capital(Noun(f.Factor)) + ", " + string(f.Verdict) + ": "
	if f.Better == "" {
		return head + f.unknown(text)
	}
	side := "on the same trips"
	if f.ByLeg {
		side = "fished side by side"
	}
	better, other := text(f.Better), text(f.Other)
	guess, lo, hi := Times(f.Ratio.Ratio), ratio(f.Ratio.Interval.Lo), Times(f.Ratio.Interval.Hi)
	switch {
	case f.Verdict == Settled:
		return fmt.Sprintf("%s%s brought between %s and %s the strikes of %s per line-hour, %s (best guess %s). %s", head, better, lo, hi, other, side, guess, f.behind())
	case f.Verdict == Leaning:
		return fmt.Sprintf("%s%s brought about %s the strikes of %s per line-hour, %s (likely %s to %s), but %s. Try it again before relying on it. %s",
			head, better, guess, other, side, lo, hi, f.Blocked, f.behind())
	case f.Ratio.Interval.Lo > 1:
		return fmt.Sprintf("%s%s brought about %s the strikes of %s per line-hour, %s (%s to %s); where %s compared, luck does that often enough. %s",
			head, better, guess, other, side, lo, hi, f.many(), f.behind())
	}
	return fmt.Sprintf("%s%s may bring anything from %s to %s the strikes of %s per line-hour, %s (best guess %s). %s", head, better, lo, hi, other, side, guess, f.behind())
}

// many says how many levels were compared.
func (f Finding) many() string {
	if f.Compared == 1 {
		return plural(int64(f.Factors), "factor") + " were"
	}
	return plural(int64(f.Compared+1), "level") + " were"
}

// behind is the number of strikes, hours and trips that the ratio rests on.
func (f Finding) behind() string {
	unit := "trip"
	if f.ByLeg {
		unit = "leg"
	}
	return fmt.Sprintf("Behind it: %s in %s line-hours on %s that fished both.",
		plural(f.Ratio.Events[0]+f.Ratio.Events[1], "strike"), hours(f.Ratio.Effort[0]+f.Ratio.Effort[1]), plural(int64(f.Ratio.Strata), unit))
}

// unknown says why no two levels can be compared.
func (f Finding) unknown(text func(string) string) string {
	season := fmt.Sprintf("%s in %s line-hours", plural(f.Season.Events, "strike"), hours(f.Season.Effort))
	switch {
	case f.Levels == 0:
		return "the log gives no hours by " + Noun(f.Factor) + "."
	case f.Levels == 1:
		return "only one level has hours, so there is nothing to compare (" + season + ")."
	case f.Levels-f.Thin < 2:
		return "fewer than two levels have enough hours to compare (" + season + ")."
	case f.Compared == 0 && f.ByLeg:
		return "no leg fished two of its levels together with a strike, so that they cannot be told from the days and places they were used (" + season + ")."
	case f.Compared == 0:
		return "no trip fished two of its levels with a strike, so that it cannot be told from the days when the fish were simply there (" + season + ")."
	}
	return "the trips that fished two levels had too few strikes to compare them (" + season + ")."
}

// Times prints a ratio for a sentence: "1.7 times".
func Times(r float64) string { return ratio(r) + " times" }

// ratio prints a ratio with two digits.
func ratio(r float64) string {
	switch {
	case math.IsNaN(r) || math.IsInf(r, 0):
		return "unknown"
	case r >= 9.95:
		return strconv.FormatFloat(r, 'f', 0, 64)
	case r < 0.0995:
		return strconv.FormatFloat(r, 'g', 1, 64)
	case r > 1 && r < 1.005: // what is not 1 must not look it
		return "just over 1"
	case r < 1 && r >= 0.995:
		return "just under 1"
	case r < 0.995 || r > 1 && r < 1.05:
		return strconv.FormatFloat(r, 'f', 2, 64)
	}
	return strconv.FormatFloat(r, 'f', 1, 64)
}

// hours prints hours: tenths below ten.
func hours(h float64) string {
	if h < 9.95 {
		return strconv.FormatFloat(h, 'f', 1, 64)
	}
	return strconv.FormatFloat(h, 'f', 0, 64)
}

func plural(n int64, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
