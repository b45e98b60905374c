package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// afterwards keeps a column of a list of fish by its name where the strikes that they name tell what became of each,
// and the column's words hardly do: they may tell how it was cooked, or who had it.
func (l *Log) afterwards() {
	data := l.Data()
	for _, u := range data {
		b := u.Plan.Find("outcome")
		if u.Plan.Kind != plan.Fish || b == nil || b.Index < 0 || len(b.Codes) > 0 || !u.Plan.Binds("strike") ||
			!slices.ContainsFunc(data, func(o *Understood) bool {
				return o.Plan.Kind == plan.Strikes && o.Plan.Binds("strike") && o.Plan.Binds("outcome")
			}) {
			continue
		}
		told, all := 0, 0
		for _, text := range column(u.b.rows, b.Index) {
			all++
			if _, _, _, ok := words.FateOf(text); ok || words.Nothing(text) {
				told++
			}
		}
		if 2*told > all {
			continue
		}
		at, heading := b.Index, b.Heading
		u.Plan.Bindings = slices.DeleteFunc(u.Plan.Bindings, func(x plan.Binding) bool { return x.Index == at })
		u.Plan.Unknown = append(u.Plan.Unknown, plan.Unknown{Index: at, Heading: heading, Aside: "afterwards"})
		u.b.note("%s: its words hardly tell what became of the fish, and the strikes that they name do",
			strings.TrimSpace(heading))
	}
}
