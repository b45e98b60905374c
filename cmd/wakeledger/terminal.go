package main

import (
	"errors"
	"io"
	"os"
	"strings"
	"sync"
	"unicode/utf8"

	"golang.org/x/term"
)

// sink is where results or notes go. It remembers that writing failed, so that a run
// whose results went nowhere does not end well.
type sink struct {
	to  io.Writer
	mu  sync.Mutex
	err error
}

func (s *sink) Write(b []byte) (int, error) {
	n, err := s.to.Write(b)
	if err != nil {
		s.mu.Lock()
		s.err = errors.Join(s.err, err)
		s.mu.Unlock()
	}
	return n, err
}

// failure is the first error of writing; nil: all was written.
func (s *sink) failure() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.err
}

// readable writes text of logs so that a terminal shows it and obeys none of it.
type readable struct{ to io.Writer }

func (r readable) Write(b []byte) (int, error) {
	if _, err := io.WriteString(r.to, shown(string(b))); err != nil {
		return 0, err
	}
	return len(b), nil
}

// shown is a text in which control characters are seen and do nothing: those of ASCII as
// their pictures (Unicode block Control Pictures), those of ISO 6429's second set, those
// that turn the direction of writing (Unicode Bidirectional Algorithm, UAX 9) and what is
// no UTF-8 as the replacement character. Tabs and line ends stay.
func shown(s string) string {
	if !strings.ContainsFunc(s, isControl) && utf8.ValidString(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch {
		case r < 0x20 && r != '\n' && r != '\t':
			return 0x2400 + r
		case r == 0x7f:
			return 0x2421
		case isControl(r):
			return utf8.RuneError
		}
		return r
	}, s)
}

func isControl(r rune) bool {
	return r < 0x20 && r != '\n' && r != '\t' || r >= 0x7f && r < 0xa0 ||
		r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0x200e || r == 0x200f ||
		r == 0x061c || r == 0x2028 || r == 0x2029
}

// isTerminal tells whether what is written there is seen as it comes.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}
