package pipeline

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"

	"wakeledger/pipeline/record"
)

// inMemory is how many problems are held before the rest go to a file.
const inMemory = 10000

// spool holds problems until the rows beside them are stored: the first ones in
// memory, the rest in a temporary file, so that a log in which every row is bad
// needs no more memory than a good one.
type spool struct {
	n     int64
	first []record.Problem
	file  *os.File
	w     *bufio.Writer
	dec   *json.Decoder
}

func (s *spool) add(problems ...record.Problem) error {
	for _, p := range problems {
		s.n++
		if len(s.first) < inMemory {
			s.first = append(s.first, p)
			continue
		}
		if s.file == nil {
			f, err := os.CreateTemp("", "wakeledger-set-aside-*")
			if err != nil {
				return fmt.Errorf("keep what is set aside: %w", err)
			}
			s.file, s.w = f, bufio.NewWriter(f)
		}
		b, err := json.Marshal(p)
		if err == nil {
			_, err = s.w.Write(b)
		}
		if err != nil {
			return fmt.Errorf("keep what is set aside: %w", err)
		}
	}
	return nil
}

// rewind turns from adding to reading.
func (s *spool) rewind() error {
	if s.file == nil {
		return nil
	}
	if err := s.w.Flush(); err != nil {
		return err
	}
	if _, err := s.file.Seek(0, io.SeekStart); err != nil {
		return err
	}
	s.dec = json.NewDecoder(bufio.NewReader(s.file))
	return nil
}

// next is the next problem, in the order in which they were added.
func (s *spool) next() (p record.Problem, ok bool, err error) {
	if len(s.first) > 0 {
		p, s.first = s.first[0], s.first[1:]
		return p, true, nil
	}
	if s.dec == nil {
		return p, false, nil
	}
	err = s.dec.Decode(&p)
	if errors.Is(err, io.EOF) {
		return p, false, nil
	}
	return p, err == nil, err
}

func (s *spool) close() {
	if s.file != nil {
		s.file.Close()
		os.Remove(s.file.Name())
	}
}
