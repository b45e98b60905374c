package words

var hourly = mustLoad("hourly")

// Hourly is what a text says of the hours of a log: "rows", each row is an hour that was trolled; "columns", it has
// columns of hours, and in those of which a cell is blank nobody trolled; "until", each row holds until the next one;
// "idle", nobody trolled then; else "".
func Hourly(text string) string {
	toks := Scan(text)
	idle := hourly.anyKey(toks, "idle")
	switch {
	case hourly.anyKey(toks, "rows"):
		return "rows"
	case hourly.anyKey(toks, "until"):
		return "until"
	case idle && hourly.anyKey(toks, "columns"):
		return "columns"
	case idle:
		return "idle"
	}
	return ""
}

// PartOfHour reports whether a heading asks how much of an hour was trolled.
func PartOfHour(heading string) bool { return hourly.anyKey(Scan(heading), "part") }

// WholeHour reports whether a cell under such a heading says that all of it was.
func WholeHour(text string) bool {
	key, ok := hourly.whole(trimmed(text))
	return ok && key == "whole"
}
