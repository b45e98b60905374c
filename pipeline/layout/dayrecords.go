package layout

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/unit"
)

// Some texts have a line a day: the day, then labels with their values that come again from line to line, "4 jun LI
// 0630 LO 1030 4L 9k KD 6", and behind these, after a colon or a slash, the fish and remarks. A line is a record then,
// and the labels are its columns.

const (
	fewRecords   = 5 // lines of a day and labels
	fewOfLine    = 3 // labels of such a line, and lines of a label
	fewRepeated  = 4 // labels that come again
	fewListing   = 3 // lines whose labels end in a colon, behind which things are listed
	mostOfLabel  = 3 // words
	longestLabel = 16
	longestShort = 4 // of a label in capitals
)

// toldPair is a label with its value.
type toldPair struct {
	label, value string
	sign, glued  bool // a sign stands between them; the label is written right behind the value
}

// dayRecord is what a line says.
type dayRecord struct {
	pairs         []toldPair
	listed, notes string
	colon         bool // what it lists stands behind a colon
}

// dayText is a line that begins with its day, and what stands behind that.
type dayText struct {
	num       int
	day, text string
}

// dayRecords takes such a text: one row a line.
func (g *Grid) dayRecords(like Likeness) (Block, bool) {
	if g.Info.Workbook || g.More || len(g.Rows) < fewRecords {
		return Block{}, false
	}
	b := Block{Grid: g, Shape: Records}
	var lines []dayText
	lines, b.Above = g.dayTexts()
	known := repeatedLabels(lines, like)
	if known == nil {
		return Block{}, false
	}
	all := len(lines)
	if lines = ofDays(lines, known); len(lines) < fewRecords || 10*len(lines) < 8*all {
		return Block{}, false
	}
	records, full, colons := make([]dayRecord, len(lines)), 0, 0
	for i, l := range lines {
		records[i] = recordOf(wordsOf(l.text), known)
		if len(records[i].pairs) >= fewOfLine {
			full++
		}
		if records[i].colon {
			colons++
		}
	}
	if full < fewRecords || 10*full < 6*len(lines) {
		return Block{}, false
	}
	b.recordRows(lines, records, known, colons >= fewListing)
	return b, true
}

// dayTexts are the lines of a text from the first on that begins with a day or stands under one, and those above them.
// One without a day has none.
func (g *Grid) dayTexts() (lines []dayText, above []string) {
	before, over := "", "" // over: a day alone in the line above
	for i := range g.Rows {
		if g.Rows[i].filled(0, g.Width) == nil {
			continue
		}
		text := strings.Join(strings.Fields(joined(g.Rows[i])), " ")
		day, what, dated := dayLine(text, before)
		if !dated && over != "" {
			day, what, dated = over, text, true
		}
		if over = ""; dated {
			before = day
		}
		switch {
		case dated && what == "":
			over = day
		case dated:
			lines = append(lines, dayText{g.Rows[i].Num, day, what})
		case len(lines) == 0:
			above = append(above, text)
		default:
			lines = append(lines, dayText{num: g.Rows[i].Num, text: text})
		}
	}
	return lines, above
}

// ofDays gives lines without a day that of the line before where they have labels of their own, as of the afternoon;
// others go on with that line.
func ofDays(lines []dayText, known map[string]string) (out []dayText) {
	for _, l := range lines {
		last := len(out) - 1
		switch {
		case l.day != "":
		case len(recordOf(wordsOf(l.text), known).pairs) >= fewOfLine:
			l.day = out[last].day
		default:
			out[last].text += " / " + l.text
			continue
		}
		out = append(out, l)
	}
	return out
}

// repeatedLabels are the labels with which lines begin that come again in others, by their lower case, as they are
// written. Most must look like labels: capitals cut short, a sign behind them, a unit, or words that the caller knows.
// nil: too few.
func repeatedLabels(lines []dayText, like Likeness) map[string]string {
	count, written, sure := map[string]int{}, map[string]string{}, map[string]bool{}
	for _, l := range lines {
		own := map[string]bool{}
		for _, p := range pairsIn(wordsOf(l.text)) {
			k := strings.ToLower(p.label)
			if !own[k] {
				count[k]++
			}
			own[k], written[k] = true, p.label
			_, isUnit := unit.Lookup(k)
			sure[k] = sure[k] || p.sign || isUnit || capitals(p.label) || like.Label(p.label) >= 0.8
		}
	}
	known, looks := map[string]string{}, 0
	for k, n := range count {
		if n >= fewOfLine && 3*n >= len(lines) {
			if known[k] = written[k]; sure[k] {
				looks++
			}
		}
	}
	if len(known) < fewRepeated || 2*looks < len(known) {
		return nil
	}
	return known
}

// labelAt is a known label that begins at a word of a line, and how many words it has; the longest.
func labelAt(all []dayWord, i int, known map[string]string) (label string, n int) {
	text := ""
	for k := i; k < min(len(all), i+mostOfLabel) && !all[k].value && !all[k].stops; k++ {
		text = strings.TrimSpace(text + " " + strings.ToLower(all[k].text))
		if known[text] != "" {
			label, n = text, k-i+1
		}
	}
	return label, n
}

