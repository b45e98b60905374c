package reports

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/species"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/reports/page"
)

// fishNames gives a species its name in place of its code; a name as logged stays.
func fishNames(code string) string {
	list, err := species.Default()
	if err != nil {
		return code
	}
	if s, ok := list.ByCode(code); ok {
		return withinSentence(s.Name)
	}
	return code
}

// places are the first words of names of fish that keep their capital.
var places = []string{"Atlantic", "Pacific", "Indo-Pacific", "Southern", "Mediterranean", "European", "Japanese", "Australian"}

// withinSentence is a name of fish as it stands in the middle of a sentence.
func withinSentence(name string) string {
	head, _, _ := strings.Cut(name, " ")
	if slices.Contains(places, head) || name == "" {
		return name
	}
	return strings.ToLower(name[:1]) + name[1:]
}

// place is the row of a log that tells of a fish.
type place struct {
	file, sheet string
	row         int64
}

func placeOf(f queries.Fish) place { return place{f.File, f.Sheet, f.Row} }

// doubtsOf are the rows of logs that are doubtful, with the first reason of each.
func doubtsOf(all []queries.Doubt) map[place]string {
	out := map[place]string{}
	for _, d := range all {
		at := place{d.File, d.Sheet, d.Row}
		if _, ok := out[at]; !ok && slices.Contains(fishDoubts, d.Check) {
			out[at] = d.Check
		}
	}
	return out
}

// fishDoubts are the checks that doubt a fish's measures.
var fishDoubts = []string{"long fish", "heavy fish", "girth and length", "scale and tape"}

// doubtText says in a few words what is doubtful of a fish.
var doubtText = map[string]string{"long fish": "longer than its kind grows", "heavy fish": "heavier than its kind grows",
	"girth and length": "girth does not fit length", "scale and tape": "scale and tape far apart"}

// weighed are the fish with a weight, the heaviest first.
func weighed(fish []queries.Fish) []queries.Fish {
	out := slices.DeleteFunc(slices.Clone(fish), func(f queries.Fish) bool { return f.WeightKG == nil })
	slices.SortStableFunc(out, func(a, b queries.Fish) int {
		switch {
		case *a.WeightKG > *b.WeightKG:
			return -1
		case *a.WeightKG < *b.WeightKG:
			return 1
		}
		return 0
	})
	return out
}

// mainSpecies is the species with the most weights; of equals the first by name.
func mainSpecies(fish []queries.Fish) string {
	count, best := map[string]int{}, ""
	for _, f := range fish {
		name := speciesName(f)
		count[name]++
		if best == "" || count[name] > count[best] || count[name] == count[best] && name < best {
			best = name
		}
	}
	return best
}

// sizesPicture is every fish by its speed.
func (s *season) sizesPicture() (page.Section, string, error) {
	section := page.Section{ID: "sizes", Heading: "Sizes by speed"}
	fish := slices.DeleteFunc(weighed(s.Fish), func(f queries.Fish) bool { return f.SpeedBand == notLogged || s.doubtful[placeOf(f)] != "" })
	var bands []string
	for _, f := range fish {
		if !slices.Contains(bands, f.SpeedBand) {
			bands = append(bands, f.SpeedBand)
		}
	}
	switch {
	case len(s.Fish) == 0:
		return section, "sizes and the heaviest fish, because no fish is logged", nil
	case len(bands) < 2 && len(s.Trips) < 2:
		return section, "", nil
	case len(bands) < 2:
		return section, "sizes by speed, because no two speeds have fish with a weight", nil
	}
	slices.SortStableFunc(bands, s.bandOrder)
	main := mainSpecies(fish)
	levels, count := make([]page.Level, len(bands)), make([]int64, len(bands))
	var dots []page.SizeDot
	mains := int64(0)
	for _, f := range fish {
		row := slices.Index(bands, f.SpeedBand)
		count[row]++
		if speciesName(f) == main {
			mains++
		}
		dots = append(dots, page.SizeDot{Row: row, Weight: *f.WeightKG * s.perKG, Main: speciesName(f) == main})
	}
	for i, b := range bands {
		levels[i] = page.Level{Name: b, Counts: page.Plural(count[i], "fish", "fish")}
	}
	var medians []page.SizeMedian
	for _, m := range s.mediansOf(main) {
		if row := slices.Index(bands, queries.LevelText(bySpeed, m.Level)); row >= 0 && m.Median != nil && m.MedianLo != nil && m.MedianHi != nil {
			medians = append(medians, page.SizeMedian{Row: row, Median: *m.Median * s.perKG, Lo: *m.MedianLo * s.perKG, Hi: *m.MedianHi * s.perKG})
		}
	}
	section.Sentences = []string{s.sizesSentence(main, mains, int64(len(fish)))}
	keys := []page.Key{{Mark: page.MarkDisc, Words: capital(fishNames(main))}}
	if mains < int64(len(fish)) {
		keys = append(keys, page.Key{Mark: page.MarkOpen, Words: "other species"})
	}
	if len(medians) > 0 {
		keys = append(keys, page.Key{Mark: page.MarkLine, Words: "bar across: median of " + fishNames(main) + ", with its 95 % interval"})
	}
	chart, err := page.Sizes(page.Frame{
		Label: "Every fish with a weight and a speed as a dot. " + section.Sentences[0] + " The table below holds the figures.",
		Axis:  "round weight, " + s.weight, Counts: "fish", Keys: keys,
	}, levels, dots, medians)
	section.Chart, section.Table = chart, s.dotsTable(fish)
	section.Tables = []*page.Table{s.mediansTable()}
	return section, "", err
}

func (s *season) mediansOf(name string) []queries.SizeMedian {
	var out []queries.SizeMedian
	for _, m := range s.Worked.Medians {
		if m.Species == name {
			out = append(out, m)
		}
	}
	return out
}

