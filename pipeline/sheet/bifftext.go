package sheet

import (
	"strings"
	"unicode/utf16"
)

// biffText reads texts from a record and those that continue it.
type biffText struct {
	now  []byte
	rest [][]byte
}

// take gives the next n bytes, from as many records as it takes.
func (t *biffText) take(n int) ([]byte, error) {
	var joined []byte
	for len(t.now) < n {
		if len(t.rest) == 0 {
			return nil, errBadBIFF
		}
		joined, n = append(joined, t.now...), n-len(t.now)
		t.now, t.rest = t.rest[0], t.rest[1:]
	}
	b := t.now[:n]
	t.now = t.now[n:]
	if joined != nil {
		b = append(joined, b...)
	}
	return b, nil
}

// read gives a text of n characters, which begins with a byte that tells how wide
// they are and whether fonts and a reading aid follow ([MS-XLS] 2.5.293). Where
// another record continues the characters, such a byte comes again.
func (t *biffText) read(n int) (string, error) {
	flags, err := t.take(1)
	if err != nil {
		return "", err
	}
	wide, after := flags[0]&1 != 0, 0
	if flags[0]&8 != 0 {
		b, err := t.take(2)
		if err != nil {
			return "", err
		}
		after = int(le.Uint16(b)) * 4
	}
	if flags[0]&4 != 0 {
		b, err := t.take(4)
		if err != nil {
			return "", err
		}
		after += int(le.Uint32(b))
	}
	units := make([]uint16, 0, n)
	for len(units) < n {
		if len(t.now) == 0 {
			b, err := t.take(1)
			if err != nil {
				return "", err
			}
			wide = b[0]&1 != 0
		}
		if units, err = t.characters(units, n-len(units), wide); err != nil {
			return "", err
		}
	}
	if _, err := t.take(after); err != nil {
		return "", err
	}
	return strings.ReplaceAll(string(utf16.Decode(units)), "\x00", "\u2400"), nil
}

// characters reads up to n characters of the record in hand.
func (t *biffText) characters(units []uint16, n int, wide bool) ([]uint16, error) {
	if !wide {
		n = min(n, len(t.now))
		for _, c := range t.now[:n] {
			units = append(units, uint16(c))
		}
		t.now = t.now[n:]
		return units, nil
	}
	n = min(n, len(t.now)/2)
	if n == 0 && len(t.now) > 0 {
		return nil, errBadBIFF // half a character
	}
	for i := range n {
		units = append(units, le.Uint16(t.now[2*i:]))
	}
	t.now = t.now[2*n:]
	return units, nil
}
