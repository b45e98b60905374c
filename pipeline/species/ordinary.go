package species

import (
	"strings"
	"unicode"
)

// Names that are ordinary words as well, in one tongue or another. Find takes them
// all, since there they are the whole of a cell; inside a text they need a sign.
var (
	// unsaid never count inside a text: colours, a day, a sun cream, years, and two
	// sandwiches' worth of other abbreviations.
	unsaid = set("blue white black striped fri spf yrs blt")
	// lower are short words that count in capitals, or with a number before them.
	lower = set(`bet dot mac bon tar sai com mas sie lot bum lag bau bro por tig alb amb bop bip opa hai gt cer fal dus ber
		yt aj bf dol kaw slt spl mls sma stb snk`)
	// counted are words that count only with a number before them: two kings.
	counted = set(`king sail sword vela spanish frigate espada sierra barry barries barra cero listado voilier veleiro phin
		phins hoodlum spaniard doggie doggies peto bonita bonite jack dolly dollies perico merma haie meca biso judeu snoek
		picudo whaler buri kanad trev carite serrucho estornino cimarron sabalo longbill jurel walu gaffer medregal tombo`)
	numbers = set(`one two three four five six seven eight nine ten un una uno dos tres cuatro cinco due tre quattro deux
		trois quatre um uma dois duas zwei drei vier`)
	// onward are words that may follow a counted name without making it another thing.
	onward = set(`and or at on in to from for with by off out released lost landed kept boated tagged hooked caught missed
		raised y e et und o con de del da di em a al le la x`)
	// decoys are things that only look like a fish's name.
	decoys = set2(
		"woo hoo|yoo hoo|frigate bird|frigatebird|king tide|king size|bottlenose dolphin|bottle nose dolphin|" +
			"spotted dolphin|spinner dolphin|rissos dolphin|pod of dolphin|dolphin pod|sail boat|sail away|tuna " +
			"tower|tuna tube|" +
			"sierra nevada|la sierra|barra de|jack plate|mackerel sky|shark tooth|ono island|pez espada " +
			"negro|sword tip")
	// others are fish that take the name of another one: blackfin snapper.
	others = set("snapper rockfish salmon bass grouper cod crab flounder tilefish shad scad croaker perch sculpin " +
		"drum rosefish")
)

func set(words string) map[string]bool { return lookup(strings.Fields(words)) }

func set2(phrases string) map[string]bool { return lookup(strings.Split(phrases, "|")) }

func lookup(words []string) map[string]bool {
	out := map[string]bool{}
	for _, w := range words {
		out[w] = true
	}
	return out
}

// said tells whether a name of one word stands for the fish.
func (s scan) said(h hit) bool {
	w := s.words[h.start]
	raw := s.text[h.from:w.end]
	switch {
	case unsaid[h.key]:
		return false
	case h.key == "au": // the Hawaiian word, not the French one
		return strings.ContainsAny(raw, apostrophes)
	case counted[h.key]:
		return s.countedAt(h)
	case lower[h.key]:
		raw = strings.TrimSuffix(raw, "s")
		return !s.shouted && raw == strings.ToUpper(raw) || s.countedAt(h)
	}
	return true
}

// countedAt tells whether a number stands before a name, and nothing after it that
// makes it something else.
func (s scan) countedAt(h hit) bool {
	if h.start == 0 || !s.words[h.start-1].digits && !numbers[s.words[h.start-1].key] {
		return false
	}
	between := s.text[s.words[h.start-1].end:h.from]
	if strings.TrimFunc(between, unicode.IsSpace) != "" {
		return false
	}
	return h.end >= len(s.words) || !s.near(h.end) || onward[s.words[h.end].key] || s.words[h.end].digits
}

// otherFish tells whether the word there makes the name before it another fish's.
func (s scan) otherFish(i int) bool {
	return i < len(s.words) && s.near(i) && (others[s.words[i].key] || others[singular(s.words[i].key, "s")])
}
