package sheet

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
)

// The records of a workbook stream that are read ([MS-XLS] 2.3).
const (
	recFormula  = 0x0006
	recEOF      = 0x000a
	recDateMode = 0x0022
	recFilePass = 0x002f
	recContinue = 0x003c
	recSheet    = 0x0085
	recMulRK    = 0x00bd
	recXF       = 0x00e0
	recMerge    = 0x00e5
	recTexts    = 0x00fc
	recTextCell = 0x00fd
	recNumber   = 0x0203
	recLabel    = 0x0204
	recBoolErr  = 0x0205
	recString   = 0x0207
	recRK       = 0x027e
	recFormat   = 0x041e
	recBOF      = 0x0809
)

// shortest is how long a record must be for what is read of it.
var shortest = map[int]int{recFormula: 14, recDateMode: 2, recSheet: 8, recMulRK: 6, recXF: 4, recMerge: 2, recTexts: 8,
	recTextCell: 10, recNumber: 14, recLabel: 9, recBoolErr: 8, recString: 3, recRK: 10, recFormat: 5, recBOF: 4}

// biffVersion is that of the workbooks since 1997.
const biffVersion = 0x0600

var (
	le         = binary.LittleEndian
	errCutBIFF = errors.New("it is cut short")
	errBadBIFF = errors.New("a text in it is cut short")
	errNoText  = errors.New("a cell refers to a text that the workbook does not hold")
)

// records gives the records of a stream one by one.
type records struct {
	data []byte
	at   int
	typ  int
	body []byte
}

func (r *records) next() error {
	if len(r.data)-r.at < 4 {
		return errCutBIFF
	}
	r.typ = int(le.Uint16(r.data[r.at:]))
	from := r.at + 4
	to := from + int(le.Uint16(r.data[r.at+2:]))
	if to > len(r.data) {
		return errCutBIFF
	}
	if r.body, r.at = r.data[from:to], to; len(r.body) < shortest[r.typ] {
		return fmt.Errorf("a record of it (%#04x) is too short", r.typ)
	}
	return nil
}

// texts reads the texts of the record in hand, from byte from on, and of those that
// continue it.
func (r *records) texts(from int) *biffText {
	t := &biffText{now: r.body[from:]}
	for len(r.data)-r.at >= 4 && le.Uint16(r.data[r.at:]) == recContinue {
		if r.next() != nil {
			break
		}
		t.rest = append(t.rest, r.body)
	}
	return t
}

// biffBook is what a workbook stream says of all its sheets.
type biffBook struct {
	texts    []string
	codes    map[int]string // of the formats
	formats  []int          // by the number that a cell has
	classes  []Class        // likewise
	date1904 bool
	sheets   []gridSheet
	places   []int // of the sheets in the stream
	details  bool
	left     int
}

// readBIFF reads a workbook stream, or says why it is refused.
func readBIFF(data []byte, details bool) (sheets []gridSheet, reason string, err error) {
	r := records{data: data}
	if err := r.next(); err != nil || r.typ != recBOF {
		return nil, "", errors.Join(err, errCutBIFF)
	}
	if le.Uint16(r.body) != biffVersion {
		return nil, isOld, nil
	}
	b := biffBook{codes: map[int]string{}, details: details, left: maxGridCells}
	for r.typ != recEOF {
		if err := r.next(); err != nil {
			return nil, "", err
		}
		if r.typ == recFilePass {
			return nil, isProtected, nil
		}
		if err := b.global(&r); err != nil {
			return nil, "", err
		}
	}
	for _, id := range b.formats {
		b.classes = append(b.classes, formatClass(id, b.codes[id]))
	}
	for i, place := range b.places {
		s := &b.sheets[i]
		s.info.Date1904 = b.date1904
		s.grid = &grid{left: &b.left, details: details}
		s.err = b.sheet(s.grid, records{data: data, at: min(place, len(data))})
	}
	return b.sheets, "", nil
}

// global takes a record that holds for all sheets.
func (b *biffBook) global(r *records) (err error) {
	body := r.body
	switch r.typ {
	case recDateMode:
		b.date1904 = le.Uint16(body) == 1
	case recFormat:
		t := biffText{now: body[4:]}
		b.codes[int(le.Uint16(body))], err = t.read(int(le.Uint16(body[2:])))
	case recXF:
		b.formats = append(b.formats, int(le.Uint16(body[2:])))
	case recSheet:
		t := biffText{now: body[7:]}
		name, err := t.read(int(body[6]))
		if err != nil {
			return err
		}
		if body[5] == 0 { // others are charts and programs
			b.sheets = append(b.sheets, gridSheet{info: Info{Name: name, Workbook: true, Hidden: body[4]&3 != 0}})
			b.places = append(b.places, int(le.Uint32(body)))
		}
	case recTexts:
		return b.sharedTexts(le.Uint32(body[4:]), r.texts(8))
	}
	return err
}

