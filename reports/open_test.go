package reports

import (
	"bytes"
	"strings"
	"testing"

	"wakeledger/queries"
	"wakeledger/reports/bundle"
)

// While a question is open each page says so at its top, escaped; else none does.
func TestPagesSayWhatIsNotSettled(t *testing.T) {
	asked := queries.Open{Questions: 2, Brief: `What stands under "<b>Out</b>"?`}
	for _, o := range []queries.Open{{}, asked} {
		pages := map[string]func(*bytes.Buffer) error{
			"season": func(b *bytes.Buffer) error { return Season(b, SeasonInput{Units: "metric", Open: o}) },
			"scale":  func(b *bytes.Buffer) error { return Scale(b, ScaleInput{Units: "metric", Open: o}) },
			"deck":   func(b *bytes.Buffer) error { return Deck(b, DeckInput{Units: "metric", Open: o}) },
			"track":  func(b *bytes.Buffer) error { return Track(b, TrackInput{Open: o}) },
			"club": func(b *bytes.Buffer) error {
				return Club(b, ClubInput{Units: "metric", Boats: []bundle.Boat{
					{ID: "blue-7", Seasons: []bundle.Season{{ID: "blue-7", Open: o.Questions}}}}})
			},
		}
		for name, write := range pages {
			var b bytes.Buffer
			if err := write(&b); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			text := b.String()
			at, main := strings.Index(text, `<aside class="open" aria-label="Not settled">`),
				strings.Index(text, "<main")
			if (at >= 0) != (o.Questions > 0) || at > main {
				t.Errorf("%s with %d questions: the banner is at %d, the page's body at %d", name, o.Questions, at,
					main)
			}
			if o.Questions == 0 {
				continue
			}
			told := text[at:main]
			if !strings.Contains(told, "may change") || strings.Contains(told, "<b>") {
				t.Errorf("%s: %s", name, told)
			}
			if own := name != "club"; strings.Contains(told, "What stands under") != own {
				t.Errorf("%s: a club is told no question, the boat is: %s", name, told)
			}
		}
	}
}
