package main

import (
	"fmt"
	"strings"

	"wakeledger/pipeline/meaning"
)

// everyColumn is what the flag --why without a heading stands for.
const everyColumn = "every column"

// showWhy prints the evidence for the columns under a heading, or for all, and tells
// whether there is any.
func (a *app) showWhy(w meaning.Why, heading string) (found bool) {
	for _, c := range w.Columns {
		if heading != "" && !strings.EqualFold(strings.TrimSpace(heading), c.Heading) {
			continue
		}
		found = true
		fmt.Fprintf(a.out, "\n    why %s\n", c.Heading)
		for i, r := range c.Readings {
			mark := " "
			if i == 0 {
				mark = "*"
			}
			fmt.Fprintf(a.out, "    %s %5.1f  %s%s\n", mark, r.Score, r.Means, votes(r.Votes))
		}
		if c.Next != "" {
			fmt.Fprintf(a.out, "      %.1f better than with %s, other columns counted\n", c.Gap, c.Next)
		}
	}
	if found && len(w.Between) > 0 {
		fmt.Fprintf(a.out, "\n    why the columns together%s\n", votes(w.Between))
	}
	return found
}

func votes(all []meaning.Vote) string {
	var parts []string
	for _, v := range all {
		parts = append(parts, fmt.Sprintf("%s %+.1f", v.Evidence, v.Weight))
	}
	if len(parts) == 0 {
		return ""
	}
	return ": " + strings.Join(parts, ", ")
}
