package normalise

import (
	"slices"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// spread is the lines of a row that has a column for each place in the spread. The
// row itself is an entry without a line; each of its lines is another, which shares
// its effort.
type spread struct {
	part, line, lure, out int    // fields
	shared                []bool // fields that say which effort it is
	runs                  []run
	next                  int // of runs, to be given
	values                []entry.Value
}

// run is one place with the lure that ran there; of the lures of one cell nobody says where.
type run struct {
	place, lure string
	out         bool
	above       string // the lure of the last row that named one, for ditto marks
}

// sharedFields say which stretch of effort a line was out on.
var sharedFields = []string{"row", "trip", "boat", "zone", "date", "leg", "start_s", "end_s", "stopped_s",
	"duration_s"}

func (r *Reader) findSpread() {
	if len(r.layout.Spread) == 0 && r.layout.Lures == nil {
		return
	}
	s := &spread{}
	s.part, s.line, s.lure = r.add("part", entry.Int), r.add("line", entry.Text), r.add("lure", entry.Text)
	s.out = r.add("lines_out", entry.Int)
	for _, f := range r.fields {
		s.shared = append(s.shared, slices.Contains(sharedFields, f.Name))
	}
	s.runs = make([]run, len(r.layout.Spread))
	for i, p := range r.layout.Spread {
		s.runs[i].place = oneSpaced(p.Heading)
	}
	s.next = len(s.runs)
	r.spread = s
}

// most is how many lines the last row may have had.
func (s *spread) most() int {
	if s == nil {
		return 0
	}
	return len(s.runs)
}

// inSpread tells whether a column that was not understood is a place in the spread.
func (r *Reader) inSpread(index int) bool {
	return slices.ContainsFunc(r.layout.Spread, func(p plan.Unknown) bool { return p.Index == index })
}

// run takes the row's lines from its cells, and counts them where the row does not.
func (r *Reader) run() {
	s := r.spread
	if s.next = len(s.runs); r.sameHours && !r.timed() {
		return // they stand on the first row of the stretch
	}
	n := int64(0)
	if u := r.layout.Lures; u != nil {
		s.runs = s.runs[:0]
		if u.Index < len(r.row.Cells) && r.timed() {
			for _, lure := range words.Lures(trimmed(r.row.Cells[u.Index])) {
				s.runs = append(s.runs, run{lure: oneSpaced(lure), out: true})
				n++
			}
		}
	}
	for i, p := range r.layout.Spread {
		text := ""
		if p.Index < len(r.row.Cells) {
			text = trimmed(r.row.Cells[p.Index])
		}
		switch {
		case r.isDitto(text):
			text = s.runs[i].above
		case words.SomeLure(text):
			s.runs[i].out, s.runs[i].lure = true, ""
			n++
			continue
		case words.NotLogged(text) || faulty(text):
			text = ""
		}
		if s.runs[i].lure, s.runs[i].out = oneSpaced(text), text != ""; text != "" {
			s.runs[i].above = text
			n++
		}
	}
	if !r.values[s.out].Known && n > 0 {
		r.values[s.out] = entry.OfInt(n)
	}
	s.next = 0
}

// Line is the next of the lines that the last row described beside its own entry,
// as an entry; its values are valid until the next call. Only a sheet with a column
// for each place in the spread has any.
func (r *Reader) Line() ([]entry.Value, bool) {
	s := r.spread
	if s == nil {
		return nil, false
	}
	for ; s.next < len(s.runs); s.next++ {
		if !s.runs[s.next].out {
			continue
		}
		s.values = append(s.values[:0], r.values...)
		for i, shared := range s.shared {
			if !shared {
				s.values[i] = entry.Value{}
			}
		}
		s.values[s.part] = entry.OfInt(r.parts + int64(len(r.side)+s.next+1)) // behind what else the row tells of
		if lure := s.runs[s.next].lure; lure != "" {
			s.values[s.lure] = entry.OfText(lure)
		}
		if place := s.runs[s.next].place; place != "" {
			s.values[s.line] = entry.OfText(place)
		}
		s.next++
		return s.values, true
	}
	return nil, false
}
