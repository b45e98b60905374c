package reports

import (
	"fmt"
	"strings"

	"wakeledger/queries"
	"wakeledger/reports/page"
)

// setAsideSection tells what could not be used, and what is counted but may be wrong, by
// reason. A page may leave the boat: it says in which rows of which log, by their numbers,
// and nothing of what stands there.
func (s *season) setAsideSection() (page.Section, error) {
	section := page.Section{ID: "set-aside", Heading: "Rows set aside"}
	aside, doubts := queries.Count(s.Troubles.Aside), queries.Count(s.Troubles.Doubts)
	if aside == 0 {
		section.Sentences = []string{"No row of the logs was set aside."}
	} else {
		verb := "were"
		if aside == 1 {
			verb = "was"
		}
		section.Sentences = []string{fmt.Sprintf("%s %s set aside: in no figure on this page. Mend them in the log "+
			"and load it again.",
			page.Plural(aside, "row or cell", "rows or cells"), verb)}
		section.Table = troubleTable("rows set aside, and why", s.Troubles.Aside)
	}
	if doubts > 0 {
		section.Sentences = append(section.Sentences, page.Plural(doubts, "row is counted, but may be wrong.",
			"rows are counted, but may be wrong."))
		section.Tables = append(section.Tables, troubleTable("rows that are doubtful, and why", s.Troubles.Doubts))
	}
	if aside+doubts > 0 {
		section.Notes = []string{"Logs are numbered in the order in which they were loaded. 'wakeledger ask " +
			"set-aside' and 'wakeledger ask doubts' name them, with every row and cell."}
	}
	return section, nil
}

func troubleTable(caption string, all []queries.Trouble) *page.Table {
	t := &page.Table{Caption: caption, Columns: []page.Column{
		{Head: "Reason", Kind: page.Prose}, {Head: "Log", Kind: page.Measure}, {Head: "How many", Kind: page.Measure},
		{Head: "Such as", Kind: page.Prose}, {Head: "May change", Kind: page.Prose},
	}}
	for _, x := range all {
		log := page.Words("")
		if x.Log > 0 {
			log = page.Whole(int64(x.Log))
		}
		var places []string
		for _, e := range x.Examples {
			places = append(places, e.Place())
		}
		effect := queries.EffectWords(x.Effect)
		if effect == "" {
			effect = "no total"
		}
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{
			page.Words(x.Reason), log, page.Whole(x.Rows), page.Words(strings.Join(places, ", ")), page.Words(effect),
		}})
	}
	return t
}
