package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
)

// Some sheets hold no record of their own: they say what the headings of the others mean, or
// what the codes in a column of another stand for.

// keySheets are the sheets of a log that are such keys.
func keySheets(sheets []*layout.Sheet) []*layout.Sheet {
	var out []*layout.Sheet
	for _, s := range sheets {
		if explainsHeadings(s, sheets) || len(codedBy(s, sheets)) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// explainsHeadings tells a sheet of two columns or three in which most of the rows that have
// words beside words begin with a heading of another sheet, or with its name.
func explainsHeadings(s *layout.Sheet, sheets []*layout.Sheet) bool {
	if s.Grid.Width > 3 || len(s.Grid.Rows) < 4 {
		return false
	}
	paired, found := 0, 0
	for _, r := range s.Grid.Rows {
		text, beside := codeOf(r)
		if text = normalise(text); text == "" || beside == "" {
			continue
		}
		paired++
		if slices.ContainsFunc(sheets, func(o *layout.Sheet) bool {
			return o != s && (heads(o, text) || normalise(o.Grid.Info.Name) == text)
		}) {
			found++
		}
	}
	return found >= 3 && 2*found > paired
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

// codedBy finds the columns of other sheets whose cells are codes that a sheet lists: under the
// same heading as its first column, in which each code stands once, with words beside it.
func codedBy(s *layout.Sheet, sheets []*layout.Sheet) []string {
	rows := s.Grid.Rows
	if s.Grid.Width > 4 || len(rows) < 3 || len(rows) > 300 {
		return nil
	}
	codes, meant := map[string]bool{}, map[string]bool{}
	for _, r := range rows[1:] {
		code, means := codeOf(r)
		if code == "" || means == "" || codes[code] || meant[means] {
			return nil
		}
		codes[code], meant[means] = true, true
	}
	head := normalise(firstText(rows[0]))
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

// addKey takes what a key sheet says into the legend: the codes of a column and what its
// heading stands for, or the words for each heading.
func (l *legend) addKey(s *layout.Sheet, sheets []*layout.Sheet) {
	rows := s.Grid.Rows
	coded := codedBy(s, sheets)
	for _, head := range coded {
		codes := map[string]string{}
		for _, r := range rows[1:] {
			code, means := codeOf(r)
			codes[code] = definition(means)
		}
		l.codes[head] = codes
		if len(rows[0].Cells) > 1 {
			l.words[head] = rows[0].Cells[1].Text
		}
	}
	if len(coded) > 0 {
		return
	}
	for _, r := range rows {
		if len(r.Cells) > 1 && len(r.Cells[1].Text) < maxHeading {
			l.words[normalise(firstText(r))] = definition(r.Cells[1].Text)
		}
	}
}
