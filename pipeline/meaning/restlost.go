package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// restLost tells counts of bites and of those that were missed, with no place for what was lost: what was neither
// missed nor brought to the boat was hooked, and came off. A cell of those missed that is blank stands for none, but
// where others say so in figures.
func (x *builder) restLost() {
	p := x.plan
	strikes, missed := p.Find("strikes_n"), p.Find("missed_n")
	if p.Kind != plan.Flat || strikes == nil || missed == nil || !p.Binds("landed_n", "kept_n") ||
		p.Binds("hooked_n", "lost_n", "outcome", "loss_cause", "species", "length_cm", "scale_kg") ||
		p.Reads("story") || p.Reads("fishlist") || len(p.Catch)+len(p.Rods)+len(p.Others)+len(p.Figures) > 0 {
		return
	}
	count := func(row []string, name string) (sum float64) {
		for _, b := range p.Bindings {
			if b.Column.Name == name {
				n, _ := number(cellOf(row, b.Index))
				sum += n
			}
		}
		return sum
	}
	open := slices.ContainsFunc(x.rows, func(row []string) bool {
		return cellOf(row, missed.Index) == "" && count(row, "strikes_n") > 0
	})
	if open && slices.ContainsFunc(x.rows, func(row []string) bool {
		cell := cellOf(row, missed.Index)
		return cell != "" && strings.Trim(cell, "0") == ""
	}) {
		return
	}
	fits := !slices.ContainsFunc(x.rows, func(row []string) bool {
		boated := count(row, "landed_n") + count(row, "kept_n")
		return count(row, "strikes_n") < count(row, "missed_n")+boated
	})
	p.RestLost = fits
}
