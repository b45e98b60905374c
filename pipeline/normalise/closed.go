package normalise

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"strings"
	"sync"
	"unicode"
)

//go:embed words.csv
var wordsCSV []byte

// closed are the closed lists: list -> spelling -> what it means.
type closed map[string]map[string]string

// loadClosed reads the lists once; nobody changes them.
var loadClosed = sync.OnceValues(func() (closed, error) {
	rows, err := csv.NewReader(bytes.NewReader(wordsCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("words.csv: %w", err)
	}
	w := closed{}
	for _, r := range rows[1:] {
		if w[r[0]] == nil {
			w[r[0]] = map[string]string{}
		}
		w[r[0]][r[1]] = r[2]
	}
	return w, nil
})

// find looks a cell up in a closed list, in lower case and with punctuation as
// spaces.
func (w closed) find(list, cell string) (string, bool) {
	name := plain(cell)
	if name == "" {
		name = strings.TrimSpace(cell) // a tick
	}
	means, ok := w[list][name]
	return means, ok
}

// trimmed is strings.TrimSpace, sooner done for the cells that need no trimming.
func trimmed(s string) string {
	if s == "" || s[0] > ' ' && s[0] < 0x80 && s[len(s)-1] > ' ' && s[len(s)-1] < 0x80 {
		return s
	}
	return strings.TrimSpace(s)
}

func plain(s string) string {
	f := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	return strings.Join(f, " ")
}
