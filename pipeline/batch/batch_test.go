package batch

import (
	"context"
	"errors"
	"runtime"
	"testing"
	"time"

	"github.com/apache/arrow-go/v18/arrow/array"

	"wakeledger/pipeline/entry"
)

// counting yields n rows, then fails with err if there is one.
type counting struct {
	n   int64
	at  int64
	err error
}

func (c *counting) Fields() []entry.Field {
	return []entry.Field{{Name: "n", Type: entry.Int}, {Name: "half", Type: entry.Real},
		{Name: "word", Type: entry.Text},
		{Name: "day", Type: entry.Day}, {Name: "odd", Type: entry.Flag}}
}

func (c *counting) Next() ([]entry.Value, bool, error) {
	if c.at == c.n {
		return nil, false, c.err
	}
	c.at++
	word := entry.Value{}
	if c.at%2 == 0 {
		word = entry.OfText("even")
	}
	return []entry.Value{entry.OfInt(c.at), entry.OfReal(float64(c.at) / 2), word, entry.OfInt(c.at),
		entry.OfFlag(c.at%2 == 1)}, true, nil
}

func TestEveryRowComesOnce(t *testing.T) {
	for _, n := range []int64{0, 1, Rows - 1, Rows, Rows + 1, 3*Rows + 7} {
		r := NewReader(context.Background(), &counting{n: n}, Rows)
		var got, words, odd int64
		for r.Next() {
			b := r.RecordBatch()
			numbers := b.Column(0).(*array.Int64)
			for i := range numbers.Len() {
				if got++; numbers.Value(i) != got {
					t.Fatalf("n=%d: row %d holds %d", n, got, numbers.Value(i))
				}
			}
			words += int64(b.Column(2).Len() - b.Column(2).NullN())
			for i := range b.Column(4).Len() {
				if b.Column(4).(*array.Boolean).Value(i) {
					odd++
				}
			}
		}
		if r.Err() != nil || got != n || words != n/2 || odd != (n+1)/2 {
			t.Errorf("n=%d: got %d rows, %d words, %d odd, error %v", n, got, words, odd, r.Err())
		}
		r.Release()
	}
}

func TestErrorEndsTheStream(t *testing.T) {
	cause := errors.New("the file ended in the middle")
	r := NewReader(context.Background(), &counting{n: Rows + 5, err: cause}, Rows)
	defer r.Release()
	batches := 0
	for r.Next() {
		batches++
	}
	if batches != 1 || !errors.Is(r.Err(), cause) {
		t.Errorf("got %d batches and %v; want the one whole batch, then the cause", batches, r.Err())
	}
}

// A reader that is dropped half way must not leave its goroutine behind.
func TestReleaseStopsTheReading(t *testing.T) {
	before := runtime.NumGoroutine()
	for range 20 {
		r := NewReader(context.Background(), &counting{n: 100 * Rows}, Rows)
		r.Next()
		r.Release()
	}
	for deadline := time.Now().Add(5 * time.Second); runtime.NumGoroutine() > before; {
		if time.Now().After(deadline) {
			t.Fatalf("%d goroutines, %d before", runtime.NumGoroutine(), before)
		}
		time.Sleep(time.Millisecond)
	}
}

func TestCancelEndsTheStream(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	r := NewReader(ctx, &counting{n: 1000 * Rows}, Rows)
	defer r.Release()
	r.Next()
	cancel()
	for r.Next() {
	}
	if !errors.Is(r.Err(), context.Canceled) {
		t.Errorf("got %v, want the cancel", r.Err())
	}
}
