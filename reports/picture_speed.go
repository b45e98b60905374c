package reports

import (
	"cmp"
	"fmt"
	"math"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/sentence"
	"wakeledger/queries"
	"wakeledger/queries/evidence"
	"wakeledger/reports/page"
)

// known is a number that may be unknown or without an end.
func known(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

// leastDrawn are the line-hours below which a band has no row where nothing is compared.
const leastDrawn = 1

// speedRatio is one row of the speed picture.
type speedRatio struct {
	name          string
	ratio, lo, hi *float64
	level         *evidence.Level // nil for the trend
	told          bool            // the finding is about it
}

// speedRatios are the bands with the ratio that the verdict rests on, each to all other
// bands fished on the same trips; a trend, where the finding is one, stands last.
func speedRatios(e *queries.Evidence) []speedRatio {
	var out []speedRatio
	f := e.Finding
	for i := range e.Comparison.Levels {
		l := &e.Comparison.Levels[i]
		r := l.Rest
		if l.Level == factors.NotLogged || l.Count.Effort <= 0 || l.Count.Effort < leastDrawn && !r.Known() {
			continue
		}
		out = append(out, speedRatio{name: factors.Text(factors.Speed, l.Level), ratio: known(r.Ratio),
			lo: known(r.Interval.Lo), hi: known(r.Interval.Hi),
			level: l, told: !f.Trend && r.Known() && (l.Level == f.Better || l.Level == f.Other &&
				f.Better == evidence.Others)})
	}
	if t := e.Comparison.Trend; f.Trend && t.Known {
		out = append(out, speedRatio{name: "trend: " + factors.Text(factors.Speed, t.High) +
			" over " + factors.Text(factors.Speed, t.Low),
			ratio: known(t.Ratio.Ratio), lo: known(t.Interval.Lo), hi: known(t.Interval.Hi), told: true})
	}
	return out
}

// others is what a band is compared with.
func others(e *queries.Evidence) string {
	if f := e.Finding; !f.Trend && f.Other != evidence.Others && f.Better != evidence.Others {
		return factors.Text(factors.Speed, f.Other)
	}
	return "the other speeds"
}

// speedSentence says what the row brought that the finding is about.
func speedSentence(e *queries.Evidence, f *queries.Finding, r speedRatio) string {
	what := fmt.Sprintf("%s brought no strike on the same days.", others(e))
	switch {
	case r.level == nil && r.ratio != nil:
		what = fmt.Sprintf("strikes change step by step with speed, %s times from end to end%s.",
			ratioText(*r.ratio), ratioSpan(r.lo, r.hi))
	case r.ratio != nil:
		what = fmt.Sprintf("%s brought %s times the strikes of %s on the same days%s.", r.name, ratioText(*r.ratio),
			others(e), ratioSpan(r.lo, r.hi))
	}
	return sentence.Capital(what) + " " + verdictTail(f)
}

// speedPart is the season's speed bands, each beside the others on the same trips.
func (s *season) speedPart() (out part[page.RatioMark]) {
	e, f := s.Worked.evidenceOn(factors.Speed), s.Worked.findingOf(factors.Speed)
	switch {
	case len(s.Trips) < 2:
		out.less = "speed and what mattered, which one trip can't show"
	case s.lineHours == 0:
		out.less = "speed, because no line-hours are known"
	case e == nil || f == nil || e.Finding.Levels == 0:
		out.less = "speed, which is not logged"
	case f.Better == nil:
		out.less = "speed, because no trip fished two speeds long enough to compare"
	}
	if out.less != "" {
		return out
	}
	for _, r := range speedRatios(e) {
		m := page.RatioMark{Ratio: r.ratio, Lo: r.lo, Hi: r.hi, Strength: page.Plain, Level: s.row(r.name)}
		if r.level != nil {
			m.Effort, m.Thin = r.level.Count.Effort, r.level.Thin
			m.Counts = fmt.Sprintf("%s in %s h\n%s per line-h", page.Count(r.level.Count.Events),
				hours(r.level.Count.Effort), page.Number(r.level.Rate, 2))
		}
		if r.told {
			out.sentence = speedSentence(e, f, r)
			if leans(f) {
				m.Strength = page.Loud
			}
		}
		if m.Thin {
			m.Strength = page.Pale
		}
		out.marks, out.rows = append(out.marks, m), append(out.rows, s.speedRow(r))
	}
	return out
}

// speedFrame is the words around the picture of speed.
func speedFrame(sentence, with string, keys ...page.Key) page.Frame {
	return page.Frame{
		Label: "Strikes of each speed band as a multiple of those of the other speeds on the same days. " + sentence +
			" The table below holds the figures.",
		Axis: "times the strikes of " + with, Counts: "strikes, raw rate",
		Keys: append(keys, page.Key{Mark: page.MarkInterval, Words: "95 % interval"}),
	}
}

func (s *season) speedPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "speed", Heading: "Speed"}
	p := s.speedPart()
	if p.less != "" {
		return section, p.less, nil
	}
	with := others(s.Worked.evidenceOn(factors.Speed))
	if p.sentence != "" {
		section.Sentences = []string{p.sentence}
	}
	section.Chart, err = page.Ratios(speedFrame(p.sentence, with,
		page.Key{Mark: page.MarkBar, Words: "from 1 to the ratio, as thick as the hours fished"}), p.marks)
	section.Table = speedTable(p.rows, with)
	return section, "", err
}