// sizesSentence says whether the main species differs with speed.
func (s *season) sizesSentence(main string, mains, all int64) string {
	out := fmt.Sprintf("%s: no difference by speed shown, in %s.", capital(fishNames(main)), page.Plural(mains, "weight", "weights"))
	for _, m := range s.mediansOf(main) {
		if m.PValue != nil && m.Shift != nil && m.Verdict != string(evidence.NotSettled) && m.Verdict != "" {
			out = capital(s.sizeSentence(m))
			break
		}
	}
	if mains < all {
		out += fmt.Sprintf(" Other species: %s.", page.Plural(all-mains, "fish", "fish"))
	}
	return out
}

// dotsTable is the fish of the picture.
func (s *season) dotsTable(fish []queries.Fish) *page.Table {
	t := &page.Table{Caption: "every fish with a weight and a speed", Columns: []page.Column{{Head: "Date", Kind: page.Token}, {Head: "Species"},
		{Head: "Speed over ground", Kind: page.Token}, {Head: "Round weight", Unit: s.weight, Kind: page.Measure, Decimals: 1}, {Head: "Weight from"}}}
	for _, f := range fish {
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.WordsOf(f.Date), page.Words(capital(fishNames(speciesName(f)))), page.Words(f.SpeedBand),
			page.Value(*f.WeightKG * s.perKG), page.WordsOf(f.Method)}})
	}
	return t
}

// Of the heaviest, so many of each kind are shown.
const (
	mostWeighed  = 6
	mostTaped    = 4
	mostDoubtful = 3
)

// heaviestPicture is the heaviest fish by name: those on a scale, those by tape, and
// those that are doubtful.
func (s *season) heaviestPicture() (page.Section, string, error) {
	section := page.Section{ID: "heaviest", Heading: "The heaviest fish"}
	if len(s.Fish) == 0 {
		return section, "", nil // said with the sizes
	}
	var scale, tape, doubt []queries.Fish
	for _, f := range weighed(s.Fish) {
		switch {
		case s.doubtful[placeOf(f)] != "":
			doubt = append(doubt, f)
		case isScale(f.Method):
			scale = append(scale, f)
		default:
			tape = append(tape, f)
		}
	}
	shown := append(append(first(scale, mostWeighed), first(tape, mostTaped)...), first(doubt, mostDoubtful)...)
	if len(shown) == 0 {
		return section, "the heaviest fish, because none has a weight", nil
	}
	t := &page.Table{Caption: "the heaviest fish", Columns: []page.Column{{Head: "Fish"}, {Head: "Date", Kind: page.Token},
		{Head: "Round weight", Unit: s.weight, Kind: page.Measure, Decimals: 1}, {Head: "90 % interval", Unit: s.weight, Kind: page.Interval, Decimals: 1},
		{Head: "Weight from", Kind: page.Token}, {Head: "Doubtful", Kind: page.Prose}}}
	var rows []page.FishRow
	for i, f := range shown {
		why := doubtText[s.doubtful[placeOf(f)]]
		how := "by tape"
		if isScale(f.Method) {
			how = "scale"
		}
		under := joined(day(text(f.Date), "2 Jan 2006"), how)
		if why != "" {
			under = "doubtful: " + why
		}
		name := fmt.Sprintf("%d. %s", i+1, capital(fishNames(speciesName(f))))
		rows = append(rows, page.FishRow{Weight: *f.WeightKG * s.perKG, Lo: scaled(f.WeightLoKG, s.perKG), Hi: scaled(f.WeightHiKG, s.perKG),
			Scale: isScale(f.Method), Doubt: why != "", Level: page.Level{Name: name + "\n" + under, Counts: s.weightText(&f) + " " + s.weight}})
		t.Rows = append(t.Rows, page.Row{Cells: []page.Cell{page.Words(name), page.WordsOf(f.Date), page.Value(*f.WeightKG * s.perKG),
			page.Span(scaled(f.WeightLoKG, s.perKG), scaled(f.WeightHiKG, s.perKG)), page.WordsOf(f.Method), page.Words(why)}})
	}
	section.Sentences = []string{s.heaviestSentence(scale, tape, doubt)}
	chart, err := page.Heaviest(page.Frame{
		Label: "The heaviest fish by name, those on a scale apart from estimates by tape. " + section.Sentences[0] + " The table below holds the figures.",
		Axis:  "round weight, " + s.weight, Counts: s.weight,
		Keys: []page.Key{{Mark: page.MarkBoated, Words: "on a scale"}, {Mark: page.MarkTape, Words: "by tape, an estimate"}},
	}, rows)
	section.Chart, section.Table = chart, t
	return section, "", err
}

func first(fish []queries.Fish, n int) []queries.Fish { return slices.Clone(fish[:min(n, len(fish))]) }

// heaviestSentence names the heaviest of each kind, and counts the doubtful.
func (s *season) heaviestSentence(scale, tape, doubt []queries.Fish) string {
	var parts []string
	if len(scale) > 0 {
		parts = append(parts, fmt.Sprintf("Heaviest on a scale: %s %s, %s.", s.weightText(&scale[0]), s.weight, fishNames(speciesName(scale[0]))))
	}
	if len(tape) > 0 {
		parts = append(parts, fmt.Sprintf("By tape: about %s %s, %s.", s.weightText(&tape[0]), s.weight, fishNames(speciesName(tape[0]))))
	}
	if len(doubt) > 0 {
		parts = append(parts, fmt.Sprintf("%s doubtful: check the log.", page.Plural(int64(len(doubt)), "weight is", "weights are")))
	}
	return strings.Join(parts, " ")
}
