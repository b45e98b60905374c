package meaning

import (
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/plan"
	"wakeledger/pipeline/words"
)

// Of days with rows of lines under them: how many must count as many bites as these do, for the rows to be parts of the
// day's counts; and how many of them for each that counts fewer, for that to be a slip.
const (
	sameUnder  = 2
	slipsUnder = 3
)

// UnderDays are the rows of lines that stand under the row of a day, without hours of their own, and count the bites on
// each line.
type UnderDays struct {
	Days, Same int                  // days that count bites as the rows under them do, and those that count as many
	Over       []int64              // rows of days that count fewer
	Rest       map[plan.Cell]string // what the days count beyond the rows under them
	Known      bool                 // their counts say that they are parts of the day's
}

// underDay is the row of a day with those under it.
type underDay struct {
	row   int // index
	parts []int
}

// underDays finds tables in which rows under that of a day count its bites line by line. They are parts of its counts
// where they are never more, and as many on most days. What a day counts beyond them is its own.
func (l *Log) underDays() {
	for _, u := range l.Data() {
		u.Plan.Again = u.severalADay()
		if u.Plan.Kind != plan.Flat || u.Block.Open || len(u.b.rows) != len(u.Block.Rows) {
			continue
		}
		days := u.daysWithParts()
		if u.dayMarker(days); slices.ContainsFunc(days, u.ofLine) {
			continue // the day's own row is of its first line
		}
		u.Under = u.weighParts(days)
		if x := u.Under; x != nil && x.Known {
			u.Plan.Rest = x.Rest
			u.b.note("rows under a day tell on which line its bites were: they are among those that the day counts")
		}
	}
}

// daysWithParts are the rows with a day and hours, each with the rows of counts under it that have neither.
func (u *Understood) daysWithParts() []underDay {
	date := u.Plan.Find("date")
	if date == nil || date.Index < 0 || len(u.countColumns()) == 0 {
		return nil
	}
	var out []underDay
	for i, row := range u.b.rows {
		day, hours := cellOf(row, date.Index), u.hasHours(row)
		switch k := len(out) - 1; {
		case day != "" && hours:
			out = append(out, underDay{row: i})
		case k < 0 || hours:
		case day == "" || day == cellOf(u.b.rows[out[k].row], date.Index):
			if u.countsIn(row) {
				out[k].parts = append(out[k].parts, i)
			}
		default:
			out = append(out, underDay{row: i}) // a day without hours: what stands under it is its own
		}
	}
	return slices.DeleteFunc(out, func(d underDay) bool { return !u.hasHours(u.b.rows[d.row]) })
}

// severalADay reports whether a day has two rows with hours, or one without a day has.
func (u *Understood) severalADay() bool {
	date, seen := u.Plan.Find("date", "trip"), map[string]bool{}
	if date == nil || date.Index < 0 {
		return true
	}
	for _, row := range u.b.rows {
		if day := cellOf(row, date.Index); u.hasHours(row) {
			if day == "" || seen[day] {
				return true
			}
			seen[day] = true
		}
	}
	return false
}

// hasHours reports whether a row says when or how long lines were out.
func (u *Understood) hasHours(row []string) bool {
	return slices.ContainsFunc(u.Plan.Bindings, func(b plan.Binding) bool {
		return b.Index >= 0 && (b.Column.Parse == "stretches" || slices.Contains(ofHours, b.Column.Name)) &&
			cellOf(row, b.Index) != ""
	})
}

var ofHours = []string{"start_s", "end_s", "duration_s"}

// countColumns are the columns of counts of a row's bites, from all bites on.
func (u *Understood) countColumns() (out []*plan.Binding) {
	for _, name := range []string{"strikes_n", "hooked_n", "landed_n", "kept_n", "released_n", "lost_n", "missed_n"} {
		if b := u.Plan.Find(name); b != nil && b.Index >= 0 && b.Set == 0 && b.Column.Parse == "count" {
			out = append(out, b)
		}
	}
	return out
}

