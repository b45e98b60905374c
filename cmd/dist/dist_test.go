package main

import (
	"archive/zip"
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestMain has the tests run where the program does: at the top of the project.
func TestMain(m *testing.M) {
	if err := os.Chdir(filepath.Join("..", "..")); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// The same files give the same bytes, whenever they are packed, and unpack to what they were.
func TestArchives(t *testing.T) {
	at := time.Date(2026, 11, 28, 18, 36, 0, 0, time.FixedZone("", -9*3600))
	files := []packed{{"wakeledger.exe", bytes.Repeat([]byte("program"), 1000), true},
		{"READ-ME.txt", []byte("read\r\n"), false}}
	for _, name := range []string{"a.zip", "a.tar.gz"} {
		var both [2][]byte
		path := filepath.Join(t.TempDir(), name)
		for i := range both {
			if err := writeArchive(path, "wakeledger-2026", files, at.In(time.FixedZone("", i*3600))); err != nil {
				t.Fatal(err)
			}
			var err error
			if both[i], err = os.ReadFile(path); err != nil {
				t.Fatal(err)
			}
		}
		if !bytes.Equal(both[0], both[1]) {
			t.Errorf("%s: packed twice, other bytes", name)
		}
	}
	dir := t.TempDir()
	for _, of := range []target{targets[0], targets[2]} { // as dist packs and try unpacks
		if err := writeArchive(filepath.Join(dir, of.archive()), "wakeledger-2026", files, at); err != nil {
			t.Fatal(err)
		}
		program, err := unpack(of, dir, filepath.Join(dir, of.name()))
		if err != nil {
			t.Fatal(err)
		}
		st, err := os.Stat(program)
		b, readErr := os.ReadFile(program)
		if err != nil || readErr != nil || !bytes.Equal(b, files[0].content) || st.Mode().Perm() != 0o755 {
			t.Errorf("%s: the program is another one, %v, %v", of.name(), err, readErr)
		}
	}
	z, err := zip.OpenReader(filepath.Join(dir, targets[2].archive()))
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	if f := z.File[0]; f.Name != "wakeledger-2026/wakeledger.exe" || f.Mode() != 0o755 || !f.Modified.Equal(at) {
		t.Errorf("%s, %v, %v", f.Name, f.Mode(), f.Modified)
	}
}

// Every module that is linked in has its licence in the text; one that has none ends the build.
func TestLicences(t *testing.T) {
	for _, of := range targets {
		works, libraries, err := of.modules()
		if err != nil {
			t.Fatal(err)
		}
		text, err := written(works)
		if err != nil {
			t.Fatalf("%s: %v", of.name(), err)
		}
		if len(libraries) != 1 {
			t.Errorf("%s: the libraries are %v", of.name(), libraries)
		}
		for _, want := range []string{"github.com/marcboeker/go-duckdb", "github.com/apache/arrow-go/v18",
			"Stichting DuckDB Foundation", "Apache License"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: nothing of %s", of.name(), want)
			}
		}
	}
	if _, err := written([]work{{"example.org/module", nil}}); err == nil ||
		!strings.Contains(err.Error(), "example.org/module") {
		t.Errorf("a module without a licence: %v", err)
	}
}

// What each target's library holds of others has its licence in the text; what has none ends
// the build.
func TestInsideLibraries(t *testing.T) {
	for _, of := range targets {
		_, libraries, err := of.modules()
		if err != nil {
			t.Fatal(err)
		}
		names, err := namesInside(libraries)
		if err != nil || !slices.Contains(names, "re2") || !slices.Contains(names, "apache") || len(names) < 15 {
			t.Errorf("%s: the library holds %v, %v", of.name(), names, err)
		}
		text, err := insideLibraries(libraries)
		if err != nil {
			t.Errorf("%s: %v", of.name(), err)
		}
		for _, want := range []string{"Victor Zverovich", "Rich Geldreich", "Jiahao Chen",
			"Jason Evans", "Apache License"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: nothing of %s", of.name(), want)
			}
		}
	}
	other := filepath.Join(t.TempDir(), "libother.a")
	if err := os.WriteFile(other, []byte("_ZN12duckdb_other4readEv"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := insideLibraries([]string{other}); err == nil ||
		!strings.Contains(err.Error(), "holds other, of which no licence") {
		t.Errorf("a library with what is not known: %v", err)
	}
}

func TestLicenceNames(t *testing.T) {
	for name, want := range map[string]bool{"LICENSE": true, "LICENSE.txt": true, "LICENCE-zstd": true,
		"COPYING.md": true, "NOTICE": true, "UNLICENSE": true,
		"README.md": false, "licensee": false, "noticed.txt": false} {
		if licenceName.MatchString(name) != want {
			t.Errorf("%s: %v, want %v", name, !want, want)
		}
	}
}

// What is missing is said with what to install, once.
func TestMissingCompilers(t *testing.T) {
	missing := target{c: "no-such-gcc", cxx: "no-such-g++", debian: "gcc-none g++-none"}
	err := present([]target{missing}, compilers)
	if err == nil || err.Error() != "no-such-gcc, no-such-g++ missing: apt-get install g++-none gcc-none" {
		t.Errorf("it says: %v", err)
	}
	if _, err := choose([]string{"amiga-68000"}); err == nil || !strings.Contains(err.Error(), "windows-amd64") {
		t.Errorf("an unknown target: %v", err)
	}
}

func TestGuide(t *testing.T) {
	v := version{commit: "0123456789abcdef", at: time.Date(2026, 11, 28, 0, 0, 0, 0, time.UTC)}
	for _, of := range targets {
		guide, err := of.guide(v)
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"2026-11-28, commit 0123456789ab\n", "demo-log.xlsx",
			"LICENCES.txt", "not for records"} {
			if !strings.Contains(guide, want) {
				t.Errorf("%s: nothing of %q", of.name(), want)
			}
		}
		if got := strings.Contains(guide, "wakeledger.exe"); got != of.windows() {
			t.Errorf("%s: wakeledger.exe named: %v", of.name(), got)
		}
		for _, line := range strings.Split(guide, "\n") {
			if len(line) > 90 {
				t.Errorf("%s: a long line: %s", of.name(), line)
			}
		}
		if lone := bytes.ReplaceAll(of.text(guide), []byte("\r\n"), nil); of.windows() &&
			bytes.ContainsAny(lone, "\r\n") {
			t.Error("line ends that are not those of Windows")
		}
	}
}
