package reports

import (
	"fmt"
	"slices"
	"strings"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
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
var places = []string{"Atlantic", "Pacific", "Indo-Pacific", "Southern", "Mediterranean",
	"European", "Japanese", "Australian"}

// withinSentence is a name of fish as it stands in the middle of a sentence.
func withinSentence(name string) string {
	head, _, _ := strings.Cut(name, " ")
	if slices.Contains(places, head) || name == "" {
		return name
	}
	return strings.ToLower(name[:1]) + name[1:]
}

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

// sized are the fish with a weight that is not doubted and a speed, the heaviest first.
func (s *season) sized() []queries.Fish {
	return slices.DeleteFunc(weighed(s.Fish), func(f queries.Fish) bool {
		return f.SpeedBand == factors.NotLogged || s.doubtful[placeOf(f)] != ""
	})
}

// sizesPart is every fish by its speed, those of one species with medians.
func (s *season) sizesPart(main string) (out part[page.SizeDot], medians []page.SizeMedian) {
	fish := s.sized()
	var bands []string
	for _, f := range fish {
		if !slices.Contains(bands, f.SpeedBand) {
			bands = append(bands, f.SpeedBand)
		}
	}
	switch {
	case len(s.Fish) == 0:
		out.less = "sizes and the heaviest fish, because no fish is logged"
	case len(bands) < 2 && len(s.Trips) < 2:
		out.less = aloneOnPage
	case len(bands) < 2:
		out.less = "sizes by speed, because no two speeds have fish with a weight"
	}
	if out.less != "" {
		return out, nil
	}
	slices.SortStableFunc(bands, s.bandOrder)
	count := make([]int64, len(bands))
	mains := int64(0)
	for _, f := range fish {
		row := slices.Index(bands, f.SpeedBand)
		count[row]++
		if speciesName(f) == main {
			mains++
		}
		out.marks = append(out.marks, page.SizeDot{Row: row, Weight: *f.WeightKG * s.perKG,
			Main: speciesName(f) == main})
		out.rows = append(out.rows, page.Row{Cells: []page.Cell{page.WordsOf(f.Date),
			page.Words(sentence.Capital(fishNames(speciesName(f)))), page.Words(s.tagged(f.SpeedBand)),
			page.Value(*f.WeightKG * s.perKG), weighedBy(f.Method)}})
	}
	for i, b := range bands {
		out.levels = append(out.levels, s.row(b, page.Plural(count[i], "fish", "fish")))
	}
	for _, m := range s.mediansOf(main) {
		if row := slices.Index(bands, factors.Text(factors.Speed, m.Level)); row >= 0 && m.Median != nil &&
			m.MedianLo != nil && m.MedianHi != nil {
			medians = append(medians, page.SizeMedian{Row: row, Median: *m.Median * s.perKG,
				Lo: *m.MedianLo * s.perKG, Hi: *m.MedianHi * s.perKG})
		}
	}
	out.sentence = s.sizesSentence(main, mains, int64(len(fish)))
	return out, medians
}

// sizesFrame is the words around the picture of sizes.
func (s *season) sizesFrame(sentence, main string, others bool, medians int, keys ...page.Key) page.Frame {
	if others {
		keys = append(keys, page.Key{Mark: page.MarkOpen, Words: "other species"})
	}
	if medians > 0 {
		keys = append(keys, page.Key{Mark: page.MarkLine, Words: "bar across: median of " +
			fishNames(main) + ", with its 95 % interval"})
	}
	return page.Frame{
		Label: "Every fish with a weight and a speed as a dot. " + sentence + " The table below holds the figures.",
		Axis:  "round weight, " + s.weight, Counts: "fish", Keys: keys,
	}
}

// othersThan tells whether a dot is of another species.
func othersThan(dots []page.SizeDot) bool {
	return slices.ContainsFunc(dots, func(d page.SizeDot) bool { return !d.Main })
}

// sizesPicture is every fish by its speed.
func (s *season) sizesPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "sizes", Heading: "Sizes by speed"}
	main := mainSpecies(s.sized())
	p, medians := s.sizesPart(main)
	if p.less != "" {
		return section, p.less, nil
	}
	section.Sentences = []string{p.sentence}
	section.Chart, err = page.Sizes(s.sizesFrame(p.sentence, main, othersThan(p.marks), len(medians),
		page.Key{Mark: page.MarkDisc, Words: sentence.Capital(fishNames(main))}), p.levels, p.marks, medians)
	section.Table, section.Tables = s.dotsTable(p.rows), []*page.Table{s.mediansTable()}
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
	out := fmt.Sprintf("%s: no difference by speed shown, in %s.", sentence.Capital(fishNames(main)),
		page.Plural(mains, "weight", "weights"))
	for _, m := range s.mediansOf(main) {
		if m.PValue != nil && m.Shift != nil && m.Verdict != string(evidence.NotSettled) && m.Verdict != "" {
			out = sentence.Capital(s.sizeSentence(m))
			break
		}
	}
	if mains < all {
		out += fmt.Sprintf(" Other species: %s.", page.Plural(all-mains, "fish", "fish"))
	}
	return out
}

