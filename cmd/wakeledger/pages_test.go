package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"wakeledger/testdata/browser"
)

// demoFile is the season file of the demo's logs and tracks.
func demoFile(t *testing.T) string {
	t.Helper()
	db := filepath.Join(t.TempDir(), "demo.duckdb")
	logs, err := filepath.Glob("../../testdata/demo/logs/*")
	if err != nil || len(logs) == 0 {
		t.Fatal("no demo logs", err)
	}
	tell(t, append([]string{"--db", db, "load", "--ocean", "pacific",
		"../../testdata/demo/tracks/2026-late-tracks.zip"}, logs...)...)
	return db
}

// pages are the reports of the demo's seasons, the club's of two boats.
func pages(t *testing.T) map[string][]byte {
	t.Helper()
	db := demoFile(t)
	return written(t, map[string][]string{
		"season": {"--db", db, "report", "season"},
		"years":  {"--db", db, "report", "years"},
		"us":     {"--db", db, "report", "season", "--units", "us"},
		"scale":  {"--db", db, "report", "scale"},
		"club":   {"report", "club", "--names", "--db", db, "--db", telltale(t, 12, `<img src=x onerror=alert(1)>`)},
	})
}

// written are reports by the command lines that write them.
func written(t *testing.T, reports map[string][]string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	for name, args := range reports {
		file := filepath.Join(t.TempDir(), name+".html")
		tell(t, append(args, "--out", file)...)
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = b
	}
	return out
}

// TestPages looks at the reports in a browser; they are written once.
func TestPages(t *testing.T) {
	all := pages(t)
	for _, c := range []struct {
		name string
		look func(*testing.T, map[string][]byte)
	}{
		{"InBrowser", pagesInBrowser}, {"UnitsOfClasses", unitsOfClasses},
		{"DoctoredAreCaught", doctoredPagesAreCaught}, {"OnPaper", pagesOnPaper},
		{"TablesFit", tablesFit}, {"AreShort", pagesAreShort}, {"PaperFaultsAreSeen", paperFaultsAreSeen},
		{"ByKeyboard", pagesByKeyboard}, {"WithAxe", pagesWithAxe},
	} {
		t.Run(c.name, func(t *testing.T) {
			some := all
			if few, cut := fewPages[c.name]; cut && testing.Short() { // all of them in make prove
				some = map[string][]byte{}
				for _, name := range few {
					some[name] = all[name]
				}
			}
			c.look(t, some)
		})
	}
}

// fewPages are those that a short run looks at in the ways that take long.
var fewPages = map[string][]string{"InBrowser": {"us", "club"}, "DoctoredAreCaught": {"us"}, "OnPaper": {"us"},
	"TablesFit": {"us"}, "ByKeyboard": {"us"}}

// Each page as the browser draws it: on a phone and a desk, light, dark and on
// paper, with nothing asked of a network.
func pagesInBrowser(t *testing.T, all map[string][]byte) {
	for name, html := range all {
		t.Run(name, func(t *testing.T) {
			if len(html) > 2<<20 {
				t.Errorf("the page has %d bytes, more than 2 MiB", len(html))
			}
			p := browser.Open(t, html)
			browser.Eval[bool](t, p,
				`window.violations = []; document.addEventListener("securitypolicyviolation", e => violations.push(e.violatedDirective + " " + e.blockedURI)); true`)
			checkQuick(t, p, html)
			browser.Unfold(t, p)
			checkDrawn(t, p)
			checkFigures(t, p)
			browser.Eval[bool](t, p, `document.querySelectorAll("details.fold").forEach(d => d.open = false); true`)
			for _, width := range []int64{390, 1280} {
				p.Resize(t, width, 844)
				if wide := browser.Eval[int64](t, p, `document.documentElement.scrollWidth`); wide > width {
					t.Errorf("the page is %d pixels wide on a screen of %d", wide, width)
				}
				checkReadable(t, p, width)
				if width == 390 {
					if foot := browser.Eval[float64](t, p,
						`document.querySelector(".tiles").getBoundingClientRect().bottom + scrollY`); foot > 844 {
						t.Errorf("the opening ends at %v pixels, below a screen of 844", foot)
					}
				}
			}
			for _, scheme := range []string{"light", "dark"} {
				p.Scheme(t, scheme)
				poor := browser.Eval[[]string](t, p, browser.Contrast)
				for wait := time.Second; len(poor) > 0 && wait < 8*time.Second; wait *= 2 {
					time.Sleep(wait) // charts are drawn anew in the other colours, on a busy machine later
					poor = browser.Eval[[]string](t, p, browser.Contrast)
				}
				if len(poor) > 0 {
					t.Errorf("%s: contrast below WCAG AA: %q", scheme, poor)
				}
			}
			checkPaper(t, p)
			if ran := browser.Eval[[]string](t, p, `violations`); len(ran) > 0 {
				t.Errorf("content security policy violated: %q", ran)
			}
			browser.Eval[bool](t, p,
				`const [a, b] = document.querySelector(".chart svg").querySelectorAll("text"); b.replaceWith(a.cloneNode(true)); true`)
			if len(browser.Eval[[]string](t, p, wordsUponWords)) == 0 {
				t.Error("words put upon others are not seen")
			}
			p.CheckQuiet(t)
		})
	}
}

