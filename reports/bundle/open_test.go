package bundle

import (
	"bytes"
	"strings"
	"testing"
)

// What a boat leaves open travels with its season, and is told before it leaves.
func TestOpenQuestionsThereAndBack(t *testing.T) {
	s := season(t, "blue-7", 5)
	for _, n := range []int64{0, 3} {
		s.Open = n
		back, err := Read(written(t, s))
		if err != nil || back.Open != n {
			t.Errorf("%d open questions came back as %d, %v", n, back.Open, err)
		}
		var b bytes.Buffer
		if err := List(&b, s); err != nil {
			t.Fatal(err)
		}
		if told := strings.Contains(b.String(), "that are open: 3."); told != (n == 3) {
			t.Errorf("%d open questions are listed so:\n%s", n, b.String())
		}
	}
	s.Open = -1
	if s.Check() == nil {
		t.Error("fewer than no questions")
	}
}
