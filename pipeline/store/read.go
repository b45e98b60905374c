package store

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	"wakeledger/pipeline/infile"
)

// OpenRead opens a season file that is there, to be read and no more: nothing in it is
// changed, several may do so at once, and it may be on a disk that cannot be written. What
// it holds is checked before any of it is used (see verify), and no other file is read or
// written from then on, nor anything fetched, except that exports says that Copy functions
// write where they are told.
func OpenRead(ctx context.Context, file string, exports bool) (db *DB, err error) {
	if err := nameFits(file); err != nil {
		return nil, err
	}
	if err := infile.Check(file); err != nil {
		return nil, err
	}
	if halfMade(file) {
		return nil, fmt.Errorf("%s: %w", file, ErrEmpty)
	}
	if db, err = inMemory(ctx); err != nil {
		return nil, trouble(file, err)
	}
	db.file = file
	defer func() {
		if err != nil {
			err = trouble(file, errors.Join(err, db.Close()))
		}
	}()
	if _, err := db.conn.ExecContext(ctx, strings.ReplaceAll(statement("attach_read"),
		"FILE_NAME", literal(file))); err != nil {
		return db, err
	}
	have, err := db.verify(ctx)
	if err != nil {
		return db, err
	}
	db.behind = have < version()
	after := []string{"use_season", "closed", "locked"}
	if exports {
		after = []string{"use_season", "locked"}
	}
	if st, err := os.Stat(file); err == nil && st.Size() > manyBytes {
		after = append([]string{"all_threads"}, after...)
	}
	for _, name := range after {
		if err := db.exec(ctx, name); err != nil {
			return db, err
		}
	}
	return db, nil
}

// manyBytes is the size of a season file from which its questions are answered by all threads.
const manyBytes = 16 << 20

// inMemory is a database of no file, without our tables.
func inMemory(ctx context.Context) (*DB, error) {
	o := options()
	o.Set("temp_directory", filepath.Join(os.TempDir(), fmt.Sprintf("wakeledger-%d.tmp", os.Getpid())))
	return connect(ctx, "", o)
}

// Behind tells a season file whose schema is of an earlier version: what is asked of it
// must be asked of a copy that was opened with Open.
func (db *DB) Behind() bool { return db.behind }

// CopyTo copies the season file that OpenRead opened into a folder, for this user alone,
// and gives the copy's name.
func (db *DB) CopyTo(dir string) (string, error) {
	to := filepath.Join(dir, "season.duckdb")
	if err := copyFile(db.file, to); err != nil {
		return "", fmt.Errorf("%s: cannot be copied: %w", db.file, err)
	}
	err := copyFile(db.file+walEnding, to+walEnding)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return "", fmt.Errorf("%s: cannot be copied: %w", db.file, err)
	}
	return to, nil
}

// walEnding is that of the file in which the database keeps what it has not yet put into
// the season file.
const walEnding = ".wal"

func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}

// AtClose has f called when the season file is closed.
func (db *DB) AtClose(f func() error) { db.atClose = f }

// prepare sees to it that there is a season file at path to be opened for writing: what is
// there is one, or one is made. A season file is made beside and renamed, so that it is
// never there half; what an earlier version was killed over at its birth is made anew.
func prepare(ctx context.Context, file string) error {
	if u, err := url.Parse(file); err != nil || u.RawQuery != "" || strings.ContainsAny(file, "?#") {
		return fmt.Errorf("%q cannot be the name of a season file: leave out ?, # and %%", file)
	}
	if err := nameFits(file); err != nil {
		return err
	}
	err := infile.Check(file)
	if errors.Is(err, os.ErrNotExist) {
		if _, left := os.Stat(file + walEnding); left == nil {
			return fmt.Errorf("%s: %w: bring the season file back beside it, or delete it to begin anew",
				file+walEnding, ErrLeft)
		}
		return birth(ctx, file)
	}
	if err != nil {
		return err
	}
	if halfMade(file) {
		return birth(ctx, file)
	}
	db, err := OpenRead(ctx, file, false)
	if errors.Is(err, ErrEmpty) {
		return birth(ctx, file)
	}
	if err != nil {
		return err
	}
	// while it is open to be read, nobody has it open for writing
	return errors.Join(dropTorn(file), db.Close())
}

// The database's head is three parts of 4096 bytes; no table stands before its end. The
// second and third tell, at this byte, how many blocks the file has (DuckDB 1.1, DatabaseHeader).
const (
	headPart = 4096
	headSize = 3 * headPart
	blocksAt = 32
)

// halfMade tells what a program leaves that was killed while it made a season file: nothing,
// or a beginning of the database's head, and no file of changes beside it. A season file
// that was cut off in its head is none: the head tells of blocks.
func halfMade(file string) bool {
	st, err := os.Stat(file)
	if err != nil || st.Size() >= headSize {
		return false
	}
	if wal, err := os.Stat(file + walEnding); err == nil && wal.Size() > 0 {
		return false
	}
	b, err := os.ReadFile(file)
	if err != nil {
		return false
	}
	for at := headPart + blocksAt; at+8 <= len(b); at += headPart {
		if binary.LittleEndian.Uint64(b[at:]) > 0 {
			return false
		}
	}
	return len(b) == 0 || len(b) >= 12 && string(b[8:12]) == "DUCK"
}

// birth makes an empty season file in the place of file.
func birth(ctx context.Context, file string) error {
	dir, err := os.MkdirTemp(filepath.Dir(file), ".wakeledger-*")
	if err != nil {
		return trouble(file, err)
	}
	made := filepath.Join(dir, "season.duckdb")
	db, err := openFile(ctx, made)
	if err == nil {
		err = db.Close()
	}
	if err == nil {
		err = os.Rename(made, file)
	}
	return errors.Join(err, os.RemoveAll(dir))
}
