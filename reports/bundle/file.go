package bundle

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"reflect"
	"strconv"
	"strings"

	"wakeledger/pipeline/infile"
)

// Version is that of the file's form. Form 2, which says of no fish that it is doubtful, can
// still be read; others are refused.
const (
	Version           = 3
	formWithoutDoubts = 2
)

const (
	kind         = "wakeledger-club-summary" // the package's name: what it is
	profile      = "data-package"            // of the standard
	manifestName = "datapackage.json"
	mostFile     = 1 << 20   // bytes; a bundle has some ten thousand
	mostPart     = 256 << 10 // bytes of a part, unpacked; one has some thousands
	mostParts    = 32
)

// Errors of Read, wrapped with the file's name and what was found.
var (
	ErrForeign = errors.New("this is no club summary of wakeledger")
	ErrDamaged = errors.New("the club summary is damaged: ask the boat to send it again")
	ErrLater   = errors.New("the club summary was made by a later version of wakeledger")
	ErrEarlier = errors.New("the club summary was made by an earlier version of wakeledger, which hid less: ask the " +
		"boat to make it again")
)

// manifest is the Data Package descriptor of a bundle (Frictionless Data
// Package, version 1), with the boat's id and the version of our form.
type manifest struct {
	Profile   string     `json:"profile"`
	Name      string     `json:"name"`
	About     string     `json:"description"`
	Version   string     `json:"version"`
	Boat      string     `json:"boat"`
	Open      int64      `json:"open_questions,omitempty"`
	Resources []resource `json:"resources"`
}

// about is the bundle's own description: the rule that it is made by.
const about = "What one boat shares of its season. Each row is of at least three trips on three days with effort. " +
	"No trip and no day is more than four fifths of a figure, nor of what is left of it without any other trip or " +
	"day; " +
	"a count that would be, or that is nothing at all, is not shown (null), nor are so many others that it follows " +
	"by subtraction. " +
	"Rows that may not stand alone stand together as merged. Minimum frequency rule (n = 3), p% rule (p = 25) and " +
	"secondary suppression: " +
	"Hundepool et al., Handbook on Statistical Disclosure Control, sections 4.2.1 and 4.2.2. The single fish of " +
	"table heaviest are named on purpose."

type resource struct {
	Name   string `json:"name"`
	Path   string `json:"path"`
	Format string `json:"format"`
	Bytes  int    `json:"bytes"`
	Hash   string `json:"hash"` // "sha256:" and 64 hexadecimal digits
}

// parts are the tables of a season in the order of the file. rows points to a slice.
func (s *Season) parts(total *[]Total) []struct {
	name string
	rows any
} {
	return []struct {
		name string
		rows any
	}{{"season", total}, {"months", &s.Months}, {"speeds", &s.Speeds}, {"lures", &s.Lures},
		{"species", &s.Species}, {"sizes", &s.Sizes}, {"heaviest", &s.Heaviest}, {"people", &s.People}}
}

// Write writes a season as a bundle. The same season gives the same bytes.
func Write(w io.Writer, s Season) error {
	if err := s.Check(); err != nil {
		return err
	}
	m := manifest{Profile: profile, Name: kind, About: about, Version: strconv.Itoa(Version), Boat: s.ID, Open: s.Open}
	z := zip.NewWriter(w)
	total := []Total{s.Total}
	for _, p := range s.parts(&total) {
		b, err := writeParquet(reflect.ValueOf(p.rows).Elem().Interface())
		if err != nil {
			return fmt.Errorf("table %s: %w", p.name, err)
		}
		r := resource{Name: p.name, Path: p.name + ".parquet", Format: "parquet", Bytes: len(b), Hash: hashOf(b)}
		m.Resources = append(m.Resources, r)
		if err := writePart(z, r.Path, b); err != nil {
			return err
		}
	}
	b, err := json.MarshalIndent(m, "", "  ")
	if err != nil {
		return err
	}
	return errors.Join(writePart(z, manifestName, b), z.Close())
}

func writePart(z *zip.Writer, name string, b []byte) error {
	f, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate})
	if err != nil {
		return err
	}
	_, err = f.Write(b)
	return err
}

func hashOf(b []byte) string {
	sum := sha256.Sum256(b)
	return "sha256:" + hex.EncodeToString(sum[:])
}

