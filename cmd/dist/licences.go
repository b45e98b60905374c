package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// work is something that is linked in, and where its licences lie.
type work struct {
	name  string
	files []string
}

// licenceName tells a file by which an author grants or asks something.
var licenceName = regexp.MustCompile(`(?i)^(un)?(licen[cs]e|copying|copyright|notice|patents)([-._].*)?$`)

// licences is the text of all licences of what the target's program holds: as found beside
// the code itself. What has none is an error.
func (t target) licences() (string, error) {
	works, err := t.modules()
	if err != nil {
		return "", err
	}
	more, err := t.besideModules()
	if err != nil {
		return "", err
	}
	return written(append(more, works...))
}

// besideModules are what is linked in and is no Go module: Go's own library, the charts in
// the reports, and what the C++ compiler adds.
func (t target) besideModules() ([]work, error) {
	root, err := output(t.environment(), "go", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	charts, err := licenceFiles(filepath.Join("reports", "page", "assets"))
	if err != nil {
		return nil, err
	}
	works := []work{
		{"Go: its library and runtime", []string{filepath.Join(strings.TrimSpace(root), "LICENSE")}},
		{"Apache ECharts, in the reports", charts},
	}
	for _, p := range t.runtimes {
		works = append(works, work{p + " (Debian): the parts that the compiler links in", []string{filepath.Join("/usr/share/doc", p, "copyright")}})
	}
	return works, nil
}

// modules are the Go modules of which the target's program holds a package, by path. The
// folders of the libraries that they link count as theirs.
func (t target) modules() ([]work, error) {
	list, err := output(t.environment(), "go", "list", "-deps", "-f",
		`{{with .Module}}{{if not .Main}}{{.Path}}|{{.Version}}|{{.Dir}}|{{$.Dir}}|{{range $.CgoLDFLAGS}}{{.}} {{end}}{{end}}{{end}}`, "./cmd/wakeledger")
	if err != nil {
		return nil, err
	}
	found := map[string][]string{} // by module and version
	var names []string
	for _, line := range strings.Split(list, "\n") {
		f := strings.SplitN(line, "|", 5)
		if len(f) < 5 {
			continue
		}
		name := f[0] + " " + f[1]
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
		dirs := []string{f[3]}
		for _, flag := range strings.Fields(f[4]) {
			if lib, ok := strings.CutPrefix(flag, "-L"); ok {
				dirs = append(dirs, lib)
			}
		}
		for _, dir := range dirs {
			files, err := upwards(dir, f[2])
			if err != nil {
				return nil, err
			}
			found[name] = append(found[name], files...)
		}
	}
	slices.Sort(names)
	var works []work
	for _, n := range names {
		slices.Sort(found[n])
		works = append(works, work{n, slices.Compact(found[n])})
	}
	return works, nil
}

// upwards are the licences in a folder and in those above it, up to that of the module.
func upwards(dir, module string) (files []string, err error) {
	for ; strings.HasPrefix(dir, module); dir = filepath.Dir(dir) {
		here, err := licenceFiles(dir)
		if err != nil {
			return nil, err
		}
		files = append(files, here...)
	}
	return files, nil
}

func licenceFiles(dir string) (files []string, err error) {
	entries, err := os.ReadDir(dir)
	for _, e := range entries {
		if e.Type().IsRegular() && licenceName.MatchString(e.Name()) && !strings.HasSuffix(e.Name(), ".go") {
			files = append(files, filepath.Join(dir, e.Name()))
		}
	}
	return files, err
}

// written is one text: what is in it, then each licence under the names of its works. A
// licence that several have word for word stands once.
func written(works []work) (string, error) {
	var text strings.Builder
	text.WriteString("This program holds the work of others. Here is what it holds, then each licence under the names that it goes with.\n\n")
	var order []string
	of := map[string][]string{}
	for _, w := range works {
		if len(w.files) == 0 {
			return "", fmt.Errorf("%s: no licence was found beside it: find out on what terms it may be passed on", w.name)
		}
		fmt.Fprintf(&text, "  %s\n", w.name)
		for _, f := range w.files {
			b, err := os.ReadFile(f)
			if err != nil {
				return "", errors.Join(fmt.Errorf("%s: its licence cannot be read", w.name), err)
			}
			terms := strings.TrimSpace(strings.ReplaceAll(string(b), "\r\n", "\n"))
			if of[terms] == nil {
				order = append(order, terms)
			}
			of[terms] = append(of[terms], w.name+", "+filepath.Base(f))
		}
	}
	for _, terms := range order {
		fmt.Fprintf(&text, "\n%s\n%s\n%s\n\n%s\n", strings.Repeat("=", 78), strings.Join(of[terms], "\n"), strings.Repeat("-", 78), terms)
	}
	return text.String(), nil
}