// checkReadable: no words of a chart that is shown lie upon others.
func checkReadable(t *testing.T, p *browser.Page, width int64) {
	t.Helper()
	for _, clash := range browser.Eval[[]string](t, p, wordsUponWords) {
		t.Errorf("on a screen of %d: %s", width, clash)
	}
}

// wordsUponWords lists, by chart, the upright words that share more than a fifth of their room
// with others, two of a chart.
const wordsUponWords = `Array.from(document.querySelectorAll(".chart svg")).flatMap(svg => {
	const all = Array.from(svg.querySelectorAll("text")).filter(e => e.textContent.trim() && !e.getScreenCTM().b).map(e => ({ words: e.textContent, box: e.getBoundingClientRect() })).filter(w => w.box.width > 0);
	const clashes = all.flatMap((a, i) => all.slice(i + 1).filter(b => {
		const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left), high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
		return wide > 0 && high > 0 && wide * high > 0.2 * Math.min(a.box.width * a.box.height, b.box.width * b.box.height);
	}).map(b => svg.closest(".chart").id + ": " + JSON.stringify(a.words) + " lies upon " + JSON.stringify(b.words)));
	return clashes.slice(0, 2);
})`

// tablesFit: on a desk no table is wider than its column, so that none is cut.
func tablesFit(t *testing.T, all map[string][]byte) {
	all = maps.Clone(all)
	maps.Copy(all, written(t, map[string][]string{"track": {"--db", demoFile(t), "report", "track"}}))
	for name, html := range all {
		p := browser.Open(t, html)
		browser.Eval[bool](t, p, `document.querySelectorAll("details").forEach(d => { d.open = true; }); true`)
		p.Resize(t, 1280, 900)
		if n := browser.Eval[int](t, p, `document.querySelectorAll(".scroll").length`); n < 2 {
			t.Errorf("%s: %d tables", name, n)
		}
		for _, wide := range browser.Eval[[]string](t, p, tooWide) {
			t.Errorf("%s: %s", name, wide)
		}
		browser.Eval[bool](t, p, `document.querySelector("table").style.setProperty("min-width", "1200px"); true`)
		if len(browser.Eval[[]string](t, p, tooWide)) != 1 {
			t.Errorf("%s: a table made too wide is not seen", name)
		}
	}
}

// tooWide lists the tables that their column does not hold.
const tooWide = `Array.from(document.querySelectorAll(".scroll")).filter(s => s.scrollWidth > s.clientWidth).map(s => s.getAttribute("aria-label") + " is " + s.scrollWidth + " pixels wide in " + s.clientWidth)`

// checkQuick: what is in sight is to be drawn within a second of processor time, and so is all
// that is shown. A busy machine is no fault of the page: the times are said, and fail only
// far beyond.
func checkQuick(t *testing.T, p *browser.Page, html []byte) {
	t.Helper()
	first, whole := p.InSight, p.Whole
	for try := 1; try < 3 && whole > time.Second; try++ {
		again := browser.Open(t, html)
		first, whole = min(first, again.InSight), min(whole, again.Whole)
	}
	t.Logf("drawn in sight within %v of processor time, all of it within %v", first.Round(time.Millisecond),
		whole.Round(time.Millisecond))
	if first > 2*time.Second || whole > 4*time.Second {
		t.Errorf("drawn in sight within %v of processor time, all of it within %v, want a second", first, whole)
	}
}

