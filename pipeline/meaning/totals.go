package meaning

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/words"
)

var overRows = regexp.MustCompile(`(?i)\(\$?([A-Z]{1,3})\$?(\d+):\$?([A-Z]{1,3})\$?(\d+)`)

// sumsRows tells a formula over several rows of one column.
func sumsRows(formula string) bool {
	m := overRows.FindStringSubmatch(formula)
	return m != nil && m[1] == m[3] && m[2] != m[4] || strings.Count(formula, "+") >= 2 &&
		worksOut.MatchString("sum(") && sameColumn.MatchString(formula)
}

// sameColumn is a sum of cells such as I11+I17+I26.
var sameColumn = regexp.MustCompile(`^=?([A-Z]{1,3}\d+\+)+[A-Z]{1,3}\d+$`)

// stripTotals takes rows of totals out of a block's rows, to be held against them.
func stripTotals(b *layout.Block) {
	if b.Shape != layout.Table {
		return
	}
	var rows []layout.Row
	coded := codesAmong(b.Rows)
	partly := subtotals(b.Rows)
	for i, r := range b.Rows {
		if partly[i] || isTotals(&r, coded) || addsUp(rows, &r) {
			b.Totals = append(b.Totals, r)
			continue
		}
		rows = append(rows, r)
	}
	b.Rows = rows
	stripFoot(b)
}

// leastDays is the least number of days under one heading that make it the column of days.
const leastDays = 4

// stripFoot takes the rows out that stand under a table of days and its totals, or under a
// blank row: their first cell is a label or a year, and none of theirs is a day or a clock
// time. They are averages, another year, what is over or under; or they are words down to the last of
// them, and none tells of a bite.
func stripFoot(b *layout.Block) {
	day := dayColumn(b)
	if b.Open {
		return
	}
	if day < 0 {
		stripSentences(b)
		return
	}
	end := len(b.Rows)
	for end > 0 && !timed(&b.Rows[end-1]) {
		end--
	}
	if end == 0 {
		return
	}
	for i := end; i < len(b.Rows); i++ {
		r, above := &b.Rows[i], &b.Rows[i-1]
		apart := r.Num > above.Num+1 // a blank row, or totals
		titled := loneText(r) && i+1 < len(b.Rows) && footLabel(&b.Rows[i+1], day)
		if apart && (titled || footLabel(r, day) || onlyRemarks(b.Rows[i:]) ||
			onlySentences(b, b.Rows[i:]) || wordOverNumber(b, r, end) || sumAlone(b, i)) {
			b.Foot = append(b.Foot, b.Rows[i:]...)
			b.Rows = b.Rows[:i]
			return
		}
	}
}

// stripSentences takes the rows out that stand under a table without days and a blank row, and are sentences down to
// the last of them.
func stripSentences(b *layout.Block) {
	for i := len(b.Rows) - 1; i > 0 && loneText(&b.Rows[i]); i-- {
		if b.Rows[i].Num > b.Rows[i-1].Num+1 && onlySentences(b, b.Rows[i:]) {
			b.Foot = append(b.Foot, b.Rows[i:]...)
			b.Rows = b.Rows[:i]
			return
		}
	}
}

// textsUnder are the sentences that stand under a table, each in a row of its own.
func textsUnder(b *layout.Block) []string {
	var out []string
	for i := range b.Foot {
		if loneText(&b.Foot[i]) {
			out = append(out, joinedText(b.Foot[i]))
		}
	}
	return out
}

// onlyRemarks tells rows of words without a figure that tell of no bite.
func onlyRemarks(rows []layout.Row) bool {
	for _, r := range rows {
		for _, c := range r.Cells {
			figure := c.Look != layout.Blank && c.Look != layout.Text || strings.ContainsAny(c.Text, "0123456789?")
			if figure || words.Ditto(c.Text) || tellsBites(c.Text) {
				return false
			}
		}
	}
	return true
}

// tellsBites tells a text of bites from one that says which bites nobody wrote down.
func tellsBites(text string) bool {
	if _, unwritten := words.UnwrittenIn(text); unwritten {
		return false
	}
	return len(phrase.Tell(text, phrase.Defaults{}).Bites) > 0
}

// fewestWords is how many words a sentence has at the least that stands alone under a table.
const fewestWords = 5

// onlySentences tells rows that hold one sentence each, without a bite or a time of trolling in it: how the log is
// to be read, whatever figures it names, or what a whole month came to. What stands under one of the table's headings
// is said behind a sign: "Result = bites - hooked".
func onlySentences(b *layout.Block, rows []layout.Row) bool {
	return !slices.ContainsFunc(rows, func(r layout.Row) bool {
		text := joinedText(r)
		head, _, _ := strings.Cut(text, "=")
		explained := slices.ContainsFunc(b.Labels, func(l layout.Label) bool {
			return head != text && normalise(l.Text) == normalise(head)
		})
		return !loneText(&r) || len(strings.Fields(text)) < fewestWords && !saysUsual(text) ||
			!explained && !words.SumsUp(text) &&
				(statesDay(text) || tellsBites(text) || len(phrase.Stretches(text)) > 0)
	})
}

