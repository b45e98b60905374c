package page

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// browsers are the names under which Chromium is installed.
var browsers = []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable"}

// findBrowser is the path of a browser. Without one it skips the test, save
// where CI is set: there a check that did not run is a failure.
func findBrowser(t *testing.T) string {
	t.Helper()
	for _, name := range browsers {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("CI") != "" {
		t.Fatalf("CI is set, but there is no browser: none of %s is on the path", strings.Join(browsers, ", "))
	}
	t.Skipf("SKIPPED, pages not drawn: no browser, none of %s is on the path", strings.Join(browsers, ", "))
	return ""
}

// witness keeps what a page asked for and what went wrong in it.
type witness struct {
	mu               sync.Mutex
	requests, faults []string
}

func (w *witness) see(ev any) {
	w.mu.Lock()
	defer w.mu.Unlock()
	switch e := ev.(type) {
	case *network.EventRequestWillBeSent:
		w.requests = append(w.requests, e.Request.URL)
	case *runtime.EventExceptionThrown:
		w.faults = append(w.faults, fmt.Sprintf("exception: %s %v", e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
	case *runtime.EventConsoleAPICalled:
		w.faults = append(w.faults, fmt.Sprintf("console: %s %v", e.Type, e.Args))
	case *log.EventEntryAdded:
		w.faults = append(w.faults, fmt.Sprintf("log: %s: %s", e.Entry.Level, e.Entry.Text))
	}
}

// openPage draws the page in a browser that resolves no host, and watches it.
func openPage(t *testing.T, html []byte) (context.Context, *witness, string) {
	t.Helper()
	path := findBrowser(t)
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, html, 0o600); err != nil {
		t.Fatal(err)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND"))
	allocator, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel := chromedp.NewContext(allocator)
	t.Cleanup(cancel)
	// The first call owns the browser and must have no time limit.
	if err := chromedp.Do(ctx); err != nil {
		t.Fatalf("start %s: %v", path, err)
	}
	w := &witness{}
	if err := chromedp.Listen(ctx, w.see); err != nil {
		t.Fatal(err)
	}
	ctx, cancel = context.WithTimeout(ctx, 60*time.Second)
	t.Cleanup(cancel)
	url := "file://" + file
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(1200, 900), chromedp.Navigate(url)); err != nil {
		t.Fatalf("open the page: %v", err)
	}
	return ctx, w, url
}

func evaluate[T any](t *testing.T, ctx context.Context, js string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](js))
	if err != nil {
		t.Fatalf("%s: %v", js, err)
	}
	return v
}

// scheme is an action that sets the colour scheme ("light" or "dark") and the
// medium ("" or "print").
func scheme(name, medium string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Media: medium, Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: name}},
		})
		return err
	})
}

