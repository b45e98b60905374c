package meaning

import (
	"strings"
	"testing"
)

// TestFiguresOver holds that several counts of one cell are what the heading over them says, that "2 for 3" is so many
// boated of so many bites whatever the heading, and that dates and gear parted in the same way are neither.
func TestFiguresOver(t *testing.T) {
	table := func(head string, cells ...string) string {
		text := "Date|In|Out|Lines|Knots|" + head
		for i, c := range cells {
			text += "\n5/" + string(rune('1'+i)) + "/24|6:10|11:30|4|7.5|" + c
		}
		return text
	}
	for _, c := range []struct{ text, want string }{
		{table("Bites-hooked-landed", "3-2-1", "0-0-0", "1-1-1", "4-3-3"), "strikes_n hooked_n landed_n"},
		{table("Bites/landed", "3/1", "0/0", "1/1", "4/3"), "strikes_n landed_n"},
		{table("Went", "2 for 3", "0 for 1", "1 for 1", "-"), "landed_n strikes_n"},
		{table("Went", "3 for 2", "1 for 0", "4 for 1", "0 for 0"), ""},
		{table("Bottom/gear", "3/1", "0/0", "1/1", "4/3"), ""},
		{table("Bites", "3", "0", "1", "4"), ""},
	} {
		p := planOf(t, "Log", c.text)
		if got := strings.Join(p.Figures, " "); got != c.want {
			t.Errorf("%s\nfigures %q, expected %q: %s", c.text, got, c.want, summary(p))
		}
		if c.want != "" && (len(p.Catch) != 1 || !p.Binds("date")) {
			t.Errorf("%s\nheld by %v: %s", c.text, p.Catch, summary(p))
		}
	}
}
