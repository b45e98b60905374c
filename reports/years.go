package reports

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// YearsInput is what the page of two seasons is made of: this season first, then the one
// that it is set beside. Both are in the same units.
type YearsInput struct {
	Title     string
	Generated time.Time // printed in the foot
	Seasons   [2]SeasonInput
	Beside    Beside // their trips, in the same order
}

// years are the two seasons made ready.
type years struct {
	YearsInput
	seasons [2]*season // in the order of the input
	order   [2]int     // the earlier first
}

// Years writes the page of two seasons as one HTML file: each of the season's pictures
// with both in it, a row of each by turns. It fails as Season does.
func Years(w io.Writer, in YearsInput) error {
	y := years{YearsInput: in, order: [2]int{1, 0}}
	for i := range in.Seasons {
		in.Seasons[i].Title = in.Title
		s, err := newSeason(in.Seasons[i])
		if err != nil {
			return err
		}
		s.tag, s.ink, y.seasons[i] = in.Beside.Names[i], page.Later, s
	}
	if in.Beside.Names[0] < in.Beside.Names[1] && y.dated() {
		y.order = [2]int{0, 1}
	}
	y.seasons[y.order[0]].ink = page.Earlier
	beside, err := y.besideSection()
	if err != nil {
		return fmt.Errorf("two seasons, %s: %w", beside.ID, err)
	}
	sections, left, err := drawn("two seasons", y.pictures())
	if err != nil {
		return err
	}
	p := page.Page{
		Report: page.YearsReport, Title: in.Title, Subtitle: y.subtitle(), Lang: "en-GB", Generated: in.Generated,
		Open: y.open(), Tiles: y.tiles(), Left: left, Sections: append([]page.Section{beside}, sections...),
		Folds:  []page.Fold{{Heading: "Cautions", Sections: []page.Section{y.cautions()}}},
		Footer: []string{"A weight from the tape is an estimate: not for records, sale or legal size."},
	}
	if len(sections) > 0 {
		p.Sections = append(p.Sections, y.seasons[0].readingSection(sections))
	}
	return page.Render(w, p)
}

// dated tells whether the seasons are called by their years.
func (y *years) dated() bool {
	return !slices.ContainsFunc(y.Beside.Names[:],
		func(name string) bool { return strings.Trim(name, "0123456789, and") != "" })
}

// inOrder are the seasons, the earlier first.
func (y *years) inOrder() [2]*season { return [2]*season{y.seasons[y.order[0]], y.seasons[y.order[1]]} }

func (y *years) subtitle() string {
	var parts []string
	for _, s := range y.inOrder() {
		parts = append(parts, sentence.Capital(s.tag)+": "+s.subtitle())
	}
	return strings.Join(parts, "; ")
}

// open is what is open in the logs of either.
func (y *years) open() []string {
	var out []string
	for _, s := range y.inOrder() {
		for _, line := range notSettled(s.Open) {
			out = append(out, sentence.Capital(s.tag)+": "+line)
		}
	}
	return out
}

// tiles are the four figures of this season, the other's under them.
func (y *years) tiles() []page.Tile {
	this, other := y.seasons[0].tiles(), y.seasons[1].tiles()
	for i := range this {
		was := strings.TrimSpace(other[i].Value + " " + other[i].Unit)
		this[i].Label, this[i].Note = this[i].Label+", "+y.seasons[0].tag, sentence.Capital(y.seasons[1].tag)+": "+was
		if other[i].Label != strings.TrimSuffix(this[i].Label, ", "+y.seasons[0].tag) {
			this[i].Note += ", " + withinSentence(other[i].Label)
		}
	}
	return this
}

func (y *years) cautions() page.Section {
	section, _ := y.seasons[0].cautionsSection()
	return section
}

// keys are the two inks.
func (y *years) keys() []page.Key {
	s := y.inOrder()
	return []page.Key{{Mark: page.MarkEarlier, Words: sentence.Capital(s[0].tag)},
		{Mark: page.MarkLater, Words: sentence.Capital(s[1].tag)}}
}

// pictures are those of the season, each with both seasons in it.
func (y *years) pictures() []picture {
	return []picture{y.speedPicture, y.matteredPicture, y.daysPicture, y.sizesPicture, y.fatesPicture,
		y.pairsPicture, y.heaviestPicture}
}

// both puts the parts of two seasons together. In the picture their rows take turns: those of
// one kind stand together, the earlier season's first.
type both[Mark any] struct {
	parts [2]part[Mark]
	turns []turn
}

// turn is a row of the picture: which season's, and its place among the season's.
type turn struct{ season, row int }

