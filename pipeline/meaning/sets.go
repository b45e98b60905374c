package meaning

import (
	"maps"
	"regexp"
	"slices"
	"strconv"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

// labelKey is a label as groups know it: its text in normal form, and which of several
// of the same text it is.
type labelKey struct {
	text string
	nth  int
}

// keysOf are the keys of a block's labels. Those of a family have one text in common, and
// stand for the same thing of a first, a second, a third.
func keysOf(b *layout.Block) (keys []labelKey, families map[string]int) {
	seen := map[string]int{}
	keys = make([]labelKey, len(b.Labels))
	families, first := familiesOf(b)
	twins := twinsOf(b)
	maps.Copy(twins, runsOf(b))
	maps.Copy(twins, behindNumbered(b))
	for i, l := range b.Labels {
		text := normalise(l.Full())
		if k, ok := twins[i]; ok {
			keys[i] = k
			families[k.text]++
			continue
		}
		if base, n := setOf(text); families[base] > 1 && !l.Whole {
			if keys[i] = (labelKey{base, n}); n == 0 && first[base] {
				keys[i].text = besideNumbered + base
			}
			continue
		}
		if text == "" {
			text = l.Full()
		}
		seen[text]++
		keys[i] = labelKey{text, seen[text]}
	}
	return keys, families
}

var (
	setInside = regexp.MustCompile(`^(\pL+) (\d{1,2}) (\D.*)$`)
	setBefore = regexp.MustCompile(
		`^(1st|2nd|3rd|4th|first|second|third|fourth|morning|afternoon) (?:(?:session|stretch|spell|run|set|go|pass|drag) )?(\D.*)$`)
	setBehind = regexp.MustCompile(`^(\D.*?) ?(\d{1,2})$`)
)

// sessions are words before a heading for the first, the second stretch of a day.
var sessions = map[string]int{"1st": 1, "first": 1, "morning": 1, "2nd": 2, "second": 2, "afternoon": 2, "3rd": 3,
	"third": 3, "4th": 4, "fourth": 4}

// setOf parts a heading that numbers one of several like it ("Strike 2 what fish",
// "Length 3", "2nd session - lines in") into what they have in common and its number; 0 where it does not.
func setOf(text string) (base string, n int) {
	if m := setInside.FindStringSubmatch(text); m != nil {
		n, _ = strconv.Atoi(m[2]) // digits alone
		return m[1] + " " + m[3], n
	}
	if m := setBefore.FindStringSubmatch(text); m != nil {
		return m[2], sessions[m[1]]
	}
	if m := setBehind.FindStringSubmatch(text); m != nil {
		n, _ = strconv.Atoi(m[2])
		return m[1], n
	}
	return text, 0
}

// besideNumbered stands before the key of a heading without a number beside the same with numbers from one on: "Hits"
// beside "Hits 1" and "Hits 2" is no first of them.
const besideNumbered = "beside the numbered "

// familiesOf counts the headings of a block that are alike but for a number, and says of which there is a first.
func familiesOf(b *layout.Block) (families map[string]int, first map[string]bool) {
	families, first = map[string]int{}, map[string]bool{}
	for _, l := range b.Labels {
		if base, n := setOf(normalise(l.Full())); n > 0 && n < 20 && !l.Whole {
			families[base]++
			first[base] = first[base] || n == 1
		}
	}
	return families, first
}

func sameKeys(x, y *layout.Block) bool {
	a, _ := keysOf(x)
	b, _ := keysOf(y)
	return slices.Equal(a, b)
}

// twinsOf finds headings that come again in the same order, the hours of a first and a
// second stretch: Start, Finish, Knots, and Start, Finish, Knots once more, under "Before
// lunch" and "After lunch" or under no group. One of them must hold clock times. A group
// that names a fate or a place of the spread says itself what its columns are.
func twinsOf(b *layout.Block) map[int]labelKey {
	by := map[string][]int{} // columns by their heading without its group
	var order []string
	for i, l := range b.Labels {
		text := normalise(l.Text)
		_, _, _, fate := words.FateOf(l.Group)
		if text == "" || fate || words.IsPlace(l.Group) {
			continue
		}
		if by[text] == nil {
			order = append(order, text)
		}
		by[text] = append(by[text], i)
	}
	var first []string
	times := false
	for _, text := range order {
		at := by[text]
		if len(at) < 2 || len(first) > 0 && !together(by[first[0]], at) {
			continue
		}
		first = append(first, text)
		times = times || clocked(b, at[0])
	}
	twins := map[int]labelKey{}
	if len(first) < 2 || !times {
		return twins
	}
	for _, text := range first {
		for n, i := range by[text] {
			twins[i] = labelKey{text, n + 1}
		}
	}
	return twins
}

// runsOf finds columns that ask of a second stretch what others asked of the first, in other
// words: "First spell: how many lines?", "Second spell: number of lines". They stand in the same
// order, hold the same kinds of cells, and the first of each are clock times.
func runsOf(b *layout.Block) map[int]labelKey {
	runs := map[int][]int{}
	for i, l := range b.Labels {
		if m := setBefore.FindStringSubmatch(normalise(l.Full())); m != nil {
			runs[sessions[m[1]]] = append(runs[sessions[m[1]]], i)
		}
	}
	out := map[int]labelKey{}
	first, second := runs[1], runs[2]
	if len(first) < 3 || len(first) != len(second) || len(runs) > 2 || !clocked(b, first[0]) {
		return out
	}
	for k := range first {
		if clocked(b, first[k]) != clocked(b, second[k]) {
			return map[int]labelKey{}
		}
		base, _ := setOf(normalise(b.Labels[first[k]].Full()))
		out[first[k]], out[second[k]] = labelKey{base, 1}, labelKey{base, 2}
	}
	return out
}

// behindNumbered finds headings that come again behind each of several numbered ones, in the same order: "Fish 1",
// "cm", "kg", "Fish 2", "cm", "kg". They are of the first, the second.
func behindNumbered(b *layout.Block) map[int]labelKey {
	out, by := map[int]labelKey{}, map[string][]int{}
	var order []string
	for i, l := range b.Labels {
		base, n := setOf(normalise(l.Full()))
		if n == 0 || l.Whole || n != len(by[base])+1 {
			continue
		}
		if n == 1 {
			order = append(order, base)
		}
		by[base] = append(by[base], i)
	}
	for _, base := range order {
		at := by[base]
		if len(at) < 2 {
			continue
		}
		step := at[1] - at[0]
		for j := 1; j < step; j++ {
			text := normalise(b.Labels[at[0]+j].Full())
			if _, n := setOf(text); text == "" || n > 0 {
				return map[int]labelKey{}
			}
			for k, i := range at {
				if i != at[0]+k*step || i+j >= len(b.Labels) || normalise(b.Labels[i+j].Full()) != text {
					return map[int]labelKey{}
				}
				out[i+j] = labelKey{text, k + 1}
			}
		}
	}
	return out
}

// together reports whether the columns of two headings take turns: a b a b, not a a b b.
func together(a, b []int) bool {
	if len(a) != len(b) {
		return false
	}
	for n := range a {
		if a[n] > b[n] || n+1 < len(a) && b[n] > a[n+1] {
			return false
		}
	}
	return true
}

// clocked reports whether most filled cells of a column are clock times.
func clocked(b *layout.Block, label int) bool {
	n, clocks := 0, 0
	for _, row := range b.Rows {
		if col := b.Labels[label].Col; col < len(row.Cells) && row.Cells[col].Look != layout.Blank {
			n++
			if row.Cells[col].Look == layout.Clock {
				clocks++
			}
		}
	}
	return n > 0 && 2*clocks > n
}
