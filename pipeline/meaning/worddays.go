package meaning

import (
	"fmt"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// wordDays finds the rows whose day is told by that of the row above: "next day", "2nd day".
func (x *builder) wordDays() {
	p := x.plan
	date := p.Find("date")
	if date == nil || date.Column.Parse != "date" {
		return
	}
	days := x.daysOf(date.Index)
	found := 0
	for i := 1; i < len(days); i++ {
		text := cellOf(x.rows[i], date.Index)
		if text == "" && date.Carried {
			days[i] = days[i-1]
		}
		if text == "" || days[i] != 0 || days[i-1] == 0 || !words.Night(text, "second") && !words.Night(text, "next") {
			continue
		}
		days[i] = days[i-1] + 1
		said := days[i].String()
		if year, month, day := days[i].Civil(); year == yearlessYear {
			said = fmt.Sprintf("%d %s", day, month)
		}
		if p.Days == nil {
			p.Days = map[plan.Cell]string{}
		}
		p.Days[plan.Cell{Row: int64(x.block.Rows[i].Num), Index: date.Index}] = said
		found++
	}
	if found > 0 {
		x.note("%s: %s a cell says only \"next day\" or the like: it is the day after the row above", date.Heading,
			often(found))
	}
}
