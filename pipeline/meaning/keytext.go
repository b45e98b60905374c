package meaning

import (
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
)

// A key may be a text of its own: a line for each heading of the tables beside it, with what it means
// or the codes under it, "fate  0 = no hook-up" and the other codes each on a line below.

// fewExplained is how many headings of others a text must explain to be a key to them.
const fewExplained = 3

var (
	keyLine  = regexp.MustCompile(`^(\S[^=:]{0,60}?)(?:\s{2,}|\s*[:=]\s+)(\S.*)$`)
	codeLine = regexp.MustCompile(`^"?([^\s="]{1,4})"?\s*=\s*(\S.*)$`)
	aside    = regexp.MustCompile(`\s+\([^()]*\)\s*$`) // (only T counts)
)

// KeyLine parts a line of a key into the headings it names, and what it says of them.
func KeyLine(text string) (heads []string, means string) {
	m := keyLine.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil {
		return nil, ""
	}
	for _, part := range strings.FieldsFunc(m[1], func(r rune) bool { return r == ',' || r == '/' }) {
		heads = append(heads, strings.ToLower(strings.TrimSpace(part)))
	}
	return heads, m[2]
}

// keyTextOf reads a text that has no record of its own as a key; nil is no such. Half of its lines at
// least must be of headings of the others and their codes.
func keyTextOf(s *layout.Sheet, sheets []*layout.Sheet) []entry {
	if s.Grid.Info.Workbook || slices.ContainsFunc(s.Blocks, func(b layout.Block) bool { return len(b.Rows) > 1 }) {
		return nil
	}
	var out []entry
	named, lines := map[string]bool{}, 0
	var under []string
	for _, r := range s.Grid.Rows {
		text := strings.TrimSpace(joinedText(r))
		if m := codeLine.FindStringSubmatch(text); m != nil && len(under) > 0 {
			for _, h := range under {
				out = append(out, entry{h, strings.ToLower(m[1]), m[2]})
			}
			lines++
			continue
		}
		heads, means := KeyLine(text)
		for i, h := range heads {
			heads[i] = normalise(h)
		}
		heads = slices.DeleteFunc(heads, func(h string) bool {
			return h == "" || !slices.ContainsFunc(sheets, func(o *layout.Sheet) bool {
				return o != s && hasHeading(o, h)
			})
		})
		if len(heads) > 0 {
			lines++
		}
		under = nil
		codes := codesUnder(means)
		for _, h := range heads {
			named[h] = true
			if len(codes) == 0 {
				out = append(out, entry{head: h, means: means})
				continue
			}
			under = heads
			for code, says := range codes {
				out = append(out, entry{h, code, says})
			}
		}
	}
	if len(named) < fewExplained || 2*lines < len(s.Grid.Rows) {
		return nil
	}
	return out
}

// codesUnder are the codes that stand on a heading's own line: all of them, or the first of several lines.
func codesUnder(means string) map[string]string {
	means = strings.TrimSpace(aside.ReplaceAllString(means, ""))
	if strings.Count(means, "=") > 1 {
		return codesIn(means)
	}
	if m := codeLine.FindStringSubmatch(means); m != nil {
		return map[string]string{strings.ToLower(m[1]): m[2]}
	}
	return nil
}

// joinedText is the words of a row, whatever its text was parted at.
func joinedText(r layout.Row) string {
	var parts []string
	for _, c := range r.Cells {
		if c.Look != layout.Blank {
			parts = append(parts, c.Text)
		}
	}
	return strings.Join(parts, "  ")
}
