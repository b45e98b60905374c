package sheet

import (
	"bytes"
	"fmt"
	"slices"
)

const (
	// maxMerges bounds the merged areas of a sheet, and maxMergedCells the used
	// cells in them: enough for one in each row of 100,000.
	maxMerges      = 100000
	maxMergedCells = 4 << 20
)

var errTooManyMerges = fmt.Errorf("it has more than %d merged areas", maxMerges)

// area is a merged area, its edges included, counted from 1.
type area struct {
	top, left, bottom, right int
}

// addMerge takes a merged area's reference, such as A1:B3.
func (s *scanner) addMerge() error {
	ref := s.tags.Attr("ref")
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
		return errTooManyMerges
	}
	s.lay.merges = append(s.lay.merges, area{top, left, bottom, right})
	return nil
}

// clipMerges puts merged areas in order and within the used part of a sheet.
func clipMerges(merges []area, lastRow, width int) ([]area, error) {
	kept := merges[:0]
	covered := 0
	for _, m := range merges {
		m.bottom, m.right = min(m.bottom, lastRow), min(m.right, width)
		if m.top > m.bottom || m.left > m.right {
			continue
		}
		covered += (m.bottom - m.top + 1) * (m.right - m.left + 1)
		kept = append(kept, m)
	}
	if covered > maxMergedCells {
		return nil, fmt.Errorf("its merged areas cover %d cells, more than %d; unmerge them", covered, maxMergedCells)
	}
	slices.SortStableFunc(kept, func(a, b area) int { return a.top - b.top })
	return kept, nil
}

// merger follows the merged areas as rows go by, holding the value of the first
// cell of each that reaches into the row.
type merger struct {
	coming []area // by first row
	open   []openArea
	values map[int]string
	class  []Class
}

type openArea struct {
	area
	text  string
	class Class
}

// row gives the values for the cells of a row that lie in merged areas but are
// not their first, by index, and blanks those cells: a text under a merged area
// is not seen by anybody. It is nil where there are none and in blank rows. Such
// a cell is of the class of the value that it takes, so classes come back as well.
func (m *merger) row(num int, cells []string, class []Class) (map[int]string, []Class) {
	m.advance(num, cells, class)
	if len(m.open) == 0 || isBlank(cells) {
		return nil, class
	}
	m.class = append(m.class[:0], class...)
	if m.values == nil {
		m.values = map[int]string{}
	}
	clear(m.values)
	for _, a := range m.open {
		m.fill(a, num, cells)
	}
	if len(m.values) == 0 {
		return nil, m.class
	}
	return m.values, m.class
}

// advance closes the areas that ended above row num and opens those that begin
// there.
func (m *merger) advance(num int, cells []string, class []Class) {
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
		o := openArea{area: a}
		if a.left <= len(cells) {
			o.text = cells[a.left-1]
		}
		if a.left <= len(class) {
			o.class = class[a.left-1]
		}
		m.open = append(m.open, o)
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
		m.class = setClass(m.class, col-1, a.class)
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
