package stats

// Warning says what to beware of in a result, in words fit to print. The
// constants below are all that the package gives, so a caller may also compare.
type Warning string

// The warnings, by the result that carries them.
const (
	WarnFewTrips     Warning = "fewer than 8 trips: the dispersion is too uncertain to widen intervals by"
	WarnThinCells    Warning = "more than half of the trip-by-level cells expect less than one event: the dispersion is unsteady"
	WarnNoDispersion Warning = "no dispersion: it takes at least two trips at a level with events"
	WarnNoEffort     Warning = "counts without effort were left out"

	WarnNoVariation Warning = "the levels do not differ by more than chance would make them: all share the common rate"
	WarnPlugIn      Warning = "the spread between levels is taken as known: the intervals are somewhat too narrow"

	WarnNotFinite Warning = "values that are not finite numbers were left out"
	WarnTooFew    Warning = "too few values for an interval at this confidence"

	WarnFewPairs    Warning = "fewer than 10 pairs: the limits of agreement are very uncertain"
	WarnTrend       Warning = "the difference changes with size: limits on the ratio scale fit better"
	WarnNotPositive Warning = "values that are not above zero have no ratio and were left out"
)
