package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// target is a kind of computer that the program is built for.
type target struct {
	system, processor string
	c, cxx            string // the compilers
	debian            string // the package that they come with
	runner            []string
	runnerDebian      string   // the packages that the runner comes with; "": this computer runs it
	runtimes          []string // packages of Debian of whose code the compiler links some in
}

// The database's driver has libraries for macOS too, but they are linked with Apple's SDK,
// which may be used on a Mac alone: see READ-ME.
var targets = []target{
	{system: "linux", processor: "amd64", c: "gcc", cxx: "g++", debian: "gcc g++"},
	{system: "linux", processor: "arm64", c: "aarch64-linux-gnu-gcc", cxx: "aarch64-linux-gnu-g++",
		debian: "g++-aarch64-linux-gnu",
		runner: []string{"qemu-aarch64", "-L", "/usr/aarch64-linux-gnu"}, runnerDebian: "qemu-user"},
	{system: "windows", processor: "amd64", c: "x86_64-w64-mingw32-gcc-posix", cxx: "x86_64-w64-mingw32-g++-posix",
		debian: "g++-mingw-w64-x86-64-posix", runner: []string{"wine"}, runnerDebian: "wine wine64",
		runtimes: []string{"g++-mingw-w64-x86-64-posix", "mingw-w64-x86-64-dev"}},
}

func (t target) name() string  { return t.system + "-" + t.processor }
func (t target) windows() bool { return t.system == "windows" }
func (t target) archive() string {
	return "wakeledger-" + t.name() + map[bool]string{true: ".zip", false: ".tar.gz"}[t.windows()]
}

// folder is the one that an archive unpacks to.
func (t target) folder(v version) string { return "wakeledger-" + v.day() + "-" + t.name() }

func (t target) program() string {
	if t.windows() {
		return "wakeledger.exe"
	}
	return "wakeledger"
}

// choose are the targets with these names; all where none is given.
func choose(names []string) ([]target, error) {
	if len(names) == 0 {
		return targets, nil
	}
	var chosen []target
	var known []string
	for _, t := range targets {
		known = append(known, t.name())
		if slices.Contains(names, t.name()) {
			chosen = append(chosen, t)
		}
	}
	for _, n := range names {
		if !slices.Contains(known, n) {
			return nil, fmt.Errorf("there is no target %q: there are %s", n, strings.Join(known, ", "))
		}
	}
	return chosen, nil
}

func compilers(t target) (programs []string, debian string) { return []string{t.c, t.cxx}, t.debian }

func runners(t target) (programs []string, debian string) {
	if t.runner == nil {
		return nil, ""
	}
	return t.runner[:1], t.runnerDebian
}

// present fails with what to install where a program that is needed is missing.
func present(chosen []target, needs func(target) ([]string, string)) error {
	var missing, packages []string
	for _, t := range chosen {
		programs, debian := needs(t)
		for _, p := range programs {
			if _, err := exec.LookPath(p); err != nil {
				missing = append(missing, p)
				packages = append(packages, strings.Fields(debian)...)
			}
		}
	}
	if missing == nil {
		return nil
	}
	slices.Sort(packages)
	return fmt.Errorf("%s missing: apt-get install %s", strings.Join(missing, ", "),
		strings.Join(slices.Compact(packages), " "))
}

// version is the commit that is built.
type version struct {
	commit  string
	at      time.Time // of the commit
	changed bool      // files differ from it
}

func (v version) day() string { return v.at.UTC().Format("2006-01-02") }

func (v version) String() string {
	s := v.day() + ", commit " + v.commit[:12]
	if v.changed {
		s += " with changes"
	}
	return s
}

func versionHere() (v version, err error) {
	head, err := output(nil, "git", "log", "-1", "--format=%H %cI")
	if err != nil {
		return v, err
	}
	commit, at, _ := strings.Cut(strings.TrimSpace(head), " ")
	if v.at, err = time.Parse(time.RFC3339, at); err != nil {
		return v, err
	}
	v.commit = commit
	status, err := output(nil, "git", "status", "--porcelain", "--untracked-files=no")
	v.changed = strings.TrimSpace(status) != ""
	return v, err
}

// environment is what the go command needs to build for the target. Settings of the user do
// not count.
func (t target) environment() []string {
	return []string{"GOOS=" + t.system, "GOARCH=" + t.processor, "GOAMD64=", "GOARM64=",
		"CGO_ENABLED=1", "CC=" + t.c, "CXX=" + t.cxx,
		"GOFLAGS=-trimpath -buildvcs=false", "CGO_CFLAGS=", "CGO_CPPFLAGS=", "CGO_CXXFLAGS=", "CGO_LDFLAGS="}
}

// build is the program for a target, without what a debugger would need.
func (t target) build(v version) ([]byte, error) {
	dir, err := os.MkdirTemp("", "wakeledger-dist-*")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	to := filepath.Join(dir, t.program())
	flags := "-s -w -X 'main.release=" + v.String() + "'"
	if _, err := output(t.environment(), "go", "build", "-ldflags", flags, "-o", to, "./cmd/wakeledger"); err != nil {
		return nil, err
	}
	return os.ReadFile(to)
}

// output runs a program and returns what it prints; its messages are in the error.
func output(environment []string, name string, args ...string) (string, error) {
	c := exec.Command(name, args...)
	c.Env = append(os.Environ(), environment...)
	var messages bytes.Buffer
	c.Stderr = &messages
	out, err := c.Output()
	if err != nil {
		return "", errors.Join(fmt.Errorf("%s %s: %w", name, strings.Join(args, " "), err),
			errors.New(messages.String()))
	}
	return string(out), nil
}
