package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// CopyBeside copies a season file that is not open to a new file beside it, and returns
// its name. It is done before anything that cannot be undone.
func CopyBeside(file, why string, at time.Time) (name string, err error) {
	from, err := os.Open(file)
	if err != nil {
		return "", err
	}
	defer from.Close()
	ext := filepath.Ext(file)
	stem := fmt.Sprintf("%s, %s %s", strings.TrimSuffix(file, ext), why, at.Format("2006-01-02"))
	var to *os.File
	for n := 1; ; n++ {
		name = stem + ext
		if n > 1 {
			name = fmt.Sprintf("%s (%d)%s", stem, n, ext)
		}
		if to, err = os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644); !errors.Is(err, os.ErrExist) {
			break
		}
	}
	if err != nil {
		return "", err
	}
	_, err = io.Copy(to, from)
	if err = errors.Join(err, to.Sync(), to.Close()); err != nil {
		return "", errors.Join(fmt.Errorf("copy %s to %s: %w", file, name, err), os.Remove(name))
	}
	return name, nil
}

// Compact writes a season file that is not open anew, without the room of what was
// removed, and puts it in its place.
func Compact(ctx context.Context, file string) (err error) {
	part := file + ".part"
	if err := os.Remove(part); err != nil && !errors.Is(err, os.ErrNotExist) {
		return err
	}
	pool, err := sql.Open("duckdb", "")
	if err != nil {
		return err
	}
	for _, s := range []string{fmt.Sprintf(statement("compact_from"), literal(file)),
		fmt.Sprintf(statement("compact_to"), literal(part)),
		statement("compact"), statement("compact_done")} {
		if _, err = pool.ExecContext(ctx, s); err != nil {
			break
		}
	}
	if err = errors.Join(err, pool.Close()); err != nil {
		return errors.Join(fmt.Errorf("%s could not be made smaller, and is as it was: %w", file, err),
			ignoreMissing(os.Remove(part)))
	}
	return os.Rename(part, file)
}

func ignoreMissing(err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	return err
}
