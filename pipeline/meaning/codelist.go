package meaning

import (
	"maps"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/words"
)

// The codes of one column often stand in one line or cell: "K=kept G=gone", "T trolled, D drifting",
// "lb. S = scales, G = guessed".

// nextCode is a code behind nothing but a space: "L=landed D=dropped". One that is not written close to its
// equals sign is a capital.
var nextCode = regexp.MustCompile(`\s(?:[\pL\d]{1,3}=|[~*^§†°+?]=|\p{Lu}\s=)`)

// marks part the codes of a list.
const marks = ",;/.|"

// eachCode parts a text before each code but the first, where no mark parts them.
func eachCode(text string) []string {
	var out []string
	at := 0
	for _, m := range nextCode.FindAllStringIndex(text, -1) {
		before := strings.TrimSpace(text[at:m[0]])
		if strings.Contains(before, "=") && !strings.ContainsAny(before[len(before)-1:], marks+"=") {
			out, at = append(out, text[at:m[0]]), m[0]
		}
	}
	return append(out, text[at:])
}

// codeBefore is a code before its equals sign, and the mark or space before that.
var codeBefore = regexp.MustCompile(`(^|[\s,;/.(|:]\s*)"?([\pL\d]{1,4})"?(\s?)=`)

// equalsCodes reads a list in which each code stands before an equals sign, whatever parts them: "kg (S = scale, or
// dock G = guess)". nil where one of the signs has no code before it.
func equalsCodes(text string) map[string]string {
	all := codeBefore.FindAllStringSubmatchIndex(text, -1)
	if len(all) < 2 || len(all) != strings.Count(text, "=") {
		return nil
	}
	codes := map[string]string{}
	for i, m := range all {
		code, before := text[m[4]:m[5]], strings.TrimSpace(text[m[2]:m[3]])
		capital := strings.ToUpper(code) == code
		if before == "" && m[2] > 0 && m[6] < m[7] && !capital { // "on the way = ..."
			return nil
		}
		end := len(text)
		if i+1 < len(all) {
			end = all[i+1][0]
		}
		means, _, _ := strings.Cut(text[m[1]:end], ". ")
		if strings.Count(means, ")") > strings.Count(means, "(") {
			means, _, _ = strings.Cut(means, ")")
		}
		if means = strings.Trim(means, " ,;/|"); means == "" || codes[strings.ToLower(code)] != "" {
			return nil
		}
		codes[strings.ToLower(code)] = means
	}
	return codes
}

// behindSentence is a list of codes without the sentence before it: "lb. S = scales, G = guessed".
func behindSentence(text string) string {
	first := strings.IndexByte(text, '=')
	if first < 0 {
		return text
	}
	if ends := sentences.FindAllStringIndex(text[:first], -1); ends != nil {
		return text[ends[len(ends)-1][1]:]
	}
	return text
}

// sayingsIn parts a text into its sayings. What follows a comma and explains no word of its own goes on with
// the saying before it: "small = shook off at the rail, let go".
func sayingsIn(text string) []string {
	var all []string
	// "att. = all bites": the point is of the short word, and ends no sentence
	for _, part := range eachCode(pointEquals.ReplaceAllString(text, "$1 =")) {
		all = append(all, betweenMarks(part)...)
	}
	return all
}

var pointEquals = regexp.MustCompile(`(\pL)\.\s*=`)

// betweenMarks parts a text at the marks between sayings.
func betweenMarks(text string) []string {
	var out []string
	at := 0
	for _, m := range append(betweenSayings.FindAllStringIndex(text, -1), []int{len(text), len(text)}) {
		part := text[at:m[0]]
		comma := strings.HasSuffix(strings.TrimRight(text[:at], " \n"), ",")
		if n := len(out); n > 0 && comma && goesOn(out[n-1], part) {
			out[n-1] += ", " + part
		} else {
			out = append(out, part)
		}
		at = m[1]
	}
	return out
}

// goesOn tells a part of a text that goes on with the saying before it.
func goesOn(before, part string) bool {
	if !equals.MatchString(before) || strings.Contains(part, "=") {
		return false
	}
	code := codePart.FindStringSubmatch(strings.TrimSpace(part))
	return code == nil || len(code[1]) > 1 // "L lost" is a code of its own
}

