package main

import (
	"os/exec"
	"strings"
	"testing"
)

// arrows lists what each package of ours may import of ours. A package that is
// not here fails the test, so that a new one is placed on purpose.
var arrows = map[string]string{
	"cmd/dist": "pipeline/logbook",
	"cmd/wakeledger": "pipeline pipeline/estimate pipeline/factors pipeline/identity pipeline/logbook " +
		"pipeline/sentence " +
		"pipeline/meaning pipeline/normalise pipeline/record pipeline/sheet pipeline/species pipeline/spelling " +
		"pipeline/store pipeline/unit queries queries/evidence reports reports/bundle reports/export reports/gather " +
		"reports/output reports/page reports/terminal",
	"pipeline": "pipeline/batch pipeline/entry pipeline/estimate pipeline/factors pipeline/identity " +
		"pipeline/infile pipeline/layout pipeline/meaning pipeline/normalise pipeline/plan pipeline/proof " +
		"pipeline/record pipeline/sheet pipeline/sky pipeline/species pipeline/store pipeline/track pipeline/unit " +
		"pipeline/zone",
	"pipeline/batch":    "pipeline/entry",
	"pipeline/entry":    "",
	"pipeline/estimate": "pipeline/sentence pipeline/unit",
	"pipeline/factors":  "pipeline/unit",
	"pipeline/identity": "",
	"pipeline/infile":   "",
	"pipeline/layout":   "pipeline/record pipeline/sheet pipeline/unit",
	"pipeline/logbook":  "",
	"pipeline/meaning": "pipeline/layout pipeline/phrase pipeline/plan pipeline/species pipeline/spelling " +
		"pipeline/unit pipeline/words",
	"pipeline/normalise": "pipeline/entry pipeline/phrase pipeline/plan pipeline/record pipeline/sheet " +
		"pipeline/species pipeline/unit pipeline/words pipeline/zone",
	"pipeline/phrase": "pipeline/species pipeline/unit pipeline/words",
	"pipeline/plan":   "pipeline/unit",
	"pipeline/proof": "pipeline/entry pipeline/layout pipeline/meaning pipeline/phrase pipeline/plan " +
		"pipeline/record pipeline/spelling pipeline/unit pipeline/words",
	"pipeline/record":   "",
	"pipeline/sheet":    "pipeline/infile pipeline/record pipeline/tag",
	"pipeline/sentence": "",
	"pipeline/sky":      "",
	"pipeline/species":  "",
	"pipeline/spelling": "",
	"pipeline/store":    "pipeline/identity pipeline/infile pipeline/spelling pipeline/zone",
	"pipeline/tag":      "",
	"pipeline/track":    "pipeline/infile pipeline/record pipeline/tag pipeline/unit pipeline/words",
	"pipeline/unit":     "",
	"pipeline/words":    "pipeline/spelling",
	"pipeline/zone":     "",
	"queries": "pipeline/estimate pipeline/factors pipeline/sentence pipeline/store queries/evidence " +
		"queries/stats",
	"queries/evidence": "pipeline/factors pipeline/sentence queries/stats",
	"queries/stats":    "",
	"reports": "pipeline/estimate pipeline/factors pipeline/sentence pipeline/species pipeline/unit queries " +
		"queries/evidence queries/stats reports/bundle reports/page",
	"reports/export": "",
	"reports/bundle": "pipeline/factors pipeline/infile",
	"reports/gather": "pipeline/estimate pipeline/factors pipeline/store pipeline/unit queries queries/evidence " +
		"reports reports/bundle reports/export reports/page",
	"reports/output":   "pipeline/infile",
	"reports/page":     "",
	"reports/terminal": "pipeline/unit",
	"testdata/bench":   "",
	"testdata/browser": "",
	"testdata/demo":    "",
	"testdata/seasons": "",
}

// The database is named in one package, so that moving to another driver is a
// change of that package alone.
const driver = "github.com/marcboeker/go-duckdb"

func TestImportsPointDown(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "wakeledger/...",
		"wakeledger/testdata/bench", "wakeledger/testdata/browser", "wakeledger/testdata/demo",
		"wakeledger/testdata/seasons").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	seen := 0
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		words := strings.Fields(line)
		pkg := strings.TrimPrefix(words[0], "wakeledger/")
		allowed, known := arrows[pkg]
		if !known {
			t.Errorf("package %s has no place in the picture of imports", pkg)
			continue
		}
		seen++
		for _, imported := range words[1:] {
			ours, isOurs := strings.CutPrefix(imported, "wakeledger/")
			if isOurs && !contains(allowed, ours) {
				t.Errorf("%s imports %s, which it may not", pkg, ours)
			}
			if strings.HasPrefix(imported, driver) && pkg != "pipeline/store" {
				t.Errorf("%s names the database driver; only pipeline/store may", pkg)
			}
		}
	}
	if seen < 15 {
		t.Errorf("only %d packages looked at", seen)
	}
}

func contains(words, word string) bool {
	for _, w := range strings.Fields(words) {
		if w == word {
			return true
		}
	}
	return false
}
