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

	WarnThinExpected Warning = "an expected count is below 5: the chi-square p-value is approximate"
	WarnOneSided     Warning = "all events fall on one side: no interval"
	WarnSkipped      Warning = "strata without events or with effort on one side only say nothing and were left out"

	WarnNoVariation Warning = "the levels do not differ by more than chance would make them: all share the common rate"
	WarnPlugIn      Warning = "the spread between levels is taken as known: the intervals are somewhat too narrow"

	WarnAliased      Warning = "columns that others add up to were left out"
	WarnRunsOff      Warning = "levels without a single event have no finite estimate: their rows were left out"
	WarnNotConverged Warning = "the fit did not settle: do not use it"
	WarnFewClusters  Warning = "fewer than 10 clusters: cluster-robust standard errors come out too small"
	WarnOneCluster   Warning = "one cluster: no cluster-robust standard error"
	WarnSaturated    Warning = "no degrees of freedom left: no dispersion"

	WarnTied      Warning = "tied values: the p-value is approximate"
	WarnAllEqual  Warning = "all values are equal"
	WarnNotFinite Warning = "values that are not finite numbers were left out"
	WarnTooFew    Warning = "too few values for an interval at this confidence"

	WarnFewPairs    Warning = "fewer than 10 pairs: the limits of agreement are very uncertain"
	WarnTrend       Warning = "the difference changes with size: limits on the ratio scale fit better"
	WarnNotPositive Warning = "values that are not above zero have no ratio and were left out"

	WarnOutside Warning = "outside the range that the relation was fitted on"
)
