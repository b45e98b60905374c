package main

import (
	"errors"
	"testing"
	"unicode/utf8"
)

func TestShown(t *testing.T) {
	for in, want := range map[string]string{
		"plain, ünï\tcode\n": "plain, ünï\tcode\n",
		"\x1b[31mred\x1b[0m": "␛[31mred␛[0m",
		"a\rb":               "a␍b",
		"\x00\x07\x7f":       "␀␇␡",
		"\u009b31m":          "\ufffd31m",
		"\u202egnp.exe":      "\ufffdgnp.exe",
		"\x9b31m":            "\ufffd31m",
		"caf\xe9":            "caf\ufffd",
	} {
		got := shown(in)
		if got != want {
			t.Errorf("%q is shown as %q, want %q", in, got, want)
		}
		if !utf8.ValidString(got) {
			t.Errorf("%q is shown as what is no UTF-8", in)
		}
	}
}

func TestNoFormula(t *testing.T) {
	for in, want := range map[string]string{"=1": "'=1", "+1": "'+1", "-x": "'-x", "@x": "'@x", "\t=1": "'\t=1",
		"'=1": "''=1", "＝1": "'＝1", "8 to 10": "8 to 10", "": "", "[8, 10)": "[8, 10)"} {
		if got := noFormula(in); got != want {
			t.Errorf("%q becomes %q, want %q", in, got, want)
		}
	}
	type row struct {
		Name string  `json:"name"`
		Lat  float64 `json:"lat"`
	}
	var b sinkBuffer
	if err := writeCSV(&b, []row{{"-bank", -33.5}}); err != nil || string(b) != "name,lat\n'-bank,-33.5\n" {
		t.Errorf("%q, %v: a number is none", b, err)
	}
}

type sinkBuffer []byte

func (b *sinkBuffer) Write(p []byte) (int, error) { *b = append(*b, p...); return len(p), nil }

func TestSinkRemembers(t *testing.T) {
	s := &sink{to: failingWriter{}}
	_, _ = s.Write([]byte("x"))
	if s.failure() == nil {
		t.Error("a write that failed is forgotten")
	}
}

type failingWriter struct{}

func (failingWriter) Write([]byte) (int, error) { return 0, errors.New("full") }
