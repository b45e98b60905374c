package phrase

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"wakeledger/pipeline/words"
)

// Onward is what a line of words between the rows of a table says of how the boat trolls from there on: "7 lines, put
// out the center rigger", "8 kts from here on", "a bit faster now".
type Onward struct {
	Lines int     // 0 where it says nothing of them
	By    int     // so many lines more, or fewer, than before
	Speed float64 // knots; 0 where it says nothing of it
	Paced bool    // another speed than before, and not which
}

// Onwards reads a line of words that says how the boat trolls from there on. One that tells of a bite, of times or of
// more than one number of lines or speed does not, nor one that is of a day or a trip alone: "only 4 lines today".
func Onwards(text string) (o Onward, ok bool) {
	for _, part := range partOfOnward.Split(text, -1) {
		if part = strings.TrimSpace(part); part == "" || befell.MatchString(part) {
			continue
		}
		said := Settings(part)
		if by := byLines(part); by != 0 && len(said.Lines) == 0 && !said.Usual {
			o.By, said.By = o.By+by, false
		}
		bite := TellsBite(part) && !ofTackle(part)
		if said.By || len(said.Lines) > 1 || len(said.Speeds) > 1 || bite || hasLine(part, "ofday") ||
			len(spansOf(part)) > 0 {
			return Onward{}, false
		}
		if speed := speedNamed(part); speed > 0 && len(said.Speeds) == 0 {
			said.Speeds = []float64{speed}
		}
		if len(said.Lines) == 1 && o.Lines > 0 && o.Lines != said.Lines[0] ||
			len(said.Speeds) == 1 && o.Speed > 0 && o.Speed != said.Speeds[0] {
			return Onward{}, false
		}
		if len(said.Lines) == 1 {
			o.Lines = said.Lines[0]
		}
		if len(said.Speeds) == 1 {
			o.Speed = said.Speeds[0]
		}
		o.Paced = o.Paced || hasLine(part, "faster")
	}
	o.Paced = o.Paced && o.Speed == 0
	if o.Lines > 0 {
		o.By = 0 // one rod more, six now
	}
	return o, o.Lines > 0 || o.By != 0 || o.Speed > 0 || o.Paced
}

// byLines is how many lines more, or fewer, a part says were out from then on: "two rods less now", "added a rod".
func byLines(part string) int {
	if !hasLine(part, "line") {
		return 0
	}
	switch e := words.EntryOf(part); {
	case e.Event == words.EventMore:
		return e.Lines
	case e.Event == words.EventFewer:
		return -e.Lines
	}
	more, fewer := hasLine(part, "more"), hasLine(part, "fewer")
	if more == fewer {
		return 0
	}
	for _, it := range scan(part).items {
		if n := int(it.num); (it.kind == aNumber || it.kind == aLines) && n > 0 && n <= mostBy {
			if fewer {
				n = -n
			}
			return n
		}
	}
	return 0
}

// mostBy is by how many lines a spread changes at the most.
const mostBy = 4

// ofTackle tells a part that names lures and no fish: "2 green squid bars".
func ofTackle(part string) bool {
	if _, _, _, fate := words.FateOf(part); fate {
		return false
	}
	lures, toks := map[string]bool{}, scan(part).toks
	for i := range toks {
		end, ok := words.GlueIs(toks, i, "tackle")
		if !ok {
			end, ok = words.LureAt(toks, i)
		}
		for ; ok && i < end; end-- {
			lures[toks[end-1].Text] = true
		}
	}
	return !slices.ContainsFunc(Tell(part, Defaults{}).Bites, func(b Bite) bool { return !lures[b.Name] })
}

// partOfOnward is where the parts of such a line end; a comma and a point within a figure do not.
var partOfOnward = regexp.MustCompile(`[;()\n]|[,.:](?:\s|$)|\s[-–—]\s`)

// befell is gear that was lost or sold: it says nothing of how many are out.
var befell = regexp.MustCompile(`(?i)^(?:we |i )?(?:sold|broke|snapped|bent|lost|gave away|bought|got) ` +
	`(?:the|my|our|a|an|another|one|two|three|\d) (?:\pL+ )?(?:rod|line|reel|rigger|outrigger|holder)s?(?: holders?)?$`)

// namedSpeed is a speed behind its word, without a unit: "speed 7 this year", "trolling at 7.5".
var namedSpeed = regexp.MustCompile(`(?i)(?:^|\PL)(?:speed|velocidad|vitesse|velocit[aà]|velocidade|geschwindigkeit|` +
	`(?:trolling|pulling|dragging) at)(?:\s+(?:is|was|now|of|at|about|back to|up to|down to|es|[aà]|de))*\s*[:=]?\s*` +
	`(\d{1,2}(?:[.,]\d+)?)(?:$|[^\d:/%])`)

// fastest is the most that a bare number behind the word for it is as a speed, in knots.
const fastest = 20

func speedNamed(part string) float64 {
	m := namedSpeed.FindStringSubmatch(part)
	if m == nil || hasLine(part, "wind") {
		return 0
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", "."), 64)
	if err != nil || v > fastest {
		return 0
	}
	return v
}

// spansOf are the times of trolling that a text tells.
func spansOf(text string) []timed { return scan(text).spans() }
