package normalise

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/phrase"
	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/record"
	"wakeledger/pipeline/words"
)

// rodCell is what stands under a place of the spread, and whether the log says that a line was out there.
func (r *Reader) rodCell(u plan.Unknown) (cell string, out bool) {
	if u.Index < len(r.row.Cells) {
		cell = strings.TrimSpace(r.row.Cells[u.Index])
	}
	means, told := u.Codes[strings.ToLower(cell)]
	if cell == "" && !told {
		return cell, !r.layout.RodsBlank
	}
	return cell, !words.NotOut(means)
}

// rodLines counts the lines of a row whose columns are the places of the spread.
func (r *Reader) rodLines() {
	lines := 0
	for _, u := range r.layout.Rods {
		if _, out := r.rodCell(u); out {
			lines++
		}
	}
	if lines > 0 {
		r.put("lines_out", entry.OfInt(int64(lines)))
	}
}

// fewerRods sets a row of several stretches aside whose remarks name places of the spread: on one of the stretches
// not all of them may have had a line.
func (r *Reader) fewerRods() {
	n := 0
	for _, s := range r.side {
		if s.Kind == plan.Legs {
			n++
		}
	}
	notes := r.value("notes").Text
	if n < 2 || notes == "" {
		return
	}
	said := map[string]bool{}
	for _, t := range words.Scan(notes) {
		said[strings.TrimSuffix(t.Text, "s")] = true
	}
	named := func(t words.Token) bool { return len(t.Text) > 4 && said[t.Text] }
	for _, u := range r.layout.Rods {
		if slices.ContainsFunc(words.Scan(u.Heading), named) {
			p := r.pos
			p.Row, p.Col = r.row.Num, u.Index+1
			r.aside = append(r.aside, record.Problem{Pos: p, Column: u.Heading, Cell: notes,
				Reason: "the remarks name it: a line was counted at each place on each stretch"})
			return
		}
	}
}

// rods makes the strikes of columns that are the places of the spread, each with what struck there.
func (r *Reader) rods() {
	r.fewerRods()
	for _, u := range r.layout.Rods {
		cell, out := r.rodCell(u)
		if !out {
			continue
		}
		if words.QuietMark(cell) {
			continue
		}
		for _, part := range strings.FieldsFunc(cell, func(c rune) bool { return strings.ContainsRune(";/\n,+", c) }) {
			for _, one := range eachMark(strings.TrimSpace(part), u.Codes) {
				r.onRod(u, one)
			}
		}
	}
	r.lostOnRods()
}

// lostOnRods has a fish that the row's list says was lost be the one that a place of the spread tells as lost without
// its name.
func (r *Reader) lostOnRods() {
	if len(r.layout.Rods) == 0 {
		return
	}
	lost := func(s Side, named bool) bool {
		return s.Row == int64(r.row.Num) && s.Values["outcome"].Text == "lost" &&
			s.Values["species_logged"].Known == named && s.Values["line"].Known != named
	}
	for i := 0; i < len(r.side); i++ {
		if !lost(r.side[i], true) {
			continue
		}
		at := slices.IndexFunc(r.side, func(s Side) bool { return lost(s, false) })
		if at < 0 {
			continue
		}
		fillIn(r.side[at].Values, r.side[i].Values)
		r.side = slices.Delete(r.side, i, i+1)
		i--
	}
}

// eachMark parts a cell of several marks, "kept kept off", each of which the legend explains.
func eachMark(part string, codes map[string]string) []string {
	marks := strings.Fields(part)
	for _, m := range marks {
		if codes[strings.ToLower(m)] == "" {
			return []string{part}
		}
	}
	return marks
}

// atSpeed is the speed in knots at which something struck, behind it: "wahoo 31 lb @13".
var atSpeed = regexp.MustCompile(`\s*@\s*(\d{1,2}(?:\.\d)?)(?:\s*(?:kn|kt|kts|knots))?$`)

// stretchAt is the name of the row's stretch of a speed, of several; "" where none has it, or two have.
func (r *Reader) stretchAt(speed float64) (leg string) {
	for _, s := range r.side {
		if s.Kind == plan.Legs && s.Values["speed_kn"].Known && s.Values["speed_kn"].Real == speed {
			if leg != "" {
				return ""
			}
			leg = s.Values["leg"].Text
		}
	}
	return leg
}

// severalOf is a count before what struck so often: "2 missed".
var severalOf = regexp.MustCompile(`^(\d{1,2})\s*[x×]?\s+(\pL.*)$`)

// onRod makes the strikes that a part of the cell of a place tells: "wahoo 28 lb", "2 missed", "mahi threw the hook".
func (r *Reader) onRod(u plan.Unknown, part string) {
	n, what := 1, part
	v := map[string]entry.Value{}
	if m := atSpeed.FindStringSubmatch(part); m != nil {
		speed, _ := strconv.ParseFloat(m[1], 64)
		if v["strike_speed_kn"] = entry.OfReal(speed); r.stretchAt(speed) != "" {
			v["leg"] = entry.OfText(r.stretchAt(speed))
		}
		part = strings.TrimSuffix(part, m[0])
		what = part
	}
	if m := severalOf.FindStringSubmatch(part); m != nil {
		n, _ = strconv.Atoi(m[1])
		what = m[2]
	}
	means, coded := u.Codes[strings.ToLower(what)]
	if !coded {
		means = words.WrittenOut(what, u.Codes)
	}
	fate, cause, _, ok := words.FateOf(means)
	fish := phrase.FishList(what, phrase.Defaults{Scaled: u.Scaled})
	switch {
	case !coded && !strings.ContainsFunc(part, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) }),
		words.Nothing(part), words.Nothing(means), !coded && words.NotLogged(part):
		return
	case !ok && len(fish) == 0:
		p := r.pos
		p.Row, p.Col = r.row.Num, u.Index+1
		r.aside = append(r.aside, record.Problem{Pos: p, Column: u.Heading, Cell: part,
			Reason: "under a place of the spread: what struck there is not understood"})
		return
	}
	if len(fish) > 0 {
		maps.Copy(v, r.fishValues(fish[0]))
	}
	if o := outcomeOf(fate); ok && o != "" {
		v["outcome"] = entry.OfText(o)
	} else if len(fish) > 0 && v["outcome"].Text == "" {
		v["outcome"] = entry.OfText("landed")
	}
	if cause != "" {
		v["loss_cause"] = entry.OfText(cause)
	}
	v["line"] = entry.OfText(u.Heading)
	r.beside(plan.Strikes, v)
	for range n - 1 { // what was measured is that of the first
		r.beside(plan.Strikes, without(v, "length_cm", "girth_cm", "scale_kg", "length_kind"))
	}
}

func without(v map[string]entry.Value, names ...string) map[string]entry.Value {
	out := maps.Clone(v)
	for _, name := range names {
		delete(out, name)
	}
	return out
}
