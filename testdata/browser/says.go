package browser

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
)

// Says lists where the sentence above a picture is not what the picture's own data say;
// it is empty where they agree, and where the chart is none of the pictures below.
func Says(f Figure) []string {
	if strings.HasSuffix(f.ID, ofYears) {
		var out []string
		for _, season := range seasonsOf(f) {
			out = append(out, Says(season)...)
		}
		return out
	}
	want := ""
	switch f.ID + " " + f.mark() {
	case "chart-speed ratioBar":
		return speedSays(f)
	case "chart-mattered ratioBar":
		return matteredSays(f)
	case "chart-days dayBar":
		want = daysSay(f)
	case "chart-fates fateBar":
		want = fatesSay(f)
	case "chart-sizes sizeDot":
		return sizesSay(f)
	case "chart-pairs pairCell":
		want = pairsSay(f)
	case "chart-heaviest fishBar":
		return heaviestSays(f)
	default:
		return nil
	}
	if want != f.Lead {
		return []string{fmt.Sprintf("%s says %q, and shows %q", f.ID, f.Lead, want)}
	}
	return nil
}

// Pictures are the charts whose sentences Says knows.
var Pictures = []string{"chart-speed", "chart-mattered", "chart-days", "chart-sizes", "chart-fates",
	"chart-pairs", "chart-heaviest"}

// mark is the function that draws the first series; "" for one of the library's own.
func (f Figure) mark() string {
	if len(f.Option.Series) == 0 {
		return ""
	}
	return f.Option.Series[0].RenderItem
}

// ratioWord is a ratio as a sentence prints it.
func ratioWord(v float64) string {
	switch {
	case v >= 9.95:
		return fmt.Sprintf("%.0f", v)
	case v > 1 && v < 1.005:
		return "just over 1"
	case v < 1 && v >= 0.995:
		return "just under 1"
	case v < 1.05:
		return fmt.Sprintf("%.2f", v)
	}
	return fmt.Sprintf("%.1f", v)
}

// speedSays: the one row that the sentence names has the ratio and the interval that it
// says, drawn loud where it leans or is settled; and then the interval leaves out 1.
func speedSays(f Figure) []string {
	for i, label := range f.Option.YAxis[0].Data {
		name, _ := level(label)
		if !strings.HasPrefix(f.Lead, name+" brought") {
			continue
		}
		m := f.Option.Series[0].Data[i]
		r, _ := m.at(1)
		lo, okLo := m.at(2)
		hi, okHi := m.at(3)
		says := fmt.Sprintf(" brought %s times", ratioWord(r))
		if okLo && okHi {
			says = fmt.Sprintf("(%s to %s)", ratioWord(lo), ratioWord(hi))
			if !strings.Contains(f.Lead, " brought "+ratioWord(r)+" times") {
				return []string{fmt.Sprintf("%s says %q, and shows %v", f.ID, f.Lead, m.Value)}
			}
		}
		clear := !strings.HasSuffix(f.Lead, "Not settled.")
		if !strings.Contains(f.Lead, says) || clear != (m.whole(5) == 2) || clear && lo <= 1 && hi >= 1 {
			return []string{fmt.Sprintf("%s says %q, and shows %v", f.ID, f.Lead, m.Value)}
		}
		return nil
	}
	if strings.Contains(f.Lead, "from end to end") &&
		strings.HasPrefix(f.Option.YAxis[0].Data[len(f.Option.YAxis[0].Data)-1], "trend") {
		r, _ := f.Option.Series[0].Data[len(f.Option.Series[0].Data)-1].at(1)
		if strings.Contains(f.Lead, " "+ratioWord(r)+" times") {
			return nil
		}
	}
	return []string{fmt.Sprintf("%s says %q of no row that it shows", f.ID, f.Lead)}
}

// matteredSays: as many factors as are drawn, and the loud ones by name.
func matteredSays(f Figure) []string {
	o := f.Option
	var out []string
	if head := fmt.Sprintf("Of %d factor", len(o.YAxis[0].Data)); !strings.HasPrefix(f.Lead, head) {
		out = append(out, fmt.Sprintf("%s says %q, and shows %d factors", f.ID, f.Lead, len(o.YAxis[0].Data)))
	}
	for i, label := range o.YAxis[0].Data {
		name, _ := level(label)
		if i >= len(o.Series[0].Data) {
			return append(out, fmt.Sprintf("%s has no mark for %s", f.ID, name))
		}
		m := o.Series[0].Data[i]
		lo, _ := m.at(2)
		named, loud := strings.Contains(f.Lead, " "+strings.ToLower(name)+" "), m.whole(5) == 2
		if named = named || strings.Contains(f.Lead, " "+strings.ToLower(name)+","); named != loud || loud && lo <= 1 {
			out = append(out, fmt.Sprintf("%s says %q, and draws %s as %v", f.ID, f.Lead, name, m.Value))
		}
	}
	return out
}

// dayWords is a day of the calendar as a table writes it.
func dayWords(day int, month string) string {
	at, err := time.Parse("Jan 2006", month)
	if err != nil {
		return ""
	}
	return at.AddDate(0, 0, day-1).Format(time.DateOnly)
}

