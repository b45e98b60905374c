package phrase

import "testing"

// TestOneBite holds that a bite is told in two parts, with a colon between where it came and what became of it.
func TestOneBite(t *testing.T) {
	for text, want := range map[string]string{
		"bite on the silver spoon: bluefin, boated and kept":                     "bluefin landed",
		"fish on the blue/white plug 6oz, P rigger (doing 12 kn then): albacore": "albacore hooked @P rigger",
		"8h21, bite on the purple one, G: yellowfin, 54 cm, let go at the boat":  "yellowfin released 54cm @G 8:21",
		"Run 1, hit on the pink squid, rod 4 (doing 7 kn then): pulled the hook": "[1] lost @rod 4 (pulled hook)",
		"bite on the pink squid: mahi, girth 59 cm, gaffed, kept":                "mahi landed x59",
		"strike on the left rigger: no hook-up":                                  "missed @the left rigger",
		"grouper (jig on the drift, not trolled)":                                "grouper",
		"Trip 3: two wahoo landed, one lost":                                     "2 wahoo landed; lost",
		"Trolled 2 h. Bite: mahi gaffed. Bite: no hookup. Bite: wahoo lost.":     "mahi landed; missed; wahoo lost",
		"Bite: missed. Bite: missed.":                                            "missed; missed",
		"new 30s spooled":                                                        "left: new 30s spooled",
	} {
		if got := show(Tell(text, Defaults{})); got != want {
			t.Errorf("%s: %q, expected %q", text, got, want)
		}
	}
}
