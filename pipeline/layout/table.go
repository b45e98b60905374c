package layout

import (
	"slices"
	"strings"
)

// tables are the tables under one heading, from left to right.
func (g *Grid) tables(h head, end int, like Likeness) []Block {
	labels := gridQuestions(g.labels(h))
	var body []Row
	explained := g.explained(h, end)
	for r := h.last + 1; r < end; r++ {
		if !explained[r] && !g.isAside(h, r, like) {
			body = append(body, g.Rows[r])
		}
	}
	var out []Block
	parts := g.parts(labels, body, like)
	for _, part := range parts {
		b := Block{Grid: g, Shape: Table, Labels: part, Open: g.More && end == len(g.Rows)}
		for r := h.first; r <= h.last; r++ {
			b.Heads = append(b.Heads, r)
		}
		lo, hi := part[0].Col, part[len(part)-1].Col+1
		for _, row := range body {
			if len(row.filled(lo, hi)) == 0 {
				continue
			}
			if len(parts) > 1 {
				row = row.only(lo, hi)
			}
			b.Rows = append(b.Rows, row)
		}
		if len(parts) == 1 {
			b.joinLoose()
			b.under()
			b.sections()
			b.numbered(like)
		}
		told, ok := Block{}, false
		if len(parts) == 1 {
			told, ok = b.dayLines(like)
		}
		if !b.Open && !ok {
			told, ok = b.beneath()
		}
		if out = append(out, b); ok {
			out = append(out, told)
		}
	}
	return out
}

// only is the row with nothing but its cells from lo to hi.
func (r *Row) only(lo, hi int) Row {
	out := Row{Num: r.Num, Cells: make([]Cell, min(hi, len(r.Cells))), Merged: r.Merged}
	copy(out.Cells[min(lo, len(out.Cells)):], r.Cells[min(lo, len(out.Cells)):min(hi, len(r.Cells))])
	return out
}

// isAside tells a row under a heading that is a label beside its value, where the column
// of the label holds no texts elsewhere: Notes at the foot of a table.
func (g *Grid) isAside(h head, r int, like Likeness) bool {
	cells := g.Rows[r].filled(0, g.Width)
	if len(cells) == 0 || len(cells) > 2 {
		return false
	}
	i := cells[0]
	c := g.Rows[r].Cells[i]
	label, _, _ := key(c, like)
	named := like.Label(strings.TrimRight(label, ": ")) >= 0.8
	if !named && r > h.last+1 && slices.Equal(cells, g.Rows[r-1].filled(0, g.Width)) && len(cells) == 2 {
		named = g.isAside(h, r-1, like) // one more of them: "Fuel at 4.40" under "Bites per hour"
	}
	if c.Look != Text || !named && !g.pairsBelow(h, r) || g.Rows[h.names].at(i).Look == Blank {
		return false
	}
	for q := h.last + 1; q < min(len(g.Rows), h.last+1+reach); q++ {
		if q != r && g.Rows[q].at(i).Look == Text && len(g.Rows[q].filled(0, g.Width)) > 2 {
			return false
		}
	}
	return true
}

// pairsBelow tells a row of a label and its value among others like it that stand under a
// table and a blank row, down to the sheet's end: a form's last questions.
func (g *Grid) pairsBelow(h head, r int) bool {
	first := r
	for ; first > h.last+1 && g.Rows[first].Num == g.Rows[first-1].Num+1; first-- {
	}
	if first <= h.last+1 && (first <= h.last || g.Rows[first].Num == g.Rows[h.last].Num+1) {
		return false // no blank row above
	}
	pairs := 0
	for q := first; q < len(g.Rows); q++ {
		cells := g.Rows[q].filled(0, g.Width)
		if len(cells) > 2 || len(cells) == 2 && cells[1] != cells[0]+1 || len(cells) > 0 &&
			g.Rows[q].at(cells[0]).Look != Text {
			return false
		}
		pairs += min(1, len(cells)) // a value may be blank
	}
	return pairs >= 2
}

// labels are a heading's, with the group over each and the unit under it, and one
// without a text for each column that has cells but no heading.
func (g *Grid) labels(h head) []Label {
	var out []Label
	group := ""
	names := &g.Rows[h.names]
	for i := range g.Width {
		name, upper := names.at(i), Cell{}
		if h.first < h.names {
			upper = g.Rows[h.first].at(i)
		}
		switch {
		case upper.Look != Blank:
			group = upper.Text
		case h.first < h.names && len(g.Rows[h.first].Merged) > 0 && g.Rows[h.first].Merged[i] == "":
			group = "" // a merged group ends where its area does
		}
		l := Label{Col: i, Text: oneLine(name.Text), Group: oneLine(group)}
		switch {
		case name.Look == Blank && upper.Look != Blank:
			l.Text, l.Group = oneLine(upper.Text), ""
		case name.Look == Blank:
			l.Text, l.Group = "", ""
		}
		if h.units {
			l.Unit = g.Rows[h.last].at(i).Text
		}
		out = append(out, l)
	}
	return out
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// parts parts labels where a column without heading and cells lies between tables that
// each have a heading of their own for the day or the trip, or the same headings again.
func (g *Grid) parts(labels []Label, body []Row, like Likeness) [][]Label {
	var parts [][]Label
	var now []Label
	for _, l := range labels {
		if l.Text == "" && !holds(body, l.Col) {
			if len(now) > 0 {
				parts = append(parts, now)
			}
			now = nil
			continue
		}
		now = append(now, l)
	}
	if len(now) > 0 {
		parts = append(parts, now)
	}
	var out [][]Label
	for k, p := range parts {
		if k > 0 && (len(p) < 2 || !begins(out[0], p, like)) {
			out[len(out)-1] = append(out[len(out)-1], p...)
			continue
		}
		out = append(out, p)
	}
	return out
}

// begins tells labels that begin a table of their own beside first.
func begins(first, labels []Label, like Likeness) bool {
	same, named := 0, 0
	for _, l := range labels {
		if l.Text == "" {
			continue
		}
		named++
		if like.Key(l.Text) {
			return len(labels) > 1
		}
		for _, f := range first {
			if strings.EqualFold(f.Text, l.Text) {
				same++
			}
		}
	}
	return named > 1 && same >= 2
}

func holds(body []Row, col int) bool {
	for i := range body {
		if body[i].at(col).Look != Blank {
			return true
		}
	}
	return false
}

// gridQuestions parts the headings that a form makes of one question with several rows,
// "How many of each? [Bluefin]", "How many of each? [Wahoo]": the question is their group.
func gridQuestions(labels []Label) []Label {
	n := map[string]int{}
	for _, l := range labels {
		if question, _, ok := rowOfQuestion(l.Text); ok && l.Group == "" {
			n[question]++
		}
	}
	for i, l := range labels {
		if question, row, ok := rowOfQuestion(l.Text); ok && n[question] > 1 {
			labels[i].Group, labels[i].Text = question, row
		}
	}
	return labels
}

func rowOfQuestion(text string) (question, row string, ok bool) {
	text, ok = strings.CutSuffix(strings.TrimSpace(text), "]")
	i := strings.LastIndexByte(text, '[')
	if !ok || i < 1 {
		return "", "", false
	}
	return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+1:]), true
}
