package phrase

import (
	"fmt"
	"strings"
)

// show writes a story so that a test reads like the sentence: "2 missed; wahoo landed
// 114.3cm 9kg* @right short 8:52 | left: ...". A star is a scale weight, a tilde a guess.
func show(s Story) string {
	var parts []string
	for _, b := range s.Bites {
		p := showFish(b.Fish)
		if b.Session > 0 {
			p = fmt.Sprintf("[%d] %s", b.Session, p)
		}
		if b.Cause != "" {
			p += " (" + b.Cause + ")"
		}
		parts = append(parts, p)
	}
	out := strings.Join(parts, "; ")
	if s.Landed >= 0 {
		out += fmt.Sprintf(" | %d for %d", s.Landed, s.Strikes)
	} else if s.Strikes >= 0 {
		out += fmt.Sprintf(" | of %d", s.Strikes)
	}
	if s.Nothing {
		out += " | nothing"
	}
	if len(s.Left) > 0 {
		out += " | left: " + strings.Join(s.Left, " / ")
	}
	return strings.TrimPrefix(strings.TrimSpace(out), "| ")
}

func showFish(f Fish) string {
	var p []string
	if f.N != 1 {
		p = append(p, fmt.Sprint(f.N))
	}
	if f.Name != "" {
		p = append(p, f.Name)
	}
	if f.Fate != 0 {
		p = append(p, f.Fate.String())
	}
	if f.LengthCm > 0 {
		p = append(p, strings.TrimSuffix(fmt.Sprintf("%.1f", f.LengthCm), ".0")+"cm"+f.LengthKind)
	}
	if f.GirthCm > 0 {
		p = append(p, "x"+strings.TrimSuffix(fmt.Sprintf("%.1f", f.GirthCm), ".0"))
	}
	if f.Kg > 0 {
		mark := ""
		if f.Guess {
			mark = "~"
		}
		if f.Scaled {
			mark += "*"
		}
		p = append(p, strings.TrimSuffix(fmt.Sprintf("%.1f", f.Kg), ".0")+"kg"+mark)
	}
	if f.Place != "" {
		p = append(p, "@"+f.Place)
	}
	if f.At != nil {
		p = append(p, fmt.Sprintf("%d:%02d", f.At.Seconds/3600, f.At.Seconds/60%60))
	}
	return strings.Join(p, " ")
}

func showList(fish []Fish) string {
	var p []string
	for _, f := range fish {
		p = append(p, showFish(f))
	}
	return strings.Join(p, "; ")
}
