package phrase

import "testing"

// TestCountAmong holds that a count in brackets behind another one is of the fish let go where a word says so.
func TestCountAmong(t *testing.T) {
	for text, want := range map[string][2]int{
		"3 (rel 1)": {3, 1}, "2 (2 released)": {2, 2}, "1 (let go 1)": {1, 1},
		"2 (frei 1)": {2, 1}, "4 (back 2)": {4, 2},
		"3 (lib 1)": {3, 1},
		"3 (dev 1)": {3, 1}, "1 (rel 2)": {}, "3 (lost 1)": {}, "3 (1)": {}, "0 (4 snapper)": {}, "3": {},
	} {
		all, letGo, ok := CountAmong(text)
		if ok != (want[0] > 0) || ok && [2]int{all, letGo} != want {
			t.Errorf("%q: %d, %d let go, %t", text, all, letGo, ok)
		}
	}
}
