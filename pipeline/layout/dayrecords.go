package layout

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

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

var (
	// a figure, a clock time, a range, or a mark for none
	valueWord = regexp.MustCompile(`(?i)^[~<>≈]?\d[\d.,:/+½-]*(?:h\d{0,2}|[ap]\.?m?\.?)?\??$|^[-–—?]+$`)
	gluedWord = regexp.MustCompile(`^([~<>≈]?\d+(?:[.,]\d+)?)(\pL{1,4})$`) // 4L
	labelWord = regexp.MustCompile(`^[\pL#][\pL\d#&'/.-]*$`)
	signed    = regexp.MustCompile(`^([\pL#][\pL\d#&'/.-]*)[:=](\S*)$`) // in:0630, in=
	halfOfDay = regexp.MustCompile(`(?i)^[ap]\.?m\.?$`)
)

// dayWord is a word of such a line.
type dayWord struct {
	raw    string // as it is written, with the marks behind it
	text   string
	label  string // that is written together with the value: L of 4L
	value  bool
	sign   bool // a colon or an equals sign stands behind the label
	stops  bool // a slash
	closes bool // the labels end behind it: "LST 3: 1 yft"
}

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
	if lines == nil || known == nil {
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

// dayTexts are the lines of a text most of which begin with a day, and those above them. A line without a day goes on
// with the one before. nil: they do not.
func (g *Grid) dayTexts() (lines []dayText, above []string) {
	before, all := "", 0
	for i := range g.Rows {
		if g.Rows[i].filled(0, g.Width) == nil {
			continue
		}
		text := strings.Join(strings.Fields(joined(g.Rows[i])), " ")
		day, what, dated := dayLine(text, before)
		switch {
		case dated && what != "":
			before = day
			lines = append(lines, dayText{g.Rows[i].Num, day, what})
		case len(lines) == 0:
			above = append(above, text)
			continue
		default:
			lines[len(lines)-1].text += " / " + text
		}
		all++
	}
	if len(lines) < fewRecords || 10*len(lines) < 8*all {
		return nil, nil
	}
	return lines, above
}

// wordsOf parts what a line says into its words.
func wordsOf(text string) (out []dayWord) {
	for _, raw := range strings.Fields(text) {
		bare := strings.TrimRight(raw, ",;")
		if m := signed.FindStringSubmatch(bare); m != nil {
			out = append(out, dayWord{raw: raw, text: m[1], sign: true})
			if bare, raw = m[2], ""; bare == "" {
				continue
			}
		}
		w := dayWord{raw: raw, closes: strings.HasSuffix(bare, ":")}
		w.text = strings.TrimSuffix(bare, ":")
		m := gluedWord.FindStringSubmatch(w.text)
		switch ends := strings.TrimSuffix(w.text, "."); {
		case valueWord.MatchString(ends): // "lost 1. One mahi."
			w.text, w.value = ends, true
		case m != nil:
			w.text, w.label, w.value = m[1], m[2], true
		default:
			w.stops = strings.Trim(w.text, "/|") == ""
		}
		w.closes = w.closes && w.value
		out = append(out, w)
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

// capitals tells a word cut short and in capitals.
func capitals(label string) bool {
	return len(label) <= longestShort && strings.ToUpper(label) == label &&
		strings.IndexFunc(label, unicode.IsLetter) >= 0
}

// pairsIn are the labels and values with which a line begins, up to a value that has no label before it.
func pairsIn(all []dayWord) (out []toldPair) {
	var label []string
	for i, w := range all {
		switch {
		case w.stops, !w.value && !labelWord.MatchString(w.text), len(w.text) > longestLabel, len(label) > mostOfLabel:
			return out
		case w.value && w.label != "":
			out, label = append(out, toldPair{label: w.label, value: w.text, glued: true}), nil
		case w.value && len(label) > 0:
			out = append(out, toldPair{label: strings.Join(label, " "), value: w.text, sign: all[i-1].sign})
			label = nil
		case w.dash():
			continue // between two of them
		case w.value:
			return out
		case i > 0 && all[i-1].value && all[i-1].label == "" && ofValue(w, all, i):
		default:
			label = append(label, w.text)
		}
		if w.closes {
			return out
		}
	}
	return out
}

// dash tells a mark that stands for no value, or between others.
func (w *dayWord) dash() bool { return w.value && w.label == "" && digits(w.text) == 0 }

// ofValue tells a unit behind a value, which is no label of the next one.
func ofValue(w dayWord, all []dayWord, i int) bool {
	_, isUnit := unit.Lookup(strings.ToLower(w.text))
	next := i+1 < len(all) && all[i+1].value
	return !w.sign && (isUnit && !next || halfOfDay.MatchString(w.text))
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

// labelsAt tells whether a known label begins at a word of a line.
func labelsAt(all []dayWord, i int, known map[string]string) bool {
	_, n := labelAt(all, i, known)
	return n > 0
}

// recordOf takes a line apart by the labels that are known.
func recordOf(all []dayWord, known map[string]string) (r dayRecord) {
	i, loose := 0, 0 // loose: where words begin that no label stands before
	for i < len(all) && !all[i].stops {
		label, n := labelAt(all, i, known)
		w := all[i]
		p := toldPair{label: label}
		switch {
		case n > 0 && i+n < len(all) && all[i+n].value && all[i+n].label == "":
			n, p.value, w = n+1, all[i+n].text, all[i+n]
		case n > 0 && (all[i+n-1].sign || i+n < len(all) && labelsAt(all, i+n, known)):
		case w.label != "" && known[strings.ToLower(w.label)] != "":
			n, p = 1, toldPair{label: strings.ToLower(w.label), value: w.text, glued: true}
		default:
			i++
			continue
		}
		if r.goesOn(all[loose:i], p) {
			p.value = rawOf(all[loose : i+n])
			r.pairs[len(r.pairs)-1].value += " " + p.value
		} else {
			r.between(all[loose:i])
			r.pairs = append(r.pairs, p)
		}
		i += n
		for i < len(all) && p.value != "" && ofValue(all[i], all, i) {
			r.pairs[len(r.pairs)-1].value += " " + all[i].text
			i++
		}
		if loose = i; w.closes {
			r.colon = true
			break
		}
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

func rawOf(words []dayWord) string {
	var out []string
	for _, w := range words {
		if w.raw != "" {
			out = append(out, w.raw)
		}
	}
	return strings.Join(out, " ")
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
