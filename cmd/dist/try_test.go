package main

import (
	"errors"
	"strings"
	"testing"
)

// A script that does not say that it passed failed.
func TestHowScriptsEnd(t *testing.T) {
	const begun,
		ended = "=== RUN   TestScripts\n=== RUN   TestScripts/blank\n        > wakeledger blank\n        PASS\n",
		"--- PASS: TestScripts (1.00s)\nPASS\n"
	for _, c := range []struct {
		printed string
		err     error
		want    string
	}{
		{begun + "    --- PASS: TestScripts/blank (1.00s)\n" + ended, nil, "PASS"},
		{begun + "    --- SKIP: TestScripts/blank (1.00s)\n" + ended, nil, "SKIP"},
		{begun + "    --- FAIL: TestScripts/blank (1.00s)\n--- FAIL: TestScripts (1.00s)\n",
			errors.New("exit status 1"), "FAIL"},
		{begun + "    --- PASS: TestScripts/blank (1.00s)\n", errors.New("killed"), "FAIL"},
		{begun, nil, "FAIL"}, // it says nothing of its end
		{"testing: warning: no tests to run\nPASS\n", nil, "FAIL"},
	} {
		if got := howEnded([]byte(c.printed), c.err); got != c.want {
			t.Errorf("%s, %v: %s, want %s", c.printed, c.err, got, c.want)
		}
	}
	if names, err := scriptsNamed("^(blank|weigh)$"); err != nil || len(names) != 2 {
		t.Errorf("scripts: %v, %v", names, err)
	}
	if _, err := scriptsNamed("no such"); err == nil {
		t.Error("a pattern that fits no script is taken")
	}
}

// An answer that differs is told with its row and column; no answer at all proves nothing. Only
// the last digits of a figure may differ.
func TestSameAnswers(t *testing.T) {
	answer := func(rate string) map[string][]byte {
		return map[string][]byte{"effort": []byte("level,rate\n8," + rate + "\n")}
	}
	const want = "0.6456695649333126"
	for _, c := range []struct {
		got  string
		off  int
		says string // "": it is the same
	}{
		{want, 0, ""},
		{"0.6456695649333128", 1, ""},
		{"0.64566956", 1, `ask effort differs: row 2, rate: "0.6456695649333126", "0.64566956"`},
		{"", 1, "row 2, rate"},
		{"0.6456695649333126\n9,1", 1, "2 rows, 3 rows"},
	} {
		off, err := sameAnswers(answer(want), answer(c.got))
		if off != c.off || (err == nil) != (c.says == "") || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %d off, %v, want %d and %q", c.got, off, err, c.off, c.says)
		}
	}
	if _, err := sameAnswers(answer(want), nil); err == nil {
		t.Error("an answer that is missing is taken for the same")
	}
	if _, err := sameAnswers(map[string][]byte{"effort": nil}, map[string][]byte{"effort": nil}); err == nil {
		t.Error("two that say nothing are taken for the same")
	}
}

// What ends a trial is the exit code that the program ends with.
func TestExitCodesOfTrials(t *testing.T) {
	for script, ok := range map[string]bool{"echo yes": true, "echo yes; exit 3": true,
		"exit 1": false, "exit 2": false} {
		out, err := trial{command: []string{"sh", "-c", script, "sh"}, folder: t.TempDir()}.run()
		if (err == nil) != ok || ok && string(out) != "yes\n" {
			t.Errorf("%s: %q, %v", script, out, err)
		}
	}
	if code, _, notes := (trial{command: []string{"no-such-program"}, folder: t.TempDir()}).end(); code != -1 ||
		len(notes) == 0 {
		t.Errorf("a program that is not there: %d, %s", code, notes)
	}
}
