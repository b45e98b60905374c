package reports

import (
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// notSettled says at the top of a page that questions are open on which its effort and
// strikes rest; nothing where none is.
func notSettled(o queries.Open) []string {
	if o.Questions == 0 {
		return nil
	}
	return []string{sentence.Capital(openText(o.Questions)) + " about the logs: these figures may change. " + o.Brief}
}

func openText(n int64) string { return page.Plural(n, "open question", "open questions") }
