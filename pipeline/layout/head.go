package layout

import (
	"slices"
	"strings"

	"wakeledger/pipeline/unit"
)

// head is the rows of one heading: names, maybe groups over them and units under them.
type head struct {
	first, names, last int // rows of the grid; names is the row of the names
	units              bool
}

const (
	maxLabel = 120 // bytes: longer texts are no headings
	reach    = 8   // rows below a heading that tell what its columns hold
)

// heads finds the rows that are headings, from the top.
func (g *Grid) heads(like Likeness) []head {
	var found []head
	for r := 0; r < len(g.Rows); r++ {
		again := g.headAgain(found, r)
		if !again && (!g.isHead(r, like) || len(found) > 0 && g.isRow(found[len(found)-1], r, like)) {
			continue
		}
		h := head{first: r, names: r, last: r}
		free := 0
		if len(found) > 0 {
			free = found[len(found)-1].last + 1
		}
		if r > free && g.isGroup(r-1, r) && !g.saidAbove(r) {
			h.first = r - 1
		}
		if r+1 < len(g.Rows) && g.isUnits(r+1) {
			h.last, h.units = r+1, true
		} else if r+1 < len(g.Rows) && h.first == r && (g.isHead(r+1, like) || g.underGroups(r, r+1)) && g.words(r+1) &&
			g.Rows[r+1].Num == g.Rows[r].Num+1 && !g.sameTexts(r, r+1) && !g.standsAgain(r, 1) {
			h.names, h.last = r+1, r+1
			if r+2 < len(g.Rows) && g.isUnits(r+2) {
				h.last, h.units = r+2, true
			}
		}
		found = append(found, h)
		r = h.last
	}
	return found
}

// standsAgain tells a row of names that stands again elsewhere, beside another row: what stands beside it, one row
// below or above, is no second row of headings.
func (g *Grid) standsAgain(r, beside int) bool {
	own := g.texts(r)
	for q := max(0, -beside); q+max(0, beside) < len(g.Rows); q++ {
		if q != r && g.sameTexts(r, q) && g.texts(q) == own && !g.sameTexts(r+beside, q+beside) {
			return true
		}
	}
	return false
}

// saidAbove tells names that stand again elsewhere, above which is one text right under a row of figures: it is said of
// that row, and is no group.
func (g *Grid) saidAbove(r int) bool {
	return r > 1 && len(g.Rows[r-1].filled(0, g.Width)) == 1 && g.Rows[r-2].Num == g.Rows[r-1].Num-1 &&
		!g.words(r-2) && g.standsAgain(r, -1)
}

// isRow tells a row that looks like headings and is one of the table under other headings.
func (g *Grid) isRow(h head, r int, like Likeness) bool {
	return !g.words(r) || g.isData(h, r) || g.goesOn(h, r, like) || g.endsTable(h, r) ||
		h.names == r-1 && g.standsAgain(r-1, 1)
}

// endsTable tells the last row of a sheet right under others of a table, in whose columns its cells stand: a heading
// has something below it, but in a table that nobody filled in.
func (g *Grid) endsTable(h head, r int) bool {
	above := g.Rows[r-1].filled(0, g.Width)
	return r+1 == len(g.Rows) && r > h.last+1 && g.Rows[r-1].Num == g.Rows[r].Num-1 && len(above) > 1 &&
		!slices.ContainsFunc(g.Rows[r].filled(0, g.Width), func(i int) bool { return !slices.Contains(above, i) })
}

// goesOn tells a row that goes on with what the one right above it lists, in the same columns, of a table of many more
// headings of which the first are of both rows: "flat rig | cedar plug | second wave" among the lines of a stretch.
func (g *Grid) goesOn(h head, r int, like Likeness) bool {
	cells := g.Rows[r].filled(0, g.Width)
	above, own := g.Rows[r-1].filled(0, g.Width), g.Rows[h.names].filled(0, g.Width)
	return r > h.last+1 && g.Rows[r-1].Num == g.Rows[r].Num-1 && len(above) > 1 && cells[0] > own[0] &&
		cells[0] >= above[0] && slices.Contains(above, cells[0]) && g.named(h, like) >= 2*len(cells) &&
		!slices.ContainsFunc(cells, func(i int) bool { return !slices.Contains(own, i) })
}

// underGroups tells a row of the same few words under several names each of which stands over some: "kept, lost" under
// Tuna, and again under Mahi. A row of a table has no cells where the heading is blank.
func (g *Grid) underGroups(r, under int) bool {
	said, of, sure := map[string]int{}, -1, 0
	n := map[int]int{} // cells under each name
	for i := range g.Width {
		if g.Rows[r].at(i).Look != Blank {
			of = i
		}
		if c := g.Rows[under].at(i); c.Look == Text && of >= 0 {
			said[strings.ToLower(c.Text)]++
			n[of]++
		}
	}
	all := 0
	for _, k := range n {
		all += k
		if k > 1 {
			sure++
		}
	}
	return sure > 1 && len(said) > 1 && 2*len(said) <= all
}