// dotsTable is the fish of the picture.
func (s *season) dotsTable(rows []page.Row) *page.Table {
	return &page.Table{Caption: "every fish with a weight and a speed",
		Columns: []page.Column{{Head: "Date", Kind: page.Token}, {Head: "Species"},
			{Head: "Speed over ground", Kind: page.Token}, {Head: "Round weight", Unit: s.weight, Kind: page.Measure,
				Decimals: 1}, {Head: "Weight from"}}, Rows: rows}
}

// Of the heaviest, so many of each kind are shown.
const (
	mostWeighed  = 6
	mostTaped    = 4
	mostDoubtful = 3
)

// heaviestPart is the heaviest fish by name: so many of those on a scale, of those by tape
// and of those that are doubtful; the first has the number from.
func (s *season) heaviestPart(onScale, byTape, doubtful, from int) (out part[page.FishRow]) {
	if len(s.Fish) == 0 {
		out.less = aloneOnPage // said with the sizes
		return out
	}
	var scale, tape, doubt []queries.Fish
	for _, f := range weighed(s.Fish) {
		switch {
		case s.doubtful[placeOf(f)] != "":
			doubt = append(doubt, f)
		case IsScale(f.Method):
			scale = append(scale, f)
		default:
			tape = append(tape, f)
		}
	}
	shown := append(append(first(scale, onScale), first(tape, byTape)...), first(doubt, doubtful)...)
	if len(shown) == 0 {
		out.less = "the heaviest fish, because none has a weight"
	}
	for i, f := range shown {
		why := doubtText[s.doubtful[placeOf(f)]]
		how := "by tape"
		if IsScale(f.Method) {
			how = "scale"
		}
		under := joined(day(text(f.Date), "2 Jan 2006"), how)
		if why != "" {
			under = "doubtful: " + why
		}
		name := fmt.Sprintf("%d. %s", from+i, sentence.Capital(fishNames(speciesName(f))))
		out.marks = append(out.marks, page.FishRow{Weight: *f.WeightKG * s.perKG, Lo: scaled(f.WeightLoKG, s.perKG),
			Hi:    scaled(f.WeightHiKG, s.perKG),
			Scale: IsScale(f.Method), Doubt: why != "", Level: s.row(name+"\n"+under, s.weightText(&f)+" "+s.weight)})
		out.rows = append(out.rows, page.Row{Cells: []page.Cell{page.Words(s.tagged(name)), page.WordsOf(f.Date),
			page.Value(*f.WeightKG * s.perKG),
			page.Span(scaled(f.WeightLoKG, s.perKG), scaled(f.WeightHiKG, s.perKG)),
			weighedBy(f.Method), page.Words(why)}})
	}
	out.sentence = s.heaviestSentence(scale, tape, doubt)
	return out
}

// heaviestFrame is the words around the picture of the heaviest fish.
func (s *season) heaviestFrame(sentence string, keys ...page.Key) page.Frame {
	return page.Frame{
		Label: "The heaviest fish by name, those on a scale apart from estimates by tape. " + sentence +
			" The table below holds the figures.",
		Axis: "round weight, " + s.weight, Counts: s.weight, Keys: keys,
	}
}

func (s *season) heaviestTable(rows []page.Row) *page.Table {
	return &page.Table{Caption: "the heaviest fish",
		Columns: []page.Column{{Head: "Fish"}, {Head: "Date", Kind: page.Token},
			{Head: "Round weight", Unit: s.weight, Kind: page.Measure, Decimals: 1},
			{Head: "90 % interval", Unit: s.weight, Kind: page.Interval, Decimals: 1},
			{Head: "Weight from", Kind: page.Token}, {Head: "Doubtful", Kind: page.Prose}}, Rows: rows}
}

// heaviestPicture is the heaviest fish of the season.
func (s *season) heaviestPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "heaviest", Heading: "The heaviest fish"}
	p := s.heaviestPart(mostWeighed, mostTaped, mostDoubtful, 1)
	if p.less != "" {
		return section, p.less, nil
	}
	section.Sentences = []string{p.sentence}
	section.Chart, err = page.Heaviest(s.heaviestFrame(p.sentence, page.Key{Mark: page.MarkBoated, Words: "on a scale"},
		page.Key{Mark: page.MarkTape, Words: "by tape, an estimate"}), p.marks)
	section.Table = s.heaviestTable(p.rows)
	return section, "", err
}

func first(fish []queries.Fish, n int) []queries.Fish { return slices.Clone(fish[:min(n, len(fish))]) }

// heaviestSentence names the heaviest of each kind, and counts the doubtful.
func (s *season) heaviestSentence(scale, tape, doubt []queries.Fish) string {
	var parts []string
	if len(scale) > 0 {
		parts = append(parts, fmt.Sprintf("Heaviest on a scale: %s %s, %s.", s.weightText(&scale[0]), s.weight,
			fishNames(speciesName(scale[0]))))
	}
	if len(tape) > 0 {
		parts = append(parts, fmt.Sprintf("By tape: about %s %s, %s.", s.weightText(&tape[0]), s.weight,
			fishNames(speciesName(tape[0]))))
	}
	if len(doubt) > 0 {
		parts = append(parts, fmt.Sprintf("%s doubtful: check the log.",
			page.Plural(int64(len(doubt)), "weight is", "weights are")))
	}
	return strings.Join(parts, " ")
}
