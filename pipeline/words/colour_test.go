package words_test

import (
	"testing"

	"wakeledger/pipeline/words"
)

func TestColour(t *testing.T) {
	for text, want := range map[string]bool{
		"pink/white": true, "dark green over silver": true, "Rojo y negro": true, "blau-weiß": true, "Vert": true,
		"Black Spider": false, "Lumo squid": false, "Small Fry": false, "": false,
		"dark": false, "12": false, "12 oz": false,
	} {
		if got := words.Colour(text); got != want {
			t.Errorf("Colour(%q) = %v, expected %v", text, got, want)
		}
	}
}
