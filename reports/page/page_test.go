package page

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"
)

func rendered(t *testing.T, p Page) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := Render(&buf, p); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// inline finds the text of elements as a browser would: up to the end tag.
func inline(html, element string) []string {
	var out []string
	for _, m := range regexp.MustCompile(`(?s)<`+element+`>(.*?)</`+element+`>`).FindAllStringSubmatch(html, -1) {
		out = append(out, m[1])
	}
	return out
}

func TestPolicyMatchesInlineText(t *testing.T) {
	html := string(rendered(t, samplePage(t)))
	found := regexp.MustCompile(`Content-Security-Policy" content="([^"]*)"`).FindStringSubmatch(html)
	if found == nil {
		t.Fatal("no policy in the page")
	}
	got := strings.NewReplacer("&#39;", "'", "&#43;", "+").Replace(found[1])
	hash := func(s string) string {
		sum := sha256.Sum256([]byte(s))
		return " 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	scripts, styles := inline(html, "script"), inline(html, "style")
	if len(scripts) != 2 || len(styles) != 1 {
		t.Fatalf("%d scripts and %d styles, want 2 and 1", len(scripts), len(styles))
	}
	want := "default-src 'none'; script-src" + hash(scripts[0]) + hash(scripts[1]) + "; style-src" + hash(styles[0]) +
		"; base-uri 'none'; form-action 'none'"
	if got != want {
		t.Errorf("policy\n%s, want\n%s", got, want)
	}
	if strings.Contains(html, "\r") {
		t.Error("a carriage return in the page: the browser would hash another text")
	}
}

func TestNothingLoads(t *testing.T) {
	html := string(rendered(t, samplePage(t)))
	for _, script := range inline(html, "script") {
		html = strings.Replace(html, script, "", 1)
	}
	for _, m := range regexp.MustCompile(`(?i)\b(src|href|action|data|poster|srcset|background)\s*=\s*"([^"]*)"`).FindAllStringSubmatch(html, -1) {
		if !strings.HasPrefix(m[2], "#") {
			t.Errorf("%s leads away from the page: %s", m[1], m[2])
		}
	}
	for _, word := range []string{"url(", "@import", "<link", "<iframe", "<img", " style=", "javascript:"} {
		if strings.Contains(html, word) {
			t.Errorf("%q in the page", word)
		}
	}
}

func TestTextIsEscaped(t *testing.T) {
	html := string(rendered(t, samplePage(t)))
	for _, bad := range []string{hostileScript, "<b onmouse", `"O'Brien" & <`, "<script>alert"} {
		if strings.Contains(html, bad) {
			t.Errorf("unescaped in the page: %s", bad)
		}
	}
	// And yet not lost: the data blocks still hold the names as they were.
	data := regexp.MustCompile(`(?s)id="options-rates">(.*?)</script>`).FindStringSubmatch(html)
	if data == nil {
		t.Fatal("no options of the chart of rates")
	}
	var options map[string]any
	if err := json.Unmarshal([]byte(data[1]), &options); err != nil {
		t.Fatal(err)
	}
	back, err := json.Marshal(options)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{hostileScript, hostileMark} {
		quoted, _ := json.Marshal(name)
		if !bytes.Contains(back, quoted) {
			t.Errorf("%s is not in the chart as it was", name)
		}
	}
}

func TestRenderIsDeterministic(t *testing.T) {
	if !bytes.Equal(rendered(t, samplePage(t)), rendered(t, samplePage(t))) {
		t.Error("two renderings of one page differ")
	}
}

func TestRenderRefuses(t *testing.T) {
	ragged := &Table{Caption: "x", Columns: []Column{{Head: "a"}, {Head: "b"}},
		Rows: []Row{{Cells: []Cell{Words("1")}}}}
	total := &Table{Caption: "x", Columns: []Column{{Head: "a"}}, Total: []Cell{}}
	for name, sections := range map[string][]Section{
		"a bad ID":      {{ID: `x" onclick="`, Heading: "h"}},
		"an ID twice":   {{ID: "a"}, {ID: "a"}},
		"a ragged row":  {{ID: "a", Table: ragged}},
		"a short total": {{ID: "a", Table: total}},
	} {
		var buf bytes.Buffer
		if err := Render(&buf, Page{Sections: sections}); err == nil {
			t.Errorf("%s: no error", name)
		}
		if buf.Len() > 0 {
			t.Errorf("%s: half a page was written", name)
		}
	}
}

type brokenWriter struct{}

var errBroken = errors.New("broken")

func (brokenWriter) Write([]byte) (int, error) { return 0, errBroken }

func TestRenderReportsTheWriter(t *testing.T) {
	if err := Render(brokenWriter{}, Page{}); !errors.Is(err, errBroken) {
		t.Errorf("error %v, want the writer's", err)
	}
}

func TestNoChartsNoLibrary(t *testing.T) {
	html := rendered(t, Page{Title: "x", Sections: []Section{{ID: "a", Heading: "h", Table: sampleTable()}}})
	if len(html) > 100_000 {
		t.Errorf("%d bytes: the chart library is in a page without charts", len(html))
	}
}

func TestMarksExist(t *testing.T) {
	// A mark that the JSON names must be in the table of our script.
	script, err := assets.ReadFile("assets/page.js")
	if err != nil {
		t.Fatal(err)
	}
	html := string(rendered(t, samplePage(t)))
	named := regexp.MustCompile(`"renderItem":"([^"]*)"`).FindAllStringSubmatch(html, -1)
	if len(named) != 6 {
		t.Errorf("%d custom marks in the sample, want 6", len(named))
	}
	for _, m := range named {
		if !strings.Contains(string(script), "\n    "+m[1]+": function (pen") {
			t.Errorf("no mark %s in the script", m[1])
		}
	}
	// A colour that the JSON names must be in the palette.
	known := paletteData()["light"]
	for _, m := range regexp.MustCompile(`"(?:color|borderColor|backgroundColor)":"@([^"]*)"`).FindAllStringSubmatch(
		html, -1) {
		if known[m[1]] == "" {
			t.Errorf("no colour %s in the palette", m[1])
		}
	}
	for _, m := range regexp.MustCompile(`pen\.([a-z]+)`).FindAllStringSubmatch(string(script), -1) {
		if known[m[1]] == "" && m[1] != "font" {
			t.Errorf("the script takes the colour %s, which the palette has not", m[1])
		}
	}
}

// The library is as npm published it (echarts 5.4.3, dist/echarts.min.js), save
// for its line ends; assets/SOURCES.txt says where from.
func TestLibraryIsAsPublished(t *testing.T) {
	library, err := assets.ReadFile("assets/echarts.min.js")
	if err != nil {
		t.Fatal(err)
	}
	const want = "987554a0014ad7be585eccc91c4329d050b40c2c0ebd2e8ec84adca82c0eb843"
	if got := fmt.Sprintf("%x", sha256.Sum256(library)); got != want {
		t.Errorf("SHA-256 of the chart library %s, want %s", got, want)
	}
}
