package meaning

import (
	"regexp"
	"strings"

	"wakeledger/pipeline/plan"
)

// exception is what a text says of one trip or day beside what is usual: "6 lines, always. Only on trip 2 (4 May) it
// was 5".
var exception = regexp.MustCompile(`(?i)(?:\bonly|\bbut|\bexcept(?:ing)?|\bapart from|\bsave|\bs[oó]lo|\bsalvo|` +
	`\bexcepto|\bsauf|\btranne|\bnur|\baußer|\bausser)\s+(?:(?:for|on|in|of|the|el|en|le|la|il|am|bei|der)\s+)*` +
	`(?:(?:trip|outing|day|salida|viaje|sortie|uscita|sa[ií]da|fahrt|ausfahrt)\s*(?:no\.?|nr\.?|#)?` +
	`\s*([\pL\d]{1,4})\b)?[\s,(]*([\pL\d][\pL\d.,/ -]{2,25}?)?\)?[\s,:;=-]*` +
	`(?:when|where|it|we|that|there|was|were|is|had|pulled|used|fue|fueron|era|eran|c'?|[eé]tait|erano|waren?|` +
	`es|con|avec|mit|with)(?:\s+(?:it|we|was|were|had|pulled|used|only|fue|era|[eé]tait|es|war))*` +
	`\s+(\d+(?:[.,]\d+)?)`)

// excepted parts a text into what it says of all and what of some trips and days alone.
func excepted(text string) (usual string, but []plan.But) {
	for _, m := range exception.FindAllStringSubmatch(text, -1) {
		b := plan.But{Trip: strings.ToLower(m[1]), Day: strings.Trim(m[2], " ,.-"), Text: m[3]}
		if !strings.ContainsAny(b.Day, "0123456789") {
			b.Day = ""
		}
		if b.Trip != "" || b.Day != "" {
			but = append(but, b)
		}
	}
	if len(but) > 0 {
		text = text[:exception.FindStringIndex(text)[0]]
	}
	return text, but
}
