package store

import (
	"bufio"
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"os"
)

// The file of changes, as DuckDB 1.1 writes it: a head, then entries, each with its length
// and its sum of eight bytes before it. The entry that ends a transaction is always the same.
var (
	walHead = []byte{0x64, 0, 0x62, 0x65, 0, 2, 0xff, 0xff}
	walDone = []byte{0x64, 0, 0x64, 0xff, 0xff}
)

const walBefore = 16 // bytes before each entry

// dropTorn cuts what a program that was killed left half written at the end of a season
// file's changes. The database leaves it out when it reads them, but writes on behind it:
// what comes then could never be read. The season file must not be open for writing.
func dropTorn(file string) (err error) {
	f, err := os.OpenFile(file+walEnding, os.O_RDWR, 0)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return trouble(file, err)
	}
	defer func() {
		if err = errors.Join(err, f.Close()); err != nil {
			err = trouble(file, err)
		}
	}()
	st, err := f.Stat()
	if err != nil {
		return err
	}
	whole, known, err := wholeLength(bufio.NewReader(f))
	if err != nil || !known || whole == st.Size() {
		return err
	}
	return errors.Join(f.Truncate(whole), f.Sync())
}

// wholeLength is how many bytes of a file of changes hold whole transactions; known is false
// where the file is written in a way that is not known here.
func wholeLength(r *bufio.Reader) (whole int64, known bool, err error) {
	head := make([]byte, len(walHead))
	n, err := io.ReadFull(r, head)
	if ended(err) {
		return 0, bytes.HasPrefix(walHead, head[:n]), nil
	}
	if err != nil || !bytes.Equal(head, walHead) {
		return 0, false, err
	}
	at := int64(len(walHead))
	for {
		var before [walBefore]byte
		if _, err = io.ReadFull(r, before[:]); err != nil {
			break
		}
		length := int64(binary.LittleEndian.Uint64(before[:]))
		if length < 0 {
			return 0, false, nil
		}
		var entry bytes.Buffer
		if length == int64(len(walDone)) {
			_, err = io.CopyN(&entry, r, length)
		} else {
			_, err = io.CopyN(io.Discard, r, length)
		}
		if err != nil {
			break
		}
		if at += walBefore + length; bytes.Equal(entry.Bytes(), walDone) {
			whole = at
		}
	}
	if !ended(err) {
		return 0, false, fmt.Errorf("what is not yet in the season file: %w", err)
	}
	return whole, true, nil
}

// ended tells the end of a file, in the middle of what was read or not.
func ended(err error) bool {
	return errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF)
}
