package phrase

import (
	"testing"

	"wakeledger/pipeline/words"
)

// TestGuessWithDot holds that a word for a guess that is cut short by a dot stands before a weight as others do, and
// that one behind a figure leaves the dot to the sentence.
func TestGuessWithDot(t *testing.T) {
	for _, text := range []string{"thon rouge relâché env. 16", "bluefin released abt. 16", "bluefin released env 16"} {
		got := FishList(text, Defaults{WeightUnit: "kg"})
		if len(got) != 1 || got[0].N > 1 || got[0].Kg != 16 || !got[0].Guess || got[0].Fate != words.Released {
			t.Errorf("%s: %+v", text, got)
		}
	}
}
