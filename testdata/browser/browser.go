// Package browser opens pages in an installed Chromium for tests, with no host
// to be reached, and watches what they ask for and what goes wrong in them.
package browser

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
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// names are those under which Chromium is installed.
var names = []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable"}

// find is the path of a browser. Without one it skips the test, save where CI is
// set: there a check that did not run is a failure.
func find(t *testing.T) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("CI") != "" {
		t.Fatalf("CI is set, but there is no browser: none of %s is on the path", strings.Join(names, ", "))
	}
	t.Skipf("SKIPPED, pages not drawn: no browser, none of %s is on the path", strings.Join(names, ", "))
	return ""
}

// Page is a page that is open.
type Page struct {
	Ctx context.Context
	URL string
	// Processor time of the page's thread until what is in sight is drawn, and until all is
	// that is not folded.
	InSight, Whole time.Duration

	mu               sync.Mutex
	requests, faults []string
}

func (p *Page) see(ev any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch e := ev.(type) {
	case *network.EventRequestWillBeSent:
		p.requests = append(p.requests, e.Request.URL)
	case *runtime.EventExceptionThrown:
		p.faults = append(p.faults, fmt.Sprintf("exception: %s %v", e.ExceptionDetails.Text,
			e.ExceptionDetails.Exception))
	case *runtime.EventConsoleAPICalled:
		p.faults = append(p.faults, fmt.Sprintf("console: %s %v", e.Type, e.Args))
	case *log.EventEntryAdded:
		p.faults = append(p.faults, fmt.Sprintf("log: %s: %s", e.Entry.Level, e.Entry.Text))
	}
}

// Seen are the addresses that the page asked for, itself included, and its faults.
func (p *Page) Seen() (requests, faults []string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]string(nil), p.requests...), append([]string(nil), p.faults...)
}

// CheckQuiet fails the test where the page asked for anything but itself, threw,
// or wrote to the console.
func (p *Page) CheckQuiet(t *testing.T) {
	t.Helper()
	requests, faults := p.Seen()
	for _, f := range faults {
		t.Errorf("fault in the page: %s", f)
	}
	for _, r := range requests {
		if r != p.URL {
			t.Errorf("the page asked for %s", r)
		}
	}
	if len(requests) == 0 {
		t.Error("not even the page itself was seen to be asked for: requests are not watched")
	}
}

// Open shows a page on a screen 1200 pixels wide and scrolls through it.
func Open(t *testing.T, html []byte) *Page {
	t.Helper()
	path := find(t)
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
	p := &Page{URL: "file://" + file}
	if err := chromedp.Listen(ctx, p.see); err != nil {
		t.Fatal(err)
	}
	p.Ctx, cancel = context.WithTimeout(ctx, 120*time.Second)
	t.Cleanup(cancel)
	if err := chromedp.Do(p.Ctx, chromedp.EmulateViewport(1200, 900), chromedp.Func(countWork)); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(p.Ctx, chromedp.Navigate(p.URL)); err != nil {
		t.Fatalf("open the page: %v", err)
	}
	for !Eval[bool](t, p,
		`document.querySelector(".chart") === null || document.documentElement.dataset.drawn !== undefined`) {
		time.Sleep(20 * time.Millisecond)
	}
	p.InSight = p.work(t)
	p.scroll(t) // what is folded is drawn when it is opened
	p.Whole = p.work(t)
	return p
}

// countWork has the browser count the page's work in processor time, which other programs
// that run meanwhile do not change.
func countWork(ctx context.Context, target *chromedp.Target) error {
	_, err := cdp.Call(ctx, target, performance.Enable,
		performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks})
	return err
}

// work is the processor time that the page's thread has used since it was opened:
// reading the page, running its script, laying out and painting.
func (p *Page) work(t *testing.T) time.Duration {
	t.Helper()
	work := -1.0
	err := chromedp.Do(p.Ctx, chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		r, err := cdp.Call(ctx, target, performance.GetMetrics, cdp.Empty{})
		for _, m := range r.Metrics {
			if m.Name == "TaskDuration" {
				work = m.Value
			}
		}
		return err
	}))
	if err != nil || work < 0 {
		t.Fatalf("the browser does not say what the page's work was: %v", err)
	}
	return time.Duration(work * float64(time.Second))
}

// Eval is what a piece of JavaScript gives in the page.
func Eval[T any](t *testing.T, p *Page, js string) T {
	t.Helper()
	v, err := chromedp.Run(p.Ctx, chromedp.Evaluate[T](js))
	if err != nil {
		t.Fatalf("%.300s: %v", js, err)
	}
	return v
}

// frame is how long the page needs to be told of a change and to draw again.
const frame = 400 * time.Millisecond

// Resize shows the page on a screen of another size.
func (p *Page) Resize(t *testing.T, width, height int64) {
	t.Helper()
	if err := chromedp.Do(p.Ctx, chromedp.EmulateViewport(width, height)); err != nil {
		t.Fatal(err)
	}
	time.Sleep(frame)
}

// Scheme shows the page in a colour scheme, "light" or "dark".
func (p *Page) Scheme(t *testing.T, name string) {
	t.Helper()
	err := chromedp.Do(p.Ctx, chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: name}},
		})
		return err
	}))
	if err != nil {
		t.Fatal(err)
	}
	time.Sleep(frame)
}

// PDF prints the page.
func (p *Page) PDF(t *testing.T) []byte {
	t.Helper()
	b, err := chromedp.Run(p.Ctx, chromedp.PrintToPDF())
	if err != nil {
		t.Fatalf("print: %v", err)
	}
	return b
}
