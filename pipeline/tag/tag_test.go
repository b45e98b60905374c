package tag

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
)

// told are the tags of a document as one text.
func told(text string, buffer int) (string, error) {
	t := NewReader(bufio.NewReaderSize(strings.NewReader(text), buffer), 12)
	out := ""
	for {
		err := t.Next()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return out, err
		}
		out += fmt.Sprintf("%q %s", t.Text, t.Name)
		switch {
		case t.End:
			out += " ends"
		case t.Empty:
			out += " empty"
		}
		out += fmt.Sprintf(" n=%s line %d; ", t.Attr("n"), t.Line)
	}
}

// Tags, their text and their lines are the same whatever the buffer holds: marks within quotes, comments and text in
// CDATA, which counts as text, also where a buffer ends in the midst of its mark.
func TestTags(t *testing.T) {
	long := strings.Repeat("x", 40)
	for _, c := range []struct{ text, want string }{
		{`<a n="1">t</a>`, `"" a n=1 line 1; "t" a ends n= line 1; `},
		{"<p:a\n m='>' n = 'b>c'/>", `"" a empty n=b>c line 2; `},
		{"<!-- <a> -- >" + long + " -->\n<b/>", `"\n" b empty n= line 2; `},
		{"<a><![CDATA[x <v> y]]></a>", `"" a n= line 1; "x <v> y" a ends n= line 1; `},
		{"<a><![CDATA[" + long + "]]> ]]" + long + "]]></a>", `"" a n= line 1; "xxxxxxxxxxxx" a ends n= line 1; `},
		{"<?xml version='1.0'?><!DOCTYPE a><a>long text that is cut</a>",
			`"" a n= line 1; "long text th" a ends n= line 1; `},
		{"", ""},
	} {
		for _, buffer := range []int{16, 17, 23, 4096} {
			if got, err := told(c.text, buffer); err != nil || got != c.want {
				t.Errorf("%q by %d bytes: %s, %v, expected %s", c.text, buffer, got, err, c.want)
			}
		}
	}
}

// A document that ends within a tag, a comment or text says so, and a tag that never ends is refused.
func TestTagsThatDoNotEnd(t *testing.T) {
	for text, want := range map[string]error{"<a": io.ErrUnexpectedEOF, "<a><!-- b": io.ErrUnexpectedEOF,
		"<a><![CDATA[b]": io.ErrUnexpectedEOF, "<>": ErrLong, `<a b="` + strings.Repeat("x", 2*Most): ErrLong} {
		if _, err := told(text, 4096); !errors.Is(err, want) {
			t.Errorf("%.20q: %v, expected %v", text, err, want)
		}
	}
}
