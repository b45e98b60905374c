// Package infile says what may be read as a file. A folder, a pipe, a device or a socket
// is none: it cannot be read twice, may never end, and may not even open.
//
// The package is a leaf.
package infile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// ErrNotFile is wrapped by the error of Check for what is there and is no file.
var ErrNotFile = errors.New("is no ordinary file: give a file on disk")

// Check says why path cannot be read as a file; links are followed. The error of a file
// that is not there wraps fs.ErrNotExist.
func Check(path string) error {
	st, err := os.Stat(path)
	switch {
	case err != nil:
		return err
	case st.IsDir():
		return fmt.Errorf("%s is a folder, and %w", path, ErrNotFile)
	case !st.Mode().IsRegular():
		return fmt.Errorf("%s is %s, and %w", path, kind(st.Mode()), ErrNotFile)
	}
	return nil
}

func kind(m fs.FileMode) string {
	switch {
	case m&fs.ModeNamedPipe != 0:
		return "a pipe"
	case m&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}

// CheckSmall is Check for a file of at most so many bytes; what says what it should be.
func CheckSmall(path string, most int64, what string) error {
	if err := Check(path); err != nil {
		return err
	}
	if st, err := os.Stat(path); err != nil || st.Size() > most {
		return fmt.Errorf("%s is larger than %d KiB: is it %s?", path, most>>10, what)
	}
	return nil
}
