package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "write expected outputs anew")

// The scripts run the program as a user does: arguments in, standard output,
// standard error and exit code out.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"own-reader":     ownReader, // this and the next four for the benchmarks
		"count-lines":    countLines,
		"read-xml":       readXML,
		"share-boats":    shareBoats,
		"write-workbook": writeWorkbook,
		"wakeledger":     program,
	})
}

func program() {
	if given := strings.Fields(os.Getenv(programFlag)); len(given) > 0 {
		os.Exit(another(given))
	}
	code := start(os.Args[1:], ownWindow(), os.Stdout, os.Stderr)
	notePeak()
	os.Exit(code)
}

// programFlag names what has to be in the environment for the scripts to run a program that
// was built before, and not this one: how it is run, parted by spaces, such as "wine64 wakeledger.exe".
const programFlag = "WAKELEDGER_PROGRAM"

// another runs such a program as this one was run, and returns its exit code.
func another(given []string) int {
	c := exec.Command(given[0], append(given[1:], os.Args[1:]...)...)
	c.Stdin, c.Stdout, c.Stderr = os.Stdin, os.Stdout, os.Stderr
	err := c.Run()
	var e *exec.ExitError
	if err != nil && !errors.As(err, &e) {
		fmt.Fprintln(os.Stderr, err)
		return failed
	}
	return c.ProcessState.ExitCode()
}

// ofProgram tells scripts which program they run: one for Windows or another.
func ofProgram(condition string) (bool, error) {
	if condition == "windows-program" {
		return runtime.GOOS == "windows" || strings.HasSuffix(os.Getenv(programFlag), ".exe"), nil
	}
	return false, fmt.Errorf("no such condition: %s", condition)
}

// passOn gives scripts what such a program needs of the environment.
func passOn(e *testscript.Env) {
	for _, name := range []string{programFlag, "WINEPREFIX", "WINEDEBUG", "WINEDLLOVERRIDES", "QEMU_LD_PREFIX"} {
		e.Setenv(name, os.Getenv(name))
	}
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/script",
		UpdateScripts: *update,
		Cmds:          map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "question": keepQuestion},
		Condition:     ofProgram,
		Setup: func(e *testscript.Env) error {
			e.Setenv("HOME", e.WorkDir)
			passOn(e)
			return nil
		},
	})
}

var questionID = regexp.MustCompile(`\bq[0-9a-f]{6}\b`)

// question NAME keeps the id of the first question that the last command printed.
func keepQuestion(ts *testscript.TestScript, neg bool, args []string) {
	id := questionID.FindString(ts.ReadFile("stderr"))
	if neg || len(args) != 1 || id == "" {
		ts.Fatalf("no question was printed, or usage: question NAME")
	}
	ts.Setenv(args[0], id)
}

// exits N COMMAND ARG... runs a command that must exit with N.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND ARG...")
	}
	got := "0"
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		got = exitCode(err)
	}
	if got != args[0] {
		ts.Fatalf("exit code %s, want %s", got, args[0])
	}
}

func exitCode(err error) string {
	var e *exec.ExitError
	if errors.As(err, &e) {
		return strconv.Itoa(e.ExitCode())
	}
	return err.Error()
}
