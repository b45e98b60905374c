package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// oftenAsked are the questions that a season file is asked after it changed computers.
var oftenAsked = [][]string{{"effort"}, {"strike-rate"}, {"fish"}, {"trips"}, {"set-aside"}}

// byFactor are asked besides the questions as they are: what rests on the sun, the moon, the
// clock and names with accents.
var byFactor = [][]string{{"strike-rate", "--by", "lure"}, {"strike-rate", "--by", "light"},
	{"strike-rate", "--by", "moon"}, {"strike-rate", "--by", "hour"}, {"effort", "--by", "sea-temp"}}

// allQuestions are those that the program completes 'ask' with, and some by a factor.
func (t trial) allQuestions() (all [][]string, err error) {
	out, err := t.run("__complete", "ask", "")
	if err != nil {
		return nil, err
	}
	for _, line := range strings.Split(string(out), "\n") {
		name, _, described := strings.Cut(line, "\t")
		if described && !strings.HasPrefix(name, "-") {
			all = append(all, []string{name})
		}
	}
	if len(all) < 20 {
		return nil, fmt.Errorf("the program names only %d questions", len(all))
	}
	return append(all, byFactor...), nil
}

// answers are those of a season file, as CSV.
func (t trial) answers(db string, questions [][]string) (map[string][]byte, error) {
	all := map[string][]byte{}
	for _, q := range questions {
		out, err := t.run(append([]string{"--db", db, "ask", "--format", "csv"}, q...)...)
		if err != nil {
			return nil, err
		}
		all[strings.Join(q, " ")] = out
	}
	return all, nil
}

// makeSeason makes the demo season and its report in the trial's folder.
func (t trial) makeSeason() error {
	demo, err := filepath.Abs("testdata/demo")
	if err != nil {
		return err
	}
	files, err := filepath.Glob(filepath.Join(demo, "logs", "*"))
	if err != nil {
		return err
	}
	files = append(files, filepath.Join(demo, "tracks", "2026-late-tracks.zip"))
	season := []string{"--db", "season.duckdb", "season", "--ocean", "pacific", "--units", "us"}
	if _, err := t.run(append(season, files...)...); err != nil {
		return err
	}
	page, err := os.ReadFile(filepath.Join(t.folder, "season.html"))
	if err != nil || len(page) < 100_000 || !bytes.Contains(page, []byte("</html>")) {
		return fmt.Errorf("no report in %s, %w", t.folder, err)
	}
	return nil
}

// trySeasons has both programs make the demo season and answer all questions from their own
// file, and some from the other's, which each then goes on with.
func trySeasons(t target, native, foreign trial) error {
	if err := errors.Join(os.MkdirAll(native.folder, 0o755), os.MkdirAll(foreign.folder, 0o755)); err != nil {
		return err
	}
	questions, err := native.allQuestions()
	if err != nil {
		return err
	}
	var own []map[string][]byte
	for _, x := range []trial{native, foreign} {
		if err := x.makeSeason(); err != nil {
			return err
		}
		t.say("the demo season is made with %s", filepath.Base(x.command[0]))
		a, err := x.answers("season.duckdb", questions)
		if err != nil {
			return err
		}
		own = append(own, a)
	}
	off, err := sameAnswers(own[0], own[1])
	if err != nil {
		return fmt.Errorf("the demo season: %w", err)
	}
	t.say("the demo season: of %d answers %d are the same byte for byte, %d but for the last digits of figures",
		len(questions), len(questions)-off, off)
	return tryChange(t, []trial{native, foreign}, own[0])
}

// moreLog is a log that each program loads into the other's season file.
const moreLog = "Boat,Date,Start,End,Speed (kn),Lines,Strikes\nTansy Reach,2026-12-05,07:00,09:30,12,4,2\n"

// tryChange has each program answer from the other's season file and go on with it, and
// the other one answer again.
func tryChange(t target, both []trial, before map[string][]byte) error {
	var after []map[string][]byte
	for i, x := range both {
		other := both[1-i]
		db, more := filepath.Join(other.folder, "season.duckdb"), filepath.Join(other.folder, "more of the season.csv")
		a, err := x.answers(db, oftenAsked)
		if err == nil {
			_, err = sameAnswers(a, before)
		}
		if err != nil {
			return fmt.Errorf("a season file of the other computer: %w", err)
		}
		if err := os.WriteFile(more, []byte(moreLog), 0o644); err != nil {
			return err
		}
		if _, err := x.run("--db", db, "load", more); err != nil {
			return err
		}
		if a, err = other.answers("season.duckdb", oftenAsked); err != nil {
			return err
		}
		after = append(after, a)
	}
	if _, err := sameAnswers(after[0], after[1]); err != nil {
		return fmt.Errorf("after the other computer loaded a log: %w", err)
	}
	if bytes.Equal(after[0]["effort"], before["effort"]) {
		return errors.New("the log that was loaded last changes nothing: the trial could not tell")
	}
	t.say("seasons that changed computers, both ways, and went on there: %d answers the same", 3*len(oftenAsked))
	return nil
}
