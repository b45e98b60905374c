package main

import (
	"context"
	"crypto/sha256"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"wakeledger/pipeline"
)

// What a refusal may cost: most memory of the run, and its time on a processor.
const (
	mostMiB  = 300
	mostTime = 10 * time.Second
)

// peakFile names, in the environment, the file to which a run under test writes the most
// memory that it held.
const peakFile = "WAKELEDGER_TEST_PEAK"

// notePeak writes the most memory that this process held, in KiB (proc(5), VmHWM).
func notePeak() {
	to := os.Getenv(peakFile)
	b, err := os.ReadFile("/proc/self/status")
	if to == "" || err != nil {
		return
	}
	if m := regexp.MustCompile(`VmHWM:\s+([0-9]+) kB`).FindSubmatch(b); m != nil {
		_ = os.WriteFile(to, m[1], 0o600)
	}
}

// The adversary's suite: each script is something that somebody might send, or a slip of the
// pen that would cost a log, with what is expected of the program.
func TestAdversary(t *testing.T) {
	files, err := filepath.Abs("../../testdata/adversary/files")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "../../testdata/adversary",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "costs": costs, "full": full, "lines": lines, "wide": wide, "pipe": pipe, "spoil": spoil,
			"same": same, "note": noteSum, "holds": holdsNot, "many": many, "link": link, "part": partOf,
		},
		Setup: func(e *testscript.Env) error {
			e.Setenv("HOME", e.WorkDir)
			e.Setenv("FILES", files)
			e.Setenv("BAD", "caf\xe9.csv")
			return nil
		},
	})
}

// costs CODE COMMAND ARG... runs the program within its bounds; it must exit with CODE. What
// it prints is in the files out and err.
func costs(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: costs CODE COMMAND ARG...")
	}
	peak := ts.MkAbs("peak")
	c := exec.Command(args[1], expanded(ts, args[2:])...)
	c.Dir = ts.MkAbs(".")
	c.Env = append(os.Environ(), peakFile+"="+peak, "HOME="+ts.Getenv("HOME"), "TMPDIR="+ts.Getenv("TMPDIR"))
	var out, notes strings.Builder
	c.Stdout, c.Stderr = &out, &notes
	code := "0"
	if err := c.Run(); err != nil {
		code = exitCode(err)
	}
	ts.Check(os.WriteFile(ts.MkAbs("out"), []byte(out.String()), 0o600))
	ts.Check(os.WriteFile(ts.MkAbs("err"), []byte(notes.String()), 0o600))
	if code != args[0] {
		ts.Fatalf("exit code %s, want %s\n%s%s", code, args[0], out.String(), notes.String())
	}
	if took := c.ProcessState.UserTime() + c.ProcessState.SystemTime(); took > mostTime {
		ts.Fatalf("%v on a processor, more than %v", took, mostTime)
	}
	b, err := os.ReadFile(peak)
	if err != nil {
		return // a system that does not tell
	}
	kib, err := strconv.Atoi(string(b))
	ts.Check(err)
	ts.Logf("%d MiB, %v", kib>>10, c.ProcessState.UserTime()+c.ProcessState.SystemTime())
	if kib>>10 > mostMiB {
		ts.Fatalf("%d MiB, more than %d", kib>>10, mostMiB)
	}
	if m := regexp.MustCompile(`0x[0-9a-f]{4}|goroutine|duckdb error|[A-Z][a-z]+ Error:`).FindString(
		notes.String()); m != "" {
		ts.Fatalf("%q reached the captain:\n%s", m, notes.String())
	}
}

// expanded has the files of a folder in the place of @FOLDER.
func expanded(ts *testscript.TestScript, args []string) []string {
	var out []string
	for _, a := range args {
		dir, ok := strings.CutPrefix(a, "@")
		if !ok {
			out = append(out, a)
			continue
		}
		all, err := filepath.Glob(filepath.Join(ts.MkAbs(dir), "*"))
		ts.Check(err)
		out = append(out, all...)
	}
	return out
}

