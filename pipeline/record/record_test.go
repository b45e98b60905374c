package record

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

func TestPosString(t *testing.T) {
	for _, c := range []struct {
		pos  Pos
		want string
	}{
		{Pos{File: "log.csv", Row: 12, Col: 3}, "log.csv:12:3"},
		{Pos{File: "log.csv", Row: 12}, "log.csv:12"},
		{Pos{File: "log.csv"}, "log.csv"},
		{Pos{File: "log.csv", Col: 3}, "log.csv"},
		{Pos{File: "log.xlsx", Sheet: "Legs", Row: 17, Col: 2}, "log.xlsx!Legs!B17"},
		{Pos{File: "log.xlsx", Sheet: "Legs", Row: 17}, "log.xlsx!Legs!17"},
		{Pos{File: "log.xlsx", Sheet: "Legs"}, "log.xlsx!Legs"},
		{Pos{File: "log.xlsx", Sheet: "Legs", Col: 2}, "log.xlsx!Legs"},
	} {
		if got := c.pos.String(); got != c.want {
			t.Errorf("%#v: got %q, want %q", c.pos, got, c.want)
		}
	}
}

// Worked by hand: XFD = 24*26*26 + 6*26 + 4 = 16,384, the last column of a sheet.
func TestColumnName(t *testing.T) {
	for col, want := range map[int]string{-1: "", 0: "", 1: "A", 26: "Z", 27: "AA", 52: "AZ", 53: "BA",
		702: "ZZ", 703: "AAA", 16384: "XFD"} {
		if got := ColumnName(col); got != want {
			t.Errorf("column %d: got %q, want %q", col, got, want)
		}
	}
}

func TestProblemError(t *testing.T) {
	pos := Pos{File: "log.xlsx", Sheet: "Legs", Row: 17, Col: 4}
	for _, c := range []struct {
		problem Problem
		want    string
	}{
		{Problem{pos, "Speed", "fast", "not a speed", false}, `log.xlsx!Legs!D17: Speed "fast": not a speed`},
		{Problem{pos, "", "fast", "not a speed", false}, `log.xlsx!Legs!D17: "fast": not a speed`},
		{Problem{pos, "Speed", "", "missing", false}, `log.xlsx!Legs!D17: Speed: missing`},
		{Problem{pos, "", "", "no start", false}, `log.xlsx!Legs!D17: no start`},
	} {
		if got := c.problem.Error(); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
}

func TestProblemShortensLongCells(t *testing.T) {
	p := Problem{Pos: Pos{File: "log.csv", Row: 2, Col: 1}, Cell: strings.Repeat("é", 500), Reason: "too long"}
	got := p.Error()
	if n := len([]rune(got)); n > 100 {
		t.Errorf("message of %d characters: %s", n, got)
	}
	if !strings.HasSuffix(got, "…\": too long") {
		t.Errorf("the reason or the mark of the cut is missing: %s", got)
	}
}

func TestProblemIsAnError(t *testing.T) {
	err := fmt.Errorf("check: %w", Problem{Reason: "no date"})
	var p Problem
	if !errors.As(err, &p) || p.Reason != "no date" {
		t.Errorf("errors.As found %+v", p)
	}
}