func speedTable(rows []page.Row, with string) *page.Table {
	return &page.Table{Caption: "speed bands side by side", Columns: []page.Column{
		{Head: "Speed over ground"}, {Head: "Trips", Kind: page.Measure},
		{Head: "Line-hours", Unit: "h", Kind: page.Measure, Decimals: 1},
		{Head: "Strikes", Kind: page.Measure}, {Head: "Rate", Unit: "strikes per line-hour",
			Kind: page.Measure, Decimals: 2},
		{Head: "Times the strikes of " + with, Unit: "same days", Kind: page.Measure, Decimals: 2},
		{Head: "95 % interval", Kind: page.Interval, Decimals: 2},
	}, Rows: rows}
}

// speedRow is a band's row of the table.
func (s *season) speedRow(r speedRatio) page.Row {
	cells := []page.Cell{page.Words(s.tagged(r.name)), {}, {}, {}, {}}
	thin := false
	if l := r.level; l != nil {
		thin = l.Thin
		cells = []page.Cell{page.Words(s.tagged(r.name)), page.Whole(int64(l.Trips)), page.Value(l.Count.Effort),
			page.Whole(l.Count.Events), page.Value(l.Rate)}
	}
	return page.Row{Thin: thin, Cells: append(cells, page.ValueOf(r.ratio), page.Span(r.lo, r.hi))}
}

// setting is what a finding says brought more, short enough to stand beside a mark.
func setting(f queries.Finding) string {
	switch {
	case f.Trend:
		return "rising to " + factors.Text(f.Factor, *f.Better)
	case *f.Better == evidence.Others:
		return "all but " + factors.Text(f.Factor, *f.Other)
	}
	return factors.Text(f.Factor, *f.Better)
}

// compared parts the findings into those with a ratio and the nouns of the rest.
func (s *season) compared() (with []queries.Finding, without []string) {
	for _, f := range s.Worked.Findings {
		if f.Better != nil {
			with = append(with, f)
		} else {
			without = append(without, factors.Noun(f.Factor))
		}
	}
	return with, without
}

// matteredPart is every factor that can be compared, the clearest first.
func (s *season) matteredPart() (out part[page.RatioMark]) {
	with, without := s.compared()
	switch {
	case len(s.Trips) < 2:
		out.less = "the trips by day, of which there is one"
	case len(with) == 0:
		out.less = "what mattered, because nothing was fished side by side"
	}
	if out.less != "" {
		return out
	}
	for _, f := range with {
		m := page.RatioMark{Ratio: f.Ratio, Lo: f.RatioLo, Hi: f.RatioHi, Strength: page.Plain,
			Level: s.row(sentence.Capital(factors.Noun(f.Factor)) + "\n" + setting(f))}
		m.Counts = "no strike elsewhere"
		if f.Ratio != nil {
			m.Counts = ratioText(*f.Ratio) + " ×"
		}
		if leans(&f) {
			m.Strength = page.Loud
			m.Counts += "\n" + f.Verdict
		}
		out.marks, out.rows = append(out.marks, m), append(out.rows, s.findingRow(f))
	}
	out.sentence = matteredSentence(with)
	if len(without) > 0 {
		out.aside = sentence.Capital(sentence.List(without)) +
			" can't be compared: no trip fished two of a kind, or none is logged."
	}
	return out
}

