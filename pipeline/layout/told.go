package layout

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/sheet"
)

// twoClocks is a line with two clock times: it may tell of a stretch.
var twoClocks = regexp.MustCompile(`(?s)\b\d{1,2}[:h]\d{2}.*\b\d{1,2}[:h]\d{2}`)

// told takes the lines above the one table of a day's sheet, of which some tell of stretches, "Trolled 6:20 to 7:40, 4
// rods": one row, with its day and what happened. Lines that are labels with values are a form.
func (s *Sheet) told(used map[int]bool, like Likeness) bool {
	if !s.Grid.Info.Workbook || s.tables() > 1 {
		return false
	}
	var lines []int
	day, some := Cell{Text: s.Grid.Info.Name, Look: lookOf(s.Grid.Info.Name, sheet.Plain)}, false
	for r := range s.Grid.Rows {
		row := &s.Grid.Rows[r]
		cells := row.filled(0, len(row.Cells))
		if used[r] || len(cells) == 0 {
			continue
		}
		if len(cells) > 1 || s.labelled(row.Cells[cells[0]], like) {
			if slices.ContainsFunc(cells, func(i int) bool { return strings.Contains(row.Cells[i].Text, ":") }) {
				return false
			}
			continue // a heading without rows
		}
		text := row.Cells[cells[0]].Text
		if m := dayFirst.FindStringSubmatch(text); m != nil && isDay(m[2]) && len(lines) == 0 {
			day = Cell{Text: m[2], Look: Date}
			continue
		}
		some = some || twoClocks.MatchString(text)
		lines = append(lines, r)
	}
	if !some || day.Look != Date {
		return false
	}
	s.tell(day, lines)
	return true
}

// tell makes a block of one row of a day's lines.
func (s *Sheet) tell(day Cell, lines []int) {
	var texts []string
	for _, r := range lines {
		text := joined(s.Grid.Rows[r])
		s.Notes = append(s.Notes, Note{Row: s.Grid.Rows[r].Num, Text: text})
		texts = append(texts, sentence(text))
	}
	row := Row{Num: s.Grid.Rows[lines[0]].Num,
		Cells: []Cell{day, {Text: strings.Join(texts, " "), Look: Text}}}
	s.Blocks = append(s.Blocks, Block{Grid: s.Grid, Shape: Records, Rows: []Row{row},
		Labels: []Label{{Col: 0, Text: dayLabel}, {Col: 1, Text: "what happened"}}})
}

// tables is how many tables a sheet has; other blocks count as several.
func (s *Sheet) tables() int {
	n := 0
	for _, b := range s.Blocks {
		if n++; b.Shape != Table {
			n++
		}
	}
	return n
}

// labelled tells a cell that is a known label, with its value behind a colon or without.
func (s *Sheet) labelled(c Cell, like Likeness) bool {
	label, _, colon := key(c, like)
	return colon && like.Label(label) >= 0.5 || strings.HasSuffix(c.Text, ":")
}
