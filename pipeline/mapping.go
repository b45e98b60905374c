package pipeline

import (
	"fmt"
	"io"
	"os"
	"regexp"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"wakeledger/pipeline/infile"
	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

// Mapping says how logs are to be read where the headings alone do not tell.
type Mapping struct {
	Sheets []MappedSheet `toml:"sheet"`
}

// MappedSheet is one sheet of one log.
type MappedSheet struct {
	Log       string `toml:"log"`        // the file's name
	Sheet     string `toml:"sheet"`      // "" in a text file
	Kind      string `toml:"kind"`       // trips, legs, lines, strikes, fish or flat
	HeaderRow int    `toml:"header-row"` // as the sheet numbers it; 0: found by itself
	// heading -> column, with a unit after it where the cells state none
	Columns map[string]string `toml:"columns"`
}

const (
	mostMapping = 1 << 20 // bytes; one of a large workbook has some ten thousand
	mostParts   = 8       // of a key with dots; "sheet.columns" has two
)

// shallow fails where a key, or a value, is of more parts one within the other than any
// mapping needs: each costs memory in proportion to all before it. What stands in quotes
// is no part.
func shallow(path string) error {
	b, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	for n, line := range strings.Split(string(b), "\n") {
		bare := quotedText.ReplaceAllString(line, "")
		if max(strings.Count(bare, "."), strings.Count(bare, "["), strings.Count(bare, "{")) > mostParts {
			return fmt.Errorf(
				"line %d: a key of more than %d parts; a sheet has log, sheet, kind, header-row and columns", n+1,
				mostParts)
		}
		if bare = strings.TrimSpace(bare); strings.Contains(bare, "[") &&
			!(strings.HasPrefix(bare, "[") && strings.HasSuffix(bare, "]")) {
			return fmt.Errorf("line %d: a list; no key of a mapping takes one", n+1)
		}
	}
	return nil
}

var quotedText = regexp.MustCompile(`"(\\.|[^"\\])*"|'[^']*'|#.*`)

// ReadMapping reads a mapping file. Its error names the line, or the key that
// is not known.
func ReadMapping(path string) (Mapping, error) {
	var m Mapping
	if err := infile.CheckSmall(path, mostMapping, "a mapping"); err != nil {
		return m, fmt.Errorf("mapping: %w", err)
	}
	if err := shallow(path); err != nil {
		return m, fmt.Errorf("mapping %s: %w", path, err)
	}
	meta, err := toml.DecodeFile(path, &m)
	if err != nil {
		return m, fmt.Errorf("mapping %s: %w", path, err)
	}
	if extra := meta.Undecoded(); len(extra) > 0 {
		return m, fmt.Errorf("mapping %s: %.60q is not known; a sheet has log, sheet, kind, header-row and columns",
			path, extra[0].String())
	}
	for _, s := range m.Sheets {
		columns, err := plan.Columns()
		if err != nil {
			return m, err
		}
		if _, err := s.read(columns); err != nil {
			return m, fmt.Errorf("mapping %s: %s %s: %w", path, s.Log, s.Sheet, err)
		}
	}
	return m, nil
}

// of is what a mapping says of one log.
func (m *Mapping) of(log string) []MappedSheet {
	var out []MappedSheet
	for _, s := range m.Sheets {
		if s.Log == log || s.Log == "" {
			out = append(out, s)
		}
	}
	return out
}

// said is what the mapping says of a log's blocks, by sheet and heading row. Its error
// names the heading, column or unit that is wrong.
func (m *Mapping) said(log string, t *meaning.Lexicon) (func(sheet string, row int) meaning.Said, error) {
	type key struct {
		sheet string
		row   int
	}
	all := map[key]meaning.Said{}
	for _, s := range m.Sheets {
		if s.Log != log && s.Log != "" {
			continue
		}
		said, err := s.read(t.Columns)
		if err != nil {
			return nil, fmt.Errorf("mapping: %s %s: %w", s.Log, s.Sheet, err)
		}
		all[key{s.Sheet, s.HeaderRow}] = said
	}
	return func(sheet string, row int) meaning.Said {
		for _, k := range []key{{sheet, row}, {sheet, 0}} {
			if s, ok := all[k]; ok {
				return s
			}
		}
		return meaning.Said{}
	}, nil
}

// fits says which heading of a mapping a log has not: one that is misspelt would be passed
// over.
func (m *Mapping) fits(log string, sheets []*layout.Sheet) error {
	for _, s := range m.Sheets {
		if s.Log != log && s.Log != "" {
			continue
		}
		has := map[string]bool{}
		for _, x := range sheets {
			for _, b := range x.Blocks {
				for _, l := range b.Labels {
					if x.Grid.Info.Name == s.Sheet {
						has[strings.ToLower(l.Full())] = true
					}
				}
			}
		}
		for heading := range s.Columns {
			if s.Log != "" && !has[strings.ToLower(heading)] {
				return fmt.Errorf("mapping: %s %s: no heading %q", s.Log, s.Sheet, heading)
			}
		}
	}
	return nil
}

func (s *MappedSheet) read(columns []*plan.Column) (meaning.Said, error) {
	said := meaning.Said{Kind: plan.Kind(s.Kind), Columns: map[string]*meaning.SaidColumn{}}
	if s.Kind != "" && !slices.Contains(plan.Kinds(), said.Kind) {
		return said, fmt.Errorf("kind %q: expected %s", s.Kind, kindNames())
	}
	for heading, text := range s.Columns {
		to, err := readColumn(columns, said.Kind, text)
		if err != nil {
			return said, fmt.Errorf("%q: %w", heading, err)
		}
		said.Columns[strings.ToLower(heading)] = to
	}
	return said, nil
}

// readColumn reads "NAME", "NAME UNIT" or "NAME/WAY UNIT"; "" keeps the cells by name.
func readColumn(columns []*plan.Column, kind plan.Kind, text string) (*meaning.SaidColumn, error) {
	to := &meaning.SaidColumn{}
	w := strings.Fields(text)
	if len(w) == 0 {
		return to, nil
	}
	name, parse, _ := strings.Cut(w[0], "/")
	for _, c := range columns {
		if c.Name == name && (parse == "" || c.Parse == parse) &&
			(to.Column == nil || !to.Column.In(kind) && c.In(kind)) {
			to.Column = c
		}
	}
	if to.Column == nil {
		return to, fmt.Errorf("%q is no column", w[0])
	}
	if len(w) > 1 {
		u, ok := unit.Lookup(strings.Join(w[1:], " "))
		if !ok {
			return to, fmt.Errorf("%q is no unit", strings.Join(w[1:], " "))
		}
		if !to.Column.HasUnit || to.Column.Dimension != u.Dimension() {
			return to, fmt.Errorf("%s cannot be in %s", name, u)
		}
		to.Unit = u
	}
	return to, nil
}

func kindNames() string {
	var names []string
	for _, k := range plan.Kinds() {
		names = append(names, string(k))
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

// WriteMapping writes how the sheets of reports were understood, to be edited.
func WriteMapping(w io.Writer, reports []LogReport) error {
	if _, err := io.WriteString(w, mappingHead); err != nil {
		return err
	}
	if err := writeColumnNames(w); err != nil {
		return err
	}
	for _, r := range reports {
		for _, s := range r.Sheets {
			if err := writeMappedSheet(w, r.Name, s); err != nil {
				return err
			}
		}
	}
	return nil
}

const mappingHead = `# How these logs are read. Change what is wrong, take out what is right, and give
# the file with --mapping. A column is "NAME" or "NAME UNIT" (the unit of cells
# that state none); "" keeps the cells under their heading.
`

// writeColumnNames lists, as comments, the columns that each kind of sheet may have.
func writeColumnNames(w io.Writer) error {
	columns, err := plan.Columns()
	if err != nil {
		return err
	}
	for _, k := range plan.Kinds() {
		var names []string
		for _, c := range columns {
			if c.In(k) && !slices.Contains(names, c.Name) {
				names = append(names, c.Name)
			}
		}
		if _, err := fmt.Fprintf(w, "#\n# %s: %s\n", k, strings.Join(names, " ")); err != nil {
			return err
		}
	}
	return nil
}

func writeMappedSheet(w io.Writer, log string, s SheetReport) error {
	var b strings.Builder
	fmt.Fprintf(&b, "\n[[sheet]]\nlog = %s\nsheet = %s\n", quoted(log), quoted(s.Name))
	why := s.Why
	if s.Kind == "" {
		why = "not understood: say trips, legs, lines, strikes, fish or flat, and below what each heading is"
	}
	fmt.Fprintf(&b, "kind = %s # %s\nheader-row = %d\n[sheet.columns]\n", quoted(s.Kind),
		strings.ReplaceAll(why, "\n", " "), s.HeaderRow)
	written := map[string]bool{}
	for _, c := range s.Columns {
		if written[c.Heading] {
			fmt.Fprintf(&b, "# a second heading %s cannot be mapped by name\n", quoted(c.Heading))
			continue
		}
		written[c.Heading] = true
		if c.As != "" {
			fmt.Fprintf(&b, "# %s is read as %s%s\n", quoted(c.Heading), c.As, comment(c))
			continue
		}
		fmt.Fprintf(&b, "%s = %s%s\n", quoted(c.Heading), quoted(strings.TrimSpace(c.Column+" "+c.Unit)), comment(c))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func comment(c ColumnReport) string {
	var parts []string
	if c.Nearest != "" {
		parts = append(parts, "not understood; is it "+c.Nearest+"?")
	}
	if len(c.Samples) > 0 {
		parts = append(parts, "such as "+strings.Join(c.Samples, ", "))
	}
	if len(parts) == 0 {
		return ""
	}
	return " # " + strings.NewReplacer("\n", " ", "\r", " ").Replace(strings.Join(parts, "; "))
}

func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < 0x20 || r == 0x7f:
			fmt.Fprintf(&b, "\\u%04X", r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