// together gathers what each season brings, rows its rows' names. less is why nothing is
// drawn; where one season alone has something, it is drawn alone.
func together[Mark any](y *years, of func(*season) part[Mark], rows func(part[Mark]) []page.Level) (b both[Mark],
	sentences []string, less string) {
	var names [2][]string
	for i, s := range y.inOrder() {
		p := of(s)
		b.parts[i] = p
		switch {
		case p.less == aloneOnPage:
		case p.less != "":
			sentences = append(sentences, sentence.Capital(s.tag)+": not drawn: "+p.less+".")
		default:
			sentences = append(sentences, sentence.Capital(s.tag)+": "+p.sentence)
			for _, l := range rows(p) {
				name, _, _ := strings.Cut(l.Name, "\n")
				names[i] = append(names[i], strings.TrimSuffix(name, ", "+s.tag))
			}
		}
	}
	b.turns = turns(names[0], names[1])
	if len(b.turns) == 0 {
		if less = b.parts[1].less; less == aloneOnPage {
			less = b.parts[0].less
		}
		return b, nil, less
	}
	return b, []string{strings.Join(sentences, " ")}, ""
}

// turns are the rows of two lists in one order that keeps both; equal names stand together.
func turns(a, b []string) []turn {
	var out []turn
	i := 0
	for j, name := range b {
		at := slices.Index(a[i:], name)
		if at < 0 {
			if slices.Contains(a[:i], name) { // the lists differ in their order: with its like
				k := slices.Index(out, turn{0, slices.Index(a, name)})
				out = slices.Insert(out, k+1, turn{1, j})
				continue
			}
			out = append(out, turn{1, j})
			continue
		}
		for ; at >= 0; at-- {
			out = append(out, turn{0, i})
			i++
		}
		out = append(out, turn{1, j})
	}
	for ; i < len(a); i++ {
		out = append(out, turn{0, i})
	}
	return out
}

// marks are the marks in the order of the picture, for those that are a row each.
func (b both[Mark]) marks() []Mark {
	var out []Mark
	for _, t := range b.turns {
		out = append(out, b.parts[t.season].marks[t.row])
	}
	return out
}

// rows are the rows of the table in the order of the picture, for marks that are a row each.
func (b both[Mark]) rows() []page.Row {
	var out []page.Row
	for _, t := range b.turns {
		out = append(out, b.parts[t.season].rows[t.row])
	}
	return out
}

// levels are the names of the rows in the order of the picture.
func (b both[Mark]) levels() []page.Level {
	var out []page.Level
	for _, t := range b.turns {
		out = append(out, b.parts[t.season].levels[t.row])
	}
	return out
}

// placed are all marks, the earlier season's first, each moved to its row of the picture.
func (b both[Mark]) placed(move func(m *Mark, to func(row int) int)) []Mark {
	var out []Mark
	for i, p := range b.parts {
		for _, m := range p.marks {
			move(&m, func(row int) int { return slices.Index(b.turns, turn{i, row}) })
			out = append(out, m)
		}
	}
	return out
}

// allRows are the rows of the table, the earlier season's first.
func (b both[Mark]) allRows() []page.Row {
	return append(slices.Clone(b.parts[0].rows), b.parts[1].rows...)
}

func levelsOf[Mark any](p part[Mark]) []page.Level { return p.levels }

func ratioLevels(p part[page.RatioMark]) []page.Level {
	var out []page.Level
	for _, m := range p.marks {
		out = append(out, m.Level)
	}
	return out
}

func (y *years) speedPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "speed-years", Heading: "Speed"}
	b, sentences, less := together(y, (*season).speedPart, ratioLevels)
	if less != "" {
		return section, less, nil
	}
	section.Sentences = sentences
	section.Chart, err = page.Ratios(speedFrame(sentences[0], "the other speeds", y.keys()...), b.marks())
	section.Table = speedTable(b.rows(), "the other speeds")
	return section, "", err
}

func (y *years) matteredPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "mattered-years", Heading: "What mattered"}
	b, sentences, less := together(y, (*season).matteredPart, ratioLevels)
	if less != "" {
		return section, less, nil
	}
	section.Sentences = sentences
	section.Chart, err = page.Ratios(matteredFrame(sentences[0], y.keys()...), b.marks())
	section.Table = findingsTable(b.rows())
	return section, "", err
}

func (y *years) daysPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "days-years", Heading: "The seasons by day"}
	b, sentences, less := together(y, (*season).daysPart, levelsOf)
	if less != "" {
		return section, less, nil
	}
	section.Sentences = sentences
	b.turns = y.byMonth(b)
	days := b.placed(func(m *page.DayMark, to func(int) int) { m.Month = to(m.Month) })
	section.Chart, err = page.Calendar(daysFrame(sentences[0],
		append(y.keys(), page.Key{Mark: page.MarkOpen, Words: "open part of a bar: strikes that brought no fish"})...),
		b.levels(), days)
	section.Table = daysTable(b.allRows())
	return section, "", err
}

