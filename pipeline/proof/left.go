package proof

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"wakeledger/pipeline/layout"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/words"
)

// figures tells rows with several numbers or clock times.
func figures(rows []layout.Row) bool {
	n := 0
	for _, r := range rows {
		for _, c := range r.Cells {
			if c.Look == layout.Number || c.Look == layout.Clock {
				n++
			}
		}
	}
	return n >= 4
}

// texts are the words of the first rows, by which a sheet is known again.
func texts(rows []layout.Row) []string {
	var out []string
	for _, r := range rows[:min(5, len(rows))] {
		for _, c := range r.Cells {
			if c.Look == layout.Text {
				out = append(out, c.Text)
			}
		}
	}
	return out
}

// leftOver asks about blocks with numbers of which nothing was made.
func (q *inquiry) leftOver() {
	asked := len(q.out)
	for _, x := range q.log.Sheets {
		if len(x.Blocks) == 0 && !slices.Contains(q.log.Keys, x) && (figures(x.Grid.Rows) || speaking(x.Grid.Rows) ||
			len(q.log.Data()) == 0 && len(x.Grid.Rows) > 2) {
			where, name := "the file", x.Grid.Info.Name
			if name != "" {
				where = strconv.Quote(name)
			}
			q.ask("left over", name, name, fmt.Sprintf("I found no table in %s: is it about trolling or fish?", where),
				[]string{"no", "yes"}, all, texts(x.Grid.Rows)...)
			q.last().Brief = "A sheet was not used: is it about trolling or fish?"
		}
		q.besideForms(x)
		q.unreadTexts(x)
	}
	q.looseClocks()
	for _, like := range q.passed() {
		rows, numbers := 0, false
		for _, u := range like {
			rows += len(u.Block.Rows)
			for _, r := range u.Block.Rows {
				numbers = numbers || slices.ContainsFunc(r.Cells, func(c layout.Cell) bool {
					return c.Look == layout.Number || c.Look == layout.Clock
				})
			}
		}
		if numbers && rows >= 3 {
			q.unused(like[0], "")
		}
	}
	if len(q.log.Data()) == 0 && len(q.out) == asked {
		q.nothingRead()
	}
}

// looseClocks asks about clock times beside the tables and forms of a log in which no stretch was found.
func (q *inquiry) looseClocks() {
	n, first := 0, ""
	for _, x := range q.log.Sheets {
		for _, note := range x.Notes {
			m, err := unit.ParseMoment(note.Text, unit.OrderUnknown)
			if err != nil || !m.HasTime || m.HasDate {
				continue
			}
			if n++; first == "" {
				first = note.Text
			}
		}
	}
	if n < leastClocks || q.total.Stretches > 0 || q.total.Strikes == 0 {
		return
	}
	q.ask("left over", "", "clock times", fmt.Sprintf("I made nothing of %d clock times, the first: %s. Are these the "+
		"times with lines in the water?", n, first), []string{"no", "yes"}, append([]string{"trips"}, hours...), first)
	q.last().Brief = "Clock times were not used: are they those with lines in the water?"
}

// fewBeside is from how many figures beside a form on they are asked about.
const fewBeside = 6

// besideForms asks about figures that stand beside the labels and values of a sheet, and of which nothing was made.
func (q *inquiry) besideForms(x *layout.Sheet) {
	n := 0
	for _, note := range x.Notes {
		if _, err := unit.ParseMoment(note.Text, unit.OrderUnknown); err == nil || isNumber(note.Text) {
			n++
		}
	}
	if n < fewBeside || !slices.ContainsFunc(q.log.Data(), func(u *meaning.Understood) bool {
		return u.Block.Shape == layout.Form && u.Block.Grid == x.Grid
	}) {
		return
	}
	name, where := x.Grid.Info.Name, "this file"
	if name != "" {
		where = strconv.Quote(name)
	}
	q.ask("left over", name, name, fmt.Sprintf("Beside the labels and their values in %s stand %d figures of which I "+
		"made nothing: are they about trolling or fish?", where, n), []string{"no", "yes"}, all, texts(x.Grid.Rows)...)
	q.last().Brief = "Figures beside a form were not used: are they about trolling or fish?"
}

// isNumber reports whether a text is a number and nothing else.
func isNumber(text string) bool {
	_, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return err == nil
}

// nothingRead asks about a file of which nothing was read, and which is no key: where it is the only one, or speaks of
// bites or of lines several times.
func (q *inquiry) nothingRead() {
	first, speaks := "", 0
	for _, x := range q.log.Sheets {
		for _, r := range x.Grid.Rows {
			for _, c := range r.Cells {
				if first == "" {
					first = c.Text
				}
				if speaksOfFishing(c.Text) {
					speaks++
				}
			}
		}
	}
	list := len(q.log.Keys) > 0 || slices.ContainsFunc(q.log.Blocks, func(u *meaning.Understood) bool {
		return u.Money() || u.List()
	})
	if first == "" || len(q.book) > 0 && (speaks < fewTexts || list) {
		return
	}
	q.ask("left over", "", "the file", fmt.Sprintf("I made nothing of this file, which begins %q: is it about "+
		"trolling or fish?", first), []string{"no", "yes"}, all, q.log.File, first)
	q.last().Brief = "Nothing was read from a file: is it about trolling or fish?"
}

// speaking tells rows several of which are a text that speaks of lines or bites.
func speaking(rows []layout.Row) bool {
	n := 0
	for _, r := range rows[:min(len(rows), mostTexts)] {
		if slices.ContainsFunc(r.Cells, func(c layout.Cell) bool { return c.Text != "" && speaksOfFishing(c.Text) }) {
			n++
		}
	}
	return n >= fewTexts
}

