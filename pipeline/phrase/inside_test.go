package phrase

import (
	"testing"

	"wakeledger/pipeline/words"
)

// TestShouts holds that bites told with their clocks end as their words say: landed where they are inside, missed
// behind "and nothing", and on the place behind "na" and "no"; a speed right behind a clock is that of the bite.
func TestShouts(t *testing.T) {
	for text, want := range map[string]Bite{
		"12h23 patudo dentro":                          {Fish: Fish{Name: "patudo", Fate: words.Landed}},
		"13h06 gaiado no shotgun dentro":               {Fish: Fish{Name: "gaiado", Fate: words.Landed}},
		"11h05 a 6,5 nós wahoo na cana direita dentro": {Fish: Fish{Name: "wahoo", Fate: words.Landed, Kn: 6.5}},
		"10h32 picada na comprida e nada":              {Fish: Fish{Fate: words.Missed}},
		"9:40 bite on the left rigger and nothing":     {Fish: Fish{Fate: words.Missed}},
		"fundo: pargo 4 kg. fundo: pargo": {Fish: Fish{Name: "pargo", Fate: words.Landed},
			Method: "bottom"},
	} {
		got := Tell(text, Defaults{})
		if len(got.Bites) != 1 || len(got.Left) > 0 {
			t.Errorf("%s: %+v", text, got)
		} else if b := got.Bites[0]; b.Name != want.Name || b.Fate != want.Fate || b.Kn != want.Kn ||
			b.Method != want.Method {
			t.Errorf("%s: %+v", text, b)
		}
	}
	if got := Tell("no shotgun bite, no wahoo landed", Defaults{}); len(got.Bites) > 0 {
		t.Errorf("denied: %+v", got)
	}
}
