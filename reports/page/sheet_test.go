package page

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

func sampleSheet() Sheet {
	return Sheet{Title: hostileQuotes, Subtitle: hostileScript, Panels: []Panel{
		{Heading: hostileScript, Wide: true, Table: sampleTable(), Notes: []string{hostileMark, hostileScript}},
		{Heading: "no table"},
	}, Footer: []string{hostileScript}}
}

func TestSheet(t *testing.T) {
	var buf bytes.Buffer
	if err := RenderSheet(&buf, sampleSheet()); err != nil {
		t.Fatal(err)
	}
	html := buf.String()
	if strings.Contains(html, "<script") || strings.Contains(html, "<b onmouseover") {
		t.Error("text became markup")
	}
	if !strings.Contains(html, "style-src &#39;sha256-") || !strings.Contains(html, "default-src &#39;none&#39;") ||
		strings.Contains(html, "src=") || strings.Contains(html, "http:") {
		t.Error("the sheet may load something")
	}
	if strings.Count(html, "<table>") != 1 || strings.Count(html, `<section class="wide">`) != 1 ||
		strings.Count(html, "<section") != 2 {
		t.Error("panels")
	}
	bad := sampleSheet()
	bad.Panels[0].Table.Rows[0].Cells = nil
	if err := RenderSheet(&buf, bad); err == nil || !strings.Contains(err.Error(), "0 cells under 3 columns") {
		t.Errorf("a short row: %v", err)
	}
	if err := RenderSheet(stuck{}, sampleSheet()); !errors.Is(err, errStuck) {
		t.Errorf("a failing writer: %v", err)
	}
}

var errStuck = errors.New("stuck")

type stuck struct{}

func (stuck) Write([]byte) (int, error) { return 0, errStuck }

// TestPlotEnds: axes end on round numbers that hold all points, as far down as up.
func TestPlotEnds(t *testing.T) {
	p := Plot{Dots: []Dot{{X: 163, Y: -11}, {X: 20, Y: 2}}}
	if right, top := p.Ends(); right != 200 || top != 15 {
		t.Errorf("%g %g", right, top)
	}
	if c, err := (Plot{}).Draw(Frame{}); c != nil || err != nil {
		t.Errorf("a plot of nothing: %v %v", c, err)
	}
}