// daysSay: the fortnight with the most strikes, and the days without one.
func daysSay(f Figure) string {
	type day struct {
		at time.Time
		n  int
	}
	var days []day
	blank := 0
	for _, m := range f.Option.Series[0].Data {
		at, err := time.Parse(time.DateOnly, dayWords(m.whole(0)+1, className(f.Option.YAxis[0].Data, m.whole(1))))
		if err != nil {
			return err.Error()
		}
		days = append(days, day{at, m.whole(2)})
		if m.whole(2) == 0 {
			blank++
		}
	}
	from, to, most := 0, 0, -1
	for i := range days {
		n, j := 0, i
		for ; j < len(days) && days[j].at.Before(days[i].at.AddDate(0, 0, 14)); j++ {
			n += days[j].n
		}
		if n > most {
			from, to, most = i, j-1, n
		}
	}
	tail := fmt.Sprintf("%d days out, %d without a strike.", len(days), blank)
	if most <= 0 || from == to {
		return tail
	}
	first, last := days[from].at, days[to].at
	head := first.Format("2 January 2006")
	if first.Year() == last.Year() {
		head = first.Format("2 January")
		if first.Month() == last.Month() {
			head = first.Format("2")
		}
	}
	strikes := fmt.Sprintf("%d strikes", most)
	if most == 1 {
		strikes = "1 strike"
	}
	return fmt.Sprintf("Best fortnight: %s to %s, %s on %d days. %s", head,
		last.Format("2 January 2006"), strikes, to-from+1, tail)
}

// grouped is a count as a page prints it.
func grouped(n float64) string {
	s := fmt.Sprintf("%.0f", n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "\u202f" + s[i:]
	}
	return s
}

// fatesSay: what came to the boat of all, and the longest of the other parts.
func fatesSay(f Figure) string {
	o := f.Option
	boat, total, most, leak := 0.0, 0.0, 0.0, ""
	for i, m := range o.Series[0].Data {
		from, _ := m.at(1)
		to, _ := m.at(2)
		if m.whole(0) == 0 {
			continue
		}
		total += to - from
		if m.whole(3) == 0 {
			boat += to - from
		} else if to-from > most {
			most, leak = to-from, className(o.YAxis[0].Data, (i-1)/2+1)
		}
	}
	plural := "strikes"
	if total == 1 {
		plural = "strike"
	}
	out := fmt.Sprintf("%s of %s %s came to the boat.", grouped(boat), grouped(total), plural)
	if leak == "" {
		return out
	}
	return fmt.Sprintf("%s The largest leak: %s, %s.", out, leak, grouped(most))
}

// sizesSay: the number of filled dots, and of the others.
func sizesSay(f Figure) []string {
	main, other := 0, 0
	for _, m := range f.Option.Series[0].Data {
		if m.whole(3) == 1 {
			main++
		} else {
			other++
		}
	}
	var out []string
	if strings.Contains(f.Lead, "no difference by speed shown") &&
		!strings.Contains(f.Lead, " in "+grouped(float64(main))+" weight") {
		out = append(out, fmt.Sprintf("%s says %q, and shows %d fish filled", f.ID, f.Lead, main))
	}
	if says := " Other species: " + grouped(float64(other)) + " fish."; (other > 0) != strings.HasSuffix(f.Lead, says) {
		out = append(out, fmt.Sprintf("%s says %q, and shows %d fish of other species", f.ID, f.Lead, other))
	}
	return out
}

// pairsSay: the largest square, and the pale ones of a speed and a weight that have others.
func pairsSay(f Figure) string {
	o := f.Option
	cells := o.Series[0].Data
	hours := func(m Mark) float64 { v, _ := m.at(2); return v }
	at := func(m Mark) string {
		return className(o.XAxis[0].Data, m.whole(0)) + " at " + className(o.YAxis[0].Data, m.whole(1))
	}
	pale := func(m Mark) bool { return m.whole(5) < 0 }
	most := slices.MaxFunc(cells, func(a, b Mark) int {
		switch {
		case hours(a) > hours(b):
			return 1
		case hours(a) < hours(b):
			return -1
		}
		return 0
	})
	n, _ := most.at(3)
	strikes := grouped(n) + " strikes"
	if n == 1 {
		strikes = "1 strike"
	}
	h := grouped(math.Round(hours(most)))
	if hours(most) < 10 {
		h = fmt.Sprintf("%.1f", hours(most))
	}
	out := fmt.Sprintf("Most fished: %s, %s in %s line-hours.", at(most), strikes, h)
	var hardly []string
	for _, m := range cells {
		other := func(i int) bool {
			return slices.ContainsFunc(cells, func(c Mark) bool { return !pale(c) && c.whole(i) == m.whole(i) })
		}
		if pale(m) && other(0) && other(1) {
			hardly = append(hardly, at(m))
		}
	}
	switch len(hardly) {
	case 0:
		return out
	case 1:
		return out + " Hardly tried: " + hardly[0] + "."
	case 2:
		return out + " Hardly tried: " + hardly[0] + " and " + hardly[1] + "."
	}
	return fmt.Sprintf("%s Hardly tried: %s, %s and %d more.", out, hardly[0], hardly[1], len(hardly)-2)
}

// heaviestSays: the longest bar on a scale, and by tape, with its name; how many are doubtful.
func heaviestSays(f Figure) []string {
	o := f.Option
	var out []string
	for scale, head := range []string{"By tape: about ", "Heaviest on a scale: "} {
		best := -1
		for i, m := range o.Series[0].Data {
			w, _ := m.at(0)
			if m.whole(4) != scale || m.whole(5) == 1 {
				continue
			}
			if best >= 0 {
				if v, _ := o.Series[0].Data[best].at(0); v >= w {
					continue
				}
			}
			best = i
		}
		if best < 0 {
			continue
		}
		_, name, _ := strings.Cut(className(o.YAxis[0].Data, best), ". ")
		if says := head + o.YAxis[1].Data[best] + ", " + name +
			"."; !strings.Contains(strings.ToLower(f.Lead), strings.ToLower(says)) {
			out = append(out, fmt.Sprintf("%s says %q, and shows %q", f.ID, f.Lead, says))
		}
	}
	return out
}