// matteredFrame is the words around the picture of what mattered.
func matteredFrame(sentence string, keys ...page.Key) page.Frame {
	return page.Frame{
		Label: "Every factor that can be compared, with how many times the strikes its better setting brought. " +
			sentence + " The table below holds the figures.",
		Axis: "times the strikes of the rest", Counts: "best guess",
		Keys: append(keys, page.Key{Mark: page.MarkInterval,
			Words: "95 % interval: where it crosses 1, it may make no difference"}),
	}
}

// matteredPicture is every factor that can be compared on one scale, the clearest first.
func (s *season) matteredPicture() (section page.Section, less string, err error) {
	section = page.Section{ID: "mattered", Heading: "What mattered"}
	p := s.matteredPart()
	if p.less != "" {
		return section, p.less, nil
	}
	section.Sentences = []string{p.sentence}
	if p.aside != "" {
		section.Sentences = append(section.Sentences, p.aside)
	}
	section.Chart, err = page.Ratios(matteredFrame(p.sentence,
		page.Key{Mark: page.MarkBar, Words: "best guess; strong where it leans or is settled"}), p.marks)
	section.Table = findingsTable(p.rows)
	return section, "", err
}

// matteredSentence counts what was compared and names what leans.
func matteredSentence(with []queries.Finding) string {
	var settled, leaning []string
	for _, f := range with {
		switch f.Verdict {
		case string(evidence.Settled):
			settled = append(settled, factors.Noun(f.Factor))
		case string(evidence.Leaning):
			leaning = append(leaning, factors.Noun(f.Factor))
		}
	}
	out := "Of " + page.Plural(int64(len(with)), "factor", "factors") + " compared, "
	switch {
	case len(settled)+len(leaning) == 0:
		return out + "none stands clear of luck."
	case len(leaning) == 0:
		return out + sentence.List(settled) + " settled; the rest may be luck."
	case len(settled) == 0:
		return out + sentence.List(leaning) + " " + leanWord(leaning) + "; the rest may be luck."
	}
	return out + sentence.List(settled) + " settled and " + sentence.List(leaning) + " " +
		leanWord(leaning) + "; the rest may be luck."
}

func leanWord(what []string) string {
	if len(what) == 1 {
		return "leans"
	}
	return "lean"
}

// findingsTable is the findings in numbers.
func findingsTable(rows []page.Row) *page.Table {
	return &page.Table{Caption: "the factors in numbers", Columns: []page.Column{
		{Head: "Factor"}, {Head: "Verdict", Kind: page.Token}, {Head: "More strikes at"}, {Head: "Than at"},
		{Head: "Times as many", Kind: page.Measure, Decimals: 2},
		{Head: "95 % interval", Kind: page.Interval, Decimals: 2},
		{Head: "Luck alone would show as much", Unit: "all factors allowed for"},
		{Head: "Strikes", Kind: page.Measure}, {Head: "Line-hours", Kind: page.Measure, Decimals: 1},
		{Head: "Fished by", Kind: page.Token},
	}, Rows: rows}
}

// findingRow is a factor's row of the table.
func (s *season) findingRow(f queries.Finding) page.Row {
	return page.Row{Cells: []page.Cell{page.Words(s.tagged(sentence.Capital(factors.Noun(f.Factor)))),
		page.Words(f.Verdict),
		page.Words(factors.Text(f.Factor, *f.Better)), page.Words(factors.Text(f.Factor, *f.Other)),
		page.ValueOf(f.Ratio), page.Span(f.RatioLo, f.RatioHi), luck(f.PSeason),
		page.Whole(f.Strikes), page.Value(f.Hours), page.Words(page.Plural(f.Shared, f.By, f.By+"s"))}}
}

// bandOrder is a speed band's place among those of the rows of strikes; the last for others.
func (s *season) bandOrder(a, b string) int {
	at := func(band string) int {
		for i, r := range s.StrikeRate {
			if r.Level == band {
				return i
			}
		}
		return len(s.StrikeRate)
	}
	return cmp.Compare(at(a), at(b))
}
