package main

import (
	"embed"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
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
	works, libraries, err := t.modules()
	if err != nil {
		return "", err
	}
	within, err := insideLibraries(libraries)
	if err != nil {
		return "", err
	}
	more, err := t.besideModules()
	if err != nil {
		return "", err
	}
	text, err := written(append(more, works...))
	return text + within, err
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
		copyright := filepath.Join("/usr/share/doc", p, "copyright")
		works = append(works, work{p + " (Debian): the parts that the compiler links in", []string{copyright}})
	}
	return works, nil
}

// modules are the Go modules of which the target's program holds a package, by path, and the
// libraries that they link. The folders of these count as the module's.
func (t target) modules() (works []work, libraries []string, err error) {
	form := `{{with .Module}}{{if not .Main}}{{.Path}}|{{.Version}}|{{.Dir}}|{{$.Dir}}|` +
		`{{range $.CgoLDFLAGS}}{{.}} {{end}}{{end}}{{end}}`
	list, err := output(t.environment(), "go", "list", "-deps", "-f", form, "./cmd/wakeledger")
	if err != nil {
		return nil, nil, err
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
				archives, err := filepath.Glob(filepath.Join(lib, "*.a"))
				if err != nil {
					return nil, nil, err
				}
				libraries = append(libraries, archives...)
			}
		}
		for _, dir := range dirs {
			files, err := upwards(dir, f[2])
			if err != nil {
				return nil, nil, err
			}
			found[name] = append(found[name], files...)
		}
	}
	slices.Sort(names)
	for _, n := range names {
		slices.Sort(found[n])
		works = append(works, work{n, slices.Compact(found[n])})
	}
	return works, libraries, nil
}

// DuckDB has the code of others in namespaces of its own, which the names of functions
// begin with (Itanium C++ ABI, mangling of nested names).
var (
	namespace = regexp.MustCompile(`_ZNK?[0-9]+duckdb_[a-z0-9_]+`)
	ownParts  = []string{"parquet", "adbc"} // DuckDB's own
)

// inside has the licences of those whose code the database's library holds, of which nothing
// lies beside it: a file by namespace, and some of what has none.
//
//go:embed inside/*.txt
var inside embed.FS

// insideLibraries is the text of the licences of what the libraries hold. What they name and
// inside does not is an error.
func insideLibraries(libraries []string) (string, error) {
	names, err := namesInside(libraries)
	if err != nil {
		return "", err
	}
	var unknown []string
	for _, n := range names {
		if _, err := inside.Open("inside/" + n + ".txt"); err != nil {
			unknown = append(unknown, n)
		}
	}
	if unknown != nil {
		return "", fmt.Errorf("the database's library holds %s, of which no licence lies in cmd/dist/inside",
			strings.Join(unknown, ", "))
	}
	files, err := inside.ReadDir("inside")
	if err != nil {
		return "", err
	}
	rule := strings.Repeat("=", 78)
	var text strings.Builder
	fmt.Fprintf(&text, "\n%s\nThe database's library holds the work of others too. Their licences follow, by the\n"+
		"name that it gives them. The Apache License stands above in full.\n", rule)
	for _, f := range files {
		b, err := inside.ReadFile("inside/" + f.Name())
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&text, "\n%s\n%s\n%s\n\n%s", rule, strings.TrimSuffix(f.Name(), ".txt"), strings.Repeat("-", 78), b)
	}
	return text.String(), nil
}

// namesInside are those of the namespaces in the libraries, sorted.
func namesInside(libraries []string) (names []string, err error) {
	for _, l := range libraries {
		b, err := os.ReadFile(l)
		if err != nil {
			return nil, err
		}
		for _, m := range namespace.FindAll(b, -1) {
			digits := strings.TrimLeft(string(m), "_ZNK")
			letters := strings.TrimLeft(digits, "0123456789")
			n, err := strconv.Atoi(strings.TrimSuffix(digits, letters))
			if err != nil || n > len(letters) {
				continue // no name of such a length
			}
			name := strings.TrimPrefix(letters[:n], "duckdb_")
			if !slices.Contains(names, name) && !slices.Contains(ownParts, name) {
				names = append(names, name)
			}
		}
	}
	if names == nil {
		return nil, errors.New("nothing is known of what the database's library holds")
	}
	slices.Sort(names)
	return names, nil
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
	text.WriteString("This program holds the work of others. Here is what it holds,\n" +
		"then each licence under the names that it goes with.\n\n")
	var order []string
	of := map[string][]string{}
	for _, w := range works {
		if len(w.files) == 0 {
			return "", fmt.Errorf("%s: no licence was found beside it: find out on what terms it may be passed on",
				w.name)
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
		fmt.Fprintf(&text, "\n%s\n%s\n%s\n\n%s\n", strings.Repeat("=", 78), strings.Join(of[terms], "\n"),
			strings.Repeat("-", 78), terms)
	}
	return text.String(), nil
}
