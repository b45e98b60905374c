package meaning

import (
	"strings"
	"testing"
)

// TestCore holds that what a legend says makes no difference is no part of what a word means, nor what is counted too.
func TestCore(t *testing.T) {
	for means, want := range map[string]bool{"all that hit, hooked or not": true,
		"tout ce qui tape, ferré ou non":   true,
		"tudo que bateu, mesmo sem fisgar": true, "todo lo que picó, aunque no se clavara": true,
		"alles, was biss, gehakt oder nicht": true, "in the boat, also those let go": false,
		"bites (all, even missed)": false, "Bisse (alle, auch verpasste)": false,
		"hooked and lost": false, "boats seen, near or not": false} {
		rest, bites := core(means)
		if bites != want || strings.Contains(rest, " not") || strings.Contains(rest, "let go") {
			t.Errorf("%q: %q, of bites %v", means, rest, bites)
		}
	}
	const rows = "\n2026-06-03|06:00|08:00|5|4|2|2\n2026-06-04|06:00|08:30|5|3|1|1\n2026-06-05|06:00|08:00|5|6|1|3\n" +
		"2026-06-06|06:00|08:00|4|3|0|2"
	p := planOf(t, "", "# zunzun = todo lo que tocó, se clavara o no\n\nFecha|Inicio|Fin|Líneas|zunzun|Perdidos|"+
		"A bordo"+
		strings.ReplaceAll(rows, ".", ","))
	if b := p.Find("strikes_n"); b == nil || b.Heading != "zunzun" {
		t.Errorf("bites as a legend explains them: %s", summary(p))
	}
}

// TestSumOf holds that a legend's sum of fates is the count that holds them all, and that no other words are one.
func TestSumOf(t *testing.T) {
	for means, want := range map[string]string{"on deck (kept + let go)": "landed_n", "kept and let go": "landed_n",
		"a bordo (guardados + soltados)": "landed_n", "landed + lost": "hooked_n", "hooked and lost": "",
		"missed, lost and landed": "strikes_n", "missed + lost + landed": "strikes_n", "kept (for the table)": "",
		"small ones shook off at the rail, let go": "",
		"lost + broke off":                         ""} {
		if got := sumOf(means); got != want {
			t.Errorf("%q: %q, want %q", means, got, want)
		}
	}
	const rows = "|06:00|08:00|5|4|3|2\n2026-06-04|06:00|08:30|5|3|1|1\n2026-06-05|06:00|08:00|5|6|4|3\n" +
		"2026-06-06|06:00|08:00|4|3|2|2"
	p := planOf(t, "", "# Z = Bisse (alle, auch verpasste)\n# H = gehakt (auch die, die danach verloren gingen)\n"+
		"# B = an Bord (behalten + freigelassen)\n\nDatum|Beginn|Ende|Ruten|Z|H|B\n2026-06-03"+rows)
	if got := summary(p); !strings.HasSuffix(got, "strikes_n hooked_n landed_n") {
		t.Errorf("counts of one letter as a legend explains them: %s", got)
	}
}
