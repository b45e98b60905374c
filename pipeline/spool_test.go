package pipeline

import (
	"fmt"
	"testing"

	"wakeledger/pipeline/record"
)

// Problems come back whole and in order, those in memory and those in the file.
func TestSpool(t *testing.T) {
	for _, n := range []int{0, 1, inMemory, inMemory + 1, 3 * inMemory} {
		var s spool
		for i := range n {
			p := record.Problem{Pos: record.Pos{File: "log.csv", Row: i + 2, Col: 3}, Column: "End",
				Cell: fmt.Sprint("1x:\n\"", i), Reason: "no time"}
			if err := s.add(p); err != nil {
				t.Fatal(err)
			}
		}
		if err := s.rewind(); err != nil {
			t.Fatal(err)
		}
		for i := range n {
			p, ok, err := s.next()
			if err != nil || !ok || p.Pos.Row != i+2 || p.Cell != fmt.Sprint("1x:\n\"", i) {
				t.Fatalf("%d problems: number %d came back as %+v, %v, %v", n, i, p, ok, err)
			}
		}
		if _, ok, err := s.next(); ok || err != nil || s.n != int64(n) {
			t.Errorf("%d problems: one too many, or %v; counted %d", n, err, s.n)
		}
		s.close()
	}
}