// headAgain tells the first row of a table that the file says begins there, under headings that another has.
func (g *Grid) headAgain(found []head, r int) bool {
	table := g.Rows[r].Table
	return table > 0 && (r == 0 || g.Rows[r-1].Table != table) &&
		slices.ContainsFunc(found, func(h head) bool { return g.sameTexts(r, h.names) })
}

// isHead tells a row of headings: distinct short texts that are like labels, or that
// stand over columns of something else.
func (g *Grid) isHead(r int, like Likeness) bool {
	row := &g.Rows[r]
	cells := row.filled(0, len(row.Cells))
	n := float64(len(cells))
	if len(cells) < 2 || g.isComment(r) || g.explains(r) {
		return false
	}
	texts, colons, hits, sure, contrast := 0.0, 0, 0.0, 0, 0.0
	distinct := map[string]bool{}
	for _, i := range cells {
		c := row.Cells[i]
		if c.Formula != "" || len(c.Text) > maxLabel {
			continue
		}
		l := like.Label(c.Text)
		if c.Look == Text && digits(c.Text) < 3 || l >= 0.9 {
			texts++
		}
		if strings.HasSuffix(c.Text, ":") {
			colons++
		}
		hits += l
		if l > 0.5 {
			sure++
		}
		distinct[strings.ToLower(c.Text)] = true
		contrast += g.contrast(r, i)
	}
	several := float64(len(distinct)) >= 0.5*n || len(distinct) >= leastNames && hits >= leastHits*n
	if texts < 0.8*n || colons >= 2 || !several || g.repeated(r, cells, like) {
		return false
	}
	if len(cells) == 2 {
		return sure == 2 && (g.pairs(r, cells) || g.againOverDays(r))
	}
	return sure >= 2 && hits >= 0.34*n || contrast >= 0.5*n && g.coherent(r, cells)
}

// againOverDays tells a row that stands again over one of a day and of as many cells, each time: "Day | Hours".
func (g *Grid) againOverDays(r int) bool {
	n, own := 0, g.texts(r)
	for q := 0; q+1 < len(g.Rows); q++ {
		if !g.sameTexts(r, q) || g.texts(q) != own {
			continue
		}
		cells := g.Rows[q+1].filled(0, g.Width)
		if !slices.Equal(cells, g.Rows[q].filled(0, g.Width)) || !slices.ContainsFunc(cells, func(i int) bool {
			return g.Rows[q+1].at(i).Look == Date
		}) {
			return false
		}
		n++
	}
	return n >= fewPapers
}

// leastNames and leastHits are how many different names, and how like headings each of its cells, a heading has at
// least that says the same of a first, a second and a third of a set.
const leastNames, leastHits = 4, 0.5

// fewWords are what a heading has at most: "# of lines out".
const fewWords = 4

// isComment tells a row of a text file that begins with "#" and goes on in a sentence.
func (g *Grid) isComment(r int) bool {
	rest, hash := strings.CutPrefix(g.Rows[r].at(0).Text, "#")
	return hash && !g.Info.Workbook && len(strings.Fields(rest)) > fewWords
}

func digits(s string) int {
	n := 0
	for _, r := range s {
		if r >= '0' && r <= '9' {
			n++
		}
	}
	return n
}

// words tells a row that holds words alone.
func (g *Grid) words(r int) bool {
	for _, c := range g.Rows[r].Cells {
		if c.Look != Text && c.Look != Blank {
			return false
		}
	}
	return true
}

// isData tells a row that stands under a heading as the rows before it do: where it is
// filled, they look the same.
func (g *Grid) isData(h head, r int) bool {
	alike, all := 0, 0
	for _, i := range g.Rows[r].filled(0, g.Width) {
		looks := map[Look]int{}
		n := 0
		for q := h.last + 1; q < r; q++ {
			if look := g.Rows[q].at(i).Look; look != Blank {
				looks[look]++
				n++
			}
		}
		all++
		if n > 1 && 10*looks[g.Rows[r].Cells[i].Look] >= 8*n && g.Rows[h.names].at(i).Look != Blank {
			alike++
		}
	}
	return r > h.last+2 && alike == all && !g.sameTexts(r, h.names)
}

// contrast is 1 where what stands under a text is mostly no text.
func (g *Grid) contrast(r, i int) float64 {
	other, all := 0, 0
	for q := r + 1; q < min(len(g.Rows), r+1+reach); q++ {
		if look := g.Rows[q].at(i).Look; look != Blank {
			all++
			if look != Text {
				other++
			}
		}
	}
	if all > 0 && 2*other > all {
		return 1
	}
	return 0
}

// coherent tells a row under which at least three rows fill half of its columns.
func (g *Grid) coherent(r int, cells []int) bool {
	n := 0
	for q := r + 1; q < min(len(g.Rows), r+1+reach); q++ {
		filled := 0
		for _, i := range cells {
			if g.Rows[q].at(i).Look != Blank {
				filled++
			}
		}
		if 2*filled >= len(cells) {
			n++
		}
	}
	return n >= 3
}

