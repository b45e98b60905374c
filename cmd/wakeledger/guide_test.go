package main

import (
	"go/scanner"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"unicode/utf8"
)

// TestGuideHolds has every file, folder, test and command that DEVELOPERS.md names there, and every
// package of ours in its list.
func TestGuideHolds(t *testing.T) {
	const root = "../.."
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	guide, tree := string(text), treeOf(t, root)
	makefile, err := os.ReadFile(filepath.Join(root, "Makefile"))
	if err != nil {
		t.Fatal(err)
	}
	named := 0
	for _, m := range regexp.MustCompile("`([^`\n]+)`").FindAllStringSubmatch(guide, -1) {
		switch word := strings.TrimPrefix(m[1], "../"); {
		case strings.HasPrefix(word, "make ") && !strings.ContainsAny(word[5:], " -."):
			named++
			if !strings.Contains(string(makefile), "\n"+word[5:]+":") {
				t.Errorf("%s: there is no such target", word)
			}
		case regexp.MustCompile(`^(Test|Fuzz|Benchmark)\w+$`).MatchString(word):
			named++
			if !tree.hasText("func " + word + "(") {
				t.Errorf("%s: there is no such test", word)
			}
		case regexp.MustCompile(`^[\w./*-]+\.(go|sql|csv|txt|md|js|txtar)$|^[\w.*-]+(/[\w.*-]+)*/$`).MatchString(word):
			named++
			if !tree.has(word) {
				t.Errorf("%s: there is no such file or folder", word)
			}
		}
	}
	if named < 60 {
		t.Errorf("%d names were looked at: the guide names more", named)
	}
	_, list, _ := strings.Cut(guide, "```\n")
	list, _, _ = strings.Cut(list, "```")
	for dir := range tree.packages {
		if strings.HasPrefix(dir, "testdata/") {
			continue
		}
		if !regexp.MustCompile(`(^|[ /\n])` + regexp.QuoteMeta(path.Base(dir)) + `/`).MatchString(list) {
			t.Errorf("package %s is not in the list", dir)
		}
	}
}

// sourceTree is what the project holds.
type sourceTree struct {
	names    []string // files and folders, these with a slash at the end
	packages map[string]bool
	tests    []string // texts of the files of tests
}

func treeOf(t *testing.T, root string) sourceTree {
	t.Helper()
	s := sourceTree{packages: map[string]bool{}}
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, err := filepath.Rel(root, file)
		if err != nil {
			return err
		}
		name = filepath.ToSlash(name)
		if d.IsDir() {
			if d.Name() == ".git" || name == "bin" {
				return fs.SkipDir
			}
			s.names = append(s.names, name+"/")
			return nil
		}
		s.names = append(s.names, name)
		if strings.HasSuffix(name, ".go") {
			s.packages[path.Dir(name)] = true
		}
		if strings.HasSuffix(name, "_test.go") {
			b, err := os.ReadFile(file)
			s.tests = append(s.tests, string(b))
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// has reports whether a path of the project, or the end of one, is of a pattern.
func (s sourceTree) has(pattern string) bool {
	for _, name := range s.names {
		parts := strings.Split(name, "/")
		for i := range parts {
			if ok, _ := path.Match(pattern, strings.Join(parts[i:], "/")); ok {
				return true
			}
		}
	}
	return false
}

func (s sourceTree) hasText(text string) bool {
	for _, file := range s.tests {
		if strings.Contains(file, text) {
			return true
		}
	}
	return false
}

// TestLinesFit has lines of code at most 120 columns wide, a tab counted as four; what stands in raw
// strings, such as expressions, statements and logs, is text.
func TestLinesFit(t *testing.T) {
	const root, most = "../..", 120
	for _, name := range treeOf(t, root).names {
		if !strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, ".sql") {
			continue
		}
		b, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			t.Fatal(err)
		}
		raw := map[int]bool{}
		if strings.HasSuffix(name, ".go") {
			raw = rawLines(t, b)
		}
		for i, line := range strings.Split(string(b), "\n") {
			if n := utf8.RuneCountInString(line) + 3*strings.Count(line, "\t"); n > most && !raw[i+1] {
				t.Errorf("%s:%d: %d columns", name, i+1, n)
			}
		}
	}
}

// rawLines are the lines of a file on which raw strings stand.
func rawLines(t *testing.T, src []byte) map[int]bool {
	t.Helper()
	var s scanner.Scanner
	set := token.NewFileSet()
	file := set.AddFile("", set.Base(), len(src))
	s.Init(file, src, nil, 0)
	lines := map[int]bool{}
	for {
		pos, tok, lit := s.Scan()
		if tok == token.EOF {
			return lines
		}
		if tok == token.STRING && lit[0] == '`' {
			for n := range strings.Count(lit, "\n") + 1 {
				lines[file.Line(pos)+n] = true
			}
		}
	}
}
