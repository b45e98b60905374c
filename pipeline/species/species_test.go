package species

import (
	"slices"
	"strings"
	"testing"
)

func mustDefault(t *testing.T) *List {
	t.Helper()
	l, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// TestFindOneMeaning: names that mean one species wherever they are used.
func TestFindOneMeaning(t *testing.T) {
	l := mustDefault(t)
	tests := map[string][]string{
		"YFT": {"yft", " YFT ", "Yellowfin", "yellow-fin", "YELLOWFIN TUNAS", "thunnus albacares", "T. albacares",
			"ahi", "‘Ahi", "ʻahi", "Atún aleta amarilla", "atun aleta amarilla", "thon jaune", "thons jaunes", "rabil"},
		"PBF": {"Pacific bluefin tuna", "pacific blue-fin", "cimarrón", "Thunnus orientalis"},
		"BFT": {"atlantic bluefin", "BFT", "giant bluefin"},
		"BET": {"Big Eye", "bigeye tuna", "ahi po'onui", "patudo"},
		"ALB": {"albacore", "Albacores", "tombo", "germon", "bonito del norte", "longfin"},
		"SKJ": {"skipjack", "aku", "Barrilete", "listao"},
		"WAH": {"wahoo", "Wahoos", "ono", "peto", "thazard-bâtard", "THAZARD BÂTARD"},
		"DOL": {"mahi", "Mahi-Mahi", "mahimahi", "dolphin", "dolphinfish", "dolphin fish", "dourado", "coryphène",
			"coryphe\u0300ne", "lampuga"},
		"SWO": {"swordfish", "broadbill", "pez espada", "espadon", "Xiphias gladius"},
		"BUM": {"blue marlin", "Marlín azul", "kajiki", "makaira mazara"},
		"MLS": {"striped marlin", "nairagi", "Tetrapturus audax"},
		"WHM": {"white marlin"}, "BLM": {"black marlin"}, "KGM": {"king mackerel"}, "AMB": {"greater amberjack"},
		"LTA": {"false albacore", "little tunny"}, "BEP": {"pacific bonito"},
		"SMA": {"mako", "shortfin mako"}, "WEW": {"white seabass"},
		"BLF": {"blackfin tuna"}, "LOT": {"longtail tuna"}, "SBF": {"southern bluefin"},
		"YTC": {"California yellowtail", "Seriola dorsalis"}, "CBA": {"cobia"}, "LAG": {"opah"},
	}
	for want, names := range tests {
		for _, name := range names {
			if m := l.Find(name, ""); !m.Found || m.Species.Code != want || len(m.Candidates) > 0 {
				t.Errorf("%q: %+v, want %s", name, m, want)
			}
		}
	}
}

// TestFindByOcean: names that mean several species. No ocean: candidates; an
// ocean settles it, or narrows it.
func TestFindByOcean(t *testing.T) {
	l := mustDefault(t)
	tests := []struct{ name, ocean, want string }{
		{"bluefin", "", "? BFT PBF SBF"}, {"Bluefin Tunas", "Pacific", "PBF"}, {"bluefin", "eastern pacific", "PBF"},
		{"bluefin", "north atlantic", "BFT"},
		{"bluefin", "Gulf of Mexico", "BFT"}, {"thon rouge", "mediterranean", "BFT"},
		{"bluefin", "indian ocean", "SBF"}, {"bluefin", "south pacific", "? PBF SBF"},
		{"bluefin", "lake", "? BFT PBF SBF"}, {"bonnies", "indian", "? KAW SKJ"},
		{"yellowtail", "", "? AMJ SNY YTC"}, {"yellowtail", "pacific", "YTC"},
		{"yellowtail", "western pacific", "? AMJ YTC"}, {"yellowtail", "caribbean", "SNY"},
		{"dorado", "", "? CFW DOL"}, {"Dorados", "eastern pacific", "DOL"}, {"dorado", "mediterranean", "DOL"},
		{"kingfish", "", "? COM KGM YTC"}, {"kingfish", "atlantic", "KGM"}, {"kingfish", "south pacific", "YTC"},
		{"kingfish", "indian", "COM"},
		{"blackfin", "", "? BAB BLF"}, {"blackfin", "north atlantic", "BLF"}, {"blackfin", "indian", "BAB"},
		{"spanish mackerel", "", "? COM SIE SSM"}, {"spanish mackerel", "atlantic", "SSM"},
		{"spanish mackerels", "south pacific", "COM"}, {"spanish mackerel", "pacific", "? COM SIE"},
		{"sailfish", "", "? SAI SFA"}, {"sailfish", "atlantic", "SAI"}, {"pez vela", "eastern pacific", "SFA"},
		{"albacora", "mediterranean", "ALB"}, {"albacora", "eastern pacific", "YFT"},
		{"albie", "atlantic", "LTA"}, {"albie", "pacific", "ALB"},
		{"bonito", "eastern pacific", "BEP"}, {"bonito", "atlantic", "? BON LTA"}, {"marlin", "atlantic", "? BUM WHM"},
		{"BFT", "pacific", "PBF"}, {"BFT", "atlantic", "BFT"},
		{"spearfish", "pacific", "SSP"}, {"king", "pacific", "YTC"},
		{"tuna", "mediterranean", "? ALB BFT"}, {"yellowfin", "atlantic", "YFT"}, {"wahoo", "indian", "WAH"},
		{"", "", ""}, {"   ", "pacific", ""}, {"old boot", "pacific", ""}, {"?!", "", ""},
		{"(tuna)", "mediterranean", "? ALB BFT"},
	}
	for _, tt := range tests {
		m := l.Find(tt.name, tt.ocean)
		got := m.Species.Code
		if len(m.Candidates) > 0 {
			got = "? " + strings.Join(m.Candidates, " ")
		}
		if got != tt.want || m.Found != (m.Species.Code != "") {
			t.Errorf("%q in %q: %q, want %q", tt.name, tt.ocean, got, tt.want)
		}
	}
}

func TestNotes(t *testing.T) {
	l := mustDefault(t)
	if m := l.Find("bft", "north pacific"); !strings.Contains(m.Note, "FAO code of Atlantic bluefin") {
		t.Errorf("%+v", m)
	}
	if m := l.Find("ahi", ""); !strings.Contains(m.Note, "bigeye") {
		t.Errorf("%+v", m)
	}
	if m := l.Find("wahoo", ""); m.Note != "" {
		t.Errorf("%+v", m)
	}
}

func TestAliases(t *testing.T) {
	base := mustDefault(t)
	l, err := base.WithAliases(map[string]string{"Bluefin": "pbf", "los grandes": "YFT", "ahi": "BET"})
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"bluefins": "PBF", "Los Grandes": "YFT", "'ahi": "BET", "wahoo": "WAH"} {
		if m := l.Find(name, "atlantic"); !m.Found || m.Species.Code != want {
			t.Errorf("%q: %+v, want %s", name, m, want)
		}
	}
	if m := base.Find("bluefin", ""); m.Found {
		t.Error("the list that the aliases were added to has changed")
	}
	twice, err := l.WithAliases(map[string]string{"silvers": "ALB"})
	if err != nil || !twice.Find("silver", "").Found || !twice.Find("bluefin", "").Found || l.Find("silver", "").Found {
		t.Errorf("aliases do not add up: %v", err)
	}
	_, err = base.WithAliases(map[string]string{"a": "ZZZ", "b": "", "!": "YFT"})
	for _, want := range []string{`"ZZZ"`, `alias "b"`, `alias "!"`} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want %s in it", err, want)
		}
	}
}

