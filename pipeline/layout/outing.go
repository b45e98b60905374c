package layout

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

// Some texts have a heading for each outing that ends with its day, "CRUISE 4   Sunday 5 May 2024", and
// watches under it, "0400-0800", whose entries have clock times.

var (
	namedHead = regexp.MustCompile(`(?i)^(\pL[\pL '.]{1,22}?)\s*(?:no\.?|nr\.?|n[°º]|#)?\s*(\d{1,3})?[\s:.,;–—-]*$`)
	untilDay  = regexp.MustCompile(`(?i)^(?:to|till?|until|bis|al?|au|à|até|hasta|fino a)\s+(.*)$`)
	bareSpan  = regexp.MustCompile(`^([01]?\d|2[0-4])[:.h]?([0-5]\d)?\s*(?:h|hrs)?\s*[-–—]\s*` +
		`([01]?\d|2[0-4])[:.h]?([0-5]\d)?\s*(?:h|hrs)?(?:\s*\([^()]*\))?$`)
	yearOf     = regexp.MustCompile(`\b\d{4}\b`)
	fewWatches = 3
)

// outingHead is a line that heads an outing, with the word it is named by and its number, and its day.
type outingHead struct{ word, number, day string }

// headOf takes a line for the heading of an outing: words, a number or none, and a whole day at the end,
// or two days of which the outing lasts.
func headOf(text string) (h outingHead, ok bool) {
	text = strings.Join(strings.Fields(text), " ")
	if !yearOf.MatchString(text) {
		return h, false // most lines, told without the dear patterns
	}
	if m := dayFirst.FindStringSubmatch(text); m != nil && isDay(m[2]) {
		return h, false
	}
	for at := range len(text) {
		if at == 0 || text[at-1] != ' ' {
			continue
		}
		d := dayFirst.FindStringSubmatch(text[at:])
		if d == nil || !isDay(d[2]) || !yearOf.MatchString(d[2]) {
			continue
		}
		m := namedHead.FindStringSubmatch(text[:at])
		if m == nil {
			continue
		}
		rest := d[3]
		if u := untilDay.FindStringSubmatch(rest); u != nil {
			rest = u[1]
		}
		if last := dayFirst.FindStringSubmatch(rest); rest == "" || last != nil && last[3] == "" && isDay(last[2]) {
			return outingHead{strings.ToLower(strings.TrimSpace(m[1])), m[2], d[2]}, true
		}
	}
	return h, false
}

// outings are the headings of outings among a text's lines, by row. The numbers of those that are named
// alike must rise; else they number something else, and are left out.
func (g *Grid) outings() map[int]outingHead {
	out, rising := map[int]outingHead{}, map[string]int{}
	first, loose := map[string]bool{}, map[string]bool{}
	for i := range g.Rows {
		if g.Rows[i].filled(0, g.Width) == nil {
			continue
		}
		h, ok := headOf(joined(g.Rows[i]))
		if !ok {
			continue
		}
		out[i] = h
		if n, _ := strconv.Atoi(h.number); h.number != "" {
			loose[h.word] = loose[h.word] || first[h.word] && n <= rising[h.word]
			rising[h.word], first[h.word] = n, true
		}
	}
	for i, h := range out {
		if loose[h.word] {
			h.number = ""
			out[i] = h
		}
	}
	return out
}

// watches are the rows that name the span of a watch and no more: the entries under each have times within
// it. Spans whose entries lie elsewhere are entries themselves.
func (g *Grid) watches() map[int]bool {
	out := map[int]bool{}
	from, to, within := 0, 0, 0
	for i := range g.Rows {
		text := joined(g.Rows[i])
		if m := bareSpan.FindStringSubmatch(text); m != nil {
			out[i], from, to = true, clockOf(m[1], m[2]), clockOf(m[3], m[4])
			continue
		}
		m := clockFirst.FindStringSubmatch(text)
		if m == nil || len(out) == 0 {
			continue
		}
		digits := strings.Map(onlyDigits, m[1])
		if at := clockOf(digits[:len(digits)-2], digits[len(digits)-2:]); at < from || at > to && to > from {
			return nil
		}
		within++
	}
	if len(out) < fewWatches || within < len(out) {
		return nil
	}
	return out
}

// clockOf are the minutes of a clock time's hours and minutes.
func clockOf(hours, minutes string) int {
	h, _ := strconv.Atoi(hours)
	n, _ := strconv.Atoi(minutes)
	return 60*h + n
}

// withYear is a day that has no year, under the heading of an outing that began on another: of its year, or
// of the next where that comes after it.
func withYear(day, began string) string {
	if began == "" || yearOf.MatchString(day) {
		return day
	}
	d, err := unit.ParseDayMonth(day, unit.DayFirst)
	at, ok := unit.ParseMoment(began, unit.DayFirst)
	if err != nil || ok != nil || !at.HasDate {
		return day
	}
	y, _, _ := at.Date.Civil()
	for _, year := range []int{y, y + 1} {
		if on := unit.DateOf(year, d.Month, d.Day); on >= at.Date && on < at.Date+longestOuting {
			return on.String()
		}
	}
	return day
}

// longestOuting is in how many days under one heading a day without a year is of the heading's year.
const longestOuting = 60

// numbered tells whether some of the headings are numbered, more than one.
func numbered(heads map[int]outingHead) bool {
	n := 0
	for _, h := range heads {
		if h.number != "" {
			n++
		}
	}
	return n > 1
}

// addTrips gives each row of a block of entries the number of the outing under whose heading it stands.
func (b *Block) addTrips(heads map[int]outingHead) {
	if !numbered(heads) {
		return
	}
	var at []int
	for i := range heads {
		at = append(at, i)
	}
	slices.Sort(at)
	col := len(b.Labels)
	b.Labels = append(b.Labels, Label{Col: col, Text: "trip"})
	for k := range b.Rows {
		number := ""
		for _, i := range at {
			if b.Grid.Rows[i].Num < b.Rows[k].Num {
				number = heads[i].number
			}
		}
		cell := Cell{Text: number, Look: Number}
		if number == "" {
			cell = Cell{}
		}
		b.Rows[k].Cells = append(b.Rows[k].Cells, cell)
	}
}

// fewTitles is how many lines must number outings for all of them to do so.
const fewTitles = 3

// numberedTitles are the lines, by row, that are one word and a number above a line with a day, "Outing 4": as many
// as there are, each with the next number.
func (g *Grid) numberedTitles() map[int]outingHead {
	out, word, last, open := map[int]outingHead{}, "", 0, false
	for i := range g.Rows {
		if g.Rows[i].filled(0, g.Width) == nil {
			continue
		}
		text := joined(g.Rows[i])
		d := dayFirst.FindStringSubmatch(text)
		day := d != nil && isDay(d[2])
		if open && !day {
			return nil
		}
		open = false
		m := namedHead.FindStringSubmatch(text)
		if m == nil || m[2] == "" || day || strings.ContainsRune(strings.TrimSpace(m[1]), ' ') {
			continue
		}
		head := strings.ToLower(strings.TrimSpace(m[1]))
		n, _ := strconv.Atoi(m[2])
		if n != last+1 || word != "" && head != word {
			return nil
		}
		out[i], word, last, open = outingHead{word: head, number: m[2]}, head, n, true
	}
	if len(out) < fewTitles || open {
		return nil
	}
	return out
}
