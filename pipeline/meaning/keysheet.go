package meaning

import (
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

// Some sheets hold no record of their own: they say what the headings of the others mean, or
// what the codes in a column of another stand for.

// keySheets are the sheets of a log that are such keys.
func keySheets(sheets []*layout.Sheet) []*layout.Sheet {
	var out []*layout.Sheet
	for _, s := range sheets {
		if IsKey(s, sheets) {
			out = append(out, s)
		}
	}
	return out
}

// IsKey tells a sheet that says what headings and codes of others mean.
func IsKey(s *layout.Sheet, sheets []*layout.Sheet) bool {
	return (explainsHeadings(s, sheets) || listsCodes(s, sheets) || dictionaryOf(s, sheets) != nil ||
		keyTextOf(s, sheets) != nil) && !hasTableOf(s, sheets)
}

// explainsHeadings tells a sheet of two columns or three in which most of the rows that have
// words beside words begin with a heading of another sheet or its codes, or with its name. Several begin with a
// heading, or with letters that are a code, each once and of another meaning: strikes of numbered trips are no codes.
func explainsHeadings(s *layout.Sheet, sheets []*layout.Sheet) bool {
	if s.Grid.Width > 3 || len(s.Grid.Rows) < 4 {
		return false
	}
	rows := keyRows(s, except(sheets, s))
	found, told := 0, 0
	for _, r := range rows {
		if len(r.heads) > 0 {
			found++
		} else if r.cell {
			told++
		}
	}
	return found+fatedCodes(rows) >= 3 && 2*(found+told) > len(rows)
}

// hasTableOf tells a sheet with a table that another sheet has too, under the same headings, and with clock times in
// it: a page of the same log, on which there was less to write.
func hasTableOf(s *layout.Sheet, sheets []*layout.Sheet) bool {
	for i := range s.Blocks {
		b := &s.Blocks[i]
		timed := slices.ContainsFunc(b.Rows, func(r layout.Row) bool {
			return slices.ContainsFunc(r.Cells, func(c layout.Cell) bool { return c.Look == layout.Clock })
		})
		if b.Shape != layout.Table || len(b.Labels) < 2 || !timed {
			continue
		}
		for _, o := range except(sheets, s) {
			if slices.ContainsFunc(o.Blocks, func(x layout.Block) bool {
				return x.Shape == layout.Table && slices.EqualFunc(x.Labels, b.Labels, sameLabel)
			}) {
				return true
			}
		}
	}
	return false
}

// except are the sheets of a log but one.
func except(sheets []*layout.Sheet, s *layout.Sheet) []*layout.Sheet {
	return slices.DeleteFunc(slices.Clone(sheets), func(o *layout.Sheet) bool { return o == s })
}

// heads tells whether a text is a heading of a sheet, or the first words of one.
func heads(s *layout.Sheet, text string) bool {
	for i := range s.Blocks {
		for _, l := range s.Blocks[i].Labels {
			if h := normalise(l.Text); h == text || strings.HasPrefix(h, text+" ") {
				return true
			}
		}
	}
	return false
}

// headsCode tells a text that is a heading of a sheet with one of the codes under it: "Esito B".
func headsCode(s *layout.Sheet, text string) bool {
	at := strings.LastIndexByte(text, ' ')
	if at < 0 || len(text)-at-1 > longestCode {
		return false
	}
	head, code := text[:at], text[at+1:]
	for i := range s.Blocks {
		b := &s.Blocks[i]
		for _, l := range b.Labels {
			if normalise(l.Text) == head && slices.ContainsFunc(b.Rows, func(r layout.Row) bool {
				return l.Col < len(r.Cells) && normalise(r.Cells[l.Col].Text) == code
			}) {
				return true
			}
		}
	}
	return false
}

// lists are the tables of a key sheet, parted by blank rows or titles: a heading, and rows of
// words beside words. The heading may stand alone, where it is one of another sheet's.
func lists(s *layout.Sheet, sheets []*layout.Sheet) [][]layout.Row {
	var out [][]layout.Row
	last := 0
	var title *layout.Row
	for _, r := range s.Grid.Rows {
		if _, means := codeOf(r); means == "" {
			last, title = 0, &r
			continue
		}
		if last == 0 || int(r.Num) != last+1 {
			out = append(out, nil)
			if title != nil && title.Num+1 == r.Num && slices.ContainsFunc(sheets,
				func(o *layout.Sheet) bool { return o != s && hasHeading(o, normalise(firstText(*title))) }) {
				out[len(out)-1] = append(out[len(out)-1], *title)
			}
		}
		out[len(out)-1] = append(out[len(out)-1], r)
		last = int(r.Num)
	}
	return slices.DeleteFunc(out, func(rows []layout.Row) bool { return len(rows) < 3 })
}

// listsCodes tells a sheet most of whose rows list the codes of columns of others.
func listsCodes(s *layout.Sheet, sheets []*layout.Sheet) bool {
	if s.Grid.Width > 4 || len(s.Grid.Rows) > 300 {
		return false
	}
	listing := 0
	for _, rows := range lists(s, sheets) {
		if len(codedBy(s, rows, sheets)) > 0 || withoutHead(s, rows, sheets) != "" {
			listing += len(rows)
		}
	}
	return 2*listing > len(s.Grid.Rows)
}

// codedBy finds the columns of other sheets whose cells are codes that a list of a sheet has:
// under the same heading as its first column, in which each code stands once, with words beside it.
func codedBy(s *layout.Sheet, rows []layout.Row, sheets []*layout.Sheet) []string {
	codes, meant := map[string]bool{}, map[string]bool{}
	for _, r := range rows[1:] {
		code, means := codeOf(r)
		if code == "" || codes[code] || meant[means] {
			return nil
		}
		codes[code], meant[means] = true, true
	}
	head := normalise(firstText(rows[0]))
	if codeHeads[head] {
		// a table of its own: outcome.csv
		head = normalise(strings.TrimSuffix(s.Grid.Info.Name, filepath.Ext(s.Grid.Info.Name)))
	}
	var out []string
	for _, o := range sheets {
		for i := range o.Blocks {
			b := &o.Blocks[i]
			for _, l := range b.Labels {
				if o != s && head != "" && normalise(l.Text) == head && listed(b, l.Col, codes) {
					out = append(out, head)
				}
			}
		}
	}
	return out
}

// withoutHead is the heading of the one column of other sheets nearly all of whose cells are codes of a list that has
// no heading itself; "" where there is none, or several.
func withoutHead(s *layout.Sheet, rows []layout.Row, sheets []*layout.Sheet) string {
	codes := map[string]bool{}
	for _, r := range rows {
		code, means := codeOf(r)
		if code == "" || len(code) > longestCode || codes[code] || !isFate(means) {
			return ""
		}
		codes[code] = true
	}
	head := ""
	for _, o := range except(sheets, s) {
		for i := range o.Blocks {
			for _, l := range o.Blocks[i].Labels {
				h := normalise(l.Text)
				if !listed(&o.Blocks[i], l.Col, codes) || h == head {
					continue
				}
				if head != "" {
					return ""
				}
				head = h
			}
		}
	}
	return head
}

// codeHeads are headings of codes that do not say of what.
var codeHeads = map[string]bool{"code": true, "id": true, "key": true, "no": true, "nr": true, "codigo": true,
	"codice": true, "symbol": true}

// codeOf is a row's code and the first words that stand beside it; none of a row that has a
// day or a time, which is a record.
func codeOf(r layout.Row) (code, means string) {
	if len(r.Cells) == 0 {
		return "", ""
	}
	for _, c := range r.Cells[1:] {
		switch {
		case c.Look == layout.Date || c.Look == layout.Clock:
			return "", ""
		case means == "" && c.Look == layout.Text && hasLetter(c.Text):
			means = c.Text
		}
	}
	return strings.ToLower(r.Cells[0].Text), means
}

// listed tells a column nearly all of whose cells are among the codes.
func listed(b *layout.Block, col int, codes map[string]bool) bool {
	n, found := 0, 0
	for _, r := range b.Rows {
		if col < len(r.Cells) && r.Cells[col].Look != layout.Blank {
			n++
			if codes[strings.ToLower(r.Cells[col].Text)] {
				found++
			}
		}
	}
	return n > 2 && 10*found >= 9*n
}

// definition is what a key says behind a colon, where that tells by itself what became of a bite:
// "soltado: estuvo clavado y se fue" is of a fish that was lost.
func definition(text string) string {
	if _, behind, ok := strings.Cut(text, ":"); ok && isFate(behind) {
		return strings.TrimSpace(behind)
	}
	return text
}

// entry is a row of a dictionary: a heading, one of its codes or none, and what that means.
type entry struct{ head, code, means string }

// dictionary is what a sheet says that has a row for each heading of the others and for each code
// of their columns.
type dictionary struct {
	entries []entry
	missing string // what stands in any column where nothing was written down: -9
}

// dictionaryOf reads a sheet as one: in one column the heading, before the words a column of codes.
// Of several such columns that counts which names most headings: the first may name tables. nil is no such.
func dictionaryOf(s *layout.Sheet, sheets []*layout.Sheet) *dictionary {
	if s.Grid.Width < 3 || s.Grid.Width > 6 || len(s.Grid.Rows) > 1000 {
		return nil
	}
	for _, r := range s.Grid.Rows {
		if slices.ContainsFunc(r.Cells, func(c layout.Cell) bool {
			return c.Look == layout.Date || c.Look == layout.Clock
		}) {
			return nil // records
		}
	}
	var out *dictionary
	most := 0
	for col := range s.Grid.Width - 2 {
		if d, n := dictionaryAt(s, col, sheets); d != nil && n > most {
			out, most = d, n
		}
	}
	return out
}

// dictionaryAt reads a sheet as a dictionary of the headings in one of its columns, and counts them.
func dictionaryAt(s *layout.Sheet, col int, sheets []*layout.Sheet) (*dictionary, int) {
	d, named := &dictionary{}, map[string]bool{}
	told, coded := 0, 0
	var above []string // a heading that stands once holds for the codes under it
	for _, r := range s.Grid.Rows {
		code, means := codeAt(r, col)
		if means == "" {
			above = nil
			continue
		}
		said := headsAt(r, col)
		if len(said) == 0 && code != "" && !saysMissing(means) {
			said = above
		}
		above = said
		heads := slices.DeleteFunc(slices.Clone(said), func(h string) bool {
			return !slices.ContainsFunc(sheets, func(o *layout.Sheet) bool { return o != s && hasHeading(o, h) })
		})
		if len(heads) == 0 && code != "" && saysMissing(means) {
			d.missing = code // "all", or no heading
			continue
		}
		if len(said) > 0 {
			told++
		}
		if len(heads) > 0 && code != "" {
			coded++
		}
		for _, h := range heads {
			d.entries, named[h] = append(d.entries, entry{h, code, means}), true
		}
	}
	if coded < 3 || len(d.entries) < 5 || 4*len(d.entries) < 3*told {
		return nil, 0
	}
	return d, len(named)
}

// saysMissing tells words for a value that nobody wrote down: "not recorded / does not apply".
func saysMissing(means string) bool {
	first := strings.FieldsFunc(means, func(r rune) bool { return strings.ContainsRune(";(/,", r) })
	return len(first) > 0 && (words.NotLogged(strings.TrimSpace(first[0])) || missingWords.MatchString(first[0]))
}

var missingWords = regexp.MustCompile(
	`(?i)^\s*(?:(?:missing|no) (?:values?|data|entry|records?)|missing|not (?:noted|applicable|available|written down))\s*$`)

// headsAt are the headings that a row's cell names: itself, or several as in "t_in / t_out".
func headsAt(r layout.Row, col int) []string {
	if col >= len(r.Cells) {
		return nil
	}
	out := []string{normalise(r.Cells[col].Text)}
	if parts := strings.Split(r.Cells[col].Text, "/"); len(parts) > 1 {
		for _, p := range parts {
			out = append(out, normalise(p))
		}
	}
	return slices.DeleteFunc(out, func(h string) bool { return h == "" })
}

// codeAt is the code behind a row's heading, and the words behind that.
func codeAt(r layout.Row, col int) (code, means string) {
	if col+1 >= len(r.Cells) {
		return "", ""
	}
	for _, c := range r.Cells[col+2:] {
		if c.Look != layout.Blank {
			return strings.ToLower(r.Cells[col+1].Text), c.Text
		}
	}
	return "", ""
}

func hasHeading(s *layout.Sheet, head string) bool {
	return slices.ContainsFunc(s.Blocks, func(b layout.Block) bool {
		return slices.ContainsFunc(b.Labels, func(l layout.Label) bool { return normalise(l.Text) == head })
	})
}

// gist is what a definition says of the lines or of a bite before it goes on: "all lines out;
// period ends".
func gist(means string) string {
	first := strings.TrimSpace(strings.FieldsFunc(means+" ", func(r rune) bool { return r == ';' || r == '(' })[0])
	if e := words.EntryOf(first); first != "" && (e.Event != words.EventNone || isFate(first)) {
		return first
	}
	return definition(means)
}

// addKey takes what a key sheet says into the legend: the codes of a column and, where it has
// one list, what its heading stands for; or the words for each heading.
func (l *legend) addKey(s *layout.Sheet, sheets []*layout.Sheet) {
	for _, r := range s.Grid.Rows {
		maps.Copy(l.marks, marksIn(joinedText(r)))
		l.addApart(joinedText(r))
	}
	if d := dictionaryOf(s, sheets); d != nil {
		if d.missing != "" {
			l.missing = d.missing
		}
		l.addEntries(d.entries)
		for _, r := range s.Grid.Rows {
			if m := missingMark.FindStringSubmatch(firstText(r)); m != nil {
				l.missing = m[1]
			}
		}
		return
	}
	if entries := keyTextOf(s, sheets); entries != nil {
		l.addEntries(entries)
		return
	}
	all := lists(s, sheets)
	l.addLines(s, except(sheets, s))
	coded := false
	for _, rows := range all {
		if head := withoutHead(s, rows, sheets); head != "" && len(codedBy(s, rows, sheets)) == 0 {
			l.codes[head], coded = map[string]string{}, true
			for _, r := range rows {
				code, means := codeOf(r)
				l.codes[head][code] = definition(means)
			}
			continue
		}
		for _, head := range codedBy(s, rows, sheets) {
			codes := map[string]string{}
			for _, r := range rows[1:] {
				code, means := codeOf(r)
				codes[code] = definition(means)
			}
			l.codes[head], coded = codes, true
			if len(all) == 1 && len(rows[0].Cells) > 1 {
				l.words[head] = rows[0].Cells[1].Text
			}
		}
	}
	if coded && listsCodes(s, sheets) {
		return
	}
	for _, r := range s.Grid.Rows {
		if len(r.Cells) > 1 && len(r.Cells[1].Text) < maxHeading {
			l.words[normalise(firstText(r))] = definition(r.Cells[1].Text)
		}
	}
	l.addCodes(keyRows(s, except(sheets, s)), except(sheets, s))
}

// addLines takes the lines of a key that list the codes of a heading of other sheets in one cell: "Fate: 0 = lost, 1 =
// kept".
func (l *legend) addLines(s *layout.Sheet, others []*layout.Sheet) {
	for _, r := range s.Grid.Rows {
		if filled(r) != 1 {
			continue
		}
		text := strings.TrimSpace(joinedText(r))
		m := colonKey.FindStringSubmatch(text)
		if m == nil {
			m = bracketKey.FindStringSubmatch(text)
		}
		if m == nil || !anyHeading(others, normalise(m[1])) {
			continue
		}
		var entries []entry
		for code, means := range codesIn(m[2]) {
			entries = append(entries, entry{normalise(m[1]), code, means})
		}
		l.addEntries(entries)
	}
}

func filled(r layout.Row) (n int) {
	for _, c := range r.Cells {
		if c.Look != layout.Blank {
			n++
		}
	}
	return n
}

// addCodes takes the codes that rows of a key list beside a heading, or below it.
func (l *legend) addCodes(rows []keyRow, others []*layout.Sheet) {
	var entries []entry
	for _, r := range rows {
		for _, h := range r.heads {
			if r.code != "" {
				delete(l.words, normalise(r.code)) // it is of that heading alone
				entries = append(entries, entry{h, r.code, r.means})
				continue
			}
			for code, means := range codesBeside(h, r.means, others) {
				entries = append(entries, entry{h, code, means})
			}
		}
	}
	l.addEntries(entries)
}

// addEntries takes what a key says of each heading, and of each of its codes.
func (l *legend) addEntries(entries []entry) {
	for _, e := range entries {
		switch {
		case e.code == "" && len(e.means) < maxHeading:
			l.words[e.head] = definition(e.means)
		case e.code == "":
		case l.codes[e.head] == nil:
			l.codes[e.head] = map[string]string{e.code: gist(e.means)}
		default:
			l.codes[e.head][e.code] = gist(e.means)
		}
	}
}
