package words

var eachRow = mustLoad("eachrow")

// DayOnEachRow reports whether a sentence says of its log that what is of a whole day stands anew on each of its rows:
// "The day's figures are repeated on every line of that day".
func DayOnEachRow(text string) bool {
	toks := Scan(text)
	has := func(key string) bool { return eachRow.anyKey(toks, key) }
	if !has("day") || has("not") {
		return false
	}
	return has("again") || has("row") && (has("twice") || has("total"))
}
