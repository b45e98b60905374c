package main

import (
	"bytes"
	_ "embed"
	"os"
	"path/filepath"
	"strings"
	"text/template"

	"wakeledger/pipeline/logbook"
)

//go:embed READ-ME.txt.tmpl
var readMe string

// demoLog is the log to try the program with.
const demoLog = "testdata/demo/logs/2026-early.xlsx"

// contents are the files of a target's archive, the program first.
func contents(t target, v version) ([]packed, error) {
	program, err := t.build(v)
	if err != nil {
		return nil, err
	}
	licences, err := t.licences()
	if err != nil {
		return nil, err
	}
	guide, err := t.guide(v)
	if err != nil {
		return nil, err
	}
	demo, err := os.ReadFile(filepath.FromSlash(demoLog))
	if err != nil {
		return nil, err
	}
	files := []packed{{t.program(), program, true},
		{"LICENCES.txt", t.text(licences), false}, {"READ-ME.txt", t.text(guide), false},
		{"demo-log.xlsx", demo, false}}
	for _, b := range []struct{ name, units string }{{"empty-logbook.xlsx", "metric"},
		{"empty-logbook-us.xlsx", "us"}} {
		var book bytes.Buffer
		if err := logbook.Blank(&book, b.units); err != nil {
			return nil, err
		}
		files = append(files, packed{b.name, book.Bytes(), false})
	}
	return files, nil
}

func (t target) guide(v version) (string, error) {
	tmpl, err := template.New("guide").Parse(readMe)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	err = tmpl.Execute(&b, map[string]any{
		"Version": v.String(), "Windows": t.windows(), "Archive": t.archive(), "Sums": sumsFile,
	})
	return b.String(), err
}

// text has the line ends of the target's system.
func (t target) text(s string) []byte {
	s = strings.ReplaceAll(s, "\r\n", "\n")
	if t.windows() {
		s = strings.ReplaceAll(s, "\n", "\r\n")
	}
	return []byte(s)
}