func TestPageInBrowser(t *testing.T) {
	ctx, w, url := openPage(t, rendered(t, samplePage(t)))
	evaluate[bool](t, ctx, `window.violations = []; document.addEventListener("securitypolicyviolation", e => violations.push(e.violatedDirective + " " + e.blockedURI)); true`)

	t.Run("every chart is drawn", func(t *testing.T) {
		// How many marks at least: one a level, cell, fish or trip that has a value.
		least := map[string]int{"effort": 5, "rates": 3 * 4, "shares": 2 * 2, "sizes": 5, "fish": 4, "trips": 6, "plot": 3}
		for id, n := range least {
			got := evaluate[int](t, ctx, `document.querySelectorAll("#chart-`+id+` svg path[fill]:not([fill=none]), #chart-`+id+` svg rect[fill]:not([fill=none])").length`)
			if got < n {
				t.Errorf("chart %s: %d filled marks, want %d or more", id, got, n)
			}
			if evaluate[bool](t, ctx, `/NaN|undefined/.test(document.querySelector("#chart-`+id+` svg").outerHTML)`) {
				t.Errorf("chart %s: NaN or undefined in the drawing", id)
			}
			if label := evaluate[string](t, ctx, `document.querySelector("#chart-`+id+`").getAttribute("aria-label")`); label == "" || strings.Contains(label, "NaN") {
				t.Errorf("chart %s: aria-label %q", id, label)
			}
		}
	})

	t.Run("text stays text", func(t *testing.T) {
		if got := evaluate[int](t, ctx, `document.querySelectorAll("b[onmouseover], td script, main script:not([type='application/json'])").length`); got != 0 {
			t.Errorf("%d elements made of text from a log", got)
		}
		if got := evaluate[string](t, ctx, `document.querySelector("#effort .lead").textContent`); got != hostileScript {
			t.Errorf("sentence %q, want %q", got, hostileScript)
		}
		drawn := evaluate[string](t, ctx, `document.querySelector("#chart-effort svg").textContent`)
		if !strings.Contains(drawn, hostileMark) {
			t.Errorf("the chart does not show %q as text", hostileMark)
		}
	})

	t.Run("tables sort", func(t *testing.T) {
		first := `Array.from(document.querySelectorAll("#rates tbody th")).map(c => c.textContent).join("|")`
		given := evaluate[string](t, ctx, first)
		click := `document.querySelectorAll("#rates thead button")[1].click()`
		up := evaluate[string](t, ctx, click+";"+first)
		down := evaluate[string](t, ctx, click+";"+first)
		back := evaluate[string](t, ctx, click+";"+first)
		// The row without a rate stays last both ways.
		if up != "b|"+hostileScript+"|a" || down != hostileScript+"|b|a" || back != given {
			t.Errorf("up %q, down %q, back %q", up, down, back)
		}
	})

	t.Run("fits a phone", func(t *testing.T) {
		if err := chromedp.Do(ctx, chromedp.EmulateViewport(390, 844)); err != nil {
			t.Fatal(err)
		}
		time.Sleep(300 * time.Millisecond) // the page redraws on the next frame
		if wide := evaluate[int](t, ctx, `document.documentElement.scrollWidth`); wide > 390 {
			t.Errorf("the page is %d pixels wide on a screen of 390", wide)
		}
		if wide := evaluate[int](t, ctx, `Math.max(...Array.from(document.querySelectorAll(".chart svg")).map(s => s.clientWidth))`); wide > 390 {
			t.Errorf("a chart is %d pixels wide on a screen of 390", wide)
		}
	})

	t.Run("dark and paper", func(t *testing.T) {
		fill := `document.querySelector("#chart-effort svg text").getAttribute("fill")`
		light := evaluate[string](t, ctx, fill)
		if err := chromedp.Do(ctx, scheme("dark", "")); err != nil {
			t.Fatal(err)
		}
		time.Sleep(300 * time.Millisecond) // the browser tells the page on the next frame
		dark := evaluate[string](t, ctx, fill)
		if light == dark {
			t.Errorf("text of a chart is %s in the light and in the dark", light)
		}
		evaluate[bool](t, ctx, `window.dispatchEvent(new Event("beforeprint")); true`)
		if paper := evaluate[string](t, ctx, fill); paper != light {
			t.Errorf("text of a chart is %s on paper, %s in the light", paper, light)
		}
		if got := evaluate[int](t, ctx, `document.querySelectorAll("section details:not([open])").length`); got != 0 {
			t.Errorf("%d tables are closed on paper", got)
		}
		evaluate[bool](t, ctx, `window.dispatchEvent(new Event("afterprint")); true`)
		if _, err := chromedp.Run(ctx, chromedp.PrintToPDF()); err != nil {
			t.Errorf("print: %v", err)
		}
	})

	if got := evaluate[[]string](t, ctx, `violations`); len(got) > 0 {
		t.Errorf("content security policy violated: %q", got)
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	for _, fault := range w.faults {
		t.Errorf("fault in the page: %s", fault)
	}
	for _, r := range w.requests {
		if r != url {
			t.Errorf("the page asked for %s", r)
		}
	}
	if len(w.requests) == 0 {
		t.Error("not even the page itself was seen to be asked for: requests are not watched")
	}
}

// TestWitness proves that the watch above sees what it is there to see: a page
// that asks for an image, throws, and breaks its policy.
func TestWitness(t *testing.T) {
	_, w, url := openPage(t, []byte(`<!DOCTYPE html><meta http-equiv="Content-Security-Policy" content="default-src 'unsafe-inline' http:; style-src 'none'">
<p style="color:red">x</p><img src="http://example.org/x.png"><script>throw new Error("on purpose")</script>`))
	w.mu.Lock()
	defer w.mu.Unlock()
	all := strings.Join(w.faults, "\n")
	for _, want := range []string{"on purpose", "Content Security Policy"} {
		if !strings.Contains(all, want) {
			t.Errorf("faults do not show %q:\n%s", want, all)
		}
	}
	asked := strings.Join(w.requests, " ")
	if !strings.Contains(asked, url) || !strings.Contains(asked, "example.org") {
		t.Errorf("requests do not show the page and its image: %s", asked)
	}
}
