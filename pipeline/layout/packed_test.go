package layout

import (
	"strings"
	"testing"

	"wakeledger/testdata/memory"
)

// TestPacked holds that cells which tell several figures of each stretch become columns, under the names that the
// heading gives them.
func TestPacked(t *testing.T) {
	unpacked := func(text string) (out []string) {
		g, err := Read(memory.Book{memory.Lines("log", text)}, 0, 1000)
		if err != nil {
			t.Fatal(err)
		}
		g.unpack()
		for _, row := range g.Rows {
			var cells []string
			for _, c := range row.Cells {
				cells = append(cells, c.Text)
			}
			out = append(out, strings.TrimRight(strings.Join(cells, "|"), "|"))
		}
		return out
	}
	for name, test := range map[string]struct{ text, want string }{
		"several in a cell": {"Day|Hooked|Stretches (lines, time, bites)\n" +
			"5/1|1|5 lines / 2 h / 2 bites ; 3 lines / 1 h / no bites\n" +
			"5/2|0|4 lines / 45 min / 1 bite", "Day|Hooked||lines 1|time 1|bites 1|lines 2|time 2|bites 2\n" +
			"5/1|1||5|2 h|2|3|1 h|no bites\n5/2|0||4|45 min|1"},
		"a cell each": {"Day|1st: time, speed, bites|2nd|Remarks\n5/1|2 h / 7 kn / 1 bite|1 h / 9 kn / 0 bites|hot\n" +
			"5/2|3 h / 8 kn / 2 bites", "Day|||Remarks|time 1|speed 1|bites 1|time 2|speed 2|bites 2\n" +
			"5/1|||hot|2 h|7 kn|1|1 h|9 kn|0\n5/2||||3 h|8 kn|2"},
		"figures alone": {"Day|Pos (lat, lon, m)\n5/1|36.5 / 7.2 / 90\n5/2|36.5 / 7.2 / 90",
			"Day|Pos (lat, lon, m)\n5/1|36.5 / 7.2 / 90\n5/2|36.5 / 7.2 / 90"},
	} {
		if got := strings.Join(unpacked(test.text), "\n"); got != test.want {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, test.want)
		}
	}
}
