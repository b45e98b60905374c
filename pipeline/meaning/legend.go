package meaning

import (
	"cmp"
	"maps"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// legend is what a log says of its own words: what a heading stands for, and what the
// codes in a column's cells mean.
type legend struct {
	figures  *figures                     // what the counts in cells of several are; nil: not said
	missing  string                       // what stands where a value is missing: -9
	marks    map[string]string            // what marks at figures say: * = guess
	words    map[string]string            // by heading or code in normal form
	codes    map[string]map[string]string // by heading in normal form, then code in lower case
	lists    map[string]string            // by the words before its colon: what a list of codes says
	headings map[string]bool              // of words, those said to be headings
	places   map[string]string            // marks under the places of the spread, "" for no mark; nil: not said
	blank    map[string]string            // by such a heading: what it means that no code stands there
	alone    string                       // the fate of a fish that is named and nothing more; "" where nobody says
	// where lines or the speed are not said, nobody wrote them down
	forgotLines, forgotSpeed bool
	blanks                   map[string]string // by heading: the fate of a bite where nothing stands; "" is any heading
	// by short word behind a figure: what it says of a scale or a guess
	scaleCodes map[string]string
	bare       bool                         // a weight without a word for the scale is a guess
	freed      []string                     // names of fish that are let go whenever they are caught
	kept       bool                         // counts are of all fish, and remarks say which were let go
	without    bool                         // counts of fish have not those in them that were let go
	apart      map[string]map[string]string // by heading: codes of what was not trolled
	groups     []map[string]string          // codes of several columns, where one stands for two things
}

var (
	codePart    = regexp.MustCompile(`^\(?(\w{1,4})\)?\s*(?:=|-|–|:|\s)\s*(\S.*)$`)
	missingMark = regexp.MustCompile(
		`(?i)^missing (?:values?|data|cells?)\b[^:=]*(?:[:=]|\bis\b|\bare\b)\s*"?(-?\d+)"?\s*\.?$`)
	commentMark    = regexp.MustCompile(`^\s*(?:#+|//+|;+)\s+`) // of a line of a text file that is no row
	listNumber     = regexp.MustCompile(`^\s*(?:\(?\d{1,2}[.)]|\(?[a-z]\))\s+`)
	equals         = regexp.MustCompile(`^\s*([^=]{1,22}?)\s*=\s*(.+)$`)
	spaced         = regexp.MustCompile(`^(\S[^=:]{0,21}?)\s{2,}(\S.*)$`) // WET  first line in the water
	parted         = regexp.MustCompile(`\s*[/;,]\s*`)
	sentences      = regexp.MustCompile(`\.\s+`)
	noCode         = regexp.MustCompile(`(?i)^(?:no (?:letter|code|mark|entry)|blank|left blank|empty|nothing|none)$`)
	wide           = regexp.MustCompile(`\s{2,}`)
	betweenSayings = regexp.MustCompile(`[;\n]|\.\s+|,\s+|\s+/\s+|\s{2,}`)
	// kawa kawakawa, YF yellowfin tuna
	nameFor    = regexp.MustCompile(`^\s*(\pL{2,4})\s+(\pL+(?: \pL+)?)\s*\.?\s*$`)
	colonKey   = regexp.MustCompile(`^([\pL\d #/_-]{1,25}?)\s*:\s*(.+)$`)
	bulletKey  = regexp.MustCompile(`^\s*[-–—•*]\s*(\pL{1,4})\s*:\s*(\S.*)$`)        // - PDV: lost
	bracketKey = regexp.MustCompile(`^([\pL #/_-]{1,25}?)\s*\((.*\S)\)\s*\.?$`)      // Fate (K kept, F freed)
	dashKey    = regexp.MustCompile(`^\s*"?(\p{Lu}{1,3}|\d)"?\s*[-–—.:)]\s+(\S.*)$`) // K - kept
	// In "how" write S for the scale, E for the eye
	inColumn = regexp.MustCompile(
		`(?i)\b(?:in|under) (?:the column )?["“']([^"”']{1,25})["”'],? (?:I |we |please )?(?:write|put|use|mark|note)s? ([^.]+)`)
	codeFor   = regexp.MustCompile(`\b(\pL{1,3}) (?:for|is|means) (?:the |a |an )?`)
	columnKey = regexp.MustCompile(
		`(?i)^(?:.*\s)?(?:column|col\.?|columna|colonna|colonne|coluna|spalte)\s+"?([^\s:("]{1,20})"?\s*(?:\([^)]*\)\s*)?[:=]\s*(.+)$`)
)

// readLegend gathers the legends among texts that are part of no table.
func readLegend(texts []string) *legend {
	l := &legend{words: map[string]string{}, codes: map[string]map[string]string{}, blank: map[string]string{},
		blanks: map[string]string{}, scaleCodes: map[string]string{}, lists: map[string]string{},
		marks: map[string]string{}, headings: map[string]bool{}, apart: map[string]map[string]string{}}
	for _, text := range texts {
		if !hasLetter(text) {
			continue // figures explain nothing
		}
		l.addApart(text)
		maps.Copy(l.marks, marksIn(text))
		maps.Copy(l.blanks, blanksIn(text))
		l.alone = cmp.Or(l.alone, aloneIn(text))
		maps.Copy(l.scaleCodes, scaleCodesIn(text))
		l.bare = l.bare || guessesBare(text)
		l.forgotLines = l.forgotLines || whereNone.MatchString(text) && words.ForgotLines(text)
		l.forgotSpeed = l.forgotSpeed || whereNone.MatchString(text) && words.SpeedNotTaken(text)
		l.freed = append(l.freed, phrase.AlwaysReleased(text)...)
		l.without = l.without || letGoApart(text)
		l.kept = l.kept || phrase.KeptUnlessTold(text)
		text = unnumbered(commentMark.ReplaceAllString(text, ""))
		if m := missingMark.FindStringSubmatch(text); m != nil {
			l.missing = m[1]
			continue
		}
		if codes := placeCodes(text); codes != nil {
			l.places = codes
			for code, means := range codes {
				if word := normalise(code); word != "" && l.words[word] == "" {
					l.words[word] = means
				}
			}
			continue
		}
		text = l.glossary(text)
		l.fatesBehind(text)
		if m := bulletKey.FindStringSubmatch(text); m != nil {
			l.words[normalise(m[1])] = strings.TrimSpace(m[2])
			continue
		}
		if m := inColumn.FindStringSubmatch(text); m != nil {
			if codes := codesIn(codeFor.ReplaceAllString(m[2], "$1 = ")); codes != nil {
				l.addList(normalise(m[1]), codes)
				continue
			}
		}
		m := columnKey.FindStringSubmatch(text)
		if m == nil {
			m = colonKey.FindStringSubmatch(text)
		}
		if m == nil {
			m = bracketKey.FindStringSubmatch(text)
		}
		if m != nil {
			if codes := codesIn(m[2]); codes != nil {
				l.lists[normalise(m[1])] = m[2]
				l.addList(normalise(m[1]), codes)
				continue
			}
		}
		if m := dashKey.FindStringSubmatch(text); m != nil && isFate(m[2]) {
			l.words[normalise(m[1])] = m[2]
			continue
		}
		if codes := fateCodes(text); codes != nil {
			maps.Copy(l.words, codes)
			continue
		}
		if head, codes := codesWithin(text); codes != nil {
			l.codes[head], l.blank[head] = codes, blankIn(text)
			continue
		}
		if m := spaced.FindStringSubmatch(text); m != nil && !spaced.MatchString(m[2]) {
			if word := normalise(m[1]); l.words[word] == "" {
				l.words[word] = strings.TrimSpace(m[2])
			}
			continue
		}
		l.explained(text)
		l.groups = append(l.groups, codeGroups(text)...)
		head := ""
		for _, part := range sayingsIn(text) {
			if m := equals.FindStringSubmatch(part); m != nil {
				head = l.say(head, normalise(m[1]), strings.TrimSpace(m[2]))
			} else if m := nameFor.FindStringSubmatch(part); m != nil && fishName(m[2]) &&
				!fishName(m[1]) && l.words[normalise(m[1])] == "" {
				l.words[normalise(m[1])] = m[2]
			}
		}
	}
	return l
}

// toldOfHeadings takes what a list behind words that are no heading says of headings: "How I count: bite = all that
// hit a rod, on = came tight".
func (l *legend) toldOfHeadings(blocks []*layout.Block) {
	heads := map[string]bool{}
	for _, b := range blocks {
		for _, label := range b.Labels {
			heads[normalise(label.Text)] = true
		}
	}
	for head, list := range l.lists {
		if heads[head] {
			continue
		}
		for _, part := range sayingsIn(list) {
			m := equals.FindStringSubmatch(part)
			if m == nil {
				continue
			}
			means := m[2]
			if before, _, ok := strings.Cut(means, "("); ok && strings.TrimSpace(before) != "" {
				means = before
			}
			if k := normalise(m[1]); heads[k] && l.words[k] == "" {
				l.words[k], l.headings[k] = strings.Trim(means, " ."), true
			}
		}
	}
}

// explained takes what sentences say of headings, one each: "boated: all that reach the deck. gone: hooked and lost".
func (l *legend) explained(text string) {
	for _, sentence := range sentences.Split(text, -1) {
		m := colonKey.FindStringSubmatch(sentence)
		if m == nil || strings.Contains(m[2], "=") {
			continue
		}
		word, means := normalise(m[1]), m[2]
		if len(word) <= longestCode {
			continue
		}
		if before, _, ok := strings.Cut(means, "("); ok && strings.TrimSpace(before) != "" {
			means = before
		}
		if l.words[word] == "" {
			l.words[word] = strings.TrimSpace(means)
		}
	}
	maps.Copy(l.words, codesEach(text))
}

// codesEach are the codes that sentences explain, one each, where two or more do and each tells a fate or a way to
// weigh: "T: taken on the steelyard. J: judged by eye."
func codesEach(text string) map[string]string {
	codes := map[string]string{}
	for _, sentence := range sentences.Split(text, -1) {
		m := colonKey.FindStringSubmatch(sentence)
		if m == nil || len(normalise(m[1])) > longestCode {
			continue
		}
		means := strings.Trim(m[2], " .")
		if _, told := words.ByScale(means); !told && !isFate(means) {
			return nil
		}
		codes[normalise(m[1])] = means
	}
	if len(codes) < 2 {
		return nil
	}
	return codes
}

// unnumbered is a text of a list without its number: "4. Fate: K = kept; G = gone". A number right before what
// became of a fish is a code: "1. kept".
func unnumbered(text string) string {
	m := listNumber.FindString(text)
	rest := text[len(m):]
	codes := colonKey.FindStringSubmatch(rest)
	if m != "" && (strings.Contains(rest, "=") || codes != nil && codesIn(codes[2]) != nil) {
		return rest
	}
	return text
}

// fishName tells a word that names a fish.
func fishName(word string) bool {
	fish := phrase.FishList(word, phrase.Defaults{})
	return len(fish) == 1 && fish[0].Name != ""
}

func isFate(text string) bool {
	f, _, _, ok := words.FateOf(text)
	return ok && f > words.Bit
}

// more is what the legend says of a heading, "" where it says nothing.
func (l *legend) more(heading string) string { return l.words[normalise(heading)] }

// codesOn are the codes said of a heading, or of another where this one names each of them, "S or G".
func (l *legend) codesOn(heading string) map[string]string {
	head := normalise(heading)
	if codes := l.codes[head]; codes != nil {
		return codes
	}
	in := set(strings.Fields(head))
	var found map[string]string
	for _, codes := range l.codes {
		named := len(codes) > 1
		for c := range codes {
			named = named && in[c]
		}
		switch {
		case !named:
		case found != nil && !maps.Equal(found, codes):
			return nil // which of two lists is not said
		default:
			found = codes
		}
	}
	return found
}

// codesFor are the codes of a column: those said of its heading, or those said without
// a heading, where nearly all of its cells are such.
func (l *legend) codesFor(v *Values) map[string]string {
	known := l.codesOn(v.Label.Text)
	if known != nil {
		return known
	}
	known = map[string]string{}
	for k, w := range l.words {
		if len(k) <= longestCode {
			known[k] = w
		}
	}
	maps.Copy(known, l.codesBehind(v.Label.Text))
	if len(known) == 0 || len(v.cells) == 0 {
		return nil
	}
	n := 0
	distinct, meant := map[string]bool{}, map[string]bool{}
	for _, w := range known {
		meant[strings.ToLower(w)] = true
	}
	for _, c := range v.cells {
		k := strings.ToLower(c.Text)
		if _, ok := known[k]; ok {
			n++
			distinct[k] = true
		} else if meant[k] || len(k) > longestCode && isFate(k) { // written out on some days
			n++
		}
	}
	if 10*n < 8*len(v.cells) || len(distinct) < 2 {
		return nil
	}
	return known
}

// codesBehind are the codes that the legend explains one by one behind a heading: "Esito B", "gear T".
func (l *legend) codesBehind(heading string) map[string]string {
	codes := map[string]string{}
	head := normalise(heading)
	for k, w := range l.words {
		code, ok := strings.CutPrefix(k, head+" ")
		if ok && head != "" && len(code) <= longestCode && !strings.Contains(code, " ") {
			codes[code] = w
		}
	}
	return codes
}

// allCodes tells a column that holds next to nothing but codes.
func allCodes(v *Values, codes map[string]string) bool {
	n := 0
	for _, c := range v.cells {
		if _, ok := codes[strings.ToLower(c.Text)]; ok {
			n++
		}
	}
	return n > 2 && 10*n >= 9*len(v.cells)
}

// longestAbbreviation is the most letters of what stands for other words in the midst of a text.
const longestAbbreviation = 4

// abbreviations are the short words that the legend writes out: "ech", "c", "n".
func (l *legend) abbreviations() map[string]string {
	out := map[string]string{}
	for k, w := range l.words {
		_, isUnit := unit.Lookup(k)
		if l.headings[k] && !isFate(w) {
			continue
		}
		hedge := words.Hedged(k+" 5") || words.Hedged("5"+k)            // 5ish
		guess := hedge && (words.Hedged(w) || len(k) > 2 && !isFate(w)) // "como" = al tanteo
		understood := len(k) > 1 && isUnit || guess                     // kg, c.
		if k != "" && len(k) <= longestAbbreviation && !strings.Contains(k, " ") && len(w) < maxHeading && !understood {
			out[k] = w
		}
	}
	return out
}

// codesOf are the codes of a column that has a meaning: a word that says by itself what became
// of a bite needs no legend, whose remark on it may say less.
func (l *legend) codesOf(v *Values, c *plan.Column) map[string]string {
	l = l.ofGroup(v)
	codes := l.markedCells(v, c, l.meaningsOf(v, c))
	if apart := l.apart[normalise(v.Label.Text)]; apart != nil {
		if codes = maps.Clone(codes); codes == nil {
			codes = map[string]string{}
		}
		maps.Copy(codes, apart)
	}
	for head, means := range l.blank { // a weight that nobody says is from a scale
		if means != "" && c.Parse == "weighed" && len(codes) > 0 && maps.Equal(codes, l.codes[head]) {
			codes = maps.Clone(codes)
			codes[""] = means
		}
	}
	if l.missing == "" || !slices.ContainsFunc(v.cells, func(x layout.Cell) bool { return x.Text == l.missing }) {
		return codes
	}
	if codes = maps.Clone(codes); codes == nil {
		codes = map[string]string{}
	}
	codes[l.missing] = "-"
	return codes
}

func (l *legend) meaningsOf(v *Values, c *plan.Column) map[string]string {
	if tellsInWords[c.Parse] {
		if codes := l.codesOn(v.Label.Text); allCodes(v, codes) {
			return codes
		}
		if runs := l.letterRuns(v); c.Parse == "story" && runs != nil {
			return runs
		}
		short := l.abbreviations()
		if c.Parse == "event" { // "rods", which is also a heading: "how many we pulled"
			maps.DeleteFunc(short, func(word, means string) bool {
				fate, _, _, told := words.FateOf(word)
				as, _, _, other := words.FateOf(means) // "bite": "each bite while trolling" says no more
				return words.EntryOf(word).Event != words.EventNone && words.EntryOf(means).Event == words.EventNone ||
					told && len(word) > 2 && (!other || as == fate)
			})
			maps.Copy(short, l.entriesSaid(v))
		}
		return short
	}
	codes := l.codesFor(v)
	if c.Parse == "weighed" && codes["s"] == "" && scaleContested(v, codes) {
		codes = maps.Clone(codes)
		if codes == nil {
			codes = map[string]string{}
		}
		codes["s"] = Unexplained
	}
	if c.Parse != "outcome" {
		return codes
	}
	codes = maps.Clone(codes)
	maps.DeleteFunc(codes, func(word, _ string) bool {
		_, _, _, ok := words.FateOf(word)
		return ok && len(word) > 2
	})
	if codes == nil {
		codes = map[string]string{}
	}
	maps.Copy(codes, l.fatesSaid(v, codes))
	if codes["l"] == "" && landsNothing(v, codes) {
		codes["l"] = Unexplained
	}
	return codes
}

// rewritten are a column's cells with their codes written out.
func (l *legend) rewritten(v *Values) *Values {
	l = l.ofGroup(v)
	if l.places != nil && words.IsPlace(v.Label.Text) {
		return l.ofPlace(v)
	}
	codes := l.codesFor(v)
	short := l.abbreviations()
	if codes == nil && l.missing == "" && (len(short) == 0 || v.texts() < 0.9 || v.length() <= longestCode) {
		return v
	}
	rows := make([]layout.Cell, len(v.Rows))
	for i, c := range v.Rows {
		rows[i] = c
		if c.Text == l.missing {
			rows[i] = layout.Cell{} // a blank one
			continue
		}
		if codes == nil && c.Look == layout.Text && v.length() > longestCode {
			rows[i].Text = words.WrittenOut(c.Text, short)
		}
		if w, ok := codes[strings.ToLower(c.Text)]; ok && saysMissing(w) {
			rows[i] = layout.Cell{}
		} else if ok {
			rows[i] = layout.Cell{Text: w, Look: layout.Text}
		}
	}
	out := newValues(v.Label, rows, v.workbook, v.monthly)
	out.spelledOut = codes != nil
	return out
}

// addShort takes the codes of a column that no legend explains for what they are short for, where
// its heading says that they are ways of fishing, ways to weigh or fates, and each is one; of
// fates most. Of two lists that have them all it is of the one that the heading says most of.
func (l *legend) addShort(t *Lexicon, v *Values) {
	if len(v.cells) == 0 || v.length() > longestCode || v.texts() < 0.9 {
		return
	}
	said := t.said(v.Label)
	short, letters := t.shortFor(labelWithUnit(v.Label))
	most := 0.0
	for _, c := range slices.Sorted(maps.Keys(shortCells)) {
		of, weight := shortCells[c], 0.0
		for _, x := range t.Columns {
			cut, isCut := short.columns[x]
			if x.Parse == c && (said.columns[x].weight >= loosely || isCut && letters > 1) {
				weight = max(weight, said.columns[x].weight, cut.weight)
			}
		}
		if weight <= most {
			continue
		}
		codes, open := map[string]string{}, map[string]bool{}
		for _, cell := range v.cells {
			code := strings.ToLower(cell.Text)
			if of.known(code) {
				continue
			}
			if means, ok := of.short(code); ok {
				codes[code] = means
			} else {
				open[code] = true
			}
		}
		if c == "weighed" && scaleContested(v, codes) {
			codes["s"] = Unexplained
		}
		// a fate that is not understood is asked about
		if len(codes) > 1 && (len(open) == 0 || c == "outcome" && len(open) <= len(codes)) {
			l.codes[normalise(v.Label.Text)], most = codes, weight
		}
	}
}

// tellsInWords are the ways of reading texts in which codes stand among other words.
var tellsInWords = map[string]bool{"event": true, "story": true, "fishlist": true, "stretches": true}

// longestCode is the usual length of codes at most.
const longestCode = 4

// shortCells are the closed lists whose words cells may cut short, by a column's way of reading.
var shortCells = map[string]struct {
	known func(string) bool
	short func(string) (string, bool)
}{
	"method":  {func(s string) bool { _, ok := words.Method(s); return ok }, words.ShortMethod},
	"weighed": {func(s string) bool { return words.Scaled(s) || words.Hedged(s) }, words.ShortWeighed},
	"outcome": {func(s string) bool { _, _, _, ok := words.FateOf(s); return ok || words.Nothing(s) }, words.ShortFate},
}