func (u *Understood) countsIn(row []string) bool {
	return slices.ContainsFunc(u.countColumns(), func(b *plan.Binding) bool {
		_, ok := number(cellOf(row, b.Index))
		return ok
	})
}

// ofLine reports whether the row of a day with rows under it is of a line itself: it names its lure, or its place.
func (u *Understood) ofLine(d underDay) bool {
	if len(d.parts) == 0 {
		return false
	}
	row := u.b.rows[d.row]
	if lure := u.Plan.Find("lure"); lure != nil && cellOf(row, lure.Index) != "" {
		return true
	}
	line := u.Plan.Find("line")
	return line != nil && words.IsPlace(cellOf(row, line.Index))
}

// dayMarker takes the word that stands in the place of a line in each row of a day, "DAY", and in none under them, for
// no line.
func (u *Understood) dayMarker(days []underDay) {
	line, marker, parts := u.Plan.Find("line"), "", 0
	if line == nil || line.Index < 0 {
		return
	}
	for _, d := range days {
		said := strings.ToLower(cellOf(u.b.rows[d.row], line.Index))
		if said == "" || marker != "" && said != marker || words.IsPlace(said) {
			return
		}
		marker, parts = said, parts+len(d.parts)
		for _, i := range d.parts {
			if own := strings.ToLower(cellOf(u.b.rows[i], line.Index)); own == "" || own == said {
				return
			}
		}
	}
	if len(days) >= sameUnder && parts >= sameUnder {
		if line.Codes == nil {
			line.Codes = map[string]string{}
		}
		line.Codes[marker] = ""
	}
}

// weighParts holds the counts of days against those of the rows under them; nil where no day has any.
func (u *Understood) weighParts(days []underDay) *UnderDays {
	out := &UnderDays{Rest: map[plan.Cell]string{}}
	counts := u.countColumns()
	for _, d := range days {
		if len(d.parts) == 0 {
			continue
		}
		own, sums := map[string]float64{}, map[string]float64{}
		for _, b := range counts {
			if n, ok := number(cellOf(u.b.rows[d.row], b.Index)); ok {
				own[b.Column.Name] = n
			}
			for _, i := range d.parts {
				n, _ := number(cellOf(u.b.rows[i], b.Index))
				sums[b.Column.Name] += n
			}
		}
		first := counts[0].Column.Name
		if _, ok := own[first]; !ok || sums[first] == 0 {
			continue
		}
		num := int64(u.Block.Rows[d.row].Num)
		out.Days++
		rest, over := leftOver(own, sums)
		switch {
		case over:
			out.Over = append(out.Over, num)
		case rest[first] == 0:
			out.Same++
		}
		for _, b := range counts {
			if n, ok := rest[b.Column.Name]; ok {
				out.Rest[plan.Cell{Row: num, Index: b.Index}] = strconv.Itoa(int(n))
			}
		}
	}
	if out.Days == 0 {
		return nil
	}
	out.Known = out.Same >= sameUnder && 2*out.Same > out.Days && slipsUnder*len(out.Over) <= out.Same
	return out
}

// leftOver is what a day's own counts are beyond the sums of the rows under it; over where these are more, or what is
// left does not nest: then nothing is.
func leftOver(own, sums map[string]float64) (rest map[string]float64, over bool) {
	rest = map[string]float64{}
	for name, n := range own {
		rest[name] = n - sums[name]
		over = over || rest[name] < 0
	}
	hooked, told := rest["hooked_n"]
	bites, all := rest["strikes_n"]
	boated := rest["landed_n"] + rest["kept_n"] + rest["released_n"]
	if over = over || told && all && hooked > bites || told && boated > hooked || all && boated > bites; over {
		for name := range rest {
			rest[name] = 0
		}
	}
	return rest, over
}
