// Command dist builds the program for the captain's own laptop: an archive for each kind of
// computer, with licences and sums. 'dist try' runs what was built, on Wine and under QEMU.
//
// What it writes depends on the commit, the Go version and the C compilers alone: built
// twice, the archives are the same byte for byte.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "dist:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	flags := flag.NewFlagSet("dist", flag.ContinueOnError)
	out := flags.String("out", filepath.Join("bin", "dist"), "the `folder` for the archives")
	scripts := flags.String("scripts", "", "try: run only the scripts whose names fit this `pattern`")
	parts := flags.String("parts", strings.Join(trials, ","), "try: the `parts` to try")
	try := len(args) > 0 && args[0] == "try"
	if try {
		args = args[1:]
	}
	if err := flags.Parse(args); err != nil {
		return err
	}
	chosen, err := choose(flags.Args())
	if err != nil {
		return err
	}
	if try {
		return tryAll(chosen, *out, strings.Split(*parts, ","), *scripts)
	}
	return makeAll(chosen, *out)
}

// makeAll builds and packs, and writes the sums of all archives of the folder.
func makeAll(chosen []target, out string) error {
	if err := present(chosen, compilers); err != nil {
		return err
	}
	v, err := versionHere()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	for _, t := range chosen {
		files, err := contents(t, v)
		if err != nil {
			return fmt.Errorf("%s: %w", t.name(), err)
		}
		name := filepath.Join(out, t.archive())
		if err := writeArchive(name, t.folder(v), files, v.at); err != nil {
			return err
		}
		st, err := os.Stat(name)
		if err != nil {
			return err
		}
		program := int64(len(files[0].content))
		fmt.Printf("%s: %.1f MB, the program in it %.1f MB\n", name, megabytes(st.Size()), megabytes(program))
	}
	return writeSums(out)
}

func megabytes(n int64) float64 { return float64(n) / 1e6 }
