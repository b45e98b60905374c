// Package output is the one place that decides whether a file may be written, and
// the one way in which it is.
//
// A file that is there is written over only where it is an earlier output of the
// same kind, known by a mark in it. Anything else is somebody's: a log, a season
// file, a logbook that was filled in, a page of another program. A file that the
// run reads, a database, a folder and what is no ordinary file are never written
// over, whatever the user says.
//
// A file is written beside and then renamed, so that it is there whole or not at
// all. A new one has the rights that the user's umask leaves; one that is written
// over keeps its own.
//
// The package is nearly a leaf: it asks pipeline/infile who holds a file.
package output

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"

	"wakeledger/pipeline/infile"
)

// ErrRefused is wrapped by every refusal to write a file.
var ErrRefused = errors.New("not written")

// Kind is a kind of output.
type Kind struct {
	Name string // as in "no earlier NAME"
	// Is tells an earlier output of the kind by its mark; nil where each may have
	// been filled in or edited since, so that none is ever written over unasked.
	Is func(r io.ReaderAt, size int64) bool
}

// Marked is a kind that is known by a text in its first 4 KiB.
func Marked(name, mark string) Kind {
	return Kind{Name: name, Is: func(r io.ReaderAt, _ int64) bool {
		head := make([]byte, 4096)
		n, err := r.ReadAt(head, 0)
		return (err == nil || errors.Is(err, io.EOF)) && strings.Contains(string(head[:n]), mark)
	}}
}

// Target is a file that is to be written.
type Target struct {
	Path   string
	Kind   Kind
	Inputs []string // files that the run reads; "" is none
	Force  bool     // the user says that another file may be written over
}

// Check says why the file may not be written, wrapping ErrRefused. Ask it before
// the work that the file is the end of.
func (t Target) Check() error {
	_, _, err := t.place()
	return err
}

// place is where the file really goes, past links, and what is there; nil: nothing.
func (t Target) place() (string, fs.FileInfo, error) {
	path := t.Path
	if l, err := os.Lstat(path); err == nil && l.Mode()&fs.ModeSymlink != 0 {
		if path, err = filepath.EvalSymlinks(path); err != nil {
			return "", nil, t.refuse("it is a link to a file that is not there: name the file itself")
		}
	}
	there, err := os.Stat(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", nil, t.refuse("it cannot be looked at: " + plain(err))
	}
	if err != nil {
		there = nil
	}
	for _, in := range t.Inputs {
		if in != "" && same(path, there, in) {
			return "", nil, t.refuse("it is one of the files that are read: name another file")
		}
	}
	if there == nil {
		return path, nil, t.folder(path)
	}
	return path, there, t.over(path, there)
}

// folder fails where there is no folder for the file.
func (t Target) folder(path string) error {
	dir := filepath.Dir(path)
	if st, err := os.Stat(dir); err != nil || !st.IsDir() {
		return t.refuse(fmt.Sprintf("there is no folder %s", dir))
	}
	return nil
}

// over fails where what is there may not be written over.
func (t Target) over(path string, there fs.FileInfo) error {
	switch {
	case there.IsDir():
		return t.refuse("it is a folder: name a file")
	case !there.Mode().IsRegular():
		return t.refuse("it is no ordinary file: name another")
	}
	f, err := os.Open(path)
	if err == nil {
		defer f.Close()
		err = readable(f)
	}
	switch {
	case infile.Held(err):
		return t.refuse(isOpen)
	case err != nil:
		return t.refuse("it is there already and cannot be read: name another file")
	}
	switch {
	case isDatabase(f):
		return t.refuse("it is a season file or another database: name another file")
	case t.Force || there.Size() == 0:
		return nil
	case t.Kind.Is == nil:
		return t.refuse("it is there already: name another file, or say with --force that it may be written over")
	case !t.Kind.Is(f, there.Size()):
		return t.refuse(fmt.Sprintf("it is there already and is no earlier %s: name another file, or say with "+
			"--force that it may be written over", t.Kind.Name))
	}
	return nil
}

