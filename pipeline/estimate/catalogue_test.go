package estimate

import (
	"strings"
	"testing"
)

// load parses two CSV texts given as rows under the embedded headers.
func load(t *testing.T, relations, conversions string) (*Catalogue, error) {
	t.Helper()
	rh := strings.Join(relationColumns, ",") + "\n"
	ch := strings.Join(conversionColumns, ",") + "\n"
	return Parse(strings.NewReader(rh+relations), strings.NewReader(ch+conversions))
}

func mustDefault(t *testing.T) *Catalogue {
	t.Helper()
	c, err := Default()
	if err != nil {
		t.Fatal(err)
	}
	return c
}

const goodRelation = "X-1,ZZZ,both,a stock,pacific,1e-5,3,FL,round,100,50,200,0.1,yes,A study,,seen in the source,\n"

func TestParseErrorsNamePlace(t *testing.T) {
	const conv = "ZZZ,,length,TL,FL,linear,0,0.9,,,,A study,,seen in the source,\n"
	tests := []struct{ name, relations, conversions, want string }{
		{"no number", strings.Replace(goodRelation, "1e-5", "small", 1), "",
			`relations.csv row 2 column a: "small" is not a number`},
		{"negative", strings.Replace(goodRelation, "1e-5", "-1", 1), "", `row 2 column a: "-1" is not above zero`},
		{"not a number", strings.Replace(goodRelation, "1e-5", "NaN", 1), "", `column a: "NaN" is not a number`},
		{"exponent", strings.Replace(goodRelation, ",3,FL", ",5,FL", 1), "", "column b: 5 is no exponent"},
		{"kind", strings.Replace(goodRelation, ",FL,", ",XL,", 1), "", `column length_kind: "XL"`},
		{"state", strings.Replace(goodRelation, ",round,", ",cooked,", 1), "", `column weight_state: "cooked"`},
		{"ocean", strings.Replace(goodRelation, "pacific", "arctic", 1), "", `column ocean: "arctic"`},
		{"code", strings.Replace(goodRelation, ",ZZZ,", ",xx,", 1), "", `column species: "xx"`},
		{"range", strings.Replace(goodRelation, "50,200", "200,50", 1), "",
			"column max_cm: 50 is not above min_cm 200"},
		{"spread", strings.Replace(goodRelation, ",0.1,yes", ",10,yes", 1), "", "column residual_s: 10"},
		{"count", strings.Replace(goodRelation, ",100,", ",1.5,", 1), "", `column n: "1.5" is not a whole number`},
		{"memory default", strings.Replace(goodRelation, "seen in the source", "from memory", 1), "",
			"column default: a relation from memory"},
		{"seen", strings.Replace(goodRelation, "seen in the source", "trust me", 1), "", `column seen: "trust me"`},
		{"citation", strings.Replace(goodRelation, "A study", "", 1), "", "column citation: is blank"},
		{"twice", goodRelation + goodRelation, "", `relations.csv row 3 column id: "X-1" stands twice`},
		{"short row", "X-1,ZZZ\n", "", "relations.csv"},
		{"conversion", goodRelation, strings.Replace(conv, "0.9", "0", 1),
			`conversions.csv row 2 column m: "0" is not above zero`},
		{"conversion kind", goodRelation, strings.Replace(conv, "TL", "ZZ", 1),
			`conversions.csv row 2 column from: "ZZ"`},
		{"power", goodRelation, strings.Replace(conv, "linear", "power", 1), "column c: a power needs"},
		{"factor", goodRelation, "ZZZ,,weight,dressed,round,linear,0,0.8,,,,A study,,seen in the source,\n",
			"column m: a weight factor"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := load(t, tt.relations, tt.conversions)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want %q in it", err, tt.want)
			}
		})
	}
	if _, err := load(t, goodRelation, conv); err != nil {
		t.Errorf("a good row was refused: %v", err)
	}
	if _, err := Parse(strings.NewReader("id,species\n"), strings.NewReader("")); err == nil ||
		!strings.Contains(err.Error(), "relations.csv row 1") {
		t.Errorf("a wrong header gave %v", err)
	}
}

func TestParseReportsEveryFault(t *testing.T) {
	_, err := load(t, strings.Replace(goodRelation, "1e-5,3", "x,y", 1), "")
	if err == nil || !strings.Contains(err.Error(), "column a") || !strings.Contains(err.Error(), "column b") {
		t.Errorf("want both faults, got %v", err)
	}
}

// TestCatalogueSize holds the extent that the README may claim.
func TestCatalogueSize(t *testing.T) {
	c := mustDefault(t)
	species, sound := map[string]bool{}, 0
	for _, r := range c.Relations() {
		if !r.FromMemory() {
			species[r.Species] = true
			sound++
		}
	}
	if len(species) < 25 || sound < 40 {
		t.Errorf("%d species with %d checked relations, want 25 and 40", len(species), sound)
	}
}

// TestOneDefaultPerOcean: two defaults of a species for the same ocean word would
// make the choice hang on the order of rows.
func TestOneDefaultPerOcean(t *testing.T) {
	seen := map[string]string{}
	for _, r := range mustDefault(t).Relations() {
		if !r.Default {
			continue
		}
		for _, o := range strings.Split(r.Ocean, ";") {
			key := r.Species + " " + o
			if seen[key] != "" {
				t.Errorf("%s: both %s and %s are defaults", key, seen[key], r.ID)
			}
			seen[key] = r.ID
		}
	}
}

func TestSexIsSaidInTheStock(t *testing.T) {
	for _, r := range mustDefault(t).Relations() {
		if r.Sex != "both" && !strings.Contains(r.Stock, r.Sex+"s") {
			t.Errorf("%s: %s, but the stock reads %q", r.ID, r.Sex, r.Stock)
		}
	}
}

func TestCopiesAreReturned(t *testing.T) {
	c := mustDefault(t)
	c.Relations()[0].A, c.Conversions()[0].M = 99, 99
	if c.Relations()[0].A == 99 || c.Conversions()[0].M == 99 {
		t.Error("a caller can change the catalogue")
	}
}