// pairAt is a known label with its value that begins at a word of a line, and how many words it has. A label without a
// value has a sign, or stands before another label.
func pairAt(all []dayWord, i int, known map[string]string) (p toldPair, n int) {
	label, n := labelAt(all, i, known)
	switch w := all[i]; {
	case n > 0 && i+n < len(all) && all[i+n].value && all[i+n].label == "":
		return toldPair{label: label, value: all[i+n].text}, n + 1
	case n > 0 && all[i+n-1].sign:
		return toldPair{label: label}, n
	case n > 0 && i+n < len(all):
		if _, next := labelAt(all, i+n, known); next > 0 {
			return toldPair{label: label}, n
		}
	case w.label != "" && known[strings.ToLower(w.label)] != "":
		return toldPair{label: strings.ToLower(w.label), value: w.text, glued: true}, 1
	}
	return p, 0
}

// recordOf takes a line apart by the labels that are known.
func recordOf(all []dayWord, known map[string]string) (r dayRecord) {
	i, loose := 0, 0 // loose: where words begin that no label stands before
	for i < len(all) && !all[i].stops && !r.colon {
		p, n := pairAt(all, i, known)
		if n == 0 {
			i++
			continue
		}
		if r.goesOn(all[loose:i], p) {
			r.pairs[len(r.pairs)-1].value += " " + rawOf(all[loose:i+n])
		} else {
			r.between(all[loose:i])
			r.pairs = append(r.pairs, p)
		}
		i += n
		r.colon = all[i-1].closes
		for i < len(all) && p.value != "" && ofValue(all[i], all, i) {
			r.pairs[len(r.pairs)-1].value += " " + all[i].text
			i++
		}
		loose = i
	}
	if len(r.pairs) == 0 {
		r.notes = rawOf(all)
		return r
	}
	tail := all[loose:]
	for len(tail) > 0 && tail[0].dash() {
		tail = tail[1:]
	}
	if k := slices.IndexFunc(tail, func(w dayWord) bool { return w.stops }); k >= 0 {
		r.notes, tail = strings.TrimSpace(r.notes+" "+rawOf(tail[k+1:])), tail[:k]
	}
	r.listed = rawOf(tail)
	return r
}

// goesOn tells a label that comes again behind words with a figure: it changes the value, "6L til 0850 then 4L".
func (r *dayRecord) goesOn(words []dayWord, p toldPair) bool {
	n := len(r.pairs)
	return n > 0 && r.pairs[n-1].label == p.label && slices.ContainsFunc(words, func(w dayWord) bool { return w.value })
}

// between are the words of a line between two labels: more of the value before them where they have a figure, "6L til
// 0850 then 4", or where that is blank; else a remark.
func (r *dayRecord) between(words []dayWord) {
	for len(words) > 0 && words[len(words)-1].dash() {
		words = words[:len(words)-1]
	}
	n := len(r.pairs)
	figure := slices.ContainsFunc(words, func(w dayWord) bool { return w.value && !w.dash() })
	switch {
	case len(words) == 0:
	case n > 0 && (figure || r.pairs[n-1].value == ""):
		r.pairs[n-1].value = strings.TrimSpace(r.pairs[n-1].value + " " + rawOf(words))
	default:
		r.notes = strings.TrimSpace(r.notes + " " + rawOf(words))
	}
}

// recordRows makes the labels and the rows: the day, each label as often as one line has it, what is listed, and the
// remarks.
func (b *Block) recordRows(lines []dayText, records []dayRecord, known map[string]string, lists bool) {
	b.Labels = []Label{{Col: 0, Text: dayLabel}}
	at := b.recordLabels(records, known)
	n, listed := len(b.Labels), "what happened"
	if lists {
		listed = "fish"
	}
	b.Labels = append(b.Labels, Label{Col: n, Text: listed}, Label{Col: n + 1, Text: "notes"})
	for i, l := range lines {
		r := records[i]
		row := Row{Num: l.num, Cells: make([]Cell, n+2)}
		row.Cells[0] = Cell{Text: l.day, Look: Date}
		times := map[string]int{}
		for _, p := range r.pairs {
			times[p.label]++
			row.Cells[at[fmt.Sprint(p.label, times[p.label])]] = Cell{Text: p.value, Look: lookOf(p.value, 0)}
		}
		if lists && !r.colon {
			r.listed, r.notes = "", strings.Trim(r.listed+" / "+r.notes, " /")
		}
		row.Cells[n] = Cell{Text: r.listed, Look: lookOf(r.listed, 0)}
		row.Cells[n+1] = Cell{Text: r.notes, Look: lookOf(r.notes, 0)}
		b.Rows = append(b.Rows, row)
	}
	b.Labels = slices.DeleteFunc(b.Labels, func(l Label) bool { return !holds(b.Rows, l.Col) })
}

// recordLabels makes a label of each that the records have, in the order in which they come, and more where one has it
// more than once; it gives the column of each, by its name and its number.
func (b *Block) recordLabels(records []dayRecord, known map[string]string) map[string]int {
	var order []string
	most, apart := map[string]int{}, map[string]bool{}
	for _, r := range records {
		n := map[string]int{}
		for _, p := range r.pairs {
			apart[p.label] = apart[p.label] || !p.glued
			if n[p.label]++; most[p.label] == 0 {
				order = append(order, p.label)
			}
			most[p.label] = max(most[p.label], n[p.label])
		}
	}
	at := map[string]int{}
	for k, more := 1, true; more; k++ {
		more = false
		for _, label := range order {
			if k > most[label] {
				continue
			}
			text := known[label]
			if most[label] > 1 {
				text = fmt.Sprintf("%s %d", text, k)
			}
			at[fmt.Sprint(label, k)], more = len(b.Labels), true
			b.Labels = append(b.Labels, Label{Col: len(b.Labels), Text: text, Glued: !apart[label]})
		}
	}
	return at
}
