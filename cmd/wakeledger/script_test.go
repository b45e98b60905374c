package main

import (
	"errors"
	"flag"
	"fmt"
	"math"
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

// ofProgram tells scripts which program they run: one for Windows or another, and one whose
// processor has the last digits of the expected figures.
func ofProgram(condition string) (bool, error) {
	switch condition {
	case "amd64-program":
		return runtime.GOARCH == "amd64" && !strings.HasPrefix(os.Getenv(programFlag), "qemu-"), nil
	case "windows-program":
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
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"alike": alike,
			"exits": exits, "question": keepQuestion},
		Condition: ofProgram,
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

var figured = regexp.MustCompile(`-?\d+\.\d+(?:e[-+]?\d+)?`)

// alike A B holds that two files are the same but for the last digits of their figures.
func alike(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: alike FILE FILE")
	}
	a, b := ts.ReadFile(args[0]), ts.ReadFile(args[1])
	if figured.ReplaceAllString(a, "") != figured.ReplaceAllString(b, "") {
		ts.Fatalf("%s and %s differ in more than figures:\n%s", args[0], args[1], a)
	}
	of := figured.FindAllString(b, -1)
	for i, text := range figured.FindAllString(a, -1) {
		x, _ := strconv.ParseFloat(text, 64)
		y, _ := strconv.ParseFloat(of[i], 64)
		if math.Abs(x-y) > 1e-12*math.Abs(y) {
			ts.Fatalf("%s is %s in %s", text, of[i], args[1])
		}
	}
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