// pairs tells a heading of two columns from a label beside a value: rows below fill
// the same two.
func (g *Grid) pairs(r int, cells []int) bool {
	if r+1 < len(g.Rows) {
		for _, i := range g.Rows[r+1].filled(0, g.Width) {
			if !slices.Contains(cells, i) {
				return false // a further fish of the row above, and the next row
			}
		}
	}
	n := 0
	for q := r + 1; q < min(len(g.Rows), r+1+reach); q++ {
		if f := g.Rows[q].filled(0, g.Width); len(f) == 2 && f[0] == cells[0] && f[1] == cells[1] {
			n++
		}
	}
	return n >= 3
}

// repeated tells data: many of the row's texts stand again in the same column, in
// rows that are not this one again.
func (g *Grid) repeated(r int, cells []int, like Likeness) bool {
	again := 0
	labels := map[int]bool{}
	for q := max(0, r-6); q < min(len(g.Rows), r+12); q++ {
		labels[q] = g.labelled(q, like)
	}
	for _, i := range cells {
		for q := max(0, r-6); q < min(len(g.Rows), r+12); q++ {
			if q != r && !labels[q] && strings.EqualFold(g.Rows[q].at(i).Text, g.Rows[r].Cells[i].Text) &&
				!g.sameTexts(r, q) {
				again++
				break
			}
		}
	}
	return 5*again >= 2*len(cells)
}

// labelled tells a row most of whose cells are like labels.
func (g *Grid) labelled(r int, like Likeness) bool {
	cells := g.Rows[r].filled(0, g.Width)
	n := 0
	for _, i := range cells {
		if like.Label(g.Rows[r].Cells[i].Text) >= 0.9 {
			n++
		}
	}
	return 10*n >= 6*len(cells)
}

// sameTexts tells two rows most of whose texts are the same.
func (g *Grid) sameTexts(a, b int) bool {
	same, all := 0, 0
	for i := range g.Rows[a].Cells {
		if c := g.Rows[a].Cells[i]; c.Look != Blank {
			all++
			if strings.EqualFold(c.Text, g.Rows[b].at(i).Text) {
				same++
			}
		}
	}
	return 10*same >= 7*all
}

// isGroup tells a row of names that stand over several headings each.
func (g *Grid) isGroup(r, names int) bool {
	if g.isComment(r) || g.explains(r) {
		return false
	}
	if g.Rows[r].Num != g.Rows[names].Num-1 {
		return false
	}
	cells := g.Rows[r].filled(0, g.Width)
	under := g.Rows[names].filled(0, g.Width)
	if len(cells) == 0 || len(cells) >= len(under) {
		return false
	}
	if cells[0] == under[0] && len(strings.Fields(g.Rows[r].Cells[cells[0]].Text)) >= fewWords {
		return false // a title: "Rosalind, 2024, page 1"
	}
	for _, i := range cells {
		c := g.Rows[r].Cells[i]
		if c.Look != Text || len(c.Text) > 40 || strings.Contains(c.Text, ":") {
			return false
		}
	}
	return len(cells) > 1 || cells[0] > under[0]
}

// unitWords stand in a row of units beside units proper: counts, clocks, days, codes, and units of
// what a log keeps by name.
var unitWords = wordSet("#|no|no.|n|nº|n°|nr|nr.|num|anz|anz.|stk|stk.|stück|pcs|pc|count|qty|24hr|24 " +
	"hr|24h|hh:mm|h:mm|hhmm|hh.mm|hh:mm:ss|h:min|uhr|utc|gmt|local time|clock|" +
	"m/d/y|d/m/y|mm/dd|dd/mm|mm/dd/yy|dd/mm/yy|mm/dd/yyyy|dd/mm/yyyy|yyyy-mm-dd|dd.mm|dd.mm.|dd.mm.yy|dd.mm.yyyy|" +
	"tt.mm|tt.mm.|tt.mm.jjjj|jj/mm|jj/mm/aa|jj/mm/aaaa|dd/mm/aa|dd/mm/aaaa|" +
	"y/n|j/n|s/n|o/n|am/pm|local|text|code|name|-|–|—|$|€|£|eur|usd|r|%|gal|gals|us " +
	"gal|l|ltr|ltrs|litre|litres|liter|liters|litri|litros|" +
	"rpm|1/min|/min|min-1|min⁻¹|u/min|r/min|rev/min|tr/min|hpa|mbar|mb|bft|beaufort|bf|deg|°t|°m|sm|mn")

func wordSet(list string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Split(list, "|") {
		m[w] = true
	}
	return m
}

// isUnits tells a row of units under the headings, one of them at least a unit of what is measured.
func (g *Grid) isUnits(r int) bool {
	cells := g.Rows[r].filled(0, g.Width)
	units, proper := 0, 0
	for _, i := range cells {
		t := strings.ToLower(strings.Trim(g.Rows[r].Cells[i].Text, "()[] "))
		if _, ok := unit.Lookup(t); ok {
			proper++
		}
		if _, ok := unit.Lookup(t); ok || unitWords[t] {
			units++
		}
	}
	return proper >= 1 && units >= 2 && 5*units >= 4*len(cells)
}
