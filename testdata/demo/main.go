package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

func main() { os.Exit(run(os.Args[1:], os.Stderr)) }

// run writes the demo season and returns the exit code.
func run(args []string, stderr io.Writer) int {
	flags := flag.NewFlagSet("demo", flag.ContinueOnError)
	flags.SetOutput(stderr)
	out := flags.String("out", filepath.FromSlash("testdata/demo/logs"),
		"folder for the logs; the truth goes beside it")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if err := generate(*out); err != nil {
		fmt.Fprintln(stderr, "demo:", err)
		return 1
	}
	return 0
}

// generate simulates, writes the logs to dir and the truth to its parent.
func generate(dir string) error {
	d := newDice(seed)
	trips := simulate(d)
	finish(trips)
	if err := addMistakes(d, trips); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	aside, err := writeLogs(dir, trips)
	if err != nil {
		return err
	}
	parent := filepath.Dir(filepath.Clean(dir))
	if err := writeTracks(filepath.Join(parent, "tracks"), trips); err != nil {
		return fmt.Errorf("writing the tracks: %w", err)
	}
	if err := writeFishTruth(parent, trips); err != nil {
		return fmt.Errorf("writing the fish's truth: %w", err)
	}
	return writeTruth(filepath.Join(parent, "truth.json"), newTruth(trips, aside))
}

// writeLogs writes every log and returns the mistakes in each.
func writeLogs(dir string, trips []*trip) (map[string][]setAside, error) {
	writers := []struct {
		log   string
		write func(dir string, trips []*trip) ([]setAside, error)
	}{{log2025, write2025}, {logEarly, writeEarly}, {logLate, writeLate}}
	aside := map[string][]setAside{}
	for _, w := range writers {
		found, err := w.write(dir, trips)
		if err != nil {
			return nil, fmt.Errorf("writing the log %s: %w", w.log, err)
		}
		aside[w.log] = found
	}
	return aside, nil
}

// collect gathers the tables' mistakes in their order.
func collect(tables []*table) []setAside {
	var all []setAside
	for _, t := range tables {
		all = append(all, t.mistakes...)
	}
	return all
}
