package sheet

import (
	"bytes"
	"regexp"
	"strings"
)

// sniffLines is how many lines the separator is told from.
const sniffLines = 50

// separators are the candidates; of two that divide the lines equally well the
// earlier one is taken. The comma is last: where commas are decimal marks or
// stand in text, they come as regularly as the true separator.
const separators = "\t;|,"

// sepLine reads a first line such as "sep=;", which spreadsheet programs take
// as naming the separator. length is the line's, in bytes, line end included.
func sepLine(sample []byte) (sep byte, length int, ok bool) {
	line, _, found := bytes.Cut(sample, []byte("\n"))
	length = len(line)
	if found {
		length++
	}
	text := strings.Trim(strings.TrimSuffix(string(line), "\r"), `"`)
	if len(text) != 5 || !strings.EqualFold(text[:4], "sep=") || !maySeparate(text[4]) {
		return 0, 0, false
	}
	return text[4], length, true
}

// maySeparate leaves out what stands within words and numbers.
func maySeparate(c byte) bool {
	return c == '\t' || (c > ' ' && c < 0x7f && !strings.ContainsRune(`"'.-+`, rune(c)) && !isAlnum(c))
}

func isAlnum(c byte) bool {
	return '0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z'
}

// sniff chooses the separator that divides the most lines into the same number
// of cells, two or more. hint, when not 0, wins a tie; a sample that nothing
// divides is one column, and the comma does for it. Of prose most lines are divided
// by nothing in common, nor as their neighbours are, as those of several tables are: each is one cell.
func sniff(sample []byte, hint byte) byte {
	order := separators
	if hint != 0 {
		order = string(hint) + order
	}
	best, most, filled := byte(','), 0, sniffLines
	for i := range len(order) {
		n, of := agreeing(sample, order[i])
		if n > most {
			best, most = order[i], n
		}
		filled = min(filled, of)
	}
	if best == ',' && filled >= proseLines && ofPairs(sample) {
		return noSeparator
	}
	if filled >= proseLines && 5*most < 2*filled && 4*tabled(sample, best) < 3*filled {
		return noSeparator
	}
	return best
}

// ofPairs tells lines most of which are a label with its value behind a colon, and whose commas are those of sentences:
// "fish 1: bite on the left flat: wahoo, 141 cm, kept".
func ofPairs(sample []byte) bool {
	pairs, of, loose := 0, 0, false
	for _, line := range bytes.Split(sample, []byte("\n")) {
		if line = bytes.TrimSpace(line); len(line) == 0 {
			continue
		}
		if of++; of > sniffLines {
			break
		}
		if tightComma.Match(line) {
			return false
		}
		switch {
		case !pairLine.Match(line):
			loose = loose || pairs > 0
		case loose:
			return false // lines that go on
		default:
			pairs++
		}
	}
	return pairs >= proseLines && 10*pairs >= 7*of
}

var (
	pairLine   = regexp.MustCompile(`^\pL[^:,;|\t"]{0,40}:\s+\S`)
	tightComma = regexp.MustCompile(`,(?:[^\s\d]|$)|^"`)
)

const (
	tableLines  = 3    // so many lines in a row that are divided alike are of a table
	proseLines  = 8    // from how many lines on a text may be prose
	noSeparator = 0x1f // no text holds it: each line is one cell
)

// agreeing is how many of the first lines hold the same number of separators,
// taking the number above zero that most lines agree on, and of how many that are not
// blank; what a quote swallows is one line.
func agreeing(sample []byte, sep byte) (most, of int) {
	lines := map[int]int{}
	for range sniffLines {
		n, used := countInRecord(sample, sep)
		if used == 0 {
			break
		}
		if len(bytes.TrimSpace(sample[:used])) > 0 {
			of++
		}
		sample = sample[used:]
		if n > 0 {
			lines[n]++
		}
	}
	for _, n := range lines {
		most = max(most, n)
	}
	return most, of
}

// tabled is how many of the first lines are of runs of lines that hold the same number of separators.
func tabled(sample []byte, sep byte) (n int) {
	last, run := 0, 0
	for range sniffLines {
		seps, used := countInRecord(sample, sep)
		if used == 0 {
			break
		}
		sample = sample[used:]
		if seps != last {
			last, run = seps, 0
		}
		switch run++; {
		case seps == 0 || run < tableLines:
		case run == tableLines:
			n += run
		default:
			n++
		}
	}
	return n
}

// countInRecord counts the separators outside quotes up to the first line end
// outside quotes, and how many bytes that is. A quote counts only where a cell
// begins, so that 6'2" does not open one.
func countInRecord(b []byte, sep byte) (count, used int) {
	atStart, quoted := true, false
	for i, c := range b {
		switch {
		case quoted:
			quoted = c != '"' // A doubled quote closes and, below, opens again.
			atStart = !quoted
			continue
		case c == '"' && atStart:
			quoted = true
		case c == '\n':
			return count, i + 1
		case c == sep:
			count++
		}
		atStart = c == sep
	}
	return count, len(b)
}