// checkDrawn: every chart has marks, none of them at no number, and a label.
func checkDrawn(t *testing.T, p *browser.Page) {
	t.Helper()
	poor := browser.Eval[[]string](t, p, `Array.from(document.querySelectorAll(".chart")).filter(c => {
		const svg = c.querySelector("svg"), label = c.getAttribute("aria-label") || "";
		return !svg || svg.querySelectorAll("path[fill]:not([fill=none]), rect[fill]:not([fill=none])").length < 2 || /NaN|undefined|Infinity/.test(svg.outerHTML + label) || label.length < 20;
	}).map(c => c.id)`)
	if len(poor) > 0 {
		t.Errorf("charts not drawn, or not labelled: %q", poor)
	}
	if n := browser.Eval[int](t, p, `document.querySelectorAll(".chart svg").length`); n < 2 {
		t.Errorf("%d charts", n)
	}
	if n := browser.Eval[int](t, p, `document.querySelectorAll("section:has(.chart):not(:has(table))").length`); n > 0 {
		t.Errorf("%d charts without a table", n)
	}
	if n := browser.Eval[int](t, p,
		`document.querySelectorAll("section:has(.chart):not(:has(p.lead))").length`); n > 0 {
		t.Errorf("%d charts without a sentence", n)
	}
	if n := browser.Eval[int](t, p,
		`document.querySelectorAll("td img, th img, li img, p img, [onerror], [onclick], td script").length`); n > 0 {
		t.Errorf("%d elements made of text from a log", n)
	}
}

// checkFigures: every chart and the tables under it hold the same values, at the
// precision that the tables show.
func checkFigures(t *testing.T, p *browser.Page) {
	t.Helper()
	figures := browser.Figures(t, p)
	if len(figures) < 2 {
		t.Errorf("%d charts were held against their tables", len(figures))
	}
	for _, f := range figures {
		for _, d := range browser.Disagree(f) {
			t.Error("chart and table differ: ", d)
		}
		for _, d := range browser.Says(f) {
			t.Error("sentence and picture differ: ", d)
		}
	}
}

// unitsOfClasses: classes of lure weight, setback and sea temperature are in the
// units that were asked for.
func unitsOfClasses(t *testing.T, all map[string][]byte) {
	us, metric := withoutLibrary(string(all["us"])), withoutLibrary(string(all["season"]))
	for _, words := range []string{"16 to 24 oz", "50 to 100 yd", "66 to 70 °F"} {
		if !strings.Contains(us, words) || strings.Contains(metric, words) {
			t.Errorf("%q is not in the report in us units, or in the one that is not", words)
		}
	}
	for _, words := range []string{"500 to 750 g", "50 to 100 m", "18 to 20 °C"} {
		if strings.Contains(us, words) || !strings.Contains(metric, words) {
			t.Errorf("%q is in the report in us units, or not in the other", words)
		}
	}
}

// doctoredPagesAreCaught proves the check above on every chart of the real pages:
// without its tables, without any one row that is drawn, and with any one value of
// the chart changed, a chart disagrees.
func doctoredPagesAreCaught(t *testing.T, all map[string][]byte) {
	for name, html := range all {
		p := browser.Open(t, html)
		values, rows := 0, 0
		figures := browser.Figures(t, p)
		switch name {
		case "us":
			checkSaysCatches(t, figures, "")
		case "years":
			checkSaysCatches(t, figures, "-years")
		}
		for _, f := range figures {
			bare := f
			bare.Tables = nil
			if len(browser.Disagree(bare)) == 0 {
				t.Errorf("%s, %s: no table, and nothing is said", name, f.ID)
			}
			for _, d := range browser.Doctored(f) {
				if d.Value {
					values++
				} else {
					rows++
				}
				if len(browser.Disagree(d.Figure)) == 0 {
					t.Errorf("%s, %s: %s, and nothing is said", name, f.ID, d.What)
				}
			}
		}
		if values < 50 || rows < 5 {
			t.Errorf("%s: %d values and %d rows were doctored: the test shows little", name, values, rows)
		}
		t.Logf("%s: %d values and %d rows doctored", name, values, rows)
		if name == "us" {
			checkDoctoredPage(t, p)
		}
	}
}

// checkSaysCatches: the season has every picture, and with a value of one changed, or a mark
// left out of those that count marks, its sentence is seen to say another thing.
func checkSaysCatches(t *testing.T, figures []browser.Figure, of string) {
	t.Helper()
	for _, id := range browser.Pictures {
		at := slices.IndexFunc(figures, func(f browser.Figure) bool { return f.ID == id+of })
		if at < 0 {
			t.Errorf("the page has no %s", id+of)
			continue
		}
		f, caught := figures[at], 0
		for _, d := range browser.Doctored(f) {
			if d.Value && len(browser.Says(d.Figure)) > 0 {
				caught++
			}
		}
		if id == "chart-mattered" || id == "chart-sizes" { // they count what is drawn
			series := f.Option.Series[0]
			series.Data = series.Data[1:]
			f.Option.Series = append([]browser.Series{series}, f.Option.Series[1:]...)
			f.Option.YAxis = slices.Clone(f.Option.YAxis)
			f.Option.YAxis[0].Data = f.Option.YAxis[0].Data[1:]
			if len(browser.Says(f)) == 0 {
				t.Errorf("%s: with its first mark left out, its sentence passes", id)
			}
		} else if caught == 0 {
			t.Errorf("%s: with any value changed, its sentence passes", id)
		}
	}
}

