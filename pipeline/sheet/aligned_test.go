package sheet

import (
	"reflect"
	"strings"
	"testing"
)

const alignedLog = "MATE'S LOG   2025\n\nDATE      IN    WHAT HAPPENED\n06/14/25  0530  2 boated, 1 " +
	"pulled\n\n06/15/25   545  nothing\n06/21/25  0520\nrained all day, went home\n06/22/25  0610  1 boated\n"

func TestAligned(t *testing.T) {
	b := open(t, write(t, "mate.txt", alignedLog))
	want := []got{
		{num: 1, cells: []string{"MATE'S LOG", "2025"}}, {num: 2},
		{num: 3, cells: []string{"DATE", "IN", "WHAT HAPPENED"}},
		{num: 4, cells: []string{"06/14/25", "0530", "2 boated, 1 pulled"}}, {num: 5},
		{num: 6, cells: []string{"06/15/25", "545", "nothing"}}, {num: 7, cells: []string{"06/21/25", "0520", ""}},
		{num: 8, cells: []string{"rained all day, went home"}},
		{num: 9, cells: []string{"06/22/25", "0610", "1 boated"}},
	}
	for i := range 2 { // it can be read more than once
		if rows := readAll(t, b, 0); !reflect.DeepEqual(rows, want) {
			t.Errorf("reading %d: %v\nexpected %v", i, rows, want)
		}
	}
	if s := b.Sheets()[0]; s.Separator != " " || len(s.Notes) != 1 {
		t.Errorf("the sheet says %+v: expected columns of spaces", s)
	}
}

// A line far below that breaks the columns is set aside, and those after it are read.
func TestAlignedBroken(t *testing.T) {
	good := "06/14/25  0530  nothing at all to be said of it\n"
	text := "DATE      IN    NOTES\n" + strings.Repeat(good, sampleSize/len(good)+5) +
		"06/14/2025 to 06/15/2025  x\n" + good
	rows := readAll(t, open(t, write(t, "mate.txt", text)), 0)
	n := len(rows)
	if rows[n-2].problem == nil || rows[n-1].problem != nil || rows[n-3].problem != nil {
		t.Errorf("the last rows are %v: expected only the last but one to be set aside", rows[n-3:])
	}
}

// What is no table of aligned columns stays with its separator.
func TestNotAligned(t *testing.T) {
	for name, text := range map[string]string{
		"many commas":  "Date,  In,  Out\n" + strings.Repeat("1 May,  6:10,  7:10\n", 200),
		"commas":       "Date,  In,  Out\n1 May,  6:10,  7:10\n2 May,  6:10,  7:10\n3 May,  6:10,  7:10\n",
		"a row astray": "DATE      IN    OUT\n06/14/25  0530  0640\n06/15/2025 545  0700\n06/21/25  0520  0610\n",
		"too few":      "DATE      IN    OUT\n06/14/25  0530  0640\n06/15/25  0545  0700\n",
		"tabs":         "DATE\tIN    OUT   X\n06/14/25  0530  0640\n06/15/25  0545  0700\n06/21/25  0520  0610\n",
		"text": "We went out  in the morning  and came back\nThere was nothing  to be seen\nThen  we " +
			"turned\nAnd went home\n",
		"one gutter": "DATE      IN  OUT\n06/14/25  0530 0640\n06/15/25  0545 0700\n06/21/25  0520 0610\n",
		"more in a row": "DATE      IN    OUT\n06/14/25  0530  0640    7\n06/15/25  0545  0700    8\n06/21/25  0520 " +
			" 0610    9\n",
	} {
		if s := open(t, write(t, "log.txt", text)).Sheets()[0]; s.Separator == " " {
			t.Errorf("%s: read as columns of spaces", name)
		}
	}
}