// dayColumn is the column with the most days, -1 where none has several.
func dayColumn(b *layout.Block) int {
	at, most := -1, leastDays-1
	for _, l := range b.Labels {
		n := 0
		for _, r := range b.Rows {
			if l.Col < len(r.Cells) && r.Cells[l.Col].Look == layout.Date {
				n++
			}
		}
		if n > most {
			at, most = l.Col, n
		}
	}
	return at
}

// timed tells a row with a day or a clock time.
func timed(r *layout.Row) bool {
	return slices.ContainsFunc(r.Cells, func(c layout.Cell) bool {
		return (c.Look == layout.Date || c.Look == layout.Clock) && c.Formula == "" && !ofYear.MatchString(c.Text)
	})
}

// loneText tells a row with one cell of words and nothing else.
func loneText(r *layout.Row) bool {
	texts := 0
	for _, c := range r.Cells {
		switch c.Look {
		case layout.Text:
			texts++
		case layout.Blank:
		default:
			return false
		}
	}
	return texts == 1
}

// footLabel tells a row with numbers whose first cells, no further than beside its day, have
// a label without digits or a year.
func footLabel(r *layout.Row, day int) bool {
	label, numbers := false, 0
	for i, c := range r.Cells {
		switch {
		case i <= day+1 && ofYear.MatchString(c.Text):
			label = true
		case i <= day+1 && c.Look == layout.Text:
			label = label || !strings.ContainsAny(c.Text, "0123456789?") && len(c.Text) > 2 && !words.Ditto(c.Text)
		case numbers == 0 && c.Look == layout.Text && words.AnyFish(c.Text):
			label = true // fish: 13, kg 33
		case c.Look == layout.Number || c.Look == layout.Duration || c.Look == layout.Clock:
			numbers++
		}
	}
	return label && numbers > 0
}

// wordOverNumber tells a row that begins with a label where the table has clock times or numbers, and no words: T / h,
// 0.35, bites an hour.
func wordOverNumber(b *layout.Block, r *layout.Row, end int) bool {
	first := slices.IndexFunc(r.Cells, func(c layout.Cell) bool { return c.Look != layout.Blank })
	if first < 0 || r.Cells[first].Look != layout.Text || strings.ContainsAny(r.Cells[first].Text, "0123456789?") ||
		!slices.ContainsFunc(r.Cells[first:], func(c layout.Cell) bool { return c.Look == layout.Number }) {
		return false
	}
	filled := 0
	for _, o := range b.Rows[:end] {
		if first < len(o.Cells) && o.Cells[first].Look != layout.Blank {
			if o.Cells[first].Look == layout.Text {
				return false
			}
			filled++
		}
	}
	return filled > 0
}

// sumInWords is a sum with its label before it: "trips: 5".
var sumInWords = regexp.MustCompile(`^\pL[\pL ]{2,}\s*[:=]?\s*\d+$`)

// sumAlone tells a last row that is nothing but a sum with its label, in one cell.
func sumAlone(b *layout.Block, i int) bool {
	r := &b.Rows[i]
	text := firstText(*r)
	return i == len(b.Rows)-1 && loneText(r) && sumInWords.MatchString(text) && !words.AnyFish(text)
}

// fewCodes is how many short words a column has at the least that holds codes.
const fewCodes = 3

// codes are the words of columns that are no words for totals there, though they look like one: two or three letters
// in a column of such, "BF" among "WH" and "KF", or a word that stands behind a day or a clock time in another row.
type codes struct {
	short map[int]bool
	told  map[int]map[string]bool
}

func codesAmong(rows []layout.Row) codes {
	out := codes{map[int]bool{}, map[int]map[string]bool{}}
	short, filled := map[int]int{}, map[int]int{}
	for _, r := range rows {
		behind := false
		for i, c := range r.Cells {
			if c.Look == layout.Blank {
				continue
			}
			if filled[i]++; shortWord.MatchString(c.Text) {
				short[i]++
			}
			if behind && out.told[i] == nil {
				out.told[i] = map[string]bool{}
			}
			if behind {
				out.told[i][c.Text] = true
			}
			behind = behind || (c.Look == layout.Date || c.Look == layout.Clock) && c.Formula == ""
		}
	}
	for i, n := range short {
		out.short[i] = n >= fewCodes && 4*n >= 3*filled[i]
	}
	return out
}

// holds tells a cell of column i that is such a code.
func (x codes) holds(i int, c layout.Cell) bool {
	return x.told[i][c.Text] || x.short[i] && shortWord.MatchString(c.Text)
}