// IsOne tells a bundle of this or another version.
func IsOne(r io.ReaderAt, size int64) bool {
	if size > mostFile {
		return false
	}
	z, err := zip.NewReader(r, size)
	if err != nil {
		return false
	}
	_, err = readManifest(z)
	return err == nil || errors.Is(err, ErrLater)
}

// ReadFile reads the bundle at path. The error says what is wrong with it; see
// Read.
func ReadFile(path string) (Season, error) {
	if err := infile.CheckSmall(path, mostFile, "a club summary"); err != nil {
		return Season{}, err
	}
	b, err := os.ReadFile(path)
	if err != nil {
		return Season{}, err
	}
	s, err := Read(b)
	if err != nil {
		return Season{}, fmt.Errorf("%s: %w", path, err)
	}
	return s, nil
}

// Read reads a bundle: ErrForeign where it is something else, ErrLater or ErrEarlier where its
// form is another one, ErrDamaged where a part is missing, is not the one that
// the manifest names, or says what no boat would share.
func Read(b []byte) (Season, error) {
	z, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		if bytes.HasPrefix(b, []byte("PK\x03\x04")) && bytes.Contains(b, []byte("season.parquet")) {
			return Season{}, fmt.Errorf("%w (%v)", ErrDamaged, err)
		}
		return Season{}, fmt.Errorf("%w (%v)", ErrForeign, err)
	}
	m, err := readManifest(z)
	if err != nil {
		return Season{}, err
	}
	s := Season{ID: m.Boat, Open: m.Open}
	var total []Total
	var old []heavyOfForm2
	for _, p := range s.parts(&total) {
		if p.name == "heaviest" && m.Version == strconv.Itoa(formWithoutDoubts) {
			p.rows = &old
		}
		if err := m.readPart(z, p.name, p.rows); err != nil {
			return Season{}, fmt.Errorf("%w (table %s: %v)", ErrDamaged, p.name, err)
		}
	}
	for _, f := range old {
		s.Heaviest = append(s.Heaviest, f.heavy())
	}
	if len(total) != 1 {
		return Season{}, fmt.Errorf("%w (%d seasons)", ErrDamaged, len(total))
	}
	s.Total = total[0]
	if err := s.Check(); err != nil {
		return Season{}, fmt.Errorf("%w (%v)", ErrDamaged, err)
	}
	return s, nil
}

// heavyOfForm2 is a Heavy of form 2.
type heavyOfForm2 struct {
	List     string   `json:"list"`
	Species  string   `json:"species"`
	When     string   `json:"when"`
	WeightKG float64  `json:"weight_kg"`
	LoKG     *float64 `json:"lo_kg"`
	HiKG     *float64 `json:"hi_kg"`
}

func (f heavyOfForm2) heavy() Heavy {
	return Heavy{List: f.List, Species: f.Species, When: f.When, WeightKG: f.WeightKG, LoKG: f.LoKG, HiKG: f.HiKG}
}

func readManifest(z *zip.Reader) (manifest, error) {
	var m manifest
	if len(z.File) > mostParts {
		return m, ErrForeign
	}
	b, err := unpack(z, manifestName)
	if err != nil {
		return m, fmt.Errorf("%w (%v)", ErrForeign, err)
	}
	if err := json.Unmarshal(b, &m); err != nil || m.Name != kind {
		return m, ErrForeign
	}
	version, err := strconv.Atoi(m.Version)
	if err != nil {
		return m, ErrDamaged
	}
	if version > Version {
		return m, ErrLater
	}
	if version < formWithoutDoubts {
		return m, ErrEarlier
	}
	return m, nil
}

func unpack(z *zip.Reader, name string) ([]byte, error) {
	f, err := z.Open(name)
	if err != nil {
		return nil, fmt.Errorf("no %s in it", name)
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, mostPart+1))
	if err == nil && len(b) > mostPart {
		err = fmt.Errorf("%s is larger than %d bytes", name, mostPart)
	}
	return b, err
}

func (m manifest) readPart(z *zip.Reader, name string, rows any) error {
	for _, r := range m.Resources {
		if r.Name != name {
			continue
		}
		if strings.ContainsAny(r.Path, `/\`) {
			return fmt.Errorf("its path is %q", r.Path)
		}
		b, err := unpack(z, r.Path)
		if err != nil {
			return err
		}
		if hashOf(b) != r.Hash {
			return errors.New("its SHA-256 is not the manifest's")
		}
		return readParquet(b, rows)
	}
	return errors.New("the manifest does not name it")
}
