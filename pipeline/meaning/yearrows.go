package meaning

import (
	"errors"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
)

var (
	yearAlone = regexp.MustCompile(
		`^(?i:(?:season|saison|temporada|stagione|época|epoca|year|année|annee|año|ano|anno|jahr) )?((?:19|20)\d\d)$`)
	dotted      = regexp.MustCompile(`^(?:\pL+\.?,? )?\d{1,2}\. ?\d{1,2}\.$`)
	dayAndMonth = regexp.MustCompile(`\b(\d{1,2})\s?([/.-])\s?(\d{1,2})(?:\.?$|\.?\s)`)
)

// stripYears takes the rows out of a table that hold nothing but a year, and a remark at the most, where each has days
// without a year under it, and writes it behind these: 2024, 3 Aug, 10 Aug, 2025, 2 Aug. Days that say their year are
// of the one above them.
func stripYears(b *layout.Block) {
	at := daysColumn(b)
	if b.Open || at < 0 {
		return
	}
	var rows, years []layout.Row
	last, days := "", 1
	for _, r := range b.Rows {
		year := yearOfRow(r)
		switch {
		case year == "":
			own := yearOfDay(b, r, at)
			if rows = append(rows, r); own != "" || dayWithoutYear(cellText(r, at)) {
				days++
			}
			if own != "" && last != "" && own != last {
				return // it is no heading of what follows
			}
			continue
		case days == 0 || year <= last:
			return // it stands under its days, or is something else
		}
		years = append(years, r)
		last, days = year, 0
	}
	if len(years) == 0 || days == 0 {
		return
	}
	b.Rows, b.Years = rows, years
	for _, r := range years {
		if col, text := remarkOfYear(r); text != "" {
			b.Beside = append(b.Beside, layout.Note{Row: r.Num, Col: col + 1, Text: text})
		}
	}
	for _, r := range b.Rows {
		if year := yearAbove(b, r.Num); year != "" && dayWithoutYear(cellText(r, at)) {
			r.Cells[at].Text = withYear(cellText(r, at), year)
		}
	}
}

// stripMonths takes the rows out of a table that hold nothing but a month, where its days say theirs: they part it
// for the eye alone.
func stripMonths(b *layout.Block) {
	if b.Open || !slices.ContainsFunc(b.Labels, func(l layout.Label) bool {
		days := 0
		for _, r := range b.Rows {
			if l.Col < len(r.Cells) && r.Cells[l.Col].Look == layout.Date && !ofMonth(r.Cells[l.Col].Text) {
				days++
			}
		}
		return days > 1
	}) {
		return
	}
	b.Rows = slices.DeleteFunc(slices.Clone(b.Rows), func(r layout.Row) bool { return monthOfRow(r) })
}

// monthOfRow tells a row that says a month and no more.
func monthOfRow(r layout.Row) bool {
	said := ""
	for _, c := range r.Cells {
		text := strings.TrimSpace(c.Text)
		if text != "" && said != "" {
			return false
		}
		said += text
	}
	return unit.OnlyMonth(said)
}

// dayWithoutYear tells a day and a month: 3 Aug, 8/3, 3.8.
func dayWithoutYear(text string) bool { return yearless(text) || dotted.MatchString(text) }

// daysColumn is the column with the most days, with a year or without; -1 where none has several.
func daysColumn(b *layout.Block) int {
	at, most := -1, 1
	for _, l := range b.Labels {
		n := 0
		for _, r := range b.Rows {
			day := l.Col < len(r.Cells) && r.Cells[l.Col].Look == layout.Date
			if day || dayWithoutYear(cellText(r, l.Col)) {
				n++
			}
		}
		if n > most {
			at, most = l.Col, n
		}
	}
	return at
}

// yearAbove is the year of the last row of one above a row.
func yearAbove(b *layout.Block, row int) string {
	year := ""
	for _, y := range b.Years {
		if y.Num < row {
			year = yearOfRow(y)
		}
	}
	return year
}

