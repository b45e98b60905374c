package proof

import "fmt"

// sheetDays asks about sheets whose name is another day than the one that stands in them, where others have that of
// their name.
func (q *inquiry) sheetDays() {
	days := q.log.OtherDays()
	if len(days) == 0 {
		return
	}
	text := fmt.Sprintf("Sheet %q has the day %s, not that of its name. The day in the sheet was taken: mend it "+
		"where the name is right.", days[0].Name, days[0].Day.Time().Format("2 January 2006"))
	if n := len(days) - 1; n > 0 {
		text += fmt.Sprintf(" So it is with %s.", plural(n, "other sheet", "other sheets"))
	}
	q.ask("sheet day", days[0].Name, "date", text, nil, all)
	q.last().Brief = "A sheet has another day than its name."
}
