package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// readCSV reads content as a CSV file and shows its rows.
func readCSV(t *testing.T, content string) (Info, []string) {
	t.Helper()
	b := open(t, write(t, "log.csv", content))
	return b.Sheets()[0], lines(readAll(t, b, 0))
}

const unclosed = "a quote opens a cell and nothing closes it, so the row cannot be split"

func TestCSVQuotes(t *testing.T) {
	for _, c := range []struct {
		name, content string
		want          []string
	}{
		{"bare inches", "a,b\n6'2\",1\n74\",2\n", []string{`1 ["a" "b"]`, `2 ["6'2\"" "1"]`, `3 ["74\"" "2"]`}},
		{"inches within quotes", "a,b\n\"6'2\"\"\",1\n", []string{`1 ["a" "b"]`, `2 ["6'2\"" "1"]`}},
		{"inches in the last cell", "a,b\n1,6'2\"\n", []string{`1 ["a" "b"]`, `2 ["1" "6'2\""]`}},
		{"line end within quotes", "a,b\n\"x\ny\",1\r\n2,3\n",
			[]string{`1 ["a" "b"]`, `2 ["x\ny" "1"]`, `4 ["2" "3"]`}},
		{"quoted and bare in one row", "a,b,c\n74\",\"x, y\",1\n",
			[]string{`1 ["a" "b" "c"]`, `2 ["74\"" "x, y" "1"]`}},
		{"quote at a cell's start and text after", "a,b\n\"74\" tape,1\n2,3\n",
			[]string{`1 ["a" "b"]`, `2 ["\"74\" tape" "1"]`, `3 ["2" "3"]`}},
		{"quote that nothing closes", "a,b\n\"74,1\n2,3\n4,5\n", []string{`1 ["a" "b"]`,
			`2 ! log.csv:2: "\"74,1": ` + unclosed, `3 ["2" "3"]`, `4 ["4" "5"]`}},
		{"quote that a later row's quote ends wrongly", "a,b\n\"74,1\n2,\"x, y\"\n4,5\n", []string{`1 ["a" "b"]`,
			`2 ! log.csv:2: "\"74,1": ` + unclosed, `3 ["2" "x, y"]`, `4 ["4" "5"]`}},
		{"the last line's quote", "a,b\n1,\"x", []string{`1 ["a" "b"]`, `2 ! log.csv:2: "1,\"x": ` + unclosed}},
		{"blank lines before a bad one", "a,b\n\n\r\n\"74,1\n\n2,3\n", []string{`1 ["a" "b"]`, `2 []`, `3 []`,
			`4 ! log.csv:4: "\"74,1": ` + unclosed, `5 []`, `6 ["2" "3"]`}},
		{"many bad ones", strings.Repeat("\"7,1\n", 3) + "2,3\n", []string{
			`1 ! log.csv:1: "\"7,1": ` + unclosed, `2 ! log.csv:2: "\"7,1": ` + unclosed,
			`3 ! log.csv:3: "\"7,1": ` + unclosed, `4 ["2" "3"]`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, have := readCSV(t, c.content)
			equal(t, have, c.want)
		})
	}
}

func TestCSVLines(t *testing.T) {
	for _, c := range []struct {
		name, content string
		want          []string
	}{
		{"blank lines", "\n\na,b\n\n1,2\n\n", []string{`1 []`, `2 []`, `3 ["a" "b"]`, `4 []`, `5 ["1" "2"]`}},
		{"blank line after a cell of two lines", "\"a\nb\",c\n\n1,2\n",
			[]string{`1 ["a\nb" "c"]`, `3 []`, `4 ["1" "2"]`}},
		{"blank line after a last cell of two lines", "c,\"a\nb\"\n\n1,2\n",
			[]string{`1 ["c" "a\nb"]`, `3 []`, `4 ["1" "2"]`}},
		{"ragged", "a,b,c\n1\n1,2,3,4\n", []string{`1 ["a" "b" "c"]`, `2 ["1"]`, `3 ["1" "2" "3" "4"]`}},
		{"no line end", "a,b", []string{`1 ["a" "b"]`}},
		{"carriage returns", "a,b\r1,2\r", []string{`1 ["a" "b"]`, `2 ["1" "2"]`}},
		{"one column", "a\n1\n", []string{`1 ["a"]`, `2 ["1"]`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, have := readCSV(t, c.content)
			equal(t, have, c.want)
		})
	}
}

func TestCSVBadCells(t *testing.T) {
	long := strings.Repeat("é", maxCell)
	_, have := readCSV(t, "a,b\n1,x\x00y\n2,"+long+"\n3,"+long+"é\n4,5\n")
	if len(have) != 5 {
		t.Fatalf("%d rows", len(have))
	}
	equal(t, have[1:2], []string{`2 ! log.csv:2:2: "x␀y": the text holds zero bytes: the file is damaged there`})
	if strings.Contains(have[2], "!") {
		t.Errorf("a cell of %d characters was set aside: %.80s", maxCell, have[2])
	}
	if !strings.HasPrefix(have[3], "4 ! log.csv:4:2: ") || !strings.HasSuffix(have[3], longReason) {
		t.Errorf("a longer cell: %s", have[3])
	}
	equal(t, have[4:], []string{`5 ["4" "5"]`})
}

