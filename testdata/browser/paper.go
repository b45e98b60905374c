package browser

import (
	"context"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// Paper is a size of paper in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// Papers are the sizes that most printers hold (ISO 216 A4; ANSI A, called Letter).
var Papers = []Paper{{"A4", 210, 297}, {"Letter", 215.9, 279.4}}

// points are how many of a PDF's units a millimetre has.
const points = 72 / 25.4

// Printed is a page on paper.
type Printed struct {
	Pages int
	Scale float64 // 1; less where the browser shrank a page that is wider than the paper
	Boxes map[string]Box
}

// Box is an element on paper, its edges in millimetres from the left and from the top
// of the sheet.
type Box struct {
	First, Last              int // pages from 0 on which it begins and ends: it is cut where they differ
	Left, Right, Top, Bottom float64
}

// ruler is the width in CSS pixels of a box that tells the scale of a print.
const ruler = 400

// Print prints the page on paper with the margins that the page itself sets, and
// finds the elements that selector picks and that are not folded, by their ids or, without one, by the id of
// the section and the tag: each gets a thin link along its upper and its lower edge,
// and the PDF says on which page, and where, a link lies.
func (p *Page) Print(t *testing.T, paper Paper, selector string) Printed {
	t.Helper()
	ids := Eval[[]string](t, p, fmt.Sprintf(edges, ruler, selector))
	pdf, err := chromedp.Run(p.Ctx, chromedp.Action[[]byte](func(ctx context.Context,
		target *chromedp.Target) ([]byte, error) {
		res, err := cdp.Call(ctx, target, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: paper.Width / 25.4,
			PaperHeight: paper.Height / 25.4})
		return res.Data, err
	}))
	if err != nil {
		t.Fatalf("print on %s: %v", paper.Name, err)
	}
	Eval[bool](t, p, `document.querySelectorAll(".edge").forEach(e => e.remove()); true`)
	pages := pagesOf(string(pdf))
	links := linksOf(pages)
	out := Printed{Pages: len(pages), Boxes: map[string]Box{}}
	if r := links["ruler/top"]; r != nil {
		out.Scale = (r.right - r.left) / (ruler * 0.75) // a CSS pixel is 3/4 of a point
	}
	for _, id := range ids {
		top, bottom := links[id+"/top"], links[id+"/bottom"]
		if top == nil || bottom == nil {
			t.Errorf("%s: %s is not on paper", paper.Name, id)
			continue
		}
		out.Boxes[id] = Box{top.page, bottom.page, top.left / points, top.right / points, paper.Height - top.top/points,
			paper.Height - bottom.bottom/points}
	}
	return out
}

// edges lays the links. They take no room and are taken away after printing.
const edges = `(() => {
	const edge = (host, to, style) => {
		const a = document.createElement("a");
		a.className = "edge";
		a.href = "http://edge.invalid/" + to;
		a.textContent = "\u00a0";
		for (const [k, v] of Object.entries(Object.assign({position: "absolute", left: 0, height: "1px", overflow: "hidden", display: "block", "font-size": "1px", "line-height": "1px"}, style))) { a.style.setProperty(k, v); }
		host.append(a);
	};
	const header = document.querySelector("header");
	header.style.setProperty("position", "relative");
	edge(header, "ruler/top", {top: 0, width: "%dpx"});
	const seen = {};
	return Array.from(document.querySelectorAll(%q)).filter(e => !e.closest("details:not([open])")).map(e => {
		let id = e.id || (e.closest("[id]") || {id: "page"}).id + " " + e.tagName.toLowerCase();
		seen[id] = (seen[id] || 0) + 1;
		if (seen[id] > 1) { id += " " + seen[id]; }
		id = id.replace(/[^\w-]+/g, "_");
		e.style.setProperty("position", "relative");
		edge(e, id + "/top", {top: 0, right: 0});
		edge(e, id + "/bottom", {bottom: 0, right: 0});
		return id;
	});
})()`

type link struct {
	page                     int
	left, right, top, bottom float64
}

var (
	object    = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n(.*?)\nendobj`)
	reference = regexp.MustCompile(`(\d+) 0 R`)
	rectangle = regexp.MustCompile(`/Rect \[([-\d.]+) ([-\d.]+) ([-\d.]+) ([-\d.]+)\]`)
	address   = regexp.MustCompile(`/URI \(http://edge\.invalid/([^)]*)\)`)
)

// pagesOf are the pages of a PDF in order, each as the annotations that lie on it.
// Chromium writes the objects of a PDF as plain text, and compresses only what is
// drawn (ISO 32000-1, 7.7.3 and 12.5.6.5: page tree and links).
func pagesOf(pdf string) [][]string {
	objects := map[string]string{}
	root := ""
	for _, m := range object.FindAllStringSubmatch(pdf, -1) {
		objects[m[1]] = m[2]
		if strings.Contains(m[2], "/Type /Pages") && !strings.Contains(m[2], "/Parent ") {
			root = m[1]
		}
	}
	var pages [][]string
	var walk func(number string, deep int)
	walk = func(number string, deep int) {
		kids := list(objects[number], "/Kids [")
		if kids == nil {
			var on []string
			for _, a := range list(objects[number], "/Annots [") {
				on = append(on, objects[a])
			}
			pages = append(pages, on)
		}
		for _, k := range kids {
			if deep < 20 {
				walk(k, deep+1)
			}
		}
	}
	walk(root, 0)
	return pages
}

// list are the numbers of the objects of a list of references.
func list(object, key string) []string {
	_, rest, found := strings.Cut(object, key)
	if !found {
		return nil
	}
	rest, _, _ = strings.Cut(rest, "]")
	var out []string
	for _, m := range reference.FindAllStringSubmatch(rest, -1) {
		out = append(out, m[1])
	}
	return out
}

// linksOf are the links of pages by the rest of their address.
func linksOf(pages [][]string) map[string]*link {
	out := map[string]*link{}
	for number, annotations := range pages {
		for _, a := range annotations {
			to, box := address.FindStringSubmatch(a), rectangle.FindStringSubmatch(a)
			if to == nil || box == nil {
				continue
			}
			var v [4]float64
			for i := range v {
				v[i], _ = strconv.ParseFloat(box[i+1], 64)
			}
			out[to[1]] = &link{number, min(v[0], v[2]), max(v[0], v[2]), max(v[1], v[3]), min(v[1], v[3])}
		}
	}
	return out
}
