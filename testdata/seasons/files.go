package seasons

import (
	"errors"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"
)

// Written is a season on disk, with what its owner must say of it because its
// files do not.
type Written struct {
	Files []string
	Boat  string // the only boat, where no row names it
	Units string // us or metric, where headings have no units
	Order string // day-first or month-first, where no date of a file proves it
	Comma bool   // where no number of a file proves the decimal comma
}

// Write writes the season into dir in a format. The files' names begin with
// name. It writes the same files every time.
func Write(dir, name string, s *Season, f Format) (Written, error) {
	w := newWriter(s, f)
	out := Written{Units: w.system}
	if f.flat() && !w.boats {
		out.Boat = s.Boats[0]
		if len(s.Boats) > 1 {
			w.boats = true
			out.Boat = ""
		}
	}
	sheets := w.sheets()
	grids := make([][][]rendered, len(sheets))
	for i := range sheets {
		grids[i] = w.grid(sheets[i])
	}
	if f.book() {
		out.Files = []string{filepath.Join(dir, name+".xlsx")}
		out.settle(f, grids...)
		return out, writeBook(out.Files[0], f, sheets, grids)
	}
	for i, g := range grids {
		path := filepath.Join(dir, name+"-"+strings.ToLower(sheets[i].name)+".csv")
		out.Files = append(out.Files, path)
		out.settle(f, g)
		if err := w.writeText(path, g); err != nil {
			return out, err
		}
	}
	return out, nil
}

var (
	slashed   = regexp.MustCompile(`^(\d{1,2})[/-](\d{1,2})[/-]\d{2,4}$`)
	mayGroup  = regexp.MustCompile(`^-?[1-9]\d{0,2},\d{3}(\D.*)?$`)
	mustBreak = regexp.MustCompile(`^-?\d+,\d{1,2}(\D.*)?$|^-?\d+,\d{4,}(\D.*)?$|^-?0,\d+`)
)

// settle finds whether one file leaves its dates or its decimal mark open.
// Positions do not count as proof: the loader takes none from them.
func (out *Written) settle(f Format, grids ...[][]rendered) {
	dates, proved, open, comma := false, false, false, false
	for _, g := range grids {
		for _, r := range g {
			for _, c := range r {
				if m := slashed.FindStringSubmatch(c.text); m != nil {
					dates = true
					proved = proved || m[1] > "12" && len(m[1]) == 2 || m[2] > "12" && len(m[2]) == 2
				}
				open = open || mayGroup.MatchString(c.text)
				comma = comma || mustBreak.MatchString(c.text)
			}
		}
	}
	if dates && !proved {
		out.Order = f.Dates
	}
	out.Comma = out.Comma || f.Separator == "semicolon" && open && !comma
}

func writeBook(path string, f Format, sheets []sheet, grids [][][]rendered) (err error) {
	book := excelize.NewFile()
	defer func() { err = errors.Join(err, book.Close()) }()
	is1904 := f.Dates == "real-1904"
	if err := book.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &is1904}); err != nil {
		return err
	}
	for i, s := range sheets {
		if _, err := book.NewSheet(s.name); err != nil {
			return err
		}
		if err := fillSheet(book, s.name, grids[i]); err != nil {
			return err
		}
	}
	if err := book.DeleteSheet("Sheet1"); err != nil {
		return err
	}
	return book.SaveAs(path)
}

func fillSheet(book *excelize.File, name string, g [][]rendered) error {
	styles := map[string]int{}
	for y, r := range g {
		for x, c := range r {
			at, err := excelize.CoordinatesToCellName(x+1, y+1)
			if err != nil {
				return err
			}
			if err := fillCell(book, name, at, c, styles); err != nil {
				return err
			}
		}
	}
	return nil
}

func fillCell(book *excelize.File, name, at string, c rendered, styles map[string]int) error {
	switch {
	case !c.isNum && c.text == "":
		return nil
	case !c.isNum:
		return book.SetCellStr(name, at, c.text)
	}
	if c.show != "" {
		if _, ok := styles[c.show]; !ok {
			id, err := book.NewStyle(&excelize.Style{CustomNumFmt: &c.show})
			if err != nil {
				return err
			}
			styles[c.show] = id
		}
		if err := book.SetCellStyle(name, at, at, styles[c.show]); err != nil {
			return err
		}
	}
	return book.SetCellFloat(name, at, c.number, -1, 64)
}

// writeText writes separated values. One file in four leaves the quotes of
// 6'2" as they are typed, without quoting the cell.
func (w *writer) writeText(path string, g [][]rendered) error {
	sep := map[string]string{"comma": ",", "semicolon": ";", "tab": "\t"}[w.f.Separator]
	loose := w.IntN(4) == 0
	end := []string{"\n", "\r\n"}[w.IntN(2)]
	var b strings.Builder
	for _, r := range g {
		for i, c := range r {
			if i > 0 {
				b.WriteString(sep)
			}
			b.WriteString(quoted(c.text, sep, loose))
		}
		b.WriteString(end)
	}
	return os.WriteFile(path, encode(b.String(), w.f.Encoding), 0o644)
}

var feetInches = regexp.MustCompile(`^\d+'\d+"$`)

func quoted(s, sep string, loose bool) string {
	if !strings.ContainsAny(s, sep+"\"\r\n") || loose && feetInches.MatchString(s) {
		return s
	}
	return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
}

// encode writes text as bytes; the texts of a season hold no character that
// Windows-1252 lacks.
func encode(s, encoding string) []byte {
	switch encoding {
	case "utf-8-bom":
		return []byte("\ufeff" + s)
	case "utf-16le":
		b := []byte{0xff, 0xfe}
		for _, u := range utf16.Encode([]rune(s)) {
			b = append(b, byte(u), byte(u>>8))
		}
		return b
	case "windows-1252":
		var b []byte
		for _, r := range s {
			b = append(b, byte1252(r))
		}
		return b
	}
	return []byte(s)
}

// byte1252 is a character's byte; the few beyond Latin-1 that the texts hold
// are by the WHATWG's table of windows-1252.
func byte1252(r rune) byte {
	switch r {
	case '–':
		return 0x96
	case '’':
		return 0x92
	}
	return byte(r)
}
