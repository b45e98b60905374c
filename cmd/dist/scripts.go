package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
)

var scriptEnded = regexp.MustCompile(`^\s+--- (PASS|FAIL|SKIP): TestScripts/(\S+) (\(.*\))`)

// buildScripts builds what runs the scripts of the command line, on this computer.
func buildScripts(dir string) (string, error) {
	to := filepath.Join(dir, "scripts.test")
	_, err := output(nil, "go", "test", "-c", "-o", to, "./cmd/wakeledger")
	return to, err
}

// tryScripts runs the scripts with the program, says of each how it ended, and counts.
// only is a pattern of their names; "" is all. What they print goes to the file record.
func (t trial) tryScripts(of target, scripts, only, record string) error {
	run := "^TestScripts$"
	if only != "" {
		run += "/" + only
	}
	c := exec.Command(scripts, "-test.run", run, "-test.v", "-test.timeout", "120m", "-test.parallel", "2")
	c.Dir = filepath.Join("cmd", "wakeledger")
	c.Env = append(append(os.Environ(), t.environment...), "WAKELEDGER_PROGRAM="+strings.Join(t.command, " "))
	file, err := os.Create(record)
	if err != nil {
		return err
	}
	defer file.Close()
	printed, err := c.StdoutPipe()
	if err != nil {
		return err
	}
	c.Stderr = file
	if err := c.Start(); err != nil {
		return err
	}
	ended, err := countScripts(of, io.TeeReader(printed, file))
	err = errors.Join(err, c.Wait())
	of.say("%d scripts pass, %d fail, %d are skipped", ended["PASS"], ended["FAIL"], ended["SKIP"])
	if err != nil || ended["PASS"] == 0 {
		return errors.Join(err, fmt.Errorf("the scripts: see %s", record))
	}
	return nil
}

// countScripts counts how the scripts of a run ended, and says it of each as it ends.
func countScripts(of target, printed io.Reader) (ended map[string]int, err error) {
	ended = map[string]int{}
	lines := bufio.NewReader(printed)
	for {
		line, err := lines.ReadString('\n')
		if m := scriptEnded.FindStringSubmatch(line); m != nil {
			ended[m[1]]++
			of.say("script %s: %s %s", m[2], m[1], m[3])
		}
		if errors.Is(err, io.EOF) {
			return ended, nil
		}
		if err != nil {
			return ended, err
		}
	}
}
