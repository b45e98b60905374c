package meaning

import "testing"

// TestRepeatedSets holds that a heading whose names come again under each of three groups is the heading, and the
// groups over it are the row's first, second and third stretch.
func TestRepeatedSets(t *testing.T) {
	const text = "||Spell 1||||||Spell 2||||||Spell 3|||||\n" +
		"date|crew|in|out|lines|kn|hits|boat|in|out|lines|kn|hits|boat|in|out|lines|kn|hits|boat\n" +
		"2026-05-02|Ann|05h35|08h10|4|7|3|1|08h25|10h40|5|7.5|2|2||||||\n" +
		"2026-05-03|Bo|05h20|07h00|4|6|3|3|07h20|09h50|5|7.5|2|2|10h05|11h10|5|8.5|1|1\n" +
		"2026-05-09|Ann|05h40|09h15|5|7|1|1||||||||||||\n" +
		"2026-05-16|Bo|05h50|08h05|4|6|4|4|08h20|10h45|5|7|2|1||||||\n"
	p := planOf(t, "May", text)
	if p == nil {
		t.Fatal("no table is read")
	}
	starts := map[int]bool{}
	for _, b := range p.Bindings {
		if b.Column.Name == "start_s" {
			starts[b.Set] = true
		}
	}
	if len(starts) != 3 || !p.Binds("date", "strikes_n") {
		t.Errorf("%d sets of stretches, expected 3: %s", len(starts), summary(p))
	}
}
