package reports

import (
	"fmt"

	"wakeledger/reports/page"
)

func (s *season) setAsideSection() (page.Section, error) {
	section := page.Section{ID: "set-aside", Heading: "Rows set aside"}
	if len(s.SetAside) == 0 {
		section.Sentences = []string{"No row of the logs was set aside."}
		return section, nil
	}
	verb := "were"
	if len(s.SetAside) == 1 {
		verb = "was"
	}
	section.Sentences = []string{fmt.Sprintf("%s %s set aside: in no figure on this page. Mend them in the log and load it again.",
		page.Plural(int64(len(s.SetAside)), "row or cell", "rows or cells"), verb)}
	t := &page.Table{Caption: "rows set aside, and why", Open: len(s.SetAside) <= 12, Columns: []page.Column{
		{Head: "File"}, {Head: "Sheet"}, {Head: "Row", Kind: page.Measure}, {Head: "Column"}, {Head: "Cell"}, {Head: "Reason", Kind: page.Prose},
	}}
	for _, r := range s.SetAside {
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{
			page.Words(r.File), page.Words(r.Sheet), page.Whole(r.Row), page.Words(r.Column), page.Words(r.Cell), page.Words(r.Reason),
		}})
	}
	section.Table = t
	return section, nil
}
