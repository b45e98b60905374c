package meaning

import (
	"strings"
	"sync"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
)

// Lexicon is what is known of the words of headings.
type Lexicon struct {
	Columns   []*plan.Column
	Species   *species.List
	Today     unit.Date // a log without a year is of no later day; 0: its days are left without one
	byAlias   map[string][]*plan.Column
	byEssence map[string][]*plan.Column
	words     map[string]string
	concepts  concepts
	shorts    []shortNames

	vocabulary vocabulary

	labels remembered[layout.Label, sayings]
	cuts   remembered[string, cutShort]
}

// remembered keeps what was found for keys that come again, for as many as a season of usual
// logs has. What it gives is not to be changed.
type remembered[K comparable, V any] struct {
	mu  sync.Mutex
	all map[K]V
}

const mostRemembered = 2048

func (m *remembered[K, V]) of(k K, find func() V) V {
	m.mu.Lock()
	v, ok := m.all[k]
	m.mu.Unlock()
	if ok {
		return v
	}
	v = find()
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.all == nil || len(m.all) >= mostRemembered {
		m.all = map[K]V{}
	}
	m.all[k] = v
	return v
}

// Default returns the embedded lexicon. Its error names the file and row that is wrong.
func Default(fish *species.List) (*Lexicon, error) {
	t := &Lexicon{Species: fish}
	var err error
	if t.Columns, err = plan.Columns(); err != nil {
		return nil, err
	}
	if t.words, err = loadWords(); err != nil {
		return nil, err
	}
	if t.concepts, err = loadConcepts(t.Columns); err != nil {
		return nil, err
	}
	if t.shorts, err = loadShorts(t.Columns, t.concepts); err != nil {
		return nil, err
	}
	t.index()
	t.vocabulary = t.vocabularyOf()
	return t, nil
}

// named is the first column of a name and a way of reading; "" is any.
func (t *Lexicon) named(name, parse string) *plan.Column {
	for _, c := range t.Columns {
		if c.Name == name && (parse == "" || c.Parse == parse) {
			return c
		}
	}
	return nil
}

// isSpecies tells a text that is a species' name and nothing else.
func (t *Lexicon) isSpecies(text string) bool {
	if strings.ContainsAny(text, "(~0123456789,;") {
		return false // something is said of it
	}
	m := t.Species.Find(text, "")
	return m.Found || len(m.Candidates) > 0
}