// checkDoctoredPage puts faults into the page itself, one after the other.
func checkDoctoredPage(t *testing.T, p *browser.Page) {
	t.Helper()
	for _, c := range [][2]string{
		{`document.querySelector("#outcomes table").tBodies[0].rows[0].remove()`,
			"chart-outcomes: the table has not one row"},
		{`document.querySelectorAll("#sizes details").forEach(d => d.remove())`, "chart-sizes: no table"},
		{
			`Array.from(document.querySelectorAll("#chart-strikes svg path")).filter(e => / ?A/.test(e.getAttribute("d")))[0].remove()`, "chart-strikes: not drawn: point"},
		{
			`Array.from(document.querySelectorAll("#chart-effort svg text")).filter(e => e.textContent === "12 to 14 kn")[0].remove()`, "chart-effort: not drawn: text"},
		{`document.querySelector("#chart-trips svg").remove()`, "chart-trips: not drawn: the whole chart"},
	} {
		browser.Eval[bool](t, p, c[0]+`; true`)
		var found []string
		for _, f := range browser.Figures(t, p) {
			found = append(found, browser.Disagree(f)...)
		}
		if !strings.Contains(strings.Join(found, "\n"), c[1]) {
			t.Errorf("%s: %q is not in %q", c[0], c[1], found)
		}
	}
}

// checkPaper: on paper no button is left.
func checkPaper(t *testing.T, p *browser.Page) {
	t.Helper()
	browser.Eval[bool](t, p, `window.dispatchEvent(new Event("beforeprint")); true`)
	if n := browser.Eval[int](t, p, `document.querySelectorAll("button").length`); n > 0 {
		t.Errorf("%d buttons on paper", n)
	}
	browser.Eval[bool](t, p, `window.dispatchEvent(new Event("afterprint")); true`)
}

// margin is the least of the margins that a page sets for paper, in millimetres.
const margin = 14

// Each report on A4 and on Letter: no chart is cut by the end of a sheet or by its
// edge, nothing is wider than the sheet, and no heading is left alone at its foot.
func pagesOnPaper(t *testing.T, all map[string][]byte) {
	all = maps.Clone(all)
	maps.Copy(all, written(t, map[string][]string{"track": {"--db", demoFile(t), "report", "track"}}))
	for name, html := range all {
		p := browser.Open(t, html)
		for _, paper := range browser.Papers {
			printed := p.Print(t, paper, onPaperSelector)
			if faults := onPaper(printed, paper); len(faults) > 0 {
				t.Errorf("%s on %s:\n%s", name, paper.Name, strings.Join(faults, "\n"))
			}
			t.Logf("%s on %s: %d pages, %d boxes", name, paper.Name, printed.Pages, len(printed.Boxes))
		}
	}
}

// onPaperSelector picks what is looked at.
const onPaperSelector = ".chart, figure, table, h2:not(.more), h2 + *"

// onPaper lists what is cut, too wide or left alone.
func onPaper(printed browser.Printed, paper browser.Paper) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	if math.Abs(printed.Scale-1) > 0.005 {
		say("printed at %.3f of its size: something is wider than the sheet", printed.Scale)
	}
	charts, headings := 0, 0
	for id, b := range printed.Boxes {
		if b.Left < margin-0.3 || b.Right > paper.Width-margin+0.3 {
			say("%s reaches from %.1f to %.1f mm across", id, b.Left, b.Right)
		}
		if section, is := strings.CutSuffix(id, "-heading"); is {
			headings++
			if next, ok := after(printed, section); ok && next.First != b.Last {
				say("%s is alone at the foot of page %d", id, b.Last+1)
			}
			continue
		}
		if strings.HasPrefix(id, "chart-") || strings.HasSuffix(id, "_figure") {
			charts++
			if b.First != b.Last || b.Top < margin || b.Bottom > paper.Height-margin {
				say("%s is cut: from page %d at %.1f mm to page %d at %.1f mm", id,
					b.First+1, b.Top, b.Last+1, b.Bottom)
			}
		}
	}
	if charts < 2 || headings < 2 || printed.Pages < 2 || printed.Pages > 80 {
		say("%d charts and figures, %d headings, %d pages", charts, headings, printed.Pages)
	}
	slices.Sort(out)
	return out
}

