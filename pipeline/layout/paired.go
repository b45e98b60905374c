package layout

import (
	"regexp"
	"slices"
	"strings"
)

// A line that opens an outing may name it by its number and its day and go on with labels and their values, each in a
// cell, "Trip 3 | 4 May | Trolled | 3 h | Lines | 4", or all in one: "Trip 3, 4 May; trolled 3 h; lines 4".

// behindNumber is a day between the number of an outing and what is said of it.
var behindNumber = regexp.MustCompile(`^([^;]+);\s*(.+)$`)

// openedByPairs is a grid with each such line as labels with their values, the same in each line, the first two of them
// its number and its day, and these lines.
func (g *Grid) openedByPairs(like Likeness) (*Grid, []int) {
	found := map[int]opening{}
	var at []int
	var labels []string // in the order in which they come
	said := g.saidInOne(like)
	for r := range g.Rows {
		o, ok := g.pairedOpening(r)
		if !ok {
			o, ok = said[r]
		}
		if !ok || len(o.pairs) < 3 || len(at) > 0 && o.pairs[0].label != labels[0] {
			continue
		}
		found[r], at = o, append(at, r)
		for _, p := range o.pairs {
			if !slices.Contains(labels, p.label) {
				labels = append(labels, p.label)
			}
		}
	}
	if len(at) < fewPapers {
		return g, nil
	}
	return g.withOpenings(found, labels), at
}

// opens is the number and the day of an outing, told in one text or with the day in the next cell; more is what stands
// behind the day in that text.
func opens(first string, second Cell) (of []pair, more string, ok bool) {
	m := wordNumber.FindStringSubmatch(first)
	if m == nil {
		return nil, "", false
	}
	day := second
	if m[3] != "" {
		text := m[3]
		if b := behindNumber.FindStringSubmatch(text); b != nil {
			text, more = b[1], b[2]
		}
		day = Cell{Text: text, Look: lookOf(text, 0)}
	}
	if day.Look != Date {
		return nil, "", false
	}
	return []pair{{label: strings.ToLower(m[1]), value: Cell{Text: m[2], Look: Number}},
		{label: dayLabel, value: day}}, more, true
}

// pairedOpening takes a row apart whose cells are labels, each with its value right of it.
func (g *Grid) pairedOpening(r int) (o opening, ok bool) {
	row := &g.Rows[r]
	cells := row.filled(0, g.Width)
	if len(cells) < 3 {
		return o, false
	}
	k := cells[0] + 1
	of, more, ok := opens(row.at(cells[0]).Text, row.at(k))
	if !ok || more != "" {
		return o, false
	}
	if strings.ContainsAny(row.at(k).Text, "0123456789") && row.at(k).Look == Date {
		k++
	}
	for o.pairs = of; k < g.Width; k += 2 {
		label, value := row.at(k), row.at(k+1)
		switch {
		case label.Look == Text:
			o.pairs = append(o.pairs, pair{label: labelText(label), value: value})
		case label.Look != Blank || value.Look != Blank:
			return o, false
		}
	}
	return o, true
}

// saidInOne are the rows whose one text opens an outing and says more of it, with the labels and values of that text.
func (g *Grid) saidInOne(like Likeness) map[int]opening {
	out, texts := map[int]opening{}, map[int][]string{}
	var all []string
	for r := range g.Rows {
		cells := g.Rows[r].filled(0, g.Width)
		if len(cells) != 1 {
			continue
		}
		of, more, ok := opens(g.Rows[r].at(cells[0]).Text, Cell{})
		if !ok || more == "" {
			continue
		}
		out[r] = opening{pairs: of}
		for one := range strings.SplitSeq(more, ";") {
			texts[r] = append(texts[r], strings.TrimSpace(one))
		}
		all = append(all, texts[r]...)
	}
	for r, o := range out {
		said := labelsAndValues(texts[r], all, like)
		for _, p := range said {
			p.value.Look = lookOf(p.value.Text, 0)
			o.pairs = append(o.pairs, p)
		}
		if out[r] = o; said == nil {
			delete(out, r)
		}
	}
	return out
}

// labelsAndValues are those of the texts of one line. One that has no label goes on with the value before it: the lures
// of a list. nil where the first has none.
func labelsAndValues(texts, all []string, like Likeness) (out []pair) {
	var own []string // labels of this line
	for _, text := range texts {
		label, _, _ := labelAndValue(text, all)
		own = append(own, label)
	}
	for _, text := range texts {
		label, value, sure := labelAndValue(text, all)
		for _, other := range all { // speed kn abt 7 where others have speed kn 8
			l, _, _ := labelAndValue(other, all)
			if l != "" && strings.HasPrefix(label, l+" ") && !slices.Contains(own, l) {
				label, value = l, strings.TrimSpace(text[len(l):])
			}
		}
		switch {
		case label != "" && (sure || like.Label(label) >= 0.8):
			out = append(out, pair{label: strings.ToLower(label), value: Cell{Text: value}})
		case len(out) == 0:
			return nil
		default:
			out[len(out)-1].value.Text += "; " + text
		}
	}
	return out
}

// valueBegins is a word with which a value begins: a figure, what somebody was not sure of, or nothing known.
var valueBegins = regexp.MustCompile(`^[~<>]?[\pL.]{0,3}\d|^\?|^-+$|^[~<>]$`)

// labelAndValue parts a text into a label and its value: before the first figure, behind words in brackets, or where
// texts that begin with the same word go on in different ways, which is not sure.
func labelAndValue(text string, all []string) (label, value string, sure bool) {
	words := strings.Fields(text)
	if len(words) < 2 {
		return "", "", false
	}
	n := 0
	for i := 1; i < len(words) && n == 0; i++ {
		before := strings.Join(words[:i], " ")
		open := strings.Contains(before, "(") && !strings.Contains(before, ")")
		switch {
		case open:
		case i < len(words)-1 && words[i] == "-": // in - out
		case valueBegins.MatchString(words[i]), strings.HasSuffix(words[i-1], ")"):
			n = i
		}
	}
	if sure = n > 0; !sure {
		n = len(words) - 1
		for _, other := range all {
			if o := strings.Fields(other); len(o) > 1 && o[0] == words[0] && other != text {
				n = min(n, max(1, alike(words, o)))
			}
		}
	}
	return strings.Join(words[:n], " "), strings.Join(words[n:], " "), sure
}

// alike is with how many words, before one with a comma behind it, two texts begin alike.
func alike(a, b []string) int {
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] && !strings.HasSuffix(a[n], ",") {
		n++
	}
	return n
}
