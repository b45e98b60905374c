package meaning

import (
	"slices"
	"strings"

	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
)

// page is what a sheet says outside of its blocks.
type page struct {
	sheet int
	texts []string
}

// usual takes what the log says once for all of its stretches: what a sheet says of itself stands above what others
// say, and where they differ, a sheet that says nothing takes neither.
func (l *Log) usual() {
	said, stretches := map[int]phrase.Setting{}, map[int]bool{}
	for _, p := range l.pages {
		said[p.sheet] = usually(p.texts)
	}
	but := map[string][]plan.But{}
	for _, text := range l.Texts {
		usual, of := excepted(text)
		if s := usually([]string{usual}); len(of) > 0 && len(s.Speeds) == 0 {
			but["lines_out"] = append(but["lines_out"], of...)
		} else if len(s.Lines) == 0 {
			but["speed_kn"] = append(but["speed_kn"], of...)
		}
	}
	var of []*Understood
	for _, u := range l.Data() {
		if u.Plan.Binds("start_s", "duration_s") || u.Plan.Kind == plan.Events ||
			u.Plan.Kind == plan.Flat && u.Plan.Binds(countNames...) && len(l.Data()) == 1 {
			of = append(of, u)
			stretches[u.Plan.Sheet] = true
		}
	}
	var all, general phrase.Setting
	for _, p := range l.pages {
		s := said[p.sheet]
		all.Speeds, all.Lines = append(all.Speeds, s.Speeds...), append(all.Lines, s.Lines...)
		if !stretches[p.sheet] {
			general.Speeds, general.Lines = append(general.Speeds, s.Speeds...), append(general.Lines, s.Lines...)
		}
	}
	for _, u := range of {
		u.b.usualInHeading()
		s := said[u.Plan.Sheet]
		if speed, ok := firstSaid(s.Speeds, general.Speeds, all.Speeds); ok {
			u.b.give("speed", l.lexicon.named("speed_kn", ""), short(speed)+" kn", true)
		}
		if lines, ok := firstSaid(s.Lines, general.Lines, all.Lines); ok {
			u.b.give("lines out", l.lexicon.named("lines_out", ""), short(float64(lines)), true)
		}
		u.b.except(but)
		u.b.onward(l.lexicon)
	}
}

// except adds to what is usual what the log says of some trips and days alone.
func (x *builder) except(but map[string][]plan.But) {
	for i := range x.plan.Given {
		if g := &x.plan.Given[i]; g.Default && len(but[g.Column.Name]) > 0 {
			g.But = but[g.Column.Name]
			x.note("%s: %s, but for %s, as the log says", g.Heading, g.Text,
				strings.TrimSpace(g.But[0].Trip+" "+g.But[0].Day))
		}
	}
}

// usually is what texts say to be usual.
func usually(texts []string) (out phrase.Setting) {
	for _, text := range texts {
		if !hasLetter(text) {
			continue
		}
		text, _ = excepted(text)
		s := phrase.Settings(text)
		if len(s.Speeds)+len(s.Lines) == 0 || !s.Usual && !phrase.Standing(text) {
			continue
		}
		if len(s.Speeds) == 1 {
			out.Speeds = append(out.Speeds, s.Speeds[0])
		}
		if len(s.Lines) == 1 {
			out.Lines = append(out.Lines, s.Lines[0])
		}
	}
	return out
}

// firstSaid is what the first of several sources that says anything says, if it says one thing.
func firstSaid[T comparable](sources ...[]T) (said T, ok bool) {
	for _, s := range sources {
		if len(s) > 0 {
			return s[0], !slices.ContainsFunc(s, func(x T) bool { return x != s[0] })
		}
	}
	return said, false
}

// usualInHeading takes the number of lines that its column's heading says is usual: "Rods (always 5 before July)". One
// of the time before some day holds where the cells are blank above the first that is filled, and nowhere else.
func (x *builder) usualInHeading() {
	b := x.plan.Find("lines_out")
	if b == nil || b.Index < 0 || b.Set > 0 {
		return
	}
	n, early, ok := phrase.UsualIn(b.Heading)
	effort := x.plan.Find("start_s", "duration_s")
	if !ok || effort == nil {
		return
	}
	filled := false
	for _, row := range x.rows {
		switch blank := cellOf(row, b.Index) == ""; {
		case cellOf(row, effort.Index) == "":
		case !blank:
			filled = true
		case filled && early:
			return
		}
	}
	x.give("lines out", b.Column, short(float64(n)), true)
}
