package infile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

func TestCheck(t *testing.T) {
	dir := t.TempDir()
	file, pipe := filepath.Join(dir, "log.csv"), filepath.Join(dir, "pipe")
	if err := errors.Join(os.WriteFile(file, make([]byte, 2048), 0o600), syscall.Mkfifo(pipe, 0o600)); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]error{file: nil, pipe: ErrNotFile, dir: ErrNotFile, "/dev/null": ErrNotFile,
		filepath.Join(dir, "none"): fs.ErrNotExist} {
		if err := Check(path); !errors.Is(err, want) {
			t.Errorf("%s: %v, want %v", path, err, want)
		}
	}
	if CheckSmall(file, 2048, "a mapping") != nil || CheckSmall(file, 2047, "a mapping") == nil {
		t.Error("2048 bytes are to be read where 2048 may be, not where 2047")
	}
}
