package reports

import "wakeledger/reports/page"

// cautions are what can hurt someone, briefly. COLREGs rule 5: International
// Regulations for Preventing Collisions at Sea 1972. Mercury: advice of the US
// FDA and EPA on eating fish. Histamine: FDA, Fish and Fishery Products Hazards
// and Controls, chapter 7. Drag, harness and knife: common practice, no source.
var cautions = []string{
	"A tape weight is an estimate: not for records, sale, or legal size.",
	"Size, bag and season rules are the local authority's, in force that day. This page knows none of them.",
	"Speed is over ground wherever it comes from a plotter or a track: a current of a knot shifts a whole band.",
	"High-speed trolling needs a proper look-out at all times (COLREGs rule 5) and distance from other boats. Read " +
		"this ashore.",
	"Heavy drag is set on a scale, with a harness and a knife at hand.",
	"Large tuna, billfish and king mackerel carry advisories on mercury: look up the local one before eating or " +
		"sharing the fish.",
	"Fish not chilled at once can cause histamine poisoning; cooking does not remove it.",
	"Licensed practice and local codes stand above this page.",
}

func (s *season) cautionsSection() (page.Section, error) {
	notes := append(s.disagreements(len(s.Trips)), cautions...)
	return page.Section{ID: "cautions", Heading: "Cautions", Notes: notes}, nil
}
