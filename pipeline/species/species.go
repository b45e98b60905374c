package species

import (
	_ "embed"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
)

//go:embed species.csv
var speciesCSV string

//go:embed names.csv
var namesCSV string

// Species is one kind of fish. A maximum of zero is not known.
type Species struct {
	Code          string // FAO 3-alpha code
	Scientific    string
	Name          string // English name of the ASFIS list or of the trade
	Group         string // tuna, small tuna, bonito, billfish, mackerel, dolphinfish, jack, barracuda, shark, other
	MaxLengthCM   float64
	MaxLengthKind string // length kind of MaxLengthCM: FL, SFL or TL
	MaxWeightKG   float64
}

// Match is the answer to a name.
type Match struct {
	Species    Species
	Found      bool
	Candidates []string // codes, sorted, where the name means several species and the ocean does not settle it
	Note       string   // one sentence where the name is also used for another fish; usually empty
}

// List is a list of species and of the names that mean them. It is safe for
// concurrent use: nothing changes it after it is made.
type List struct {
	byCode  map[string]Species
	order   []string
	names   map[string][]meaning // by normalised name
	aliases map[string]string    // by normalised name: code
	longest int                  // words of the longest name
}

// meaning is one row of the name table.
type meaning struct {
	code, ocean, note string
}

// Default returns the embedded list, which is read once. It fails only if an embedded
// table is at fault, with every fault found.
func Default() (*List, error) { return embedded() }

var embedded = sync.OnceValues(func() (*List, error) { return parse(speciesCSV, namesCSV) })

// All returns the species in the order of the list.
func (l *List) All() []Species {
	out := make([]Species, len(l.order))
	for i, c := range l.order {
		out[i] = l.byCode[c]
	}
	return out
}

// Names returns every name that the list knows, in lower case and sorted.
func (l *List) Names() []string { return slices.Sorted(maps.Keys(l.names)) }

// ByCode returns the species with a 3-alpha code, in either case.
func (l *List) ByCode(code string) (Species, bool) {
	s, ok := l.byCode[strings.ToUpper(strings.TrimSpace(code))]
	return s, ok
}

// Find returns the species that a name means in an ocean. Case, accents,
// punctuation and plural do not count; codes and scientific names match too. The
// ocean is one of Oceans, or empty where it is not known; one that is not in the
// list settles nothing. The user's aliases come first.
func (l *List) Find(name, ocean string) Match {
	ocean, _ = ParseOcean(ocean)
	ways := keys(name)
	for _, key := range ways {
		if code, ok := l.aliases[key]; ok {
			return Match{Species: l.byCode[code], Found: true}
		}
	}
	for _, key := range ways {
		if ms := l.names[key]; len(ms) > 0 {
			return l.settle(key, ms, ocean)
		}
	}
	return Match{}
}

// settle picks the one species that a name means in an ocean, or gives the
// candidates. A name that is itself a code means that species where no ocean says
// otherwise.
func (l *List) settle(key string, ms []meaning, ocean string) Match {
	local := nearest(ms, ocean)
	found := codes(local)
	if s, ok := l.ByCode(key); ok && len(found) != 1 && ocean == "" {
		return Match{Species: s, Found: true}
	}
	if len(found) != 1 {
		if len(found) == 0 {
			found = codes(ms)
		}
		return Match{Candidates: found}
	}
	m := Match{Species: l.byCode[found[0]], Found: true}
	for _, r := range local {
		if r.note != "" {
			m.Note = r.note
		}
	}
	return m
}

// nearest are the rows of a name that hold in an ocean: those for the ocean
// itself, else for the ocean it lies in, else for no ocean in particular, else for
// the parts of it. Without an ocean all rows hold.
func nearest(ms []meaning, ocean string) []meaning {
	if ocean == "" {
		return ms
	}
	tiers := []func(string) bool{
		func(o string) bool { return o == ocean },
		func(o string) bool { return within(ocean, o) },
		func(o string) bool { return o == "" },
		func(o string) bool { return within(o, ocean) },
	}
	for _, holds := range tiers {
		var out []meaning
		for _, m := range ms {
			if holds(m.ocean) {
				out = append(out, m)
			}
		}
		if len(out) > 0 {
			return out
		}
	}
	return nil
}

// codes are the different codes of rows, sorted.
func codes(ms []meaning) []string {
	set := map[string]bool{}
	for _, m := range ms {
		set[m.code] = true
	}
	return slices.Sorted(maps.Keys(set))
}

// WithAliases returns a list that knows the user's own names as well, in singular
// and plural; they come before the embedded ones. The values are 3-alpha codes. The error names every
// code that the list does not have.
func (l *List) WithAliases(aliases map[string]string) (*List, error) {
	out := *l
	out.aliases = maps.Clone(l.aliases)
	if out.aliases == nil {
		out.aliases = map[string]string{}
	}
	var errs []error
	for _, name := range slices.Sorted(maps.Keys(aliases)) {
		s, ok := l.ByCode(aliases[name])
		key := normalise(name)
		switch {
		case !ok:
			errs = append(errs, fmt.Errorf("alias %q: no species has the code %q", name, aliases[name]))
		case key == "":
			errs = append(errs, fmt.Errorf("alias %q has no letters", name))
		default:
			out.aliases[key] = s.Code
			out.longest = max(out.longest, len(strings.Fields(key)))
			out.aliases[singular(key, "s")] = s.Code
		}
	}
	if len(errs) > 0 {
		return nil, errors.Join(errs...)
	}
	return &out, nil
}
