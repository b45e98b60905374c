package species

import (
	"encoding/csv"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

const (
	speciesHeader = "code,scientific,name,group,max_length_cm,max_length_kind,max_weight_kg,source"
	namesHeader   = "name,code,ocean,source,note"
)

var (
	codeForm = regexp.MustCompile(`^[A-Z]{3}$`)
	groups   = []string{"tuna", "small tuna", "bonito", "billfish", "mackerel", "dolphinfish", "jack",
		"barracuda", "shark", "other"}
	lengthKinds = []string{"", "FL", "SFL", "TL", "LJFL"}
)

// cell is one cell with its place in an embedded table.
type cell struct {
	file, column string
	row          int // line of the file, counted from 1
	text         string
}

func (c cell) fault(format string, args ...any) error {
	return fmt.Errorf("%s row %d column %s: %s", c.file, c.row, c.column, fmt.Sprintf(format, args...))
}

// readRows reads a CSV text with a known header into rows of cells by column.
func readRows(file, text, header string) ([]map[string]cell, error) {
	records, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", file, err)
	}
	if len(records) == 0 || strings.Join(records[0], ",") != header {
		return nil, fmt.Errorf("%s row 1: the columns are not %s", file, header)
	}
	var out []map[string]cell
	for i, rec := range records[1:] {
		row := map[string]cell{}
		for j, column := range records[0] {
			row[column] = cell{file, column, i + 2, strings.TrimSpace(rec[j])}
		}
		out = append(out, row)
	}
	return out, nil
}

// parse builds a list from the two tables; the error holds every fault found.
func parse(speciesText, namesText string) (*List, error) {
	srows, err := readRows("species.csv", speciesText, speciesHeader)
	if err != nil {
		return nil, err
	}
	nrows, err := readRows("names.csv", namesText, namesHeader)
	if err != nil {
		return nil, err
	}
	l := &List{byCode: map[string]Species{}, names: map[string][]meaning{}}
	var errs []error
	for _, row := range srows {
		errs = append(errs, l.addSpecies(row)...)
	}
	for _, row := range nrows {
		errs = append(errs, l.addName(row)...)
	}
	if err := errors.Join(errs...); err != nil {
		return nil, fmt.Errorf("reading the species list: %w", err)
	}
	return l, nil
}

func (l *List) addSpecies(row map[string]cell) (errs []error) {
	s := Species{Code: row["code"].text, Scientific: row["scientific"].text, Name: row["name"].text,
		Group: row["group"].text, MaxLengthKind: row["max_length_kind"].text}
	if !codeForm.MatchString(s.Code) {
		errs = append(errs, row["code"].fault("%q is not a code of three capitals", s.Code))
	}
	if _, twice := l.byCode[s.Code]; twice {
		errs = append(errs, row["code"].fault("%q stands twice", s.Code))
	}
	for _, column := range []string{"scientific", "name", "source"} {
		if row[column].text == "" {
			errs = append(errs, row[column].fault("is blank"))
		}
	}
	if !slices.Contains(groups, s.Group) {
		errs = append(errs, row["group"].fault("%q is none of %q", s.Group, groups))
	}
	if !slices.Contains(lengthKinds, s.MaxLengthKind) {
		errs = append(errs, row["max_length_kind"].fault("%q is none of %q", s.MaxLengthKind, lengthKinds))
	}
	for column, v := range map[string]*float64{"max_length_cm": &s.MaxLengthCM, "max_weight_kg": &s.MaxWeightKG} {
		if err := row[column].positive(v); err != nil {
			errs = append(errs, err)
		}
	}
	l.byCode[s.Code], l.order = s, append(l.order, s.Code)
	for _, name := range []string{s.Code, s.Scientific, abbreviated(s.Scientific), s.Name} {
		l.mean(name, meaning{code: s.Code})
	}
	return errs
}

// positive reads a number above zero into v; a blank cell leaves it zero.
func (c cell) positive(v *float64) error {
	if c.text == "" {
		return nil
	}
	x, err := strconv.ParseFloat(c.text, 64)
	if err != nil || !(x > 0) {
		return c.fault("%q is not a number above zero", c.text)
	}
	*v = x
	return nil
}

// abbreviated is a scientific name with its genus cut to a letter.
func abbreviated(scientific string) string {
	genus, rest, ok := strings.Cut(scientific, " ")
	if !ok || genus == "" {
		return scientific
	}
	return genus[:1] + " " + rest
}

func (l *List) addName(row map[string]cell) (errs []error) {
	m := meaning{code: row["code"].text, ocean: row["ocean"].text, note: row["note"].text}
	if normalise(row["name"].text) == "" {
		errs = append(errs, row["name"].fault("is blank"))
	}
	if _, ok := l.byCode[m.code]; !ok {
		errs = append(errs, row["code"].fault("no species has the code %q", m.code))
	}
	if m.ocean != "" && !slices.Contains(oceans, m.ocean) {
		errs = append(errs, row["ocean"].fault("%q is none of %q", m.ocean, oceans))
	}
	if row["source"].text == "" {
		errs = append(errs, row["source"].fault("is blank"))
	}
	if !l.mean(row["name"].text, m) {
		errs = append(errs, row["name"].fault("%q stands twice for %s", row["name"].text, m.code))
	}
	return errs
}

// mean records what a name means; false where the same row was there already. The
// names that a species brings with it give way to rows for the same code.
func (l *List) mean(name string, m meaning) bool {
	key := normalise(name)
	for i, old := range l.names[key] {
		if old.code == m.code && old.ocean == m.ocean {
			if old.note == "" && m.note != "" {
				l.names[key][i].note = m.note
			}
			return false
		}
	}
	l.names[key] = append(l.names[key], m)
	l.longest = max(l.longest, strings.Count(key, " ")+1)
	return true
}
