package evidence

import (
	"fmt"
	"math"
	"strconv"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
)

// Sentence is the finding in plain words: the verdict, what it rests on, and
// never more than its interval says. text words a level.
func (f Finding) Sentence(text func(level string) string) string {
	head := sentence.Capital(factors.Noun(f.Factor)) + ", " + string(f.Verdict) + ": "
	if f.Better == "" {
		return head + f.unknown(text)
	}
	name := func(level string) string {
		if level == Others {
			return "the rest"
		}
		return text(level)
	}
	better, other := name(f.Better), name(f.Other)
	if f.Trend {
		better = fmt.Sprintf("strikes rise step by step from %s to %s, which", other, better)
	}
	what := "the strikes of " + other + " per line-hour, " + f.side()
	switch {
	case f.Ratio.Ratio == 0 || math.IsInf(f.Ratio.Ratio, 0):
		what = fmt.Sprintf("%s %s (no strike came at %s)", f.span(), what, other)
	case f.Verdict == NotSettled:
		return fmt.Sprintf("%s%s may bring %s %s: %s at a guess%s. %s", head, better, f.span(), what,
			Times(f.Ratio.Ratio), f.luck(), f.behind())
	default:
		what = fmt.Sprintf("%s %s (%s)", Times(f.Ratio.Ratio), what, f.span())
	}
	out := head + better + " brought " + what
	switch f.Verdict {
	case Leaning:
		return out + ", but " + f.Blocked + ". Try it again before you rely on it. " + f.behind()
	case NotSettled:
		out += f.luck()
	}
	return out + ". " + f.behind()
}

// span words the interval; an end that is not there is said as a bound.
func (f Finding) span() string {
	iv := f.Ratio.Interval
	switch {
	case math.IsInf(iv.Hi, 0):
		return "at least " + Times(iv.Lo)
	case iv.Lo == 0:
		return "at most " + Times(iv.Hi)
	}
	return ratio(iv.Lo) + " to " + Times(iv.Hi)
}

func (f Finding) side() string {
	if f.ByLeg {
		return "side by side"
	}
	return "on the same days"
}

// luck adds why a ratio whose interval leaves out 1 is not settled.
func (f Finding) luck() string {
	switch {
	case !(f.Ratio.Interval.Lo > 1):
		return ""
	case f.P >= Alpha:
		return fmt.Sprintf(". With %s made, luck alone does this often enough",
			sentence.Count(int64(f.Compared), "comparison", "comparisons"))
	}
	return ". Too few trips fished it"
}

// behind is the number of strikes, hours and trips that the ratio rests on.
func (f Finding) behind() string {
	unit, both := "trip", "both"
	if f.Better == Others || f.Other == Others {
		both = "it and another"
	}
	if f.ByLeg {
		unit = "leg"
	}
	if f.Trend {
		both = "two or more"
	}
	return fmt.Sprintf("Behind it: %s in %s line-hours on %s that fished %s.",
		sentence.Count(f.Behind.Events, "strike", "strikes"), hours(f.Behind.Effort),
		sentence.Count(int64(f.Strata), unit, unit+"s"), both)
}

// unknown says why no two levels can be compared.
func (f Finding) unknown(text func(string) string) string {
	season := fmt.Sprintf("%s in %s line-hours", sentence.Count(f.Season.Events, "strike", "strikes"),
		hours(f.Season.Effort))
	switch {
	case f.Levels == 0:
		return "the log gives no hours by " + factors.Noun(f.Factor) + "."
	case f.Levels == 1:
		return "only one has hours: there is nothing to compare it with (" + season + ")."
	case f.Levels-f.Thin < 2:
		return "fewer than two have enough hours to compare (" + season + ")."
	case f.ByLeg:
		return "can't be compared: no leg had two of them out and a strike (" + season + ")."
	default:
		return "can't be compared: no trip fished two of them and had a strike (" + season + ")."
	}
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
