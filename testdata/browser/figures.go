package browser

import (
	"testing"
	"time"
)

// Figure is a chart of a page as it stands there: the data it is drawn from, what
// of them is missing in the drawing, and the tables under it.
type Figure struct {
	ID      string
	Lead    string // the sentence above it
	Option  Option
	Keys    []string // the words that explain its marks, in order
	Tables  []Table
	Undrawn []string // points and texts that the drawing does not show
}

// Option is what a chart of ECharts is drawn from, as far as it holds values.
type Option struct {
	XAxis  []Axis
	YAxis  []Axis
	Series []Series
}

// Axis is one axis: its name, and its categories where it has some.
type Axis struct {
	Name string
	Data []string
}

// Series is one series of marks.
type Series struct {
	Name       string
	Type       string
	RenderItem string // of a custom series: the function that draws a mark
	Data       []Mark
	MarkLine   struct {
		Data []struct{ XAxis *float64 }
	}
}

// Mark is one mark. Where a value is not known, its place holds the text "-".
type Mark struct {
	Value any // a number, or a list of numbers
	Label struct{ Formatter string }
}

// at is value i of the mark; false where it is not known.
func (m Mark) at(i int) (float64, bool) {
	list, ok := m.Value.([]any)
	if !ok {
		list = []any{m.Value}
	}
	if i >= len(list) {
		return 0, false
	}
	v, ok := list[i].(float64)
	return v, ok
}

// whole is value i of the mark as a place in a list; -1 where it is none.
func (m Mark) whole(i int) int {
	v, ok := m.at(i)
	if !ok || v < 0 {
		return -1
	}
	return int(v)
}

// Table is one table of a page.
type Table struct {
	Caption string
	Heads   []Head
	Rows    [][]Cell
	Foot    []Cell
}

// Head is the head of a column.
type Head struct{ Text, Unit string }

// Cell is a cell as printed, and its unrounded number where it has one.
type Cell struct{ Text, Key string }

// Figures are all charts of a page, in order.
func Figures(t *testing.T, p *Page) []Figure {
	t.Helper()
	Unfold(t, p)
	return Eval[[]Figure](t, p, figures)
}

// Unfold opens all that is folded, and waits until it is drawn.
func Unfold(t *testing.T, p *Page) {
	t.Helper()
	Eval[bool](t, p, `document.querySelectorAll("details.fold").forEach(d => d.open = true); true`)
	p.scroll(t)
}

// scroll brings every chart that is not folded into sight, one after the other, so that it
// is drawn, and goes back to the top.
func (p *Page) scroll(t *testing.T) {
	t.Helper()
	for range 200 {
		if !Eval[bool](t, p, `(() => { const next = Array.from(document.querySelectorAll(".chart")).find(c => !c.closest("details:not([open])") && !c.querySelector("svg"));
			if (next) { next.scrollIntoView(); } else { scrollTo(0, 0); } return Boolean(next); })()`) {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// figures reads them. A point that is a circle must lie where the chart's axes put
// it, to a pixel; levels, counts and the numbers of histograms must stand in the
// drawing as text.
const figures = `Array.from(document.querySelectorAll(".chart")).map(host => {
	const text = e => e.textContent.replace(/[ \n\t]+/g, " ").trim();
	const cells = row => Array.from(row.cells).map(c => ({Text: text(c), Key: c.dataset.key || ""}));
	const option = JSON.parse(document.getElementById(host.dataset.options).textContent).option;
	const head = h => { const u = h.querySelector(".unit"), whole = text(h); return {Text: u ? whole.slice(0, whole.length - text(u).length).trim() : whole, Unit: u ? text(u) : ""}; };
	const tables = Array.from(host.closest("section").querySelectorAll("table")).map(t => ({
		Caption: t.closest(".scroll").getAttribute("aria-label"),
		Heads: Array.from(t.tHead.rows[0].cells).map(head),
		Rows: Array.from(t.tBodies[0].rows).map(cells),
		Foot: t.tFoot ? cells(t.tFoot.rows[0]) : [],
	}));
	const undrawn = [], svg = host.querySelector("svg");
	if (!svg) {
		return {ID: host.id, Lead: "", Option: option, Keys: [], Tables: tables, Undrawn: ["the whole chart"]};
	}
	// a circle is drawn as an arc that begins at its right end
	const circles = Array.from(svg.querySelectorAll("path")).map(e => e.getAttribute("d").match(/^M([-\d.]+) ([-\d.]+)A([\d.]+) \3 /)).filter(m => m).map(m => [Number(m[1]) - Number(m[3]), Number(m[2])]);
	const places = {rateBar: v => [v[1], v[0]], plotDot: v => [v[0], v[1]]};
	const chart = echarts.getInstanceByDom(host);
	option.series.filter(s => places[s.renderItem]).forEach(s => s.data.forEach(d => {
		const at = places[s.renderItem](d.value);
		if (at.some(v => typeof v !== "number")) { return; }
		const want = chart.convertToPixel({xAxisIndex: 0, yAxisIndex: 0}, at);
		const off = c => Math.abs(c[1] - want[1]) < 1 && (Math.abs(c[0] - want[0]) < 1 || c[0] < want[0] && want[0] > chart.convertToPixel({xAxisIndex: 0}, option.xAxis[0].max));
		if (!circles.some(off)) { undrawn.push("point " + d.value); }
	}));
	const drawn = Array.from(svg.querySelectorAll("text")).map(e => e.textContent).join("").replace(/\s+/g, "");
	const say = words => String(words).split("\n").forEach(w => { if (!drawn.includes(w.replace(/\s+/g, ""))) { undrawn.push("text " + w); } });
	if (option.series.length === 1) {
		option.yAxis.forEach(a => (a.data || []).forEach(say));
		option.series[0].data.forEach(d => { if (d.label && d.label.formatter) { say(d.label.formatter); } if (option.series[0].renderItem === "histBar") { say(d.value[2]); } });
	}
	const figure = host.closest("figure"), said = host.closest("section").querySelector(".lead");
	const lead = said ? said.textContent.trim() : "";
	return {ID: host.id, Lead: lead, Option: option, Keys: Array.from(figure.querySelectorAll(".keys li")).map(text), Tables: tables, Undrawn: undrawn};
})`
