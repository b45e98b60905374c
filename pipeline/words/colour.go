package words

var colours = mustLoad("colours")

// Colour reports whether a cell names nothing but a colour, or several: pink/white, dark
// green over silver.
func Colour(text string) bool {
	toks := trimmed(text)
	hue := false
	for i := 0; i < len(toks); {
		if next, ok := colours.atKey(toks, i, "hue"); ok {
			hue, i = true, next
			continue
		}
		if _, ok := colours.atKey(toks, i, "beside"); !ok && toks[i].Kind == Word {
			return false
		}
		i++
	}
	return hue
}

// HueAt reads the name of a colour at token i: wht.
func HueAt(toks []Token, i int) (next int, ok bool) { return colours.atKey(toks, i, "hue") }
