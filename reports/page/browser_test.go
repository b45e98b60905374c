package page

import (
	"strings"
	"testing"

	"wakeledger/testdata/browser"
)

func TestPageInBrowser(t *testing.T) {
	p := browser.Open(t, rendered(t, samplePage(t)))
	browser.Eval[bool](t, p,
		`window.violations = []; document.addEventListener("securitypolicyviolation", e => violations.push(e.violatedDirective + " " + e.blockedURI)); true`)

	t.Run("every chart is drawn", func(t *testing.T) {
		// How many marks at least: one a level, cell or trip that has a value.
		least := map[string]int{"effort": 5, "rates": 3 * 4, "shares": 2 * 2, "sizes": 5, "trips": 6, "plot": 3}
		for id, n := range least {
			got := browser.Eval[int](t, p, `document.querySelectorAll("#chart-`+id+
				` svg path[fill]:not([fill=none]), #chart-`+id+` svg rect[fill]:not([fill=none])").length`)
			if got < n {
				t.Errorf("chart %s: %d filled marks, want %d or more", id, got, n)
			}
			if browser.Eval[bool](t, p, `/NaN|undefined/.test(document.querySelector("#chart-`+id+` svg").outerHTML)`) {
				t.Errorf("chart %s: NaN or undefined in the drawing", id)
			}
			if label := browser.Eval[string](t, p, `document.querySelector("#chart-`+id+
				`").getAttribute("aria-label")`); label == "" || strings.Contains(label, "NaN") {
				t.Errorf("chart %s: aria-label %q", id, label)
			}
		}
	})

	t.Run("text stays text", func(t *testing.T) {
		if got := browser.Eval[int](t, p,
			`document.querySelectorAll("b[onmouseover], td script, main script:not([type='application/json'])").length`); got != 0 {
			t.Errorf("%d elements made of text from a log", got)
		}
		if got := browser.Eval[string](t, p,
			`document.querySelector("#effort .lead").textContent`); got != hostileScript {
			t.Errorf("sentence %q, want %q", got, hostileScript)
		}
		drawn := browser.Eval[string](t, p, `document.querySelector("#chart-effort svg").textContent`)
		if !strings.Contains(drawn, hostileMark) {
			t.Errorf("the chart does not show %q as text", hostileMark)
		}
	})

	t.Run("tables sort", func(t *testing.T) {
		first := `Array.from(document.querySelectorAll("#rates tbody th")).map(c => c.textContent).join("|")`
		given := browser.Eval[string](t, p, first)
		click := `document.querySelectorAll("#rates thead button")[1].click()`
		up := browser.Eval[string](t, p, click+";"+first)
		down := browser.Eval[string](t, p, click+";"+first)
		back := browser.Eval[string](t, p, click+";"+first)
		// The row without a rate stays last both ways.
		if up != "b|"+hostileScript+"|a" || down != hostileScript+"|b|a" || back != given {
			t.Errorf("up %q, down %q, back %q", up, down, back)
		}
	})

	// RFC 4180, numbers without the marks of print, the ends of an interval apart, and
	// no text that a spreadsheet would run.
	t.Run("tables copy as CSV", func(t *testing.T) {
		browser.Eval[bool](t, p, `window.copied = ""; Object.defineProperty(navigator, "clipboard", {value: {writeText: text => { window.copied = text; return Promise.resolve(); }}});
			document.querySelector("#rates details").open = true; document.querySelector("#rates .copy").click(); true`)
		want := "level,rate per line-hour,interval from,interval to\r\nb,0.21,0.14,0.30\r\n" + hostileScript +
			",1200.00,,\r\na,,0.00,1.76\r\nall,0.16,,\r\n"
		if got := browser.Eval[string](t, p, `window.copied`); got != want {
			t.Errorf("copied %q, want %q", got, want)
		}
		if got := browser.Eval[string](t, p, `document.querySelector("#rates .copy").textContent`); got != "Copied" {
			t.Errorf("the button says %q", got)
		}
	})

	t.Run("fits a phone", func(t *testing.T) {
		p.Resize(t, 390, 844)
		if wide := browser.Eval[int](t, p, `document.documentElement.scrollWidth`); wide > 390 {
			t.Errorf("the page is %d pixels wide on a screen of 390", wide)
		}
		if wide := browser.Eval[int](t, p,
			`Math.max(...Array.from(document.querySelectorAll(".chart svg")).map(s => s.clientWidth))`); wide > 390 {
			t.Errorf("a chart is %d pixels wide on a screen of 390", wide)
		}
	})

	t.Run("dark and paper", func(t *testing.T) {
		fill := `document.querySelector("#chart-effort svg text").getAttribute("fill")`
		light := browser.Eval[string](t, p, fill)
		p.Scheme(t, "dark")
		dark := browser.Eval[string](t, p, fill)
		if light == dark {
			t.Errorf("text of a chart is %s in the light and in the dark", light)
		}
		closed := browser.Eval[int](t, p, `document.querySelectorAll("section details:not([open])").length`)
		browser.Eval[bool](t, p, `window.dispatchEvent(new Event("beforeprint")); true`)
		if paper := browser.Eval[string](t, p, fill); paper != light {
			t.Errorf("text of a chart is %s on paper, %s in the light", paper, light)
		}
		if got := browser.Eval[int](t, p,
			`document.querySelectorAll("section details:not([open])").length`); got != closed || got == 0 {
			t.Errorf("%d tables are closed on paper, %d on the screen", got, closed)
		}
		browser.Eval[bool](t, p, `window.dispatchEvent(new Event("afterprint")); true`)
		if pdf := p.PDF(t); len(pdf) < 10000 {
			t.Errorf("print: %d bytes", len(pdf))
		}
	})

	if got := browser.Eval[[]string](t, p, `violations`); len(got) > 0 {
		t.Errorf("content security policy violated: %q", got)
	}
	p.CheckQuiet(t)
}

// TestWitness proves that the watch above sees what it is there to see: a page
// that asks for an image, throws, and breaks its policy.
func TestWitness(t *testing.T) {
	p := browser.Open(t, []byte(`<!DOCTYPE html><meta http-equiv="Content-Security-Policy" content="default-src 'unsafe-inline' http:; style-src 'none'">
<p style="color:red">x</p><img src="http://example.org/x.png"><script>throw new Error("on purpose")</script>`))
	requests, faults := p.Seen()
	all := strings.Join(faults, "\n")
	for _, want := range []string{"on purpose", "Content Security Policy"} {
		if !strings.Contains(all, want) {
			t.Errorf("faults do not show %q:\n%s", want, all)
		}
	}
	asked := strings.Join(requests, " ")
	if !strings.Contains(asked, p.URL) || !strings.Contains(asked, "example.org") {
		t.Errorf("requests do not show the page and its image: %s", asked)
	}
}