// fateCodes reads a line that is nothing but codes, of one to three letters, with what became of a fish:
// "k kept / r released / l lost (was on) / m missed, no hookup". What stands in brackets explains more.
func fateCodes(text string) map[string]string {
	codes, fates := map[string]string{}, 0
	parts := strings.Split(text, " / ")
	if strings.Count(text, "=") > len(parts) {
		return nil // each part lists several: "p=bite u=up / k=kept g=gone"
	}
	for _, part := range parts {
		m := codePart.FindStringSubmatch(strings.TrimSpace(part))
		if m == nil || len(m[1]) > 3 {
			return nil
		}
		means, _, _ := strings.Cut(m[2], "(")
		fate, cause, _, ok := words.FateOf(means)
		if ok {
			fates++
		}
		if means = strings.TrimSpace(means); cause == "" && fate > words.Bit {
			means = fate.String() // "off" alone is no fate among other words
		}
		codes[strings.ToLower(m[1])] = means
	}
	if fates < 2 || 3*fates < 2*len(codes) {
		return nil // one in words that nobody knows is asked about
	}
	return codes
}

// codesWithin reads the codes that one of a text's sentences lists: "Taped at the fork. Mass in kg: S = scale, G =
// guess."
func codesWithin(text string) (head string, codes map[string]string) {
	for _, sentence := range sentences.Split(text, -1) {
		m := colonKey.FindStringSubmatch(sentence)
		if m == nil || strings.Count(m[2], "=") < 2 {
			continue
		}
		if codes := codesIn(m[2]); codes != nil {
			return normalise(m[1]), codes
		}
	}
	return "", nil
}

// blankIn is what a text says of cells without a code: "No letter = guessed".
func blankIn(text string) string {
	for _, sentence := range sentences.Split(text, -1) {
		if m := equals.FindStringSubmatch(sentence); m != nil && noCode.MatchString(m[1]) {
			return strings.TrimSpace(m[2])
		}
	}
	return ""
}

// capitalCode is a code in capitals with what it means.
var capitalCode = regexp.MustCompile(`^\(?(\p{Lu}[\p{Lu}\d]{0,3})\)?\s*(?:[=:–-]\s*|\s)([^\s=:].*)$`)

// betweenCapitals parts a list of codes; what stands before it tells whether a sentence ended there.
var betweenCapitals = regexp.MustCompile(`[,;/]\s*|\.\s+|\s{2,}`)

// capitalCodes reads a list that begins with a code in capitals and nothing but a space behind it: "K kept, TR tagged
// and let go, D dropped, never on. NB = no bites". What begins with no such code goes on with the code before it. A
// sentence of its own is of the list if it has an equals sign. nil where it is no such list.
func capitalCodes(text string) map[string]string {
	codes, last := map[string]string{}, ""
	at, mark := 0, ""
	for _, m := range append(betweenCapitals.FindAllStringIndex(text, -1), []int{len(text), len(text)}) {
		part := strings.TrimSpace(text[at:m[0]])
		ended := strings.HasPrefix(mark, ".") || strings.HasPrefix(mark, " ")
		code := capitalCode.FindStringSubmatch(part)
		switch {
		case code != nil && (!ended || strings.Contains(part, "=")):
			if last = strings.ToLower(code[1]); codes[last] != "" || at == 0 && strings.Contains(part, "=") {
				return nil
			}
			codes[last] = code[2]
		case at == 0:
			return nil
		case ended:
			last = "" // a remark
		case last != "":
			codes[last] += mark + part
		}
		at, mark = m[1], text[m[0]:m[1]]
	}
	if len(codes) < 2 {
		return nil
	}
	return codes
}

