package phrase

// attach joins what belongs together: hedges to the numbers beside them, a girth to the
// number that it stands by, a fraction without a whole.
func attach(items []item) []item {
	for i := range items {
		it := &items[i]
		switch it.kind {
		case aHedge:
			attachHedge(items, i)
		case aTimes:
			crossed(items, i)
		case aUnit:
			girthWord(items, i)
		case aNumber:
			lengthBehind(items, i)
		case aGlue:
			if it.text == "around" && behindLength(items, i) {
				items[i-1].kind, items[i-1].unit = aGirth, ""
			}
		}
	}
	girthUnits(items)
	return items
}

// attachHedge marks the measure beside a hedge; brackets may stand between them.
func attachHedge(items []item, i int) {
	step := []int{1, -1}
	if items[i].text != "before" {
		step = []int{-1, 1}
	}
	for _, d := range step {
		for j := i + d; j >= 0 && j < len(items) && (j-i)*d <= 3; j += d {
			k := items[j].kind
			if k == aLength || k == aWeight || k == aNumber || k == aClock || k == aGirth {
				items[j].hedged = true
				return
			}
			if k != aComma && k != aClose && k != aGlue && k != aHedge {
				break
			}
		}
	}
}

// behindLength tells a word behind a number without a unit that stands after a length: "44 inches long and 35 around".
func behindLength(items []item, i int) bool {
	if i < 2 || items[i-1].kind != aNumber || items[i-1].num <= 5 {
		return false
	}
	for j := i - 2; j >= 0 && i-j <= 4; j-- {
		switch items[j].kind {
		case aLength:
			return true
		case aWeight, aNumber, aClock, aGirth:
			return false
		}
	}
	return false
}

// crossed reads length x girth. One without a unit waits for the heading's, or the log's.
func crossed(items []item, i int) {
	if i == 0 || i+1 >= len(items) || items[i-1].kind != aLength &&
		(items[i-1].kind != aNumber || items[i-1].num < 12) {
		return
	}
	if next := &items[i+1]; next.kind == aLength || next.kind == aNumber || next.kind == aGirth {
		if next.kind == aNumber {
			next.unit = ""
		}
		if before := &items[i-1]; before.kind == aNumber {
			before.kind, before.unit = aLength, next.unit
			before.num *= max(1, factor[next.unit])
		}
		next.kind = aGirth
		if i+2 < len(items) && items[i+2].kind == aUnit {
			items[i+2].kind = aGlue
		}
	}
}

// girthWord gives the word to the number beside it: "37.5 in girth", "girth 37.5".
func girthWord(items []item, i int) {
	for _, j := range []int{i - 1, i + 1, i + 2} {
		if j < 0 || j >= len(items) || j == i+2 && items[i+1].kind != aColon && items[i+1].kind != aGlue {
			continue
		}
		k := items[j].kind
		if k == aGirth || (k == aLength || k == aNumber && items[j].num > 5) && (j > i || !lengthAfter(items, i)) {
			if k == aNumber {
				items[j].unit = ""
			}
			items[j].kind = aGirth
			return
		}
	}
}

// lengthAfter reports whether the girth's own number follows: "51 in, girth 24 in", "81 cm circ. 57", "112 G45".
func lengthAfter(items []item, i int) bool {
	j := i + 1
	if j < len(items) && (items[j].kind == aColon || items[j].kind == aGlue) {
		j++
	}
	measure := func(it item) bool { return it.kind == aLength || it.kind == aNumber && it.digits && it.num > 5 }
	return j < len(items) && measure(items[j]) && i >= 1 && measure(items[i-1])
}

// mostMetres is the most metres that a girth has: behind a length in metres 82 is in centimetres.
const mostMetres = 5

// lengthBehind takes a bare number behind a word for how a length was taken for that length: "FL 112 released". Its
// unit is the heading's, or the log's.
func lengthBehind(items []item, i int) {
	if it := &items[i]; i > 0 && items[i-1].kind == aKind && it.digits && it.num > 5 {
		it.kind, it.unit = aLength, ""
	}
}

// girthUnits gives a girth without a unit that of the length before it; without one it
// waits for the heading's.
func girthUnits(items []item) {
	unit := ""
	for i := range items {
		switch it := &items[i]; it.kind {
		case aLength:
			unit = it.unit
		case aGirth:
			if it.unit == "" && unit == "m" && it.num > mostMetres {
				it.num, it.unit = it.num*factor["cm"], "cm"
			} else if it.unit == "" && unit != "" {
				it.num, it.unit = it.num*factor[unit], unit
			}
		}
	}
}
