package terminal_test

import (
	"strings"
	"testing"

	"github.com/rivo/uniseg"

	"wakeledger/reports/terminal"
)

type row struct {
	Level  string   `json:"level"`
	Weight *float64 `json:"weight_kg"`
	Lo     *float64 `json:"gap_lo_m"`
	Hi     *float64 `json:"gap_hi_m"`
	Share  *float64 `json:"hooked_share"`
	Kept   bool     `json:"kept"`
	Note   string   `json:"note"`
}

func is(x float64) *float64 { return &x }

func written(t *testing.T, rows []row, v terminal.View) string {
	t.Helper()
	var b strings.Builder
	if err := terminal.Write(&b, rows, v); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// By hand: 45.359237 kg are 100 lb, 4.572 m are 5 yd and 9.144 m are 10, all exactly.
func TestUnitsAndEnds(t *testing.T) {
	rows := []row{{Level: "a", Weight: is(45.359237), Lo: is(4.572), Hi: is(9.144), Share: is(.5), Kept: true},
		{Level: "b", Lo: is(9.144)}}
	columns := []string{"level", "weight_kg", "gap_lo_m..gap_hi_m|gap", "hooked_share%|hooked", "kept"}
	for _, c := range []struct {
		us   bool
		want string
	}{
		{false, "level  weight, kg  gap, m      hooked  kept\na            45.4  4.6 to 9.1    50 %  yes\nb         " +
			"         9.1 and up          no\n"},
		{true, "level  weight, lb  gap, yd    hooked  kept\na           100.0  5 to 10      50 %  yes\nb            " +
			"      10 and up          no\n"},
	} {
		if got := written(t, rows, terminal.View{Columns: columns, US: c.us}); got != c.want {
			t.Errorf("us %v:\n%s\nwant\n%s", c.us, got, c.want)
		}
	}
}

// A table fits its width by lines of texts, and loses no word of them; a column that is
// empty is left out, and so is one that says the same in every row, where that is asked for.
func TestFitsItsWidth(t *testing.T) {
	note := "Both out on the same legs: change sides at half time, and log which line each strike came on."
	rows := []row{{Level: "same", Note: note}, {Level: "same", Note: "逆風のため短い · " + note}}
	for _, width := range []int{24, 40, 100} {
		got := written(t, rows, terminal.View{Columns: []string{"level", "weight_kg", "note"}, Width: width,
			Once: "level"})
		for line := range strings.Lines(got) {
			if wide := uniseg.StringWidth(strings.TrimSuffix(line, "\n")); wide > width {
				t.Errorf("width %d: a line of %d: %q", width, wide, line)
			}
		}
		if words := strings.Fields(got); strings.Join(words, " ") != "note "+note+" "+rows[1].Note {
			t.Errorf("width %d: %q", width, words)
		}
	}
	if got := written(t, rows[:1], terminal.View{Columns: []string{"level", "note"}, Width: 100,
		Once: "level"}); !strings.Contains(got, "same") {
		t.Errorf("one row has no other to be the same as:\n%s", got)
	}
}

// What is cleaned and painted stands where it stood; a colour takes no room.
func TestCleanAndPaint(t *testing.T) {
	rows := []row{{Level: "a\x1b[2J\nb", Note: "settled"}, {Level: "c", Note: "leaning"}}
	got := written(t, rows, terminal.View{Columns: []string{"note", "level"},
		Clean: func(s string) string { return strings.ReplaceAll(s, "\x1b", "") },
		Paint: func(column, cell string) string {
			if column == "note" {
				return "<" + cell + ">"
			}
			return cell
		}})
	if want := "note     level\n<settled>  a[2J b\n<leaning>  c\n"; got != want {
		t.Errorf("got\n%q\nwant\n%q", got, want)
	}
}

func TestNoRows(t *testing.T) {
	if got := written(t, nil, terminal.View{Columns: []string{"level", "note"}, Width: 100}); got != "level  note\n" {
		t.Errorf("%q", got)
	}
}
