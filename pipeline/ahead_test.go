package pipeline

import (
	"errors"
	"fmt"
	"testing"

	"wakeledger/pipeline/sheet"
)

// counted gives n rows in one Row that it uses again, then err.
type counted struct {
	n, at  int
	row    sheet.Row
	err    error
	closed bool
}

func (c *counted) Next() bool {
	if c.at == c.n {
		return false
	}
	c.at++
	c.row.Num = c.at
	c.row.Cells = append(c.row.Cells[:0], fmt.Sprint("a", c.at), fmt.Sprint("b", c.at))[:1+c.at%2]
	return true
}
func (c *counted) Row() *sheet.Row { return &c.row }
func (c *counted) Err() error      { return c.err }
func (c *counted) Close() error    { c.closed = true; return nil }

func TestReadAhead(t *testing.T) {
	cause := errors.New("the file ended in the middle")
	for _, n := range []int{0, 1, block - 1, block, block + 1, 5*block + 3} {
		src := &counted{n: n, err: cause}
		a := readAhead(src)
		got := 0
		for a.Next() {
			got++
			r := a.Row()
			if r.Num != got || len(r.Cells) != 1+got%2 || r.Cells[0] != fmt.Sprint("a", got) ||
				r.Cells[len(r.Cells)-1][1:] != fmt.Sprint(got) {
				t.Fatalf("row %d of %d came as %+v", got, n, *r)
			}
		}
		if got != n || a.Next() || !errors.Is(a.Err(), cause) {
			t.Errorf("%d of %d rows, then %v", got, n, a.Err())
		}
		if err := a.Close(); err != nil || !src.closed {
			t.Errorf("close: %v, closed %v", err, src.closed)
		}
	}
	// closing early must not wait for a reader that nobody empties
	src := &counted{n: 1 << 30}
	a := readAhead(src)
	a.Next()
	if err := a.Close(); err != nil || !src.closed {
		t.Errorf("early close: %v", err)
	}
}
