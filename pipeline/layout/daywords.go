package layout

import (
	"regexp"
	"strings"
	"unicode"

	"wakeledger/pipeline/unit"
)

// The words of a line of a day and labels with their values.

var (
	// a figure, a clock time, a range, or a mark for none
	valueWord = regexp.MustCompile(`(?i)^[~<>≈]?\d[\d.,:/+½-]*(?:h\d{0,2}|[ap]\.?m?\.?)?\??$|^[-–—?]+$`)
	gluedWord = regexp.MustCompile(`^([~<>≈]?\d+(?:[.,]\d+)?)(\pL{1,4})$`) // 4L
	labelWord = regexp.MustCompile(`^[\pL#][\pL\d#&'/.-]*$`)
	signed    = regexp.MustCompile(`^([\pL#][\pL\d#&'/.-]*)[:=](\S*)$`) // in:0630, in=
	halfOfDay = regexp.MustCompile(`(?i)^[ap]\.?m\.?$`)
)

// dayWord is a word of such a line.
type dayWord struct {
	raw    string // as it is written, with the marks behind it
	text   string
	label  string // that is written together with the value: L of 4L
	value  bool
	sign   bool // a colon or an equals sign stands behind the label
	stops  bool // a slash
	closes bool // the labels end behind it: "LST 3: 1 yft"
}

// wordsOf parts what a line says into its words.
func wordsOf(text string) (out []dayWord) {
	for _, raw := range strings.Fields(text) {
		bare := strings.TrimRight(raw, ",;")
		if m := signed.FindStringSubmatch(bare); m != nil {
			out = append(out, dayWord{raw: raw, text: m[1], sign: true})
			if bare, raw = m[2], ""; bare == "" {
				continue
			}
		}
		w := dayWord{raw: raw, closes: strings.HasSuffix(bare, ":")}
		w.text = strings.TrimSuffix(bare, ":")
		m := gluedWord.FindStringSubmatch(w.text)
		switch ends := strings.TrimSuffix(w.text, "."); {
		case valueWord.MatchString(ends): // "lost 1. One mahi."
			w.text, w.value = ends, true
		case m != nil:
			w.text, w.label, w.value = m[1], m[2], true
		default:
			w.stops = strings.Trim(w.text, "/|") == ""
		}
		w.closes = w.closes && w.value
		out = append(out, w)
	}
	return out
}

// capitals tells a word cut short and in capitals.
func capitals(label string) bool {
	return len(label) <= longestShort && strings.ToUpper(label) == label &&
		strings.IndexFunc(label, unicode.IsLetter) >= 0
}

// pairsIn are the labels and values with which a line begins, up to a value that has no label before it.
func pairsIn(all []dayWord) (out []toldPair) {
	var label []string
	for i, w := range all {
		switch {
		case w.stops, !w.value && !labelWord.MatchString(w.text), len(w.text) > longestLabel, len(label) > mostOfLabel:
			return out
		case w.value && w.label != "":
			out, label = append(out, toldPair{label: w.label, value: w.text, glued: true}), nil
		case w.value && len(label) > 0:
			out = append(out, toldPair{label: strings.Join(label, " "), value: w.text, sign: all[i-1].sign})
			label = nil
		case w.dash():
			continue // between two of them
		case w.value:
			return out
		case i > 0 && all[i-1].value && all[i-1].label == "" && ofValue(w, all, i):
		default:
			label = append(label, w.text)
		}
		if w.closes {
			return out
		}
	}
	return out
}

// dash tells a mark that stands for no value, or between others.
func (w *dayWord) dash() bool { return w.value && w.label == "" && digits(w.text) == 0 }

// ofValue tells a unit behind a value, which is no label of the next one.
func ofValue(w dayWord, all []dayWord, i int) bool {
	_, isUnit := unit.Lookup(strings.ToLower(w.text))
	next := i+1 < len(all) && all[i+1].value
	return !w.sign && (isUnit && !next || halfOfDay.MatchString(w.text))
}

func rawOf(words []dayWord) string {
	var out []string
	for _, w := range words {
		if w.raw != "" {
			out = append(out, w.raw)
		}
	}
	return strings.Join(out, " ")
}
