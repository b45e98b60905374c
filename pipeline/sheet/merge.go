package sheet

import (
	"bytes"
	"fmt"
)

const (
	// maxMerges bounds the merged areas of a sheet, and maxMergedCells the used
	// cells in them: enough for one in each row of 100,000.
	maxMerges      = 100000
	maxMergedCells = 4 << 20
)

// area is a merged area, its edges included, counted from 1.
type area struct {
	top, left, bottom, right int
}

// addMerge takes a merged area's reference, such as A1:B3.
func (s *scanner) addMerge() error {
	ref := s.tags.attr("ref")
	from, to, found := bytes.Cut(ref, []byte(":"))
	if !found {
		to = from
	}
	left, top, ok1 := parseRef(from)
	right, bottom, ok2 := parseRef(to)
	if !ok1 || !ok2 || right < left || bottom < top {
		return fmt.Errorf("it has a merged area named %.30q", ref)
	}
	if len(s.lay.merges) == maxMerges {
		return fmt.Errorf("it has more than %d merged areas", maxMerges)
	}
	s.lay.merges = append(s.lay.merges, area{top, left, bottom, right})
	return nil
}

// merger follows the merged areas as rows go by, holding the value of the first
// cell of each that reaches into the row.
type merger struct {
	coming []area // by first row
	open   []openArea
	values map[int]string
}

type openArea struct {
	area
	text string
}

// row gives the values for the cells of a row that lie in merged areas but are
// not their first, by index, and blanks those cells: a text under a merged area
// is not seen by anybody. It is nil where there are none and in blank rows.
func (m *merger) row(num int, cells []string) map[int]string {
	m.advance(num, cells)
	if len(m.open) == 0 || isBlank(cells) {
		return nil
	}
	if m.values == nil {
		m.values = map[int]string{}
	}
	clear(m.values)
	for _, a := range m.open {
		m.fill(a, num, cells)
	}
	if len(m.values) == 0 {
		return nil
	}
	return m.values
}

// advance closes the areas that ended above row num and opens those that begin
// there.
func (m *merger) advance(num int, cells []string) {
	kept := m.open[:0]
	for _, a := range m.open {
		if a.bottom >= num {
			kept = append(kept, a)
		}
	}
	m.open = kept
	for len(m.coming) > 0 && m.coming[0].top <= num {
		a := m.coming[0]
		m.coming = m.coming[1:]
		text := ""
		if a.left <= len(cells) {
			text = cells[a.left-1]
		}
		m.open = append(m.open, openArea{a, text})
	}
}

func (m *merger) fill(a openArea, num int, cells []string) {
	for col := a.left; col <= a.right; col++ {
		if num == a.top && col == a.left {
			continue
		}
		if col <= len(cells) {
			cells[col-1] = ""
		}
		if a.text != "" {
			m.values[col-1] = a.text
		}
	}
}

func isBlank(cells []string) bool {
	for _, c := range cells {
		if c != "" {
			return false
		}
	}
	return true
}
