package meaning

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
)

// holdsOn are the settings that hold until they are changed: where one is blank, that of the row above
// may have been meant.
var holdsOn = []string{"speed_kn", "lines_out"}

// fewCopied is how many cells of a column must be those of another, and how many of its blanks be
// filled there, for the other to be it with its blanks filled.
const fewCopied = 3

// filledDown takes a setting from the column in which the log's owner filled its blanks with the value
// of the row above, as a formula does.
func (x *builder) filledDown() {
	p := x.plan
	if p.Kind != plan.Flat && p.Kind != plan.Legs {
		return
	}
	for i := range p.Bindings {
		b := &p.Bindings[i]
		if !slices.Contains(holdsOn, b.Column.Name) || b.By != nil || b.Set > 0 {
			continue
		}
		at := slices.IndexFunc(p.Unknown, func(u plan.Unknown) bool { return x.fillsDown(b.Index, u.Index) })
		if at < 0 {
			continue
		}
		from := p.Unknown[at]
		x.note("%s: %q has it with its blanks filled from the row above, and was taken", b.Heading, from.Heading)
		p.Unknown = slices.Clone(p.Unknown)
		p.Unknown[at] = plan.Unknown{Index: b.Index, Heading: b.Heading, Aside: "filled"}
		b.Index, b.Heading = from.Index, from.Heading
	}
}

// fillsDown tells whether a column is another one wherever that is filled, and the value of the row
// above wherever it is blank.
func (x *builder) fillsDown(column, filled int) bool {
	same, blank, last := 0, 0, ""
	for _, row := range x.rows {
		own, other := cellOf(row, column), cellOf(row, filled)
		switch {
		case own == "" && other == "" || last == "" && own == "":
		case own == "" && other == last:
			blank++
		case own == other:
			same++
		default:
			return false
		}
		last = other
	}
	return same >= fewCopied && blank >= fewCopied
}

const writes = `(?:written|noted|logged|given|put down|filled in|entered)`

// Words by which a log says that what is blank is as in the row above.
var (
	blankCell = regexp.MustCompile(`(?i)\b(?:blanks?|empty|left out|nothing written|vac[ií][oa]s?|en blanco|` +
		`vuot[oaie]|vides?|vazi[oa]s?|leer\w*)\b`)
	asAbove = regexp.MustCompile(`(?i)\b(?:same as|as)\s+(?:in\s+)?(?:the\s+)?` +
		`(?:(?:row|line|one|trip|day|stretch|or|the)\s+)*(?:above|before)\b|` +
		`\bunchanged\b|\bno change\b|\bigual (?:que |a |ao |[àa] de |ao de )?(?:arriba|antes|acima|cima)|\bcome sopra\b|` +
		`\bcomme (?:ci-dessus|avant|au-dessus)|\bwie (?:oben|zuvor|davor)|\bunver[aä]ndert`)
	onlyChanges = regexp.MustCompile(`(?i)\b(?:(?:only|just)\s+` + writes + `|` + writes + `\s+(?:only|just))\s+` +
		`(?:when|if|where)\s+(?:it\s+|they\s+|that\s+)?(?:is\s+|are\s+)?chang(?:es?|ed)\b|` +
		`\b(?:until|till)\s+(?:a|the)\s+(?:new|next|other|different)\s+(?:one|number|figure|speed|count|value)\b|` +
		`\b(?:s[oó]l?o|seulement|solamente|apenas|nur)\s+(?:\pL+\s+){0,2}` +
		`(?:wo|wenn|cuando|si|donde|quand|lorsque|quando|se|dove|onde)\s+(?:\pL+\s+){0,2}` +
		`(?:cambi\pL*|chang\pL*|mud\pL*|(?:ge|ver)?[äa]ndert\pL*)`)
	onFirstLine = regexp.MustCompile(`(?i)\b(?:on|in) (?:its|the|each trip's|each day's) first (?:line|row)\b|` +
		`\bonce (?:for|a|per) (?:the |each |every )?(?:whole )?(?:trip|day|outing)\b`)
	sayingEnd = regexp.MustCompile(`[.;]\s+|\n`)
)

// held takes speeds and numbers of lines from the row above where the log says that blanks are as above;
// of the headings that it names, if it names any.
func (l *Log) held() {
	for _, text := range l.Texts {
		for _, saying := range sayingEnd.Split(text, -1) {
			first := onFirstLine.MatchString(saying)
			above := blankCell.MatchString(saying) && asAbove.MatchString(saying)
			if above || onlyChanges.MatchString(saying) || first {
				rest := onFirstLine.ReplaceAllString(saying, " ") // its "line" is a row
				l.hold(" "+normalise(rest)+" ", first)
			}
		}
	}
}

// hold carries the settings that a saying is about, all of them where it names none and need not.
func (l *Log) hold(saying string, must bool) {
	in, _ := l.lexicon.concepts.found(strings.TrimSpace(saying))
	of := map[string]bool{"speed_kn": in["speed"], "lines_out": in["gear"] || in["rod"]}
	for _, u := range l.Data() {
		u.b.hold(func(b *plan.Binding) bool {
			return of[b.Column.Name] || slices.ContainsFunc(strings.Fields(normalise(b.Heading)), func(w string) bool {
				return len(w) > 1 && strings.Contains(saying, " "+w+" ")
			})
		}, must)
	}
}

// hold carries the settings of a block that are named; all of them where named is nil or names no column.
func (x *builder) hold(named func(*plan.Binding) bool, must bool) {
	p := x.plan
	if p.Kind != plan.Flat && p.Kind != plan.Legs {
		return
	}
	if must && (!p.Binds("line") || p.Binds("time_s", "outcome")) {
		return // of bites the first row tells the stretch, and a blank one nothing
	}
	some := false
	for i := range p.Bindings {
		some = some || named != nil && named(&p.Bindings[i])
	}
	for i := range p.Bindings {
		b := &p.Bindings[i]
		meant := !some && !must || named != nil && named(b)
		if slices.Contains(holdsOn, b.Column.Name) && b.By == nil && b.Set == 0 && !b.Carried && meant {
			b.Carried = true
			x.note("%s: blank where it is as in the row above", b.Heading)
		}
	}
}
