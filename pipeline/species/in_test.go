package species

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// told writes spans as "name=code" or "name=?code code".
func told(spans []Span) string {
	var out []string
	for _, s := range spans {
		got := s.Species.Code
		if !s.Found {
			got = "?" + strings.Join(s.Candidates, " ")
		}
		out = append(out, s.Name+"="+got)
	}
	return strings.Join(out, "; ")
}

func TestIn(t *testing.T) {
	l := mustDefault(t)
	for _, tt := range []struct{ text, want string }{
		{"2 yellowfin tunas and a Wahoo, lost one mahi-mahi", "yellowfin tunas=YFT; Wahoo=WAH; mahi-mahi=DOL"},
		{"Dos atunes aleta amarilla", "atunes aleta amarilla=YFT"},
		{"Un thon  rouge du Sud à midi", "thon  rouge du Sud=SBF"},
		{"coryphe\u0300ne et ESPADON", "coryphe\u0300ne=DOL; ESPADON=SWO"},
		{"l'espadon, d'une aguglia imperiale; dell’alalunga", "espadon=SWO; aguglia imperiale=MSP; alalunga=ALB"},
		{"Goldmakrele und zwei Weiße Thune, Weißer Thunfisch", "Goldmakrele=DOL; Weißer Thunfisch=ALB"},
		{"T. albacares at 10", "T. albacares=YFT"},
		{"wahoo's gone", "wahoo's=WAH"},
		{"2YFT 1BET, 3 SKJ", "YFT=YFT; BET=BET; SKJ=SKJ"}, {"BET 40 LBS", "BET=BET"},
		{"yft and ahi; ono 30lb", "yft=YFT; ahi=YFT; ono=WAH"},
		{"giant bluefin tuna", "giant bluefin tuna=BFT"}, {"atún rabil", "atún rabil=YFT"},
		{"tuna. Skipjack", "tuna=?ALB BET BFT BLF LOT PBF SBF SKJ YFT; Skipjack=SKJ"},
		{"yellowtail snapper on the reef", "yellowtail snapper=SNY"}, {"bluefin trevally", "bluefin trevally=NXM"},
		{"blue shark then blue marlin", "blue shark=BSH; blue marlin=BUM"},
		{"saw a'u jump", "a'u=?BLM BUM MLS MSP WHM"},
		{"2 kings, 1 sail and three cero", "kings=?COM KGM YTC; sail=?SAI SFA; cero=CER"},
		{"hammerhead by the boat", "hammerhead=?SPK SPL SPZ"},
	} {
		if got := told(l.In(tt.text)); got != tt.want {
			t.Errorf("%q: %s, want %s", tt.text, got, tt.want)
		}
	}
}

// TestInNoFish: ordinary words, colours and parts of words are no fish.
func TestInNoFish(t *testing.T) {
	l := mustDefault(t)
	for _, text := range []string{"", "blue water, white caps", "black and white", "striped skirt", "Fri 3 pm", "FRI 4",
		"I bet a lot of dot lures", "com vento, mas bon",
		"au large, temps beau", "woo hoo!", "king tide", "2 king tides", "three frigate birds", "frigate birds",
		"set sail at 6", "sword of light", "SPF 50",
		"blackfin snapper", "yellowtail rockfish", "king salmon", "tunable, mahimahis4x", "listado de capturas",
		"cero capturas", "tarde bonita", "Barry caught it",
		"BET YOU WE LOSE", "id A7BET9 YFT3", "bottlenose dolphins", "spotted dolphin", "3 yrs",
		"marlinspike", "Jack and Joe"} {
		if got := told(l.In(text)); got != "" {
			t.Errorf("%q: %s, want none", text, got)
		}
	}
}

func TestInPlaces(t *testing.T) {
	l := mustDefault(t)
	text := "«Mahi», ʻahi, l’espadon"
	got := l.In(text)
	var from []string
	for _, s := range got {
		if text[s.Start:s.End] != s.Name {
			t.Errorf("%+v is not %q", s, text[s.Start:s.End])
		}
		from = append(from, s.Name)
	}
	if want := []string{"Mahi", "ʻahi", "espadon"}; !slices.Equal(from, want) {
		t.Errorf("%q, want %q", from, want)
	}
	if got := told(l.InOcean("a bluefin and a marlin", "north atlantic")); got != "bluefin=BFT; marlin=?BUM WHM" {
		t.Error(got)
	}
}

// TestInAliases: a user's own names count even where they are ordinary words.
func TestInAliases(t *testing.T) {
	l, err := mustDefault(t).WithAliases(map[string]string{"blue": "PBF", "one of the very big old silver ones": "ALB"})
	if err != nil {
		t.Fatal(err)
	}
	if got := told(l.In("lost blues, and one of the very big old silver ones")); got != "blues=PBF; one of the very "+
		"big old silver ones=ALB" {
		t.Error(got)
	}
}

// TestNewNames: names of other tongues and of groups.
func TestNewNames(t *testing.T) {
	l := mustDefault(t)
	for name, want := range map[string]string{"tonno pinna gialla": "YFT", "Gelbflossen-Thunfisch": "YFT",
		"alalunga": "ALB", "Roter Thun": "BFT", "pesce spada": "SWO",
		"Schwertfisch": "SWO", "agulhão-negro": "BUM", "Großaugenthun": "BET", "palamita": "BON", "verdesca": "BSH",
		"peau bleue": "BSH", "ricciola": "AMB", "shortbill": "SSP",
		"abft": "BFT", "mack tuna": "KAW", "GT": "NXI", "striped": "MLS", "Cape snoek": "SNK"} {
		if m := l.Find(name, ""); m.Species.Code != want {
			t.Errorf("%q: %+v, want %s", name, m, want)
		}
	}
	for name, min := range map[string]int{"shark": 10, "tiburones": 10, "billfish": 11, "tonno": 6, "Thunfisch": 6,
		"tonno rosso": 3, "espadon voilier": 2, "blue": 2, "cuda": 2, "caballa": 2} {
		if m := l.Find(name, ""); m.Found || len(m.Candidates) < min {
			t.Errorf("%q: %+v, want %d candidates", name, m, min)
		}
	}
}

// FuzzIn: spans lie in the text, in order, and hold what Find may say.
func FuzzIn(f *testing.F) {
	l, err := Default()
	if err != nil {
		f.Fatal(err)
	}
	f.Add("2 kings; l'espadon, ʻahi\u0301s")
	f.Add("\xff a'u'' yellowfin tuna tuna")
	f.Fuzz(func(t *testing.T, text string) {
		end := 0
		for _, s := range l.In(text) {
			if s.Start < end || s.End <= s.Start || s.Name != text[s.Start:s.End] ||
				s.Found == (len(s.Candidates) > 0) || utf8.ValidString(text) && !utf8.ValidString(s.Name) {
				t.Errorf("%q: %+v", text, s)
			}
			end = s.End
		}
	})
}