// sharedTexts reads the texts that cells refer to by number. Some programs count
// more than there are.
func (b *biffBook) sharedTexts(count uint32, t *biffText) error {
	for i := uint32(0); i < count && len(t.now)+len(t.rest) > 0; i++ {
		head, err := t.take(2)
		if err != nil {
			return err
		}
		text, err := t.read(int(le.Uint16(head)))
		if err != nil {
			return err
		}
		b.texts = append(b.texts, text)
	}
	return nil
}

// sheet reads the records of a sheet. Charts within it are streams of their own.
func (b *biffBook) sheet(g *grid, r records) error {
	var asked gridCell // a formula whose text comes in a record of its own
	var row, col int
	for depth := 0; ; {
		if err := r.next(); err != nil {
			return err
		}
		switch {
		case r.typ == recBOF:
			depth++
		case depth == 0:
			return errors.New("its records are not where the workbook says")
		case r.typ == recEOF:
			if depth--; depth == 0 {
				return g.finish()
			}
		}
		if depth != 1 {
			continue
		}
		var err error
		switch r.typ {
		case recFormula, recRK, recNumber, recBoolErr, recTextCell, recLabel:
			row, col = int(le.Uint16(r.body))+1, int(le.Uint16(r.body[2:]))+1
			asked, err = b.cell(&r)
			err = errors.Join(err, g.put(row, col, 1, asked))
		case recString:
			n := int(le.Uint16(r.body))
			if asked.text, err = r.texts(2).read(n); err == nil && asked.formula != "" {
				err = g.put(row, col, 1, asked)
			}
		case recMulRK:
			err = b.manyNumbers(g, r.body)
		case recMerge:
			err = mergeRecord(g, r.body)
		}
		if err != nil {
			return err
		}
	}
}

// cell reads the cell of the record in hand.
func (b *biffBook) cell(r *records) (c gridCell, err error) {
	class := b.class(r.body[4:])
	body := r.body[6:]
	switch r.typ {
	case recRK:
		c = gridCell{text: numberText(rk(body)), class: class}
	case recNumber:
		c = gridCell{text: numberText(math.Float64frombits(le.Uint64(body))), class: class}
	case recBoolErr:
		c.text = boolOrError(body[0], body[1] != 0)
	case recLabel:
		c.text, err = r.texts(8).read(int(le.Uint16(body)))
	case recTextCell:
		n := le.Uint32(body)
		if int64(n) >= int64(len(b.texts)) {
			return c, errNoText
		}
		c.text = b.texts[n]
	case recFormula:
		c.formula = FormulaNoValue // what it is stands there in a form that is not read
		switch {
		case le.Uint16(body[6:]) != 0xffff:
			c.text, c.class = numberText(math.Float64frombits(le.Uint64(body))), class
		case body[0] == 1 || body[0] == 2:
			c.text = boolOrError(body[2], body[0] == 2)
		}
	}
	return c, err
}

func (b *biffBook) class(number []byte) Class {
	if n := int(le.Uint16(number)); n < len(b.classes) {
		return b.classes[n]
	}
	return Plain
}

// manyNumbers reads a record of numbers that stand beside each other, six bytes
// each.
func (b *biffBook) manyNumbers(g *grid, body []byte) error {
	row, col := int(le.Uint16(body))+1, int(le.Uint16(body[2:]))+1
	for list := body[4:]; len(list) >= 8; list = list[6:] {
		if err := g.put(row, col, 1, gridCell{text: numberText(rk(list[2:])), class: b.class(list)}); err != nil {
			return err
		}
		col++
	}
	return nil
}

func mergeRecord(g *grid, body []byte) error {
	list := body[2:]
	for range le.Uint16(body) {
		if len(list) < 8 {
			return errCutBIFF
		}
		at := func(i int) int { return int(le.Uint16(list[i:])) + 1 }
		if err := g.merge(area{at(0), at(4), at(2), at(6)}); err != nil {
			return err
		}
		list = list[8:]
	}
	return nil
}

// rk is a number in four bytes: the upper half of one of eight or a whole number,
// either in hundredths or not ([MS-XLS] 2.5.218).
func rk(b []byte) float64 {
	v := le.Uint32(b)
	f := float64(int32(v) >> 2)
	if v&2 == 0 {
		f = math.Float64frombits(uint64(v&^3) << 32)
	}
	if v&1 != 0 {
		f /= 100
	}
	return f
}

func boolOrError(v byte, isError bool) string {
	switch {
	case !isError && v == 0:
		return "FALSE"
	case !isError:
		return "TRUE"
	}
	switch v {
	case 0x00:
		return "#NULL!"
	case 0x07:
		return "#DIV/0!"
	case 0x0f:
		return "#VALUE!"
	case 0x17:
		return "#REF!"
	case 0x1d:
		return "#NAME?"
	case 0x24:
		return "#NUM!"
	}
	return "#N/A"
}
