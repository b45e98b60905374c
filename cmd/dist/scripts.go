package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"time"
)

var scriptEnded = regexp.MustCompile(`(?m)^\s+--- (PASS|FAIL|SKIP): TestScripts/`)

// buildScripts builds what runs the scripts of the command line, on this computer.
func buildScripts(dir string) (string, error) {
	to := filepath.Join(dir, "scripts.test")
	_, err := output(nil, "go", "test", "-c", "-o", to, "./cmd/wakeledger")
	return to, err
}

// atOnce scripts run side by side.
const atOnce = 2

// tryScripts runs the scripts with the program, says of each how it ended, and counts.
// only is a pattern of their names; "" is all. What those print that fail goes into the
// folder records.
func (t trial) tryScripts(of target, runner, only, records string) error {
	names, err := scriptsNamed(only)
	if err != nil {
		return err
	}
	ended := map[string]int{}
	var failures []error
	var lock sync.Mutex // of both
	var all sync.WaitGroup
	free := make(chan bool, atOnce)
	for _, name := range names {
		all.Add(1)
		free <- true
		go func() {
			defer func() { <-free; all.Done() }()
			began := time.Now()
			how, printed := t.runScript(runner, name)
			lock.Lock()
			defer lock.Unlock()
			ended[how]++
			of.say("script %s: %s, %.0f s", name, how, time.Since(began).Seconds())
			if how == "FAIL" {
				record := filepath.Join(records, of.name()+"-"+name+".log")
				failures = append(failures, fmt.Errorf("script %s: see %s", name, record),
					os.WriteFile(record, printed, 0o644))
			}
		}()
	}
	all.Wait()
	of.say("%d scripts pass, %d fail, %d are skipped", ended["PASS"], ended["FAIL"], ended["SKIP"])
	if ended["PASS"] == 0 {
		failures = append(failures, errors.New("no script passes"))
	}
	return errors.Join(failures...)
}

// scriptsNamed are the names of the scripts that fit a pattern.
func scriptsNamed(pattern string) (names []string, err error) {
	fits, err := regexp.Compile(pattern)
	if err != nil {
		return nil, err
	}
	files, err := filepath.Glob(filepath.Join("testdata", "script", "*.txtar"))
	for _, f := range files {
		if name := strings.TrimSuffix(filepath.Base(f), ".txtar"); fits.MatchString(name) {
			names = append(names, name)
		}
	}
	if err == nil && names == nil {
		err = fmt.Errorf("no script has a name that fits %q", pattern)
	}
	return names, err
}

// runScript says how a script ended, PASS, FAIL or SKIP, and what it printed.
func (t trial) runScript(runner, name string) (how string, printed []byte) {
	c := exec.Command(runner, "-test.run", "^TestScripts$/^"+name+"$", "-test.v", "-test.timeout", "60m")
	c.Dir = filepath.Join("cmd", "wakeledger")
	c.Env = append(append(os.Environ(), t.environment...), "WAKELEDGER_PROGRAM="+strings.Join(t.command, " "))
	printed, err := c.CombinedOutput()
	return howEnded(printed, err), printed
}

// howEnded is FAIL unless the one script that was run says that it ended otherwise.
func howEnded(printed []byte, err error) string {
	said := scriptEnded.FindAllSubmatch(printed, -1)
	if err != nil || len(said) != 1 {
		return "FAIL"
	}
	return string(said[0][1])
}