// byMonth puts the same months of two seasons one under the other.
func (y *years) byMonth(b both[page.DayMark]) []turn {
	month := func(t turn) int {
		name, _, _ := strings.Cut(b.parts[t.season].levels[t.row].Name, ",")
		at, err := time.Parse("Jan 2006", name)
		if err != nil {
			return 0
		}
		return int(at.Month())
	}
	out := slices.Clone(b.turns)
	slices.SortStableFunc(out, func(s, t turn) int {
		if d := month(s) - month(t); d != 0 {
			return d
		}
		if d := s.season - t.season; d != 0 {
			return d
		}
		return s.row - t.row
	})
	return out
}

func (y *years) sizesPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "sizes-years", Heading: "Sizes by speed"}
	var fish []queries.Fish
	for _, s := range y.seasons {
		fish = append(fish, s.sized()...)
	}
	main := mainSpecies(fish)
	var medians [2][]page.SizeMedian
	at := 0
	b, sentences, less := together(y, func(s *season) (p part[page.SizeDot]) {
		p, medians[at] = s.sizesPart(main)
		at++
		return p
	}, levelsOf)
	if less != "" {
		return section, less, nil
	}
	section.Sentences = sentences
	dots := b.placed(func(m *page.SizeDot, to func(int) int) { m.Row = to(m.Row) })
	var middles []page.SizeMedian
	for i := range medians {
		for _, m := range medians[i] {
			m.Row = slices.Index(b.turns, turn{i, m.Row})
			middles = append(middles, m)
		}
	}
	s := y.seasons[0]
	section.Chart, err = page.Sizes(s.sizesFrame(sentences[0], main, othersThan(dots), len(middles), y.keys()...),
		b.levels(), dots, middles)
	section.Table = s.dotsTable(b.allRows())
	for _, s := range y.inOrder() {
		t := s.mediansTable()
		t.Caption += ", " + s.tag
		section.Tables = append(section.Tables, t)
	}
	return section, "", err
}

func (y *years) fatesPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "fates-years", Heading: "What became of the strikes"}
	var all []page.Level
	b, sentences, less := together(y, func(s *season) part[page.Fate] {
		p, total := s.fatesPart()
		for i := range p.marks {
			p.marks[i].Season = len(all)
		}
		if total > 0 {
			all = append(all, s.row("all strikes", page.Count(total)))
		}
		return p
	}, func(p part[page.Fate]) []page.Level {
		var out []page.Level
		for _, m := range p.marks {
			out = append(out, m.Level)
		}
		return out
	})
	if less != "" {
		return section, less, nil
	}
	section.Sentences = sentences
	axis := "per cent of the season's strikes"
	if len(all) == 1 {
		axis = "strikes"
	}
	section.Chart, err = page.Fates(fatesFrame(sentences[0], axis, append(y.keys(),
		page.Key{Mark: page.MarkHatched, Words: "hatched: hooked and lost"},
		page.Key{Mark: page.MarkOpen, Words: "open: missed, or not logged"})...), all, b.marks())
	section.Table = fatesTable(b.rows())
	return section, "", err
}

func (y *years) pairsPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "pairs-years", Heading: "Speed and lure weight together"}
	var lists [2][]string
	for i, s := range y.inOrder() {
		_, _, lists[i] = s.pairsLogged()
	}
	var weights []string
	for _, t := range turns(lists[0], lists[1]) {
		if w := lists[t.season][t.row]; !slices.Contains(weights, w) {
			weights = append(weights, w)
		}
	}
	b, sentences, less := together(y, func(s *season) part[page.PairMark] { return s.pairsPart(weights) }, levelsOf)
	if less != "" {
		return section, less, nil
	}
	section.Sentences = sentences
	cells := b.placed(func(m *page.PairMark, to func(int) int) { m.Row = to(m.Row) })
	section.Chart, err = page.Pairs(pairsFrame(sentences[0], y.keys()...), b.levels(), weightNames(weights), cells)
	section.Table = pairsTable(b.allRows())
	return section, "", err
}

func (y *years) heaviestPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "heaviest-years", Heading: "The heaviest fish"}
	from := 1
	b, sentences, less := together(y, func(s *season) part[page.FishRow] {
		p := s.heaviestPart(mostWeighed/2, mostTaped/2, mostDoubtful, from)
		from += len(p.marks)
		return p
	}, func(p part[page.FishRow]) []page.Level {
		var out []page.Level
		for _, m := range p.marks {
			out = append(out, m.Level)
		}
		return out
	})
	if less != "" {
		return section, less, nil
	}
	section.Sentences = sentences
	s := y.seasons[0]
	section.Chart, err = page.Heaviest(s.heaviestFrame(sentences[0],
		append(y.keys(), page.Key{Mark: page.MarkHatched, Words: "hatched: by tape, an estimate"})...), b.marks())
	section.Table = s.heaviestTable(b.rows())
	return section, "", err
}
