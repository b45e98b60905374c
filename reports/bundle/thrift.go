package bundle

import "errors"

var errFooter = errors.New("it is no Parquet: its footer does not add up")

// deepest is how far structures of a footer stand in each other; those of the format go to
// seven.
const deepest = 16

// walkCompact walks through a structure in Thrift's compact protocol (Apache Thrift,
// thrift-compact-protocol.md) and fails where a list, a set, a map or a text is of more
// parts than bytes are left: each part takes one byte at least.
func walkCompact(b []byte) error {
	w := compact{b: b}
	return w.structure(0)
}

type compact struct{ b []byte }

func (w *compact) byte() (byte, error) {
	if len(w.b) == 0 {
		return 0, errFooter
	}
	x := w.b[0]
	w.b = w.b[1:]
	return x, nil
}

// number is a variable-length number.
func (w *compact) number() (n uint64, err error) {
	for shift := 0; shift < 64; shift += 7 {
		x, err := w.byte()
		if err != nil {
			return 0, err
		}
		n |= uint64(x&0x7f) << shift
		if x < 0x80 {
			return n, nil
		}
	}
	return 0, errFooter
}

// count is a number of parts that must still be there.
func (w *compact) count() (int, error) {
	n, err := w.number()
	if err != nil || n > uint64(len(w.b)) {
		return 0, errFooter
	}
	return int(n), nil
}

func (w *compact) structure(deep int) error {
	if deep > deepest {
		return errFooter
	}
	for {
		head, err := w.byte()
		if err != nil {
			return err
		}
		if head == 0 {
			return nil
		}
		if head>>4 == 0 { // the field's number follows
			if _, err := w.number(); err != nil {
				return err
			}
		}
		if kind := head & 0x0f; kind > 2 { // 1 and 2 are true and false
			if err := w.value(kind, deep); err != nil {
				return err
			}
		}
	}
}

func (w *compact) value(kind byte, deep int) error {
	skip := func(n int) error {
		if n > len(w.b) {
			return errFooter
		}
		w.b = w.b[n:]
		return nil
	}
	switch kind {
	case 1, 2, 3: // in a list a truth is a byte
		return skip(1)
	case 4, 5, 6:
		_, err := w.number()
		return err
	case 7:
		return skip(8)
	case 8:
		n, err := w.count()
		if err != nil {
			return err
		}
		return skip(n)
	case 9, 10:
		return w.list(deep)
	case 12:
		return w.structure(deep + 1)
	}
	return errFooter // maps stand in no footer
}

func (w *compact) list(deep int) error {
	head, err := w.byte()
	if err != nil {
		return err
	}
	n := int(head >> 4)
	if n == 15 {
		if n, err = w.count(); err != nil {
			return err
		}
	}
	for range n {
		if err := w.value(head&0x0f, deep+1); err != nil {
			return err
		}
	}
	return nil
}
