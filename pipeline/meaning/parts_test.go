package meaning

import (
	"fmt"
	"strings"
	"testing"
)

// TestPartColumns holds that figures in one cell are parted where the heading names each, or the log says what they
// are, and that a cell which is none of them leaves the column whole.
func TestPartColumns(t *testing.T) {
	for _, c := range []struct{ head, cells, want string }{
		{"Lines @ kn", "5 @ 8.5;4 @ 7;6 @ 7-8;4 @ 7", "lines_out speed_kn"},
		{"Hooked/boated", "3/2;1/0;0/0", "hooked_n landed_n"},
		{"Hooked/boated", "3/2;1/0;lots", ""},
		{"Tally", "4-3-1;3-3-2;0-0-0;2-1-1", "strikes_n hooked_n landed_n"},
	} {
		text := "Date|Lines in|Lines out|" + c.head + "|Where\n"
		for day, cell := range strings.Split(c.cells, ";") {
			text += fmt.Sprintf("2024-05-%02d|06:10|10:10|%s|the bank\n", day+1, cell)
		}
		text += "\n|||Tally = bites - hooked - boated (kept or not)|\n"
		got := summary(inferred(t, "x.xlsx", nil, "Log", text).Data()[0].Plan)
		for _, name := range strings.Fields(c.want) {
			if !strings.Contains(got, name) {
				t.Errorf("%s: no %s in %s", c.head, name, got)
			}
		}
		if c.want == "" && strings.Contains(got, "landed_n") {
			t.Errorf("%s: %s", c.cells, got)
		}
	}
}

// TestRenamed holds that a heading that was changed from one sheet to the next is of one column in both.
func TestRenamed(t *testing.T) {
	const rest = "|Lines|Kn|Bites|Hooked|Boated|Where\n"
	l := inferred(t, "x.xlsx", nil,
		"A", "Date|Begin|Finish"+rest+"2021-05-04|06:10|10:10|4|7|3|2|1|bank\n2021-05-05|06:00|10:30|5|7|2|2|1|bank\n",
		"B", "Date|Lines in|Lines out"+rest+"2022-05-04|06:10|10:10|4|7|3|2|1|bank\n|10:30|12:00|5|7|2|2|1|bank\n")
	for _, u := range l.Data() {
		if !u.Plan.Binds("start_s") || !u.Plan.Binds("end_s") || !u.Plan.Binds("lines_out") {
			t.Errorf("%s: %s", u.Plan.Name, summary(u.Plan))
		}
	}
}

// TestInOtherUnit holds that a measure that stands again in another unit is no other one, and that one that differs, or
// of which the other has none, is not that.
func TestInOtherUnit(t *testing.T) {
	const head = "Date|Time|Fish|What became of it|Pounds|Kilos\n"
	const row = "2024-05-04|07:10|wahoo|kept|"
	for cells, want := range map[string]bool{"10|4.5;20|9.1;|12;30|13.6": true, "10|9;20|4;|12;30|5.5": false,
		"10|4.5;20|9.1;12|;30|13.6": false} {
		u := inferred(t, "x.xlsx", nil, "Log", head+row+strings.ReplaceAll(cells, ";", "\n"+row)+"\n").Data()[0]
		if got := u.inOtherUnit(4); got != want {
			t.Errorf("%s: %v, %s", cells, got, summary(u.Plan))
		}
	}
}

// TestFishOfOtherDays holds that lists of fish are read on days of which no other sheet tells the fish one by one.
func TestFishOfOtherDays(t *testing.T) {
	for day, want := range map[string]bool{"2021-05-04": true, "2022-06-04": false,
		"2022-06-03": false} {
		l := inferred(t, "x.xlsx", nil,
			"A", "Date|In|Out|Lines|Bites|Fish\n"+day+"|06:10|10:10|4|3|1 mahi, 1 wahoo let go\n"+
				day+"|10:30|11:30|4|3|1 mahi\n"+day+"|12:30|14:30|4|2|2 mahi\n",
			"B", "Date|Time|Species|Result|cm\n2022-06-04|07:10|mahi|kept|80\n2022-06-04|08:10|wahoo|kept|120\n"+
				"2022-06-05|07:10|mahi|kept|80\n")
		if got := l.Data()[0].Plan.Reads("fishlist"); got != want {
			t.Errorf("%s: a list of fish %v", day, got)
		}
	}
}

