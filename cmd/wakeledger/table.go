package main

import (
	"fmt"
	"io"
	"os"
	"reflect"
	"strings"

	"golang.org/x/term"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/species"
	"wakeledger/queries"
	"wakeledger/reports/terminal"
)

// fullWidth is how wide a table is at most, where the terminal is not narrower.
const (
	fullWidth  = 100
	leastWidth = 60
)

// widthFor is the width for what is written to w.
func widthFor(w io.Writer) int {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return fullWidth
	}
	width, _, err := term.GetSize(int(f.Fd()))
	if err != nil || width <= 0 {
		return fullWidth
	}
	return max(min(width, fullWidth), leastWidth)
}

// writeAnswer writes the answer to a question as a table, with what is to be known of it
// below.
func (a *app) writeAnswer(q question, f *askFlags, rows any) error {
	if reflect.ValueOf(rows).Len() == 0 {
		_, err := fmt.Fprintln(a.out, "Nothing to show.")
		return err
	}
	list, err := species.Default()
	if err != nil {
		return err
	}
	v := terminal.View{Once: "boat", US: f.us, Width: widthFor(a.stdout), Clean: shown, Paint: a.verdictPaint(),
		Text: inWords(q, f.factor, list)}
	if v.Columns, err = columnsAsked(q, f, rows); err != nil {
		return err
	}
	if f.columns == allColumns {
		v.Width = 0
	}
	if err := terminal.Write(a.colours, rows, v); err != nil || f.columns != "" {
		return err
	}
	return a.footnote(q, rows, f.factor)
}

// footnote says below a table what its columns mean.
func (a *app) footnote(q question, rows any, factor string) error {
	note := q.footnote
	if all, ok := rows.([]queries.StrikeRate); ok && len(all) > 0 && all[0].ComparedWith != "" {
		note = "rate: strikes per line-hour. ratio: to " + factors.Text(factor, all[0].ComparedWith) +
			", on the same trips or legs."
	}
	if note == "" {
		return nil
	}
	_, err := fmt.Fprintf(a.out, "\n%s\n", shown(note))
	return err
}

// allColumns is the word for every column.
const allColumns = "all"

// columnsAsked are the columns of a table: those of the question, or those of the flag,
// each by its name in JSON or by its heading.
func columnsAsked(q question, f *askFlags, rows any) ([]string, error) {
	usual := columnsOf(q.columns)
	names := terminal.Names(rows)
	switch f.columns {
	case "":
		return usual, nil
	case allColumns:
		return names, nil
	}
	var chosen []string
	for _, word := range strings.Split(f.columns, ",") {
		column := columnNamed(word, names, usual)
		if column == "" {
			return nil, usage("--columns: %s has no column %q. %sIts columns are %s", q.name, strings.TrimSpace(word),
				didYouMean(word, names), strings.Join(names, ", "))
		}
		chosen = append(chosen, column)
	}
	return chosen, nil
}

func columnNamed(word string, names, usual []string) string {
	plain := func(s string) string {
		return strings.NewReplacer("_", "", "-", "", " ", "").Replace(strings.ToLower(s))
	}
	for _, n := range names {
		bare := strings.TrimSuffix(strings.TrimSuffix(strings.TrimSuffix(n, "_kg"), "_cm"), "_m")
		if plain(word) == plain(n) || plain(word) == plain(bare) {
			return n
		}
	}
	for _, u := range usual {
		if _, heading, ok := strings.Cut(u, "|"); ok && plain(heading) == plain(word) {
			return u
		}
	}
	return ""
}

// columnsOf are the columns that a question's table has: in their headings, _ is a space.
func columnsOf(spec string) []string {
	columns := strings.Fields(spec)
	for i, c := range columns {
		if name, heading, ok := strings.Cut(c, "|"); ok {
			columns[i] = name + "|" + strings.ReplaceAll(heading, "_", " ")
		}
	}
	return columns
}

// inWords puts the texts of an answer into words: classes, codes of species, totals.
func inWords(q question, factor string, list *species.List) func(string, string, func(string) string) string {
	if q.name == "gear" {
		factor = factors.Drag
	}
	return func(column, text string, row func(string) string) string {
		switch column {
		case "level", "compared_with":
			return factors.Text(factor, text)
		case "speed_band":
			return factors.Text("speed-band", text)
		case "setting_a", "setting_b", "better", "other":
			return factors.Text(row("factor"), text)
		case "species":
			return nameOfSpecies(list, text)
		case "heaviest_method":
			return queries.WeighedBy(text) + doubtfulWhere(row("heaviest_doubt"))
		case "method":
			if q.name == "fish" {
				return queries.WeighedBy(text) + doubtfulWhere(row("doubt"))
			}
			return queries.WeighedBy(text)
		case "note":
			return shortNote(text)
		case "first_utc", "last_utc":
			return strings.Replace(text, "T", " ", 1)[:min(len(text), len("2006-01-02 15:04"))]
		case "effect":
			return effectWords(strings.Split(text, "; "))
		}
		return text
	}
}

// doubtfulWhere marks a weight where its measures are doubted.
func doubtfulWhere(doubt string) string {
	if doubt == "" {
		return ""
	}
	return " (doubtful)"
}

// shortNote is a note on a level where the table below says the rest.
func shortNote(note string) string {
	switch {
	case strings.Contains(note, "the others are compared with"):
		return "ratios are to this one"
	case note == "the log does not say":
		return ""
	}
	return note
}

// verdictPaint colours verdicts where they are seen as they come; nil where they are not,
// or are not wanted (NO_COLOR, no-color.org).
func (a *app) verdictPaint() func(column, cell string) string {
	if !isTerminal(a.stdout) || os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return nil
	}
	return paintVerdict
}

// paintVerdict has what is settled bold and green, what is leaning yellow (ISO 6429).
func paintVerdict(column, cell string) string {
	colour := map[string]string{"settled": "1;32", "leaning": "33"}[cell]
	if column != "verdict" || colour == "" {
		return cell
	}
	return "\x1b[" + colour + "m" + cell + "\x1b[0m"
}

// writeAs writes rows that are no question's in a format: table, csv or json.
func (a *app) writeAs(format string, rows any) error {
	if format != "table" {
		return formats[format](a.plain, rows)
	}
	return terminal.Write(a.out, rows, terminal.View{Width: widthFor(a.stdout)})
}

// folded is a text behind a beginning, in lines that stand under each other.
func folded(begin, text string) string {
	width := fullWidth - len(begin)
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len(line)+1+len(word) > width {
			lines, line = append(lines, line), ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	lines = append(lines, line)
	return begin + strings.Join(lines, "\n"+strings.Repeat(" ", len(begin)))
}
