package estimate_test

import (
	"slices"
	"strings"
	"testing"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/species"
)

// TestTablesAgreeWithSpecies: every code and ocean of the tables is one that the
// species list knows.
func TestTablesAgreeWithSpecies(t *testing.T) {
	c, err := estimate.Default()
	if err != nil {
		t.Fatal(err)
	}
	list, err := species.Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range c.Relations() {
		if _, ok := list.ByCode(r.Species); !ok {
			t.Errorf("%s: species %s is not in the list", r.ID, r.Species)
		}
		for _, o := range strings.Split(r.Ocean, ";") {
			if !slices.Contains(species.Oceans(), o) {
				t.Errorf("%s: ocean %q", r.ID, o)
			}
		}
	}
	for _, v := range c.Conversions() {
		if _, ok := list.ByCode(v.Species); !ok {
			t.Errorf("conversion for %s, which is not in the list", v.Species)
		}
	}
}