// yearOfDay is the year of a row's day, "" where it says none.
func yearOfDay(b *layout.Block, r layout.Row, at int) string {
	text := cellText(r, at)
	if serial, err := strconv.ParseFloat(text, 64); err == nil && r.Cells[at].Look == layout.Date {
		m, err := unit.FromSerial(serial, b.Grid.Info.Date1904)
		if err != nil {
			return ""
		}
		y, _, _ := m.Date.Civil()
		return strconv.Itoa(y)
	}
	return fullYear.FindString(text)
}

// fullYear is a year in a day that says it.
var fullYear = regexp.MustCompile(`\b(?:19|20)\d\d\b`)

// fewRemark is how many words a remark has at the least that stands beside a year.
const fewRemark = 3

// yearOfRow is the year that is all that a row says but for a remark that tells of no bite, "" where it says more.
func yearOfRow(r layout.Row) string {
	year, remark := "", ""
	for _, c := range r.Cells {
		text := strings.TrimSpace(c.Text)
		switch m := yearAlone.FindStringSubmatch(text); {
		case text == "":
		case m != nil && year == "":
			year = m[1]
		case year == "" || remark != "" || len(strings.Fields(text)) < fewRemark || digits(text) > 0 || namesFish(text):
			return ""
		default:
			remark = text
		}
	}
	return year
}

// namesFish tells a text that tells of a bite of a fish by its name.
func namesFish(text string) bool {
	return slices.ContainsFunc(phrase.Tell(text, phrase.Defaults{}).Bites,
		func(b phrase.Bite) bool { return b.Name != "" })
}

// remarkOfYear is what stands beside the year in its row, and its column.
func remarkOfYear(r layout.Row) (col int, text string) {
	for i, c := range r.Cells {
		if c.Look != layout.Blank && !yearAlone.MatchString(strings.TrimSpace(c.Text)) {
			return i, c.Text
		}
	}
	return 0, ""
}

// yearRows gives the days under a row that holds nothing but a year that year.
func (x *builder) yearRows() {
	date := x.plan.Find("date")
	if len(x.block.Years) == 0 {
		return
	}
	if x.plan.Drop == nil {
		x.plan.Drop = map[int64]bool{}
	}
	for _, r := range x.block.Years {
		x.plan.Drop[int64(r.Num)] = true
	}
	if date == nil || date.Column.Parse != "date" {
		return
	}
	for i, row := range x.rows {
		if yearAbove(x.block, x.block.Rows[i].Num) != "" && cellOf(row, date.Index) != "" {
			x.say(i, date.Index, cellOf(row, date.Index))
		}
	}
	x.note("%s: a year in a row of its own was taken for the days under it", date.Heading)
}

// withYear is a day that has no year with one, as it is written: 8/3 is 8/3/2024. One that is no day then
// stays as it is.
func withYear(day, year string) string {
	full := day + " " + year
	if m := dayAndMonth.FindStringSubmatchIndex(day); m != nil {
		sep := day[m[4]:m[5]]
		full = strings.TrimSpace(day[:m[0]] + day[m[2]:m[3]] + sep + day[m[6]:m[7]] + sep + year + " " + day[m[1]:])
	}
	m, err := unit.ParseMoment(full, unit.DayFirst)
	if n, _ := strconv.Atoi(year); err == nil && m.HasDate {
		if y, _, _ := m.Date.Civil(); y == n {
			return full
		}
	}
	if errors.Is(err, unit.ErrDateOrder) {
		return full
	}
	return day
}

// say has a row's cell say something else than what stands in it.
func (x *builder) say(row, index int, text string) {
	if x.plan.Cells == nil {
		x.plan.Cells = map[plan.Cell]string{}
	}
	x.plan.Cells[plan.Cell{Row: int64(x.block.Rows[row].Num), Index: index}] = text
}
