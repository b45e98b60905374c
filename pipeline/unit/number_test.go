package unit_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"wakeledger/pipeline/unit"
)

const (
	unknown = unit.MarkUnknown
	point   = unit.MarkPoint
	comma   = unit.MarkComma
)

func TestMarkOf(t *testing.T) {
	want := map[unit.Mark][]string{
		comma: {"12,5", "1.234,5", "0,123", "1234,567", "1 234,567", "1.234.567", "-3,25",
			"12,5 kg", "1'234,5", "12,5kn"},
		point: {"12.5", "1,234.5", "0.123", "1234.567", "1 234.567", "1,234,567", "+3.25", "12.5 lbs", "1.0416E-2",
			"1.041E-2", "1.04166666666667"},
		unknown: {"12", "1,234", "1.234", "", "1 234", "1'234", "-1,234", "187 lb", "6'2\"",
			"1,2,3", "1.2.3", "12,34,567",
			"abc", "12.5 fish", "Notes, 12", "25.6.2026", ",", ".", "-"},
	}
	for mark, texts := range want {
		for _, s := range texts {
			if got := unit.MarkOf(s); got != mark {
				t.Errorf("MarkOf(%q) = %v, want %v", s, got, mark)
			}
		}
	}
}

func TestParseNumber(t *testing.T) {
	tests := []struct {
		text string
		mark unit.Mark
		want float64
	}{
		{"12", unknown, 12},
		{" 12\t", unknown, 12},
		{"007", unknown, 7},
		{"12.5", unknown, 12.5},
		{"12,5", unknown, 12.5},
		{"12,5", comma, 12.5},
		{"12.5", comma, 12.5}, // one digit after: cannot group
		{"12,5", point, 12.5},
		{"1.234", unknown, 1.234},
		{"1.234", point, 1.234},
		{"1.234", comma, 1234},
		{"1,234", comma, 1.234},
		{"1,234", point, 1234},
		{"0,123", unknown, 0.123}, // a group does not start with 0
		{"0.123", comma, 0.123},
		{"0,123", point, 0.123},
		{"1234.567", comma, 1234.567}, // four digits before: cannot group
		{"1234,567", unknown, 1234.567},
		{"1.2345", comma, 1.2345},
		{"1.04166666666667", comma, 1.04166666666667},
		{"1,234.5", unknown, 1234.5},
		{"1.234,5", unknown, 1234.5},
		{"1,234.5", comma, 1234.5}, // two marks: the last one divides
		{"1,234.567", comma, 1234.567},
		{"1,234,567", unknown, 1234567},
		{"1.234.567", unknown, 1234567},
		{"1.234.567,8", comma, 1234567.8},
		{"1 234", unknown, 1234},
		{"1 234 567,25", unknown, 1234567.25},
		{"1 234,567", unknown, 1234.567}, // the space groups, so the comma divides
		{"1\u00a0234.5", unknown, 1234.5},
		{"1\u202f234,5", unknown, 1234.5},
		{"1\u2009234", unknown, 1234},
		{"1'234.5", unknown, 1234.5},
		{"1’234", unknown, 1234},
		{"+5", unknown, 5},
		{"-117.5", unknown, -117.5},
		{"−117,5", comma, -117.5},
		{"−1 234", unknown, -1234},
		{".5", unknown, 0.5},
		{",5", comma, 0.5},
		{"1.0416E-2", unknown, 0.010416},
		{"1.041E-2", comma, 0.01041}, // an exponent does not go with groups
		{"1,0416e-2", comma, 0.010416},
		{"1E+15", unknown, 1e15},
		{"4.6204E4", unknown, 46204},
		{"-0", unknown, 0},
	}
	for _, tt := range tests {
		if got, err := unit.ParseNumber(tt.text, tt.mark); err != nil || got != tt.want {
			t.Errorf("ParseNumber(%q, %v) = %v, %v; want %v", tt.text, tt.mark, got, err, tt.want)
		}
	}
}

func TestParseNumberRefuses(t *testing.T) {
	want := map[error][]string{
		unit.ErrAmbiguousMark: {"1,234", "12,345", "123,456", "-1,234"},
		unit.ErrTooLarge:      {"1e309", "-1E999", "9" + strings.Repeat("0", 400)},
		unit.ErrNotNumber: {"", " ", "-", "+", ".", ",", "12.", "12,", ",5", "--5", "- 5", "5-",
			"1,23,456", "1,2345,678", "0,123,456",
			"1 23", "12 3456", "1  234", "1 234.567 8", "1'23", "1.234,567.8", "1,234 567", "1,234.567,8",
			"1,234 567.5", "1.2.3", "1,2.3", "inf", "Inf", "+Infinity", "nan", "NaN", "0x1p-2", "0x10", "1_000",
			"1e", "e5", "1e+", "1e1.5", "1e0000", "1,234e", "12%", "12a", "(12)", "#N/A",
			"#DIV/0!", "１２", "12\x00", "\xff",
			"1 " + strings.Repeat("234 ", 20) + "234"},
	}
	for sentinel, texts := range want {
		for _, s := range texts {
			if got, err := unit.ParseNumber(s, unknown); !errors.Is(err, sentinel) || got != 0 {
				t.Errorf("ParseNumber(%q) = %v, %v; want %v", s, got, err, sentinel)
			}
		}
	}
}

// TestNumberLocales writes random numbers the way nine conventions do and reads them
// back under the right mark: the value must be the one that strconv reads.
func TestNumberLocales(t *testing.T) {
	styles := []struct {
		group, decimal string
		mark           unit.Mark
	}{
		{"", ".", point}, {"", ",", comma}, {",", ".", point}, {".", ",", comma}, {" ", ",", comma},
		{"\u00a0", ",", comma}, {"\u202f", ".", point}, {"'", ".", point}, {"’", ",", comma},
	}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		plain := strconv.FormatFloat(math.Round(rng.NormFloat64()*1e9)/math.Pow10(rng.IntN(9)), 'f', rng.IntN(6), 64)
		want, err := strconv.ParseFloat(plain, 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, st := range styles {
			s := dressed(plain, st.group, st.decimal)
			if got, err := unit.ParseNumber(s, st.mark); err != nil || got != want {
				t.Fatalf("ParseNumber(%q, %v) = %v, %v; want %v", s, st.mark, got, err, want)
			}
			if m := unit.MarkOf(s); m != unknown && m != st.mark {
				t.Fatalf("MarkOf(%q) = %v, written with the %v", s, m, st.mark)
			}
		}
	}
}

// dressed groups the whole part of a plain number and replaces its point.
func dressed(plain, group, decimal string) string {
	whole, fraction, found := strings.Cut(plain, ".")
	sign := strings.HasPrefix(whole, "-")
	whole = strings.TrimPrefix(whole, "-")
	out := ""
	for len(whole) > 3 {
		out = group + whole[len(whole)-3:] + out
		whole = whole[:len(whole)-3]
	}
	out = whole + out
	if sign {
		out = "-" + out
	}
	if found {
		out += decimal + fraction
	}
	return out
}
