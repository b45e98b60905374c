package words

var partly = mustLoad("partly")

// Partly tells what a log says that it leaves out of its bites: "hooked" where it counts none that were missed,
// "landed" where it tells only of fish that came to the boat; "" where it says neither.
func Partly(text string) string {
	toks := Scan(text)
	for _, key := range []string{"landed", "hooked"} {
		if partly.anyKey(toks, key) {
			return key
		}
	}
	return ""
}
