package output

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

var kind = Marked("season report", `content="ours"`)

func write(t *testing.T, path, text string) string {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func put(target Target, text string) error {
	return target.Write(func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	})
}

func TestWhatMayBeWrittenOver(t *testing.T) {
	dir := t.TempDir()
	path := func(name string) string { return filepath.Join(dir, name) }
	log := write(t, path("log.csv"), "Date,Start\n")
	ours := `<html><meta content="ours">`
	for _, c := range []struct {
		name, there string // "" is no file
		kind        Kind
		force, may  bool
	}{
		{"new.html", "", kind, false, true},
		{"ours.html", ours, kind, false, true},
		{"theirs.html", "<html>", kind, false, false},
		{"theirs.html", "<html>", kind, true, true},
		{"late.html", strings.Repeat(" ", 5000) + ours, kind, false, false},
		{"book.xlsx", ours, Kind{Name: "logbook"}, false, false},
		{"book.xlsx", ours, Kind{Name: "logbook"}, true, true},
		{"season.duckdb", "12345678DUCK" + ours, kind, false, false},
		{"season.duckdb", "12345678DUCK" + ours, kind, true, false},
		{"log.csv", "Date,Start\n", kind, true, false},
	} {
		if c.there != "" {
			write(t, path(c.name), c.there)
		}
		target := Target{Path: path(c.name), Kind: c.kind, Inputs: []string{log, ""}, Force: c.force}
		checked, written := target.Check(), put(target, "new")
		if (checked == nil) != c.may || (written == nil) != c.may {
			t.Errorf("%s, force %v: check %v, write %v; want may %v", c.name, c.force, checked, written, c.may)
		}
		if checked != nil && !errors.Is(checked, ErrRefused) {
			t.Errorf("%s: %v is no refusal", c.name, checked)
		}
		want := "new"
		if !c.may {
			want = c.there
		}
		if b, _ := os.ReadFile(path(c.name)); string(b) != want {
			t.Errorf("%s holds %q", c.name, b)
		}
		os.Remove(path(c.name))
		write(t, log, "Date,Start\n")
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) != 1 {
		t.Errorf("%d files are left, want the log alone", len(left))
	}
}

// An input is the same file under another name too: by a link, or where it is not there yet.
func TestInputsByOtherNames(t *testing.T) {
	dir := t.TempDir()
	log := write(t, filepath.Join(dir, "log.csv"), `content="ours"`)
	for _, link := range []func(from, to string) error{os.Symlink, os.Link} {
		other := filepath.Join(dir, "other.html")
		if err := link(log, other); err != nil {
			t.Fatal(err)
		}
		if err := put(Target{Path: other, Kind: kind, Inputs: []string{log}, Force: true},
			"new"); !errors.Is(err, ErrRefused) {
			t.Errorf("a link to an input: %v", err)
		}
		os.Remove(other)
	}
	coming := filepath.Join(dir, "season.duckdb.wal")
	if err := put(Target{Path: filepath.Join(dir, ".", "x", "..", "season.duckdb.wal"), Kind: kind,
		Inputs: []string{coming}}, "new"); !errors.Is(err, ErrRefused) {
		t.Errorf("an input that is not there yet: %v", err)
	}
}

// A link to an earlier output stays a link, and the file behind it is the new one.
func TestLinksAreFollowed(t *testing.T) {
	dir := t.TempDir()
	real := write(t, filepath.Join(dir, "real.html"), `content="ours"`)
	link := filepath.Join(dir, "link.html")
	if err := os.Symlink(real, link); err != nil {
		t.Fatal(err)
	}
	if err := put(Target{Path: link, Kind: kind}, "new"); err != nil {
		t.Fatal(err)
	}
	if b, _ := os.ReadFile(real); string(b) != "new" {
		t.Errorf("the file behind the link holds %q", b)
	}
	if st, err := os.Lstat(link); err != nil || st.Mode()&os.ModeSymlink == 0 {
		t.Error("the link is gone")
	}
}

func TestRightsFollowTheUmask(t *testing.T) {
	defer syscall.Umask(syscall.Umask(0o027))
	path := filepath.Join(t.TempDir(), "new.html")
	if err := put(Target{Path: path, Kind: kind}, `content="ours"`); err != nil {
		t.Fatal(err)
	}
	if st, _ := os.Stat(path); st.Mode().Perm() != 0o640 {
		t.Errorf("a new file has the rights %v, want -rw-r-----", st.Mode())
	}
	if err := os.Chmod(path, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := put(Target{Path: path, Kind: kind}, `content="ours"`); err != nil {
		t.Fatal(err)
	}
	if st, _ := os.Stat(path); st.Mode().Perm() != 0o600 {
		t.Errorf("a file written over has the rights %v, want those that it had", st.Mode())
	}
}

// A file is there whole or as it was.
func TestWriteThatFails(t *testing.T) {
	dir := t.TempDir()
	path := write(t, filepath.Join(dir, "a.html"), `content="ours"`)
	err := Target{Path: path, Kind: kind}.Write(func(w io.Writer) error {
		_, _ = io.WriteString(w, strings.Repeat("half", 10000))
		return errors.New("the season ended")
	})
	if err == nil || !strings.Contains(err.Error(), "the season ended") {
		t.Errorf("error %v", err)
	}
	if b, _ := os.ReadFile(path); string(b) != `content="ours"` {
		t.Errorf("the file holds %d other bytes", len(b))
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("%d files are left", len(left))
	}
}

func TestFolder(t *testing.T) {
	dir := t.TempDir()
	fill := func(in string) error { return os.WriteFile(filepath.Join(in, "a"), nil, 0o600) }
	full := filepath.Join(dir, "full")
	if err := Folder(full, fill); err != nil {
		t.Fatal(err)
	}
	if err := Folder(full, fill); !errors.Is(err, ErrRefused) {
		t.Errorf("a folder that is not empty: %v", err)
	}
	if err := Folder(filepath.Join(full, "a"), fill); !errors.Is(err, ErrRefused) {
		t.Errorf("a file: %v", err)
	}
	empty := filepath.Join(dir, "empty")
	if err := os.Mkdir(empty, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := Folder(empty, fill); err != nil {
		t.Errorf("an empty folder: %v", err)
	}
	broken := filepath.Join(dir, "broken")
	if err := Folder(broken, func(in string) error { return errors.Join(fill(in), errors.New("no")) }); err == nil {
		t.Error("a filling that fails: no error")
	}
	if left, _ := os.ReadDir(dir); len(left) != 2 {
		t.Errorf("%d folders are left, want 2", len(left))
	}
}
