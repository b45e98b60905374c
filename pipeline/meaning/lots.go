package meaning

import (
	"math"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// fewestLots is in how many rows of several fish their weight must tell, beside those of one, what it is of.
const fewestLots = 2

// lots tells what the weights of rows with several fish are of: of all of them where they are as many times what one
// of the kind weighs, of one where they are as much.
func (x *builder) lots() {
	weight, count, species := x.plan.Find("scale_kg"), x.plan.Find("count"), x.plan.Find("species")
	if weight == nil || count == nil || weight.Set > 0 {
		return
	}
	one, several := map[string][]float64{}, map[string][][2]float64{}
	rows := 0
	for _, r := range x.rows {
		w, ok := number(cellOf(r, weight.Index))
		if !ok || w <= 0 {
			continue
		}
		kind := ""
		if species != nil {
			kind = strings.ToLower(cellOf(r, species.Index))
		}
		if n, ok := number(cellOf(r, count.Index)); ok && n > 1 {
			several[kind] = append(several[kind], [2]float64{w, n})
			rows++
		} else {
			one[kind] = append(one[kind], w)
		}
	}
	switch told, of := lotsOf(one, several); {
	case rows == 0:
	case told >= fewestLots && of > 0:
		weight.Lot = plan.OfAll
		x.note("%s: of rows with several fish it is that of all of them, and of none alone", weight.Heading)
	case told < fewestLots:
		weight.Lot = plan.OfEither
	}
}

// lotsOf is how many rows of several fish have one of their kind beside them, and for which of the two their weights
// speak: above 0 for all of them, below for one.
func lotsOf(one map[string][]float64, several map[string][][2]float64) (rows int, of float64) {
	for kind, lots := range several {
		if len(one[kind]) == 0 {
			continue
		}
		slices.Sort(one[kind])
		usual := one[kind][len(one[kind])/2]
		for _, l := range lots {
			rows++
			of += math.Abs(math.Log(l[0]/usual)) - math.Abs(math.Log(l[0]/usual/l[1]))
		}
	}
	return rows, of
}
