package page

// Report is a kind of page. It stands in the page's head, so that an earlier page of the
// kind is known again and may be written over.
type Report string

// The reports.
const (
	SeasonReport Report = "season"
	ScaleReport  Report = "scale"
	DeckReport   Report = "deck"
	TrackReport  Report = "track"
	ClubReport   Report = "club"
	YearsReport  Report = "years"
)

// Mark is what the page names as its maker (HTML, the meta element's name "generator"),
// with the report; it is in the first 4 KiB of the page.
func (r Report) Mark() string { return "wakeledger report " + string(r) }
