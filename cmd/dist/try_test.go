package main

import (
	"strings"
	"testing"
)

// Scripts are counted by how they ended; lines of other tests and of the scripts' own output
// are not.
func TestCountScripts(t *testing.T) {
	printed := "=== RUN   TestScripts\n    --- PASS: TestScripts/blank (12.10s)\n        > wakeledger ask\n" +
		"        --- FAIL: TestScripts is a text of a script\n    --- SKIP: TestScripts/open (0.00s)\n" +
		"    --- FAIL: TestScripts/check (1.00s)\n    --- PASS: TestScripts/weigh (3.00s)\n--- FAIL: TestScripts (16.10s)\n"
	ended, err := countScripts(targets[0], strings.NewReader(printed))
	if err != nil || ended["PASS"] != 2 || ended["FAIL"] != 1 || ended["SKIP"] != 1 {
		t.Errorf("%v, %v, want 2 that pass, 1 that fails, 1 that is skipped", ended, err)
	}
}

// An answer that differs in a byte is told with its line; no answer at all proves nothing.
func TestSameAnswers(t *testing.T) {
	a := map[string][]byte{"effort": []byte("level,rate\nall,0.125\n"), "trips": []byte("trip\n1\n")}
	if err := sameAnswers(a, map[string][]byte{"effort": a["effort"], "trips": a["trips"]}); err != nil {
		t.Errorf("the same: %v", err)
	}
	err := sameAnswers(a, map[string][]byte{"effort": []byte("level,rate\nall,0.126\n"), "trips": a["trips"]})
	if err == nil || !strings.Contains(err.Error(), "ask effort differs: line 2\n  all,0.125\n  all,0.126") {
		t.Errorf("a figure that differs: %v", err)
	}
	if sameAnswers(a, map[string][]byte{"effort": a["effort"]}) == nil {
		t.Error("an answer that is missing is taken for the same")
	}
	if sameAnswers(map[string][]byte{"effort": nil}, map[string][]byte{"effort": nil}) == nil {
		t.Error("two that say nothing are taken for the same")
	}
}

// What ends a trial is the exit code that the program ends with.
func TestExitCodesOfTrials(t *testing.T) {
	for script, ok := range map[string]bool{"echo yes": true, "echo yes; exit 3": true, "exit 1": false, "exit 2": false} {
		out, err := trial{command: []string{"sh", "-c", script, "sh"}, folder: t.TempDir()}.run()
		if (err == nil) != ok || ok && string(out) != "yes\n" {
			t.Errorf("%s: %q, %v", script, out, err)
		}
	}
	if code, _, notes := (trial{command: []string{"no-such-program"}, folder: t.TempDir()}).end(); code != -1 || len(notes) == 0 {
		t.Errorf("a program that is not there: %d, %s", code, notes)
	}
}
