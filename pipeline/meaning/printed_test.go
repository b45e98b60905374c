package meaning

import "testing"

// TestNumbersPrinted holds that numbers of stretches which stand printed on each page, with nothing beside some of
// them, are the stretches'.
func TestNumbersPrinted(t *testing.T) {
	page := func(day, where, second string) string {
		return "Date|" + day + "\nWhere|" + where + "\nCrew|Ana, Bo\nBack|1500\n\nTROLLING\n#|In|Up|Rods|Knots\n" +
			"1|0600|0800|4|7\n2|" + second + "\n3||||\n4||||"
	}
	l := inferred(t, "log", nil, "A", page("2026-06-03", "Banks", "0900|1100|4|7"),
		"B", page("2026-06-07", "Banks", "|||"), "C", page("2026-06-12", "Banks", "0930|1100|5|8"))
	forms := 0
	for _, u := range l.Data() {
		if b := u.Plan.Find("start_s"); b != nil && (u.Plan.Find("leg") == nil || u.Plan.Binds("trip")) {
			t.Errorf("%s: %s", u.Plan.Name, summary(u.Plan))
		}
	}
	for _, u := range l.Blocks {
		if u.Plan.Binds("date") {
			forms++
		}
	}
	if forms != 3 {
		t.Errorf("%d sheets tell their day in a form", forms)
	}
}

// TestPlacesWithArticle holds that a place or a name with its article is hardly a heading.
func TestPlacesWithArticle(t *testing.T) {
	for _, text := range []string{"the Corner", "The Rigger", "the Port"} {
		if is, bare := lexicon(t).Label(text), lexicon(t).Label(text[4:]); is >= 0.5 || is >= bare {
			t.Errorf("%q is like a heading: %.2f, without its article %.2f", text, is, bare)
		}
	}
}
