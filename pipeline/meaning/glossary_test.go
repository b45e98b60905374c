package meaning

import (
	"strings"
	"testing"
)

// TestGlossary reads short headings that a text explains one by one, and takes two that differ by a number for the
// different things that it says they are.
func TestGlossary(t *testing.T) {
	const text = "s : la salida. t1, t2 : cañas al agua, cañas arriba. c : número de cañas. m : nudos.\n" +
		"P: picadas. G: clavados. X: al barco. Contados solo al curricán.\n" +
		"Peces : especie, largo a la furca en cm, [contorno en cm], (kg en báscula) ; z suelto ; q perdido\n\n"
	const rows = "s|día|t1|t2|c|m|P|G|X|peces\n1|2025-06-03|06:10|09:00|4|7|3|2|2|dorado 98 [52] (8,4); peto 120\n" +
		"2|2025-06-08|06:20|10:00|4|7,5|2|1|0|dorado q\n" +
		"3|2025-06-14|06:00|09:30|5|7|5|4|3|peto 131 (14,2); dorado 61 z\n" +
		"4|2025-06-15|06:05|09:10|5|7|0|0|0|\n"
	p := planOf(t, "log", text+rows)
	const want = "flat: trip date start_s end_s lines_out speed_kn/kn strikes_n hooked_n landed_n fishlist"
	if got := summary(p); got != want {
		t.Fatalf("%s\nexpected %s", got, want)
	}
	list := p.Bindings[len(p.Bindings)-1]
	if list.Column.Parse != "fishlist" || !strings.Contains(list.Said, "[contorno en cm]") ||
		list.Codes["z"] != "suelto" ||
		list.Codes["q"] != "perdido" {
		t.Errorf("the list of fish: %+v", list)
	}
	if l := readLegend([]string{"Boat: Marram. Port: Hull. Crew: the two of us."}); len(l.words) > 0 {
		t.Errorf("who and where: %v", l.words)
	}
}

// TestFatesBehindCommas holds that codes between commas, behind signs that the legend explains with =, are
// read.
func TestFatesBehindCommas(t *testing.T) {
	l := readLegend([]string{"# catch: cm, kg = balance, ~kg = by eye. F let go, P lost after hookup, q = no idea"})
	if l.more("f") != "let go" || l.more("p") != "lost after hookup" {
		t.Errorf("%v", l.words)
	}
	if l := readLegend([]string{"crew: Jo, Al lost his hat"}); l.more("al") != "" {
		t.Errorf("%v", l.words)
	}
}