func TestByCode(t *testing.T) {
	l := mustDefault(t)
	s, ok := l.ByCode(" pbf")
	if !ok || s.Scientific != "Thunnus orientalis" || s.Group != "tuna" ||
		s.MaxLengthCM != 300 || s.MaxWeightKG != 450 {
		t.Errorf("%+v %v", s, ok)
	}
	for _, code := range []string{"", "tuna", "ZZZ"} {
		if _, ok := l.ByCode(code); ok {
			t.Errorf("%q was found", code)
		}
	}
}

// TestEveryNameIsFound: each row of names.csv leads back to its code, alone or
// among the candidates; so no name is shadowed by another.
func TestEveryNameIsFound(t *testing.T) {
	l := mustDefault(t)
	rows, err := readRows("names.csv", namesCSV, namesHeader)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		m := l.Find(row["name"].text, row["ocean"].text)
		code := row["code"].text
		if m.Species.Code != code && !slices.Contains(m.Candidates, code) {
			t.Errorf("names.csv row %d: %q in %q gives %+v, want %s", row["name"].row,
				row["name"].text, row["ocean"].text, m, code)
		}
	}
	if len(rows) < 300 {
		t.Errorf("only %d names", len(rows))
	}
}

func TestEverySpecies(t *testing.T) {
	l := mustDefault(t)
	all := l.All()
	if len(all) < 50 {
		t.Errorf("only %d species", len(all))
	}
	for _, s := range all {
		for _, name := range []string{s.Code, strings.ToLower(s.Scientific)} {
			if m := l.Find(name, ""); m.Species.Code != s.Code {
				t.Errorf("%q: %+v", name, m)
			}
		}
		if (s.MaxLengthCM > 0) != (s.MaxLengthKind != "") {
			t.Errorf("%s: %g cm of kind %q", s.Code, s.MaxLengthCM, s.MaxLengthKind)
		}
	}
}

