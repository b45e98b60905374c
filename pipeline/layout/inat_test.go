package layout

import "testing"

// TestDayBeforeIn holds that "12/13 in 654" is a day and when the lines went in, and "12/13 in" a length.
func TestDayBeforeIn(t *testing.T) {
	day, what, ok := dayLine("12/13 in 654 out 830. no bites", "")
	if !ok || day != "12/13" || what != "in 654 out 830. no bites" {
		t.Errorf("%q %q %t", day, what, ok)
	}
	if _, _, ok := dayLine("12/13 in fish", ""); ok {
		t.Error("a length is a day")
	}
}