// TestFiguresOver holds that several counts of one cell are what the brackets of a heading of fish say of them, that "2
// for 3" is so many boated of so many bites whatever the heading, and that figures parted in the same way are neither.
func TestFiguresOver(t *testing.T) {
	table := func(head string, cells ...string) string {
		text := "Date|In|Out|Lines|Knots|" + head
		for i, c := range cells {
			text += "\n5/" + string(rune('1'+i)) + "/24|6:10|11:30|4|7.5|" + c
		}
		return text
	}
	for _, c := range []struct{ text, figures, counts string }{
		{table("YFT (bites/landed)", "3/1", "0/0", "1/1", "4/3"), "strikes_n landed_n", ""},
		{table("Bites/landed", "3/1", "0/0", "1/1", "4/3"), "", "landed_n strikes_n"},
		{table("Went", "2 for 3", "0 for 1", "1 for 1", "-"), "", "landed_n strikes_n"},
		{table("Went", "3 for 2", "1 for 0", "4 for 1", "0 for 0"), "", ""},
		{table("Bottom/gear", "3/1", "0/0", "1/1", "4/3"), "", ""},
	} {
		p := planOf(t, "Log", c.text)
		var counts []string
		for _, name := range []string{"landed_n", "strikes_n"} {
			if p.Binds(name) {
				counts = append(counts, name)
			}
		}
		if got := strings.Join(p.Figures, " "); got != c.figures || strings.Join(counts, " ") != c.counts {
			t.Errorf("%s\nfigures %q: %s", c.text, got, summary(p))
		}
	}
}

// TestEachNamed holds that a heading of several counts may have a word with the mark between them in it, and the number
// of its stretch behind it.
func TestEachNamed(t *testing.T) {
	l := lexicon(t)
	for heading, want := range map[string]string{
		"bites-hook-ups-boated":   "bites|hook-ups|boated",
		"strikes-hooked-landed":   "strikes|hooked|landed",
		"bites / hooked / kept 2": "bites 2|hooked 2|kept 2",
		"hook-ups":                "",
		"port-long":               "",
	} {
		heads, _ := l.partsNamed(heading)
		for i := range heads {
			heads[i] = strings.TrimSpace(heads[i])
		}
		if got := strings.Join(heads, "|"); got != want {
			t.Errorf("%s: %q, want %q", heading, got, want)
		}
	}
}

// TestLetGoAmong holds that counts whose last is "of those released" have these in the count before.
func TestLetGoAmong(t *testing.T) {
	for said, want := range map[string]bool{
		"Order: bites / hooked / to the boat / of those released":    true,
		"Reihenfolge: Bisse / gehakt / am Boot / davon freigelassen": true,
		"Order: bites / hooked / kept / released":                    false,
	} {
		f := lexicon(t).figuresIn([]string{said})
		if f == nil || f.among != want {
			t.Errorf("%q: %+v", said, f)
		}
	}
}

// TestOrderOfFigures holds in which words a log says what the figures of a cell count, and that others say nothing.
func TestOrderOfFigures(t *testing.T) {
	for text, want := range map[string]int{
		"Order: bites | hooked | to the boat": 3, "Order: bites : hooked : landed : of those released": 4,
		"a-b-c-d = all bites, of those hooked, of those landed, of those let go": 4,
		"first bites, then hooked, then landed, then how many of them released":  4,
		"bites / hookups / landed / released (landed includes released)":         4,
		"fish cols = bites-hooked-boated":                                        3,
		"bites, hooked":                                                          0,
		"Weights = scale, lengths by tape":                                       0,
		"Bites: all of them":                                                     0,
	} {
		if got := lexicon(t).countsTold(text); len(got) != want {
			t.Errorf("%q: %q, expected %d", text, got, want)
		}
	}
}

// TestFiguresOfADay holds that cells of several figures are parted as the log says, whatever sign is between them, and
// that days with dashes are none of them.
func TestFiguresOfADay(t *testing.T) {
	for _, sign := range []string{"-", " / ", ":"} {
		row := func(day, figures string) string {
			return "\n" + day + "|07:55|11:55|8|" + strings.ReplaceAll(figures, " ", sign)
		}
		text := "Order: bites, hooked, to the boat\n\nDay|Lures wet|Stop trolling|Lines|Tally" +
			row("04-30-25", "2 1 1") + row("05-06-25", "0 0 0") + row("05-12-25", "7 6 6") + row("05-20-25", "6 3 3")
		p := planOf(t, "Log", text)
		if !p.Binds("strikes_n") || !p.Binds("hooked_n") || !p.Binds("landed_n") || !p.Binds("date") {
			t.Errorf("%q: %s", sign, summary(p))
		}
	}
}
