package meaning

import (
	"fmt"
	"maps"
	"strconv"
	"strings"
)

// evening is the first clock time, written without a colon, of an evening.
const evening = 1800

// hoursAlone reads the whole hours of somebody who writes clock times as figures alone: "7" beside 630 and 1130. Where
// such a time is of an evening, a figure alone may be minutes past midnight.
func (x *builder) hoursAlone() {
	short, late := 0, false
	var of []int
	for i := range x.plan.Bindings {
		b := &x.plan.Bindings[i]
		if b.Column.Name != "start_s" && b.Column.Name != "end_s" || b.Index < 0 {
			continue
		}
		hours := 0
		for _, r := range x.rows {
			if b.Index >= len(r) {
				continue
			}
			n, err := strconv.Atoi(strings.TrimSpace(r[b.Index]))
			switch {
			case err != nil:
			case n >= 100 && n < 2400 && n%100 < 60:
				short++
				late = late || n >= evening
			case n > 0 && n <= 12:
				hours++
			}
		}
		if hours > 0 {
			of = append(of, i)
		}
	}
	if short < 2 || late {
		return
	}
	for _, i := range of {
		b := &x.plan.Bindings[i]
		codes := map[string]string{}
		for h := 1; h <= 12; h++ {
			codes[strconv.Itoa(h)] = fmt.Sprintf("%d:00", h)
		}
		maps.Copy(codes, b.Codes)
		b.Codes = codes
		x.note("%s: a figure such as 7 is read as 7:00, as other times there have no colon", b.Heading)
	}
}