// A quote that swallows many rows and is then closed properly is found by the
// size of its cell or by the number of lines, and no row after it is lost.
func TestCSVSwallowedRows(t *testing.T) {
	for _, c := range []struct {
		name   string
		rows   int
		width  int
		reason string
	}{
		{"by lines", maxLines + 5, 1, "lines further on"},
		{"by size", 400, 100, "characters"},
		{"by the bound of a record", 900, 2000, "nothing closes it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			rows := strings.Repeat(strings.Repeat("z", c.width)+",2\n", c.rows)
			_, have := readCSV(t, "a,b\n\"74,1\n"+rows+"x\",2\n3,4\n")
			if len(have) != c.rows+4 {
				t.Fatalf("%d rows, want %d", len(have), c.rows+4)
			}
			if !strings.Contains(have[1], "!") || !strings.Contains(have[1], c.reason) {
				t.Errorf("row 2: %s", have[1])
			}
			equal(t, have[len(have)-2:], []string{
				fmt.Sprintf(`%d ["x\"" "2"]`, c.rows+3), fmt.Sprintf(`%d ["3" "4"]`, c.rows+4)})
		})
	}
}

func TestCSVLongLines(t *testing.T) {
	long := strings.Repeat("z,", maxRecord)
	_, have := readCSV(t, "a,b\n"+long+"\n1,2\n"+long+"\n"+strings.Repeat("\n", maxRecord+7)+"3,4\n"+long)
	if len(have) != maxRecord+13 {
		t.Fatalf("%d rows", len(have))
	}
	for _, i := range []int{1, 3, len(have) - 1} {
		if !strings.Contains(have[i], "!") || !strings.Contains(have[i], "longer than a row can be") {
			t.Errorf("row %d: %.90s", i+1, have[i])
		}
	}
	equal(t, []string{have[0], have[2], have[len(have)-2]},
		[]string{`1 ["a" "b"]`, `3 ["1" "2"]`, fmt.Sprintf(`%d ["3" "4"]`, maxRecord+12)})
}

func TestCSVSeparator(t *testing.T) {
	for _, c := range []struct{ name, content, sep, first string }{
		{"comma", "a,b\n1,2\n", ",", `1 ["a" "b"]`},
		{"semicolon and decimal comma", "date;length;girth\n1;150,5;90,5\n2;151,5;91,5\n", ";",
			`1 ["date" "length" "girth"]`},
		{"semicolon, units after a comma", "date;length, cm;girth, cm\n1;150,5;90,5\n", ";",
			`1 ["date" "length, cm" "girth, cm"]`},
		{"semicolon in comma text", "a,b,c\n1,x; y,2\n3,z; w,4\n", ",", `1 ["a" "b" "c"]`},
		{"comma in quotes", "a;b\n\"x, y, z\";1\n\"x, y, z\";2\n", ";", `1 ["a" "b"]`},
		{"separator and line end in quotes", "a;b\n\"x,1\ny,2\nz,3\";1\n", ";", `1 ["a" "b"]`},
		{"tab", "a\tb\n1,5\t2,5\n", "\t", `1 ["a" "b"]`},
		{"bar", "a|b\n1|2\n", "|", `1 ["a" "b"]`},
		{"title above", "Season 2026, Sea Wren\n\na;b;c\n1;2,5;3\n", ";", `1 ["Season 2026, Sea Wren"]`},
		{"bare inches", "a;b;c\n6'2\";1;2\n5'1\";3;4\n", ";", `1 ["a" "b" "c"]`},
		{"named in the first line", "sep=|\na,b|c,d\n", "|", `2 ["a,b" "c,d"]`},
		{"named in capitals and quotes", "\"SEP=;\"\r\na,b;c\n", ";", `2 ["a,b" "c"]`},
		{"named, behind a mark", "\xef\xbb\xbfsep=;\na,b;c\n", ";", `2 ["a,b" "c"]`},
		{"not a name", "sep=ab,c\n1,2\n", ",", `1 ["sep=ab" "c"]`},
	} {
		t.Run(c.name, func(t *testing.T) {
			info, have := readCSV(t, c.content)
			if info.Separator != c.sep {
				t.Errorf("separator %q, want %q", info.Separator, c.sep)
			}
			equal(t, have[:1], []string{c.first})
		})
	}
}

// TestSeparatorOfSeveralTables holds that a file of several tables of other widths is parted at its separator, and
// that prose of as many lines is not parted.
func TestSeparatorOfSeveralTables(t *testing.T) {
	tables := "a;b;c\n1;2;3\n4;5;6\n\nk;l;m;n;o\n1;2;3;4;5\n6;7;8;9;0\n\n" +
		"p;q\n1;2\n3;4\n5;6\n\nu;v;w;x\n1;2;3;4\n5;6;7;8\n"
	if got := sniff([]byte(tables), 0); got != ';' {
		t.Errorf("several tables: %q", got)
	}
	prose := "Out at six, flat, no wind.\nTwo on by seven, one lost, one wahoo, 12 kg.\nNothing then.\nLunch, swim.\n" +
		"Moved north, birds, bait, nothing.\nOne more, a small tuna, let go, tired, home.\nIn at " +
		"three.\nFuel, ice, wash, bed, sleep, done.\n"
	if got := sniff([]byte(prose), 0); got != noSeparator {
		t.Errorf("prose: %q", got)
	}
}

func TestCSVTabByEnding(t *testing.T) {
	b := open(t, write(t, "log.tsv", "a\tb,c\n1\t2,5\n"))
	if sep := b.Sheets()[0].Separator; sep != "\t" {
		t.Errorf("separator %q", sep)
	}
}

func TestCSVReadTwice(t *testing.T) {
	b := open(t, write(t, "log.csv", "sep=;\na;b\n1;2\n"))
	first, second := lines(readAll(t, b, 0)), lines(readAll(t, b, 0))
	equal(t, second, first)
	equal(t, first, []string{`2 ["a" "b"]`, `3 ["1" "2"]`})
	if _, err := b.Rows(1); err == nil {
		t.Error("a second sheet was given")
	}
}
