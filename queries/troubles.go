package queries

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/store"
)

// Trouble is what went wrong in one way with rows of one log.
type Trouble struct {
	// Reason is the way in which, in our own words: no cell, heading, sheet or file.
	Reason string
	File   string
	Log    int // the log's number in the order of loading, from 1; 0: not known
	Rows   int64
	// Examples are the first of them, at most MostExamples, in the order of the log.
	Examples []Example
	// Effect is the totals that may change once they are mended, as in Question.Effect;
	// empty: none that is counted.
	Effect []string
}

// Example is one row of a Trouble, with what stands in the log.
type Example struct {
	Sheet string
	Row   int64 // 0: the whole log or sheet
	Found string
}

// MostExamples of a Trouble are kept.
const MostExamples = 3

// Troubles are the rows of the season that were set aside, and those kept with a doubt, by
// way and log, the most rows first.
type Troubles struct{ Aside, Doubts []Trouble }

// Count is how many rows or cells that is.
func Count(all []Trouble) (n int64) {
	for _, t := range all {
		n += t.Rows
	}
	return n
}

// AskTroubles groups what went wrong with rows of the logs.
func AskTroubles(ctx context.Context, db *store.DB) (t Troubles, err error) {
	aside, err := AskSetAside(ctx, db)
	if err != nil {
		return t, err
	}
	doubts, err := AskDoubts(ctx, db)
	if err != nil {
		return t, err
	}
	logs, err := AskLogRead(ctx, db)
	if err != nil {
		return t, err
	}
	questions, err := AskQuestions(ctx, db)
	if err != nil {
		return t, err
	}
	g := grouping{logs: logs}
	for _, r := range aside {
		effect := effectOf(questions, r)
		g.add(ownWords(r.Reason, r.Cell, r.Column, r.Sheet, r.File), r.File, Example{r.Sheet, r.Row, r.Cell}, effect)
	}
	t.Aside = g.sorted()
	g = grouping{logs: logs}
	for _, d := range doubts {
		reason, effect := doubtWords(d)
		g.add(reason, d.File, Example{d.Sheet, d.Row, d.Found}, effect)
	}
	t.Doubts = g.sorted()
	return t, nil
}

// effectOf is what rests on a cell or row that could not be used: what the question about
// its column says, else that about all such of its log.
func effectOf(questions []Question, r SetAside) []string {
	var all []string
	for _, q := range questions {
		switch {
		case q.File != r.File:
		case r.Column != "" && q.Sheet == r.Sheet && q.About == r.Column:
			return q.Effect
		case q.Kind == "aside":
			all = q.Effect
		}
	}
	return all
}

// doubtEffects are the totals that a doubt is about, by its check.
var doubtEffects = map[string][]string{
	"legs overlap":            {"boat_hours", "line_hours"},
	"long leg":                {"boat_hours", "line_hours"},
	"odd speed":               {"bands"},
	"strike without a leg":    {"bands"},
	"strike at another speed": {"bands"},
	"fish without a strike":   {"strikes"},
	"long fish":               {"weights"},
	"heavy fish":              {"weights"},
	"girth and length":        {"weights"},
	"scale and tape":          {"weights"},
	"odd date":                {"trips"},
	"future date":             {"trips"},
}

const readDoubt = ": read with a doubt"

// doubtWords are a doubt in our own words, and what it is about. A check of cells begins
// with the log's own heading.
func doubtWords(d Doubt) (reason string, effect []string) {
	if heading, ok := strings.CutSuffix(d.Check, readDoubt); ok {
		return ownWords(d.Reason, d.Found, heading, d.Sheet, d.File), []string{"what it says"}
	}
	return d.Check, doubtEffects[d.Check]
}

var (
	quoted  = regexp.MustCompile(`"[^"]*"|“[^”]*”|‘[^’]*’|\x60[^\x60]*\x60`)
	wordy   = regexp.MustCompile(`[\pL\pN][\pL\pN.'’-]+`)
	figures = regexp.MustCompile(`\b\d{1,2}:\d{2}\b|\b\d+[.,]\d+\b`)
)

// ownWords are a reason without what it took from the log: what is in quotes, and each word
// of the log's own text that is not a word of the reason's usual form.
func ownWords(reason string, theirs ...string) string {
	form := quoted.ReplaceAllString(reason, "…")
	for _, text := range theirs {
		for _, w := range wordy.FindAllString(text, -1) {
			if len(w) > 2 && !usual[strings.ToLower(w)] {
				form = regexp.MustCompile(`(?i)(^|[^\pL\pN])`+regexp.QuoteMeta(w)+
					`($|[^\pL\pN])`).ReplaceAllString(form, "${1}…${2}")
			}
		}
	}
	if len(theirs) > 0 && figures.MatchString(theirs[0]) {
		for _, f := range figures.FindAllString(theirs[0], -1) {
			form = strings.ReplaceAll(form, f, "…")
		}
	}
	return form
}

// usual are words that reasons are made of; a log that holds one gives nothing away by it.
var usual = wordSet(`a an the is are was not no date time number count weight length speed hours line lines row cell rest of kept
	expected one like or and guess measurement write plain the doubt in notes range its middle taken without whole from to with
	table understood none headings about its effort strikes fish start end day month year order unit units known flag say says both
	leg legs trip lure colour setback girth scale species strike logged read as be it more than that this stretch left out set aside`)

func wordSet(s string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(s) {
		set[w] = true
	}
	return set
}

// grouping gathers rows by reason and log.
type grouping struct {
	logs []LogRead
	all  []Trouble
}

func (g *grouping) add(reason, file string, e Example, effect []string) {
	at := slices.IndexFunc(g.all, func(t Trouble) bool { return t.Reason == reason && t.File == file })
	if at < 0 {
		n := slices.IndexFunc(g.logs, func(l LogRead) bool { return l.File == file }) + 1
		at, g.all = len(g.all), append(g.all, Trouble{Reason: reason, File: file, Log: n, Effect: effect})
	}
	t := &g.all[at]
	if t.Rows++; len(t.Examples) < MostExamples {
		t.Examples = append(t.Examples, e)
	}
}

func (g *grouping) sorted() []Trouble {
	slices.SortStableFunc(g.all, func(a, b Trouble) int { return int(b.Rows - a.Rows) })
	return g.all
}

// Place is where an example stands, without the log's own text.
func (e Example) Place() string {
	if e.Row == 0 {
		return "the whole table"
	}
	return fmt.Sprintf("row %d", e.Row)
}