var shortWord = regexp.MustCompile(`^\pL{2,3}$`)

// addsUp tells a row of totals whatever it is called: it has no day where the rows above
// have one, and each of its numbers but one at most is the sum of the column above, one of them of
// several numbers that are not 0.
func addsUp(above []layout.Row, r *layout.Row) bool {
	numbers, sums, strong := 0, 0, 0
	for i, c := range r.Cells {
		if c.Look == layout.Date || c.Look == layout.Clock && c.Formula == "" {
			return false
		}
		x, ok := number(c.Text)
		if !ok {
			continue
		}
		numbers++
		sum, addends := columnSum(above, i)
		if len(above) < fewAddends || addends == 0 || math.Abs(sum-x) >= 0.005*math.Max(1, math.Abs(x)) {
			continue
		}
		sums++
		if addends >= fewAddends {
			strong++
		}
	}
	dated := slices.ContainsFunc(above, func(o layout.Row) bool {
		return slices.ContainsFunc(o.Cells, func(c layout.Cell) bool { return c.Look == layout.Date })
	})
	return dated && strong > 0 && numbers-sums <= 1 && (sums > 1 || numbers == 1)
}

// fewAddends is how many numbers a sum has at the least that is no chance.
const fewAddends = 3

// columnSum adds up the numbers of column i, and counts those that are not 0.
func columnSum(rows []layout.Row, i int) (sum float64, addends int) {
	for _, o := range rows {
		if i >= len(o.Cells) {
			continue
		}
		if y, ok := number(o.Cells[i].Text); ok && y != 0 {
			sum += y
			addends++
		}
	}
	return sum, addends
}

// fewSubtotals is how many rows of sums without a word a table has at least for them to be told from its others.
const fewSubtotals = 3

// subtotals are the rows, by index, that have nothing but figures, each the sum of the rows above it down from the last
// such row: the sums of each day, without a word. Where more than one in five of such rows is no sum, nor one of them
// all, none is.
func subtotals(rows []layout.Row) map[int]bool {
	out := map[int]bool{}
	var group, all []layout.Row
	several, others := false, 0
	for i := range rows {
		if !onlyFigures(&rows[i]) || len(all) == 0 {
			group, all = append(group, rows[i]), append(all, rows[i])
			continue
		}
		if sumOfRows(group, &rows[i]) || sumOfRows(all, &rows[i]) {
			out[i], several = true, several || len(group) > 1
		} else {
			others++
		}
		group = nil
	}
	if len(out) < fewSubtotals || !several || others > len(out)/4 {
		return nil
	}
	return out
}

// onlyFigures tells a row of two numbers or more, and nothing else.
func onlyFigures(r *layout.Row) bool {
	numbers := 0
	for _, c := range r.Cells {
		if _, ok := number(c.Text); c.Look == layout.Date || c.Look == layout.Clock || c.Look != layout.Blank && !ok {
			return false
		} else if ok {
			numbers++
		}
	}
	return numbers > 1
}

// sumOfRows tells a row whose numbers are each the sum of those of some rows, in which more stands.
func sumOfRows(rows []layout.Row, r *layout.Row) bool {
	blank := false
	for i, c := range r.Cells {
		x, ok := number(c.Text)
		sum, filled := 0.0, len(rows) > 0
		for _, o := range rows {
			if i >= len(o.Cells) || o.Cells[i].Look == layout.Blank {
				filled = false
				continue
			}
			y, _ := number(o.Cells[i].Text)
			sum += y
		}
		if blank = blank || !ok && filled; ok && math.Abs(sum-x) >= 0.005*math.Max(1, math.Abs(x)) {
			return false
		}
	}
	return blank && len(rows) > 0
}

// isTotals tells a row of totals: most of its numbers are sums over rows, or all of few with
// no more than a label beside them, or a word for it stands before its numbers and no day. A code behind the row's
// first cell, in a column of such, is no such word: "BF" is a fish.
func isTotals(r *layout.Row, coded codes) bool {
	numbers, sums, labels, dated, word, first := 0, 0, 0, false, false, true
	for i, c := range r.Cells {
		switch c.Look {
		case layout.Number, layout.Duration, layout.Clock:
			numbers++
			if sumsRows(c.Formula) {
				sums++
			}
		case layout.Date:
			dated = dated || i < 2 && c.Formula == ""
		case layout.Text:
			labels++
			if (first || i < 4 && !coded.holds(i, c)) && numbers == 0 && len(c.Text) < 40 &&
				words.IsTotal(c.Text) {
				word = true
			}
		}
		first = first && c.Look == layout.Blank
	}
	alone := sums == numbers && labels <= 1 && !dated
	return numbers > 0 && (word && !dated || sums > 0 && alone || sums >= 2 && 2*sums >= numbers)
}
