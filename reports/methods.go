package reports

import (
	"slices"

	"wakeledger/pipeline/estimate"
	"wakeledger/queries"
	"wakeledger/reports/page"
)

// weightMethods says how each method finds a weight, best first. The names are
// those of the rows of fish.
var weightMethods = []struct{ name, words string }{
	{estimate.CertifiedScale, "Certified scale: the weight as read on a scale with a certificate."},
	{estimate.DockScale, "Dock scale: the weight as read on a scale on land, not certified."},
	{queries.ByOwn, "Own divisor: W (lb) = L (in) × G (in)² / N. N is the geometric mean over the boat's own fish " +
		"with tape and scale, drawn towards 800 where they are few. It is used only where it weighs left-out fish " +
		"better than 800 does. Doubtful fish are left out. The 90 % interval allows for that choice. A median."},
	{queries.ByGirth, "Girth rule: W (lb) = L (in) × G (in)² / 800. Common practice of the trade; tested by Ault " +
		"and Luo 2013, Fisheries Research 139:110-117."},
	{queries.ByLength, "Length alone: W = a × L^b, with a and b as published for the species."},
}

func (s *season) methodsSection() (page.Section, error) {
	notes := []string{
		"Effort: line-hours are the sum over legs of duration × lines out; boat-hours are the sum of durations.",
		"Rate: strikes per line-hour. 95 % interval: exact for a Poisson count. Garwood 1936, Fiducial limits for " +
			"the Poisson distribution, Biometrika 28:437-442.",
		"Shares: of the strikes whose outcome is logged. 95 % interval: Wilson 1927, Probable inference, the law of " +
			"succession, and statistical inference, Journal of the American Statistical Association 22:209-212.",
		"Little effort: below three expected strikes at the season's rate. Hanley and Lippman-Hand 1983, If nothing " +
			"goes wrong, is everything all right?, JAMA 249:1743-1745.",
		"Two bands are called apart only where their 95 % intervals do not touch. That is stricter than a test at 5 " +
			"%, and no correction is made for picking the best of several.",
		"A speed band holds its lower end and not its upper: 12.0 kn is in 12 to 14 kn, 14.0 in the next. Speeds " +
			"are rounded to 0.1 kn first.",
	}
	if len(s.Worked.Methods) > 0 { // they say the same in full, widened intervals included
		notes = append([]string{notes[0]}, append(s.workedMethods(), notes[len(notes)-1])...)
	}
	notes = append(notes, s.weightNotes()...)
	notes = append(notes, s.SeasonInput.Methods...)
	notes = append(notes, "Colours: Okabe and Ito 2008, Color Universal Design; ColorBrewer YlGnBu, Harrower and "+
		"Brewer 2003, The Cartographic Journal 40:27-37.")
	return page.Section{ID: "methods", Heading: "How these numbers were worked out", Notes: notes}, nil
}

// weightNotes names the methods found in the rows of fish, best first, then
// those that this report has no words for.
func (s *season) weightNotes() []string {
	used := map[string]bool{}
	for _, f := range s.Fish {
		if f.WeightKG != nil {
			used[text(f.Method)] = true
		}
	}
	var out, other []string
	for _, m := range weightMethods {
		if used[m.name] {
			out = append(out, m.words)
			delete(used, m.name)
		}
	}
	for name := range used {
		if name == "" {
			name = "some weights are logged without a method"
		}
		other = append(other, "Weight: "+name+".")
	}
	slices.Sort(other)
	if len(out)+len(other) > 0 {
		out = append([]string{"A fish's weight is the best that its row supports: certified scale, dock scale, own " +
			"divisor, girth rule, length alone, in that order. Never mixed silently."}, out...)
	}
	return append(out, other...)
}