// speaksOfFishing tells a text of lines that go in or up, or of bites.
func speaksOfFishing(text string) bool {
	if strings.IndexFunc(text, unicode.IsLetter) < 0 {
		return false // figures alone
	}
	return words.EntryOf(text).Event > words.EventQuiet || len(phrase.Tell(text, phrase.Defaults{}).Bites) > 0
}

// passed are the tables of which nothing was made, those with the same headings together: one a sheet.
func (q *inquiry) passed() [][]*meaning.Understood {
	var out [][]*meaning.Understood
	at := map[string]int{}
	for _, u := range q.log.Blocks {
		if u.Proof || u.Plan.Kind != "" || u.Block.Shape == layout.Form || u.Money() || u.List() {
			continue
		}
		heads := ""
		for _, l := range u.Block.Labels {
			heads += l.Text + "\x00"
		}
		if k, ok := at[heads]; ok {
			out[k] = append(out[k], u)
			continue
		}
		at[heads], out = len(out), append(out, []*meaning.Understood{u})
	}
	return out
}

// manyRows of one trip each tell something of it, and a table of trips has one for each.
const manyRows = 4

// repeats tells a table of trips that has many rows for each: they tell what happened on it, one
// thing a row, which a table of trips cannot hold.
func (q *inquiry) repeats(s Subject) {
	trip := s.Plan.Find("trip", "date")
	if s.Plan.Kind != plan.Trips || trip == nil || trip.Carried || len(s.Plan.Unknown) == 0 {
		return
	}
	names, rows := map[string]bool{}, 0
	for _, r := range s.Block.Rows {
		if name := cellOf(r, trip); name != "" {
			names[strings.ToLower(name)] = true
			rows++
		}
	}
	if rows < manyRows*len(names) || len(names) < 2 {
		return
	}
	var heads []string
	for _, u := range s.Plan.Unknown {
		heads = append(heads, u.Heading)
	}
	where := ""
	if s.Plan.Name != "" {
		where = fmt.Sprintf(" of %q", s.Plan.Name)
	}
	q.ask("left over", s.Plan.Name, strings.Join(heads, ", "),
		fmt.Sprintf("The %d rows%s tell of %d trips, and only their days were used, not %s: do they tell of "+
			"trolling or fish?", rows, where, len(names), strings.Join(heads, ", ")), []string{"no", "yes"}, all)
	q.last().Brief = "Rows of trips were used for their days alone: do they tell of trolling or fish?"
}

// onlyTrips asks about a log of which only the days of trips were used, where no other log of the season tells of hours
// or bites.
func (q *inquiry) onlyTrips() {
	if q.total.Stretches > 0 || q.total.Strikes > 0 || slices.ContainsFunc(q.out, func(x Question) bool {
		return x.Kind == "left over" || x.Kind == "no effort"
	}) {
		return
	}
	var heads []string
	for _, s := range q.subjects {
		if s.Plan.Kind != plan.Trips || len(s.Block.Rows) == 0 {
			return
		}
		for _, u := range s.Plan.Unknown {
			if u.Aside == "" && u.Heading != "" {
				heads = append(heads, u.Heading)
			}
		}
	}
	if len(heads) == 0 {
		return
	}
	q.ask("only trips", "", strings.Join(heads, ", "), fmt.Sprintf("Only the days of trips were used, no hours and no "+
		"bites: what stands under %s was not understood.", strings.Join(heads, ", ")), nil, all)
	q.last().Brief = "Of a log only the days of trips were used: it tells no hours and no bites that were understood."
}

// fewTexts of bites beside a table are remarks.
const fewTexts = 5

// mostTexts are looked at: nobody writes more beside a table.
const mostTexts = 1000

// unreadTexts asks about lines of a text file that are part of no table and speak of lines
// and bites. A workbook's texts explain its sheets.
func (q *inquiry) unreadTexts(x *layout.Sheet) {
	var speak []layout.Note
	for _, n := range x.Notes[:min(len(x.Notes), mostTexts)] {
		if speaksOfFishing(n.Text) {
			speak = append(speak, n)
		}
	}
	if len(speak) < fewTexts || len(x.Blocks) == 0 || x.Grid.Info.Workbook {
		return
	}
	first := speak[0]
	q.ask("left over", x.Grid.Info.Name, "texts", fmt.Sprintf("%d lines of text were not read, the first %q (row "+
		"%d): do they tell of trolling or fish?",
		len(speak), first.Text, first.Row), []string{"no", "yes"}, all)
	q.last().Brief = "Lines of text were not read: do they tell of trolling or fish?"
}

// template tells rows of which nothing is filled in but their own number: 1, 2, 3.
func template(rows []layout.Row) bool {
	for i, r := range rows {
		for col, c := range r.Cells {
			if c.Look != layout.Blank && (col > 0 || c.Text != strconv.Itoa(i+1)) {
				return false
			}
		}
	}
	return true
}

// unused asks about a block of which nothing was made, and says why of its first row where that is known.
func (q *inquiry) unused(u *meaning.Understood, why string) {
	if template(u.Block.Rows) {
		return
	}
	var heads []string
	for _, l := range u.Block.Labels {
		heads = append(heads, l.Text)
	}
	q.ask("left over", u.Plan.Name, strings.Join(heads, ", "),
		fmt.Sprintf("A table%s was not used (%s): is it about trolling or fish?%s", within(u.Plan.Name),
			strings.Join(heads, ", "), why), []string{"no", "yes"}, all)
	q.last().Brief = "A table was not used: is it about trolling or fish?"
}

// within says in which sheet a table is; a text file has one, without a name.
func within(name string) string {
	if name == "" {
		return ""
	}
	return fmt.Sprintf(" in %q", name)
}