// after is what follows a section's heading.
func after(printed browser.Printed, section string) (browser.Box, bool) {
	for _, tag := range []string{"_p", "_ul", "_details"} {
		if b, ok := printed.Boxes[section+tag]; ok {
			return b, true
		}
	}
	return browser.Box{}, false
}

// paperFaultsAreSeen proves the check above: a figure higher than a sheet is cut,
// one too wide shrinks the print, and a heading before a forced break is alone.
func paperFaultsAreSeen(t *testing.T, all map[string][]byte) {
	html := all["scale"]
	for want, fault := range map[string]string{
		"chart-verdict is cut":          `document.querySelector("#chart-verdict").style.setProperty("min-height", "1100px")`,
		"wider than the sheet":          `document.querySelector("#chart-verdict").style.setProperty("min-width", "900px")`,
		"methods-heading is alone at":   `document.querySelector("#methods ul").style.setProperty("break-before", "page")`,
		"0 charts and figures":          `document.querySelectorAll("figure").forEach(f => f.remove())`,
		"verdict_figure is cut: from p": `document.querySelector("#verdict figure").style.setProperty("break-inside", "auto"); document.querySelector("#verdict figure").style.setProperty("padding-top", "800px")`,
	} {
		p := browser.Open(t, html)
		browser.Eval[bool](t, p, fault+`; true`)
		got := strings.Join(onPaper(p.Print(t, browser.Papers[0], onPaperSelector), browser.Papers[0]), "\n")
		if !strings.Contains(got, want) {
			t.Errorf("%s: %q is not in %q", fault, want, got)
		}
	}
}

// Everything that can be done with a mouse can be done with the keyboard: heads,
// tables, copying and the places that scroll take the focus.
func pagesByKeyboard(t *testing.T, all map[string][]byte) {
	for name, html := range all {
		p := browser.Open(t, html)
		dead := browser.Eval[[]string](t, p, `Array.from(document.querySelectorAll("summary, thead button, .copy, nav a, .scroll, .skip")).filter(e => {
			for (let d = e.parentElement.closest("details"); d; d = d.parentElement.closest("details")) { d.open = true; }
			e.focus(); return document.activeElement !== e;
		}).map(e => e.outerHTML.slice(0, 80))`)
		if len(dead) > 0 {
			t.Errorf("%s: cannot take the focus: %q", name, dead)
		}
	}
}

// axe-core (Deque, MPL-2.0; npm install axe-core) finds no serious fault. The
// environment variable AXE_CORE names its axe.min.js.
func pagesWithAxe(t *testing.T, all map[string][]byte) {
	file := os.Getenv("AXE_CORE")
	if file == "" {
		if os.Getenv("CI") != "" {
			t.Fatal("CI is set, but AXE_CORE names no axe.min.js")
		}
		t.Skip("SKIPPED, accessibility not looked at: AXE_CORE names no axe.min.js")
	}
	axe, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for name, html := range all {
		for _, scheme := range []string{"light", "dark"} {
			p := browser.Open(t, html)
			p.Scheme(t, scheme)
			browser.Eval[bool](t, p, `document.querySelectorAll("details").forEach(d => { d.open = true; }); true`)
			browser.Eval[bool](t, p, string(axe)+
				`; window.done = null; axe.run(document, {resultTypes: ["violations"]}).then(r => { window.done = JSON.stringify(r.violations.map(v => ({id: v.id, impact: v.impact, nodes: v.nodes.slice(0, 3).map(n => n.html.slice(0, 160))}))); }); true`)
			var found []struct {
				ID, Impact string
				Nodes      []string
			}
			if err := json.Unmarshal([]byte(await(t, p, `window.done`)), &found); err != nil {
				t.Fatal(err)
			}
			for _, f := range found {
				if f.Impact == "serious" || f.Impact == "critical" {
					t.Errorf("%s, %s: %s fault %s at %q", name, scheme, f.Impact, f.ID, f.Nodes)
				} else {
					t.Logf("%s, %s: %s fault %s at %q", name, scheme, f.Impact, f.ID, f.Nodes)
				}
			}
		}
	}
}

// await is the text that an expression becomes.
func await(t *testing.T, p *browser.Page, js string) string {
	t.Helper()
	for range 200 {
		if v := browser.Eval[string](t, p, `(`+js+`) || ""`); v != "" {
			return v
		}
		p.Resize(t, 1280, 900)
	}
	t.Fatalf("%s never came", js)
	return ""
}