// codesIn reads "0 missed / 1 lost / 2 landed"; nil where a part is no code with its meaning.
func codesIn(text string) map[string]string {
	if codes := capitalCodes(text); codes != nil {
		return codes
	}
	text = behindSentence(text)
	if codes := equalsCodes(text); codes != nil {
		maps.DeleteFunc(codes, func(code, _ string) bool { return len(code) > 2 && isFate(code) })
		if len(codes) > 0 {
			return codes
		}
	}
	var parts []string
	for _, p := range parted.Split(text, -1) {
		parts = append(parts, eachCode(p)...)
	}
	if n := strings.Count(text, "="); n > 1 && strings.Count(text, ";") >= n-1 {
		parts = strings.Split(text, ";") // commas are of the meanings then
	} else if n > 1 && strings.Count(text, ". ") >= n-1 {
		parts = strings.Split(text, ". ")
	} else if n > 1 && len(wide.FindAllString(text, -1)) >= n-1 {
		if in := wide.Split(text, -1); !slices.ContainsFunc(in,
			func(p string) bool { return strings.Count(p, "=") != 1 }) {
			parts = in // B = in the boat   L = lost, on the jump
		}
	}
	codes := map[string]string{}
	whole, loose := 0, 0
	for _, p := range parts {
		p = strings.TrimSpace(p)
		if m := equals.FindStringSubmatch(p); m != nil && len(m[1]) < 16 {
			if whole++; len(m[1]) < 3 || !isFate(m[1]) { // "lost = hooked, then gone" says no more
				codes[strings.ToLower(m[1])] = strings.TrimSpace(m[2])
			}
		} else if m := codePart.FindStringSubmatch(p); m != nil {
			codes[strings.ToLower(m[1])] = m[2]
		} else {
			loose++
		}
	}
	if len(codes) == 0 || len(codes) < 2 && whole < 2 || loose > 0 && whole < 2 {
		return nil
	}
	return codes
}

// addList takes codes that stand behind a heading, or behind words that say only that they are codes: "Codes: K
// kept, F freed", "Result codes: ...".
func (l *legend) addList(head string, codes map[string]string) {
	l.codes[head] = codes
	rest := strings.Join(slices.DeleteFunc(strings.Fields(head), func(w string) bool { return listWords[w] }), " ")
	switch {
	case rest == head:
	case rest != "":
		if l.codes[rest] == nil {
			l.codes[rest] = codes
		}
	default:
		for code, means := range codes {
			if l.words[code] == "" {
				l.words[code] = means
			}
		}
	}
}

// listWords say that what follows are codes, and not of what.
var listWords = set([]string{"code", "codes", "key", "legend", "letters", "codigo", "codigos", "clave", "claves",
	"leyenda", "legende", "cle", "codice", "codici", "legenda", "chave", "chaves", "schlussel", "kurzel", "zeichen",
	"abbreviations", "de", "di", "do", "of", "the", "for"})

// say takes what a saying says of a word. Codes that follow one behind a heading are of that heading, which it
// returns: "gear T = trolling, B = on bait".
func (l *legend) say(head, word, means string) string {
	if word == "" { // * = guessed
		return head
	}
	if before, code, ok := strings.Cut(word, " "); ok && len(code) <= longestOfSeveral {
		head = before
	} else if head != "" && len(word) <= longestOfSeveral {
		l.words[head+" "+word] = means
		if l.words[word] != "" {
			return head // which another line says of another column
		}
	}
	l.words[word] = means
	return head
}

// longestOfSeveral is how long a code is at the most that stands behind a heading in a row of several.
const longestOfSeveral = 2

// codeGroups are the lists of codes that slashes part in one text, where a code stands for one thing in one list and
// for another in the next: "in=lines in s=all up / k=kept s=shook off". nil where no code does.
func codeGroups(text string) []map[string]string {
	var groups []map[string]string
	all, twice := map[string]string{}, false
	for part := range strings.SplitSeq(text, " / ") {
		group := map[string]string{}
		for _, saying := range sayingsIn(part) {
			if m := equals.FindStringSubmatch(saying); m != nil && len(normalise(m[1])) <= longestCode {
				group[normalise(m[1])] = strings.TrimSpace(m[2])
			}
		}
		if len(group) < 2 {
			continue
		}
		for code, means := range group {
			twice = twice || all[code] != "" && all[code] != means
			all[code] = means
		}
		groups = append(groups, group)
	}
	if !twice {
		return nil
	}
	return groups
}

// ofGroup is the legend for a column, with the codes of the one list that has all that its cells hold; itself where the
// lists do not differ, or several have them.
func (l *legend) ofGroup(v *Values) *legend {
	var found map[string]string
	for _, group := range l.groups {
		if len(v.cells) == 0 || slices.ContainsFunc(v.cells, func(c layout.Cell) bool {
			return group[strings.ToLower(c.Text)] == ""
		}) {
			continue
		}
		if found != nil && !maps.Equal(found, group) {
			return l
		}
		found = group
	}
	if found == nil {
		return l
	}
	own := *l
	own.words = maps.Clone(l.words)
	maps.Copy(own.words, found)
	return &own
}
