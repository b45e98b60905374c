package meaning

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/layout"
)

// codesBeside are the codes that a key lists beside a heading. Without equals signs they are codes only where
// the column has next to no other cells.
func codesBeside(head, text string, others []*layout.Sheet) map[string]string {
	codes := codesIn(text)
	if codes == nil || strings.Count(text, "=") > 1 {
		return codes
	}
	have := map[string]bool{}
	for c := range codes {
		have[c] = true
	}
	for _, o := range others {
		for i := range o.Blocks {
			for _, l := range o.Blocks[i].Labels {
				if normalise(l.Text) == head && listed(&o.Blocks[i], l.Col, have) {
					return codes
				}
			}
		}
	}
	return nil
}

// keyRow is what a row of a key sheet explains.
type keyRow struct {
	heads []string // headings of other sheets
	code  string   // of the heading above, which stands alone
	means string
	cell  bool   // no heading, but what stands in cells of the others
	fated string // that is a code in letters, of what became of a bite
}

// keyRows are the rows of a sheet that has words beside words, with what each is about.
func keyRows(s *layout.Sheet, others []*layout.Sheet) []keyRow {
	var out []keyRow
	under, last := "", 0
	for _, r := range s.Grid.Rows {
		code, means := codeOf(r)
		text := normalise(code)
		if r.Num != last+1 {
			under = ""
		}
		last = r.Num
		if text == "" || means == "" {
			if under = text; !anyHeading(others, text) {
				under = ""
			}
			continue
		}
		row := keyRow{means: means}
		switch {
		case under != "" && len(code) <= longestCode && anyCell(others, under, code):
			row.code, row.heads = code, []string{under}
		case explained(others, text):
			row.heads, under = []string{text}, ""
		default:
			under = ""
			for _, h := range headsAt(r, 0) {
				if anyHeading(others, h) {
					row.heads = append(row.heads, h)
				}
			}
			row.cell = len(row.heads) == 0 && anyCell(others, "", code)
			if row.cell && len(code) <= longestCode && wordOnly(code) && isFate(means) {
				row.fated = code
			}
		}
		out = append(out, row)
	}
	return out
}

// fatedCodes is how many rows of a key explain a code by what became of a bite; none where one code stands twice, or
// two mean the same: those are records.
func fatedCodes(rows []keyRow) int {
	codes, means := map[string]bool{}, map[string]bool{}
	for _, r := range rows {
		if r.fated == "" {
			continue
		}
		if codes[r.fated] || means[r.means] {
			return 0
		}
		codes[r.fated], means[r.means] = true, true
	}
	return len(codes)
}

// explained tells a text that names a heading, a heading with a code of it, or a sheet.
func explained(others []*layout.Sheet, text string) bool {
	for _, o := range others {
		if heads(o, text) || headsCode(o, text) || normalise(o.Grid.Info.Name) == text {
			return true
		}
	}
	return false
}

func anyHeading(others []*layout.Sheet, head string) bool {
	for _, o := range others {
		if head != "" && hasHeading(o, head) {
			return true
		}
	}
	return false
}

// anyCell tells what is all of a cell in a column under a heading, or under any where that is empty.
func anyCell(others []*layout.Sheet, head, text string) bool {
	for _, o := range others {
		for i := range o.Blocks {
			b := &o.Blocks[i]
			for _, l := range b.Labels {
				if (head == "" || normalise(l.Text) == head) && hasCell(b, l.Col, text) {
					return true
				}
			}
		}
	}
	return false
}

func hasCell(b *layout.Block, col int, text string) bool {
	for _, r := range b.Rows {
		if col < len(r.Cells) && strings.EqualFold(r.Cells[col].Text, text) {
			return true
		}
	}
	return false
}

// keyBeside takes the key that stands at the right of a table, in columns without headings, out of it: texts
// most of which begin with a heading or with what stands in cells.
func keyBeside(b *layout.Block, sheets []*layout.Sheet) []string {
	all := b.Labels
	last := len(all)
	for last > 0 && all[last-1].Text == "" {
		last--
	}
	if last == 0 || last == len(all) {
		return nil
	}
	var out []string
	for _, r := range b.Rows {
		text, ok := keyLineIn(r, all[last:])
		if !ok {
			return nil
		}
		if text != "" {
			out = append(out, text)
		}
	}
	b.Labels = all[:last]
	told := 0
	for _, text := range out {
		m := keyHead.FindStringSubmatch(text)
		if m != nil && (explained(sheets, normalise(m[1])) || anyCell(sheets, "", m[1])) {
			told++
		}
	}
	if len(out) < 2 || 2*told < len(out) {
		b.Labels = all
		return nil
	}
	return out
}

// keyHead is what a line of a key explains.
var keyHead = regexp.MustCompile(`^\s*([^:=]{1,25}?)\s*[:=]`)

// keyLineIn is what a row has in some columns as a line of a key; false where it has figures there.
func keyLineIn(r layout.Row, labels []layout.Label) (string, bool) {
	var parts []string
	for _, l := range labels {
		if l.Col >= len(r.Cells) || r.Cells[l.Col].Look == layout.Blank {
			continue
		}
		if c := r.Cells[l.Col]; c.Look == layout.Text || len(parts) == 0 && c.Look == layout.Number {
			parts = append(parts, c.Text)
		} else {
			return "", false
		}
	}
	switch {
	case len(parts) == 1 && !hasLetter(parts[0]):
		return "", false
	case len(parts) < 2 || strings.ContainsAny(parts[0], ":="):
		return strings.Join(parts, " "), true
	}
	means := strings.Join(parts[1:], " ")
	if codesIn(means) != nil {
		return parts[0] + ": " + means, true
	}
	return parts[0] + " = " + means, true
}