func TestOceans(t *testing.T) {
	for in, want := range map[string]string{"": "", " Pacific ": "pacific", "North-Pacific Ocean": "north pacific",
		"Mediterranean Sea": "mediterranean", "the moon": "", "Gulf of Mexico": "western atlantic",
		"west Atlantic": "western atlantic"} {
		got, err := ParseOcean(in)
		if got != want || (err != nil) != (in == "the moon") {
			t.Errorf("%q: %q %v, want %q", in, got, err, want)
		}
	}
	if _, err := ParseOcean("the moon"); !strings.Contains(err.Error(), "mediterranean") {
		t.Errorf("%v does not list the words", err)
	}
	Oceans()[0] = "changed"
	if Oceans()[0] != "pacific" {
		t.Error("a caller can change the list")
	}
}

func TestParseErrorsNamePlace(t *testing.T) {
	const fish = "ZZZ,Genus species,A fish,tuna,100,FL,20,a source\n"
	tests := []struct{ name, species, names, want string }{
		{"code", strings.Replace(fish, "ZZZ", "zzz", 1), "", `species.csv row 2 column code: "zzz"`},
		{"twice", fish + fish, "", `species.csv row 3 column code: "ZZZ" stands twice`},
		{"group", strings.Replace(fish, "tuna", "whale", 1), "", "column group"},
		{"length", strings.Replace(fish, "100", "long", 1), "", `column max_length_cm: "long"`},
		{"weight", strings.Replace(fish, ",20,", ",-20,", 1), "", `column max_weight_kg: "-20"`},
		{"NaN", strings.Replace(fish, ",20,", ",NaN,", 1), "", `column max_weight_kg: "NaN"`},
		{"kind", strings.Replace(fish, "FL", "XL", 1), "", "column max_length_kind"},
		{"source", strings.Replace(fish, "a source", "", 1), "", "column source: is blank"},
		{"no code", fish, "a name,YYY,,x,\n", `names.csv row 2 column code: no species has the code "YYY"`},
		{"ocean", fish, "a name,ZZZ,lake,x,\n", `names.csv row 2 column ocean: "lake"`},
		{"name", fish, "!,ZZZ,,x,\n", "names.csv row 2 column name: is blank"},
		{"name twice", fish, "a name,ZZZ,,x,\nA-Name,ZZZ,,x,\n", `names.csv row 3 column name: "A-Name" stands twice`},
		{"name source", fish, "a name,ZZZ,,,\n", "names.csv row 2 column source: is blank"},
		{"short row", fish, "a name\n", "names.csv"},
	}
	for _, tt := range tests {
		_, err := parse(speciesHeader+"\n"+tt.species, namesHeader+"\n"+tt.names)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: error %v, want %q in it", tt.name, err, tt.want)
		}
	}
	if _, err := parse(speciesHeader+"\n"+fish, namesHeader+"\na name,ZZZ,,x,\n"); err != nil {
		t.Errorf("good tables were refused: %v", err)
	}
	if _, err := parse("", ""); err == nil {
		t.Error("an empty table was accepted")
	}
}

// FuzzFind: any name gives an answer that keeps its own rules.
func FuzzFind(f *testing.F) {
	l, err := Default()
	if err != nil {
		f.Fatal(err)
	}
	f.Add("Bluefin (school)", "pacific")
	f.Add("ʻahi\u0301s", "")
	f.Add("\xff(", "med")
	f.Fuzz(func(t *testing.T, name, ocean string) {
		m := l.Find(name, ocean)
		if m.Found != (m.Species.Code != "") || m.Found && len(m.Candidates) > 0 {
			t.Errorf("%q in %q: %+v", name, ocean, m)
		}
	})
}