// full CODE COMMAND ARG... runs a command whose standard output is a disk that is full.
func full(ts *testscript.TestScript, _ bool, args []string) {
	f, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		return // a system without one
	}
	defer f.Close()
	c := exec.Command(args[1], args[2:]...)
	c.Dir, c.Stdout = ts.MkAbs("."), f
	if err := c.Run(); err == nil || exitCode(err) != args[0] {
		ts.Fatalf("%v, want exit code %s", err, args[0])
	}
}

// lines FILE N TEXT appends a line N times.
func lines(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	text := ""
	if len(args) > 2 {
		text = args[2]
	}
	f, err := os.OpenFile(ts.MkAbs(args[0]), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	ts.Check(err)
	defer f.Close()
	for part := min(n, 100_000); n > 0; n -= part {
		_, err := f.WriteString(strings.Repeat(text+"\n", min(part, n)))
		ts.Check(err)
	}
}

// wide FILE COLUMNS ROWS writes a sheet of so many headings.
func wide(ts *testscript.TestScript, _ bool, args []string) {
	columns, err := strconv.Atoi(args[1])
	ts.Check(err)
	rows, err := strconv.Atoi(args[2])
	ts.Check(err)
	var b strings.Builder
	for r := range rows + 1 {
		for c := range columns {
			if r == 0 {
				fmt.Fprintf(&b, "heading %d,", c)
			} else {
				fmt.Fprintf(&b, "%d,", c)
			}
		}
		b.WriteByte('\n')
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(b.String()), 0o600))
}

// many DIR N writes N small logs of a day each.
func many(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(os.MkdirAll(ts.MkAbs(args[0]), 0o700))
	day := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	for i := range n {
		text := fmt.Sprintf("Boat,Date,Start,End,Speed (kn),Lines out,Strikes\nTansy Reach,%s,06:00,07:45,8,2,1\n",
			day.AddDate(0, 0, i).Format("2006-01-02"))
		ts.Check(os.WriteFile(filepath.Join(ts.MkAbs(args[0]), fmt.Sprintf("day-%05d.csv", i)), []byte(text), 0o600))
	}
}

// link FILE NAME gives a file a second name.
func link(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(os.Link(ts.MkAbs(args[0]), ts.MkAbs(args[1])))
}

// part FILE TO N copies the first bytes of a file.
func partOf(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[2])
	ts.Check(err)
	b, err := os.ReadFile(ts.MkAbs(args[0]))
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), b[:min(n, len(b)-1)], 0o600))
}

// pipe FILE makes a named pipe, which nobody writes to.
func pipe(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(syscall.Mkfifo(ts.MkAbs(args[0]), 0o600))
}

// spoil FILE STATEMENT... runs statements on a season file, as somebody might who sends it.
func spoil(ts *testscript.TestScript, _ bool, args []string) {
	s, err := pipeline.Open(context.Background(), ts.MkAbs(args[0]), pipeline.Config{})
	ts.Check(err)
	for _, q := range args[1:] {
		rows, err := s.DB.Query(context.Background(), q)
		ts.Check(err)
		for rows.Next() {
		}
		ts.Check(rows.Close())
	}
	ts.Check(s.DB.Close())
}

func sumOf(ts *testscript.TestScript, file string) string {
	b, err := os.ReadFile(ts.MkAbs(file))
	ts.Check(err)
	return fmt.Sprintf("%x", sha256.Sum256(b))
}

// note FILE... remembers what files hold, for same FILE...
func noteSum(ts *testscript.TestScript, _ bool, args []string) {
	for _, f := range args {
		ts.Setenv("sum_"+filepath.Base(f), sumOf(ts, f))
	}
}

// same FILE... fails where a file holds something else than at note.
func same(ts *testscript.TestScript, neg bool, args []string) {
	for _, f := range args {
		if was := ts.Getenv("sum_" + filepath.Base(f)); (was == sumOf(ts, f)) == neg {
			ts.Fatalf("%s: changed is %v", f, !neg)
		}
	}
}

// ! holds FILE: no character in the file moves a terminal's cursor, or turns its writing.
func holdsNot(ts *testscript.TestScript, neg bool, args []string) {
	for _, r := range ts.ReadFile(args[0]) {
		if neg && isControl(r) {
			ts.Fatalf("%s holds U+%04X", args[0], r)
		}
	}
}