// readable fails where nothing can be read: on Windows a file may be open to others and its
// bytes locked.
func readable(f *os.File) error {
	if _, err := f.ReadAt(make([]byte, 1), 0); !errors.Is(err, io.EOF) {
		return err
	}
	return nil
}

func (t Target) refuse(why string) error { return fmt.Errorf("%s: %w: %s", t.Path, ErrRefused, why) }

// same tells whether an input is the file at path, by what it is and by its name.
func same(path string, there fs.FileInfo, input string) bool {
	if st, err := os.Stat(input); err == nil && there != nil && os.SameFile(st, there) {
		return true
	}
	a, errA := filepath.Abs(path)
	b, errB := filepath.Abs(input)
	return errA == nil && errB == nil && a == b
}

// isDatabase knows a database of the season file's kind by the word that its header
// holds from byte 8 on.
func isDatabase(r io.ReaderAt) bool {
	var word [4]byte
	n, _ := r.ReadAt(word[:], 8)
	return n == 4 && string(word[:]) == "DUCK"
}

// Write writes the file: whole, or not at all.
func (t Target) Write(write func(io.Writer) error) (err error) {
	path, there, err := t.place()
	if err != nil {
		return err
	}
	f, err := beside(path)
	if err != nil {
		return fmt.Errorf("%s: %w: %s", t.Path, ErrRefused, plain(err))
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	w := bufio.NewWriter(f)
	err = write(w)
	if err == nil {
		err = w.Flush()
	}
	if err == nil && there != nil {
		err = f.Chmod(there.Mode().Perm())
	}
	if err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), path)
		if there != nil && errors.Is(err, fs.ErrPermission) { // so says Windows of a file that is open
			return t.refuse(isOpen + ", or it may not be written")
		}
	}
	if err != nil {
		return fmt.Errorf("%s: %w: %s", t.Path, ErrRefused, plain(err))
	}
	return nil
}

// beside makes a new file in the folder of path, with the rights of the umask.
func beside(path string) (*os.File, error) {
	for {
		name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".wakeledger-%08x", rand.Uint32()))
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// Folder fills a folder that is new or empty: with all that fill writes into it, or
// with nothing.
func Folder(path string, fill func(dir string) error) (err error) {
	there, err := os.ReadDir(path)
	st, statErr := os.Stat(path)
	switch {
	case statErr == nil && !st.IsDir():
		return fmt.Errorf("%s: %w: it is a file: name a folder", path, ErrRefused)
	case err == nil && len(there) > 0:
		return fmt.Errorf("%s: %w: it is not empty: name a new folder", path, ErrRefused)
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: %w: %s", path, ErrRefused, plain(err))
	}
	clean := filepath.Clean(path)
	if err := os.MkdirAll(filepath.Dir(clean), 0o777); err != nil {
		return fmt.Errorf("%s: %w: %s", path, ErrRefused, plain(err))
	}
	dir := filepath.Join(filepath.Dir(clean), fmt.Sprintf(".wakeledger-%08x", rand.Uint32()))
	if err := os.Mkdir(dir, 0o777); err != nil {
		return fmt.Errorf("%s: %w: %s", path, ErrRefused, plain(err))
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(dir))
		}
	}()
	if err := fill(dir); err != nil {
		return err
	}
	if statErr == nil { // it is empty: the new one takes its place
		if err := os.Remove(clean); err != nil {
			return fmt.Errorf("%s: %w: %s", path, ErrRefused, plain(err))
		}
	}
	return os.Rename(dir, clean)
}

const isOpen = "another program has it open: close it there, and give the command again"

// plain is an error of the file system without the name of a file that nobody chose.
func plain(err error) string {
	if infile.Held(err) {
		return isOpen
	}
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}
