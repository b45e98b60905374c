package queries

// The rows that the questions answer with. Field order is the column order of
// the answer; the json tag is the column's name. A pointer is nil where the
// value is not known, never where it is zero.

// Effort is the fishing effort at one level of a factor.
type Effort struct {
	Level        string   `json:"level"`
	Trips        int64    `json:"trips"`
	Legs         int64    `json:"legs"`
	BoatHours    float64  `json:"boat_hours"`
	LineHours    float64  `json:"line_hours"`
	DistanceNmi  *float64 `json:"distance_nmi"`   // nil where no leg of the level has a speed
	UnlinedHours float64  `json:"unlined_hours"`  // boat-hours of legs whose lines are not logged
	UnlinedLegs  int64    `json:"unlined_legs"`   // number of such legs
	UnspedHours  float64  `json:"no_speed_hours"` // boat-hours of legs whose speed is not logged
}

// StrikeRate is the strikes of one level of a factor over its line-hours.
type StrikeRate struct {
	Level     string   `json:"level"`
	LineHours float64  `json:"line_hours"`
	Strikes   int64    `json:"strikes"`
	Hookups   int64    `json:"hookups"`
	Landed    int64    `json:"landed"`
	Released  int64    `json:"released"`
	Rate      *float64 `json:"rate"`    // strikes per line-hour, see WithoutHours; nil without line-hours
	RateLo    *float64 `json:"rate_lo"` // 95 % interval, Garwood 1936, widened by Dispersion
	RateHi    *float64 `json:"rate_hi"`
	// ShrunkRate is the rate drawn towards the common rate, for ranking.
	ShrunkRate *float64 `json:"shrunk_rate"`
	// Ratio is the ratio of rates to the level ComparedWith, by the model with an
	// effect of each trip (or leg); nil where nothing ties the two, and Note says so.
	Ratio      *float64 `json:"ratio"`
	RatioLo    *float64 `json:"ratio_lo"` // 95 % interval
	RatioHi    *float64 `json:"ratio_hi"`
	PValue     *float64 `json:"p_value"`    // of a ratio of 1, adjusted by Holm over the levels and the trend
	Dispersion *float64 `json:"dispersion"` // variance of the level's count over its mean
	Widened    bool     `json:"widened"`    // the intervals allow for the dispersion
	// WithoutHours is the strikes that have no line-hours to belong to: on legs
	// whose lines are not logged. The rate and all that follows leave them out.
	WithoutHours int64  `json:"strikes_without_hours"`
	Trips        int64  `json:"trips"`
	LittleEffort bool   `json:"little_effort"`
	ComparedWith string `json:"compared_with"`
	SharedStrata int64  `json:"shared"` // trips, or legs, that fished both
	// Inflation is how many times the variance of Ratio is what it would be with no
	// other factor held.
	Inflation *float64 `json:"variance_inflation"`
	Note      string   `json:"note"`
}

// Outcomes is what became of the strikes of one level.
type Outcomes struct {
	Level       string   `json:"level"`
	Strikes     int64    `json:"strikes"`
	Hookups     int64    `json:"hookups"`
	Boated      int64    `json:"boated"`
	HookupShare *float64 `json:"hookup_share"` // hookups / strikes whose outcome is known
	HookupLo    *float64 `json:"hookup_lo"`    // 95 % interval, Wilson 1927
	HookupHi    *float64 `json:"hookup_hi"`
	BoatedShare *float64 `json:"boated_share"` // boated / strikes whose outcome is known
	BoatedLo    *float64 `json:"boated_lo"`
	BoatedHi    *float64 `json:"boated_hi"`
	NotLogged   int64    `json:"outcome_not_logged"`
	// HookingNotLogged is the strikes of which not even a hook-up is known.
	HookingNotLogged int64 `json:"hooking_not_logged"`
}

// Fish is one fish with its best weight.
type Fish struct {
	Trip       *string  `json:"trip"`
	Date       *string  `json:"date"` // YYYY-MM-DD, the boat's day
	Species    *string  `json:"species"`
	LengthCM   *float64 `json:"length_cm"`
	LengthKind *string  `json:"length_kind"`
	GirthCM    *float64 `json:"girth_cm"`
	ScaleKG    *float64 `json:"scale_kg"`
	WeightKG   *float64 `json:"weight_kg"`
	WeightLoKG *float64 `json:"weight_lo_kg"` // 90 % prediction interval; nil where none is known
	WeightHiKG *float64 `json:"weight_hi_kg"`
	Method     *string  `json:"method"` // how weight_kg was found; nil without a weight
	SpeedKn    *float64 `json:"speed_kn"`
	SpeedBand  string   `json:"speed_band"`
	Kept       *bool    `json:"kept"` // nil where neither kept nor released was logged
	Boat       *string  `json:"boat"`
	File       string   `json:"file"`
	Sheet      string   `json:"sheet"`
	Row        int64    `json:"row"`
	Doubt      *string  `json:"doubt"` // why its measures may be wrong; nil where nothing speaks against them
}

// Sizes counts the fish of one level in one weight class [ClassLoKG, ClassHiKG).
// A fish without a weight is counted in a class whose edges are nil.
type Sizes struct {
	Level     string   `json:"level"`
	ClassLoKG *float64 `json:"class_lo_kg"`
	ClassHiKG *float64 `json:"class_hi_kg"`
	Fish      int64    `json:"fish"`
	OnScale   int64    `json:"on_scale"` // of them weighed on a scale; the rest are estimates
}

// Trip is one outing of one boat.
type Trip struct {
	Trip       string   `json:"trip"`
	Boat       string   `json:"boat"`
	Date       *string  `json:"date"`
	Legs       int64    `json:"legs"`
	BoatHours  float64  `json:"boat_hours"`
	LineHours  float64  `json:"line_hours"`
	Strikes    int64    `json:"strikes"`
	Landed     int64    `json:"landed"`
	Released   int64    `json:"released"`
	HeaviestKG *float64 `json:"heaviest_kg"`
	// HeaviestMethod tells a scale from an estimate; nil without a weight.
	HeaviestMethod *string `json:"heaviest_method"`
	// HeaviestDoubt is why that fish's measures may be wrong; nil where nothing speaks against them.
	HeaviestDoubt *string `json:"heaviest_doubt"`
}

// Unsettled is a name of fish in a log that no species stands for.
type Unsettled struct {
	File string `json:"file"`
	Name string `json:"name"` // as logged
	Fish int64  `json:"fish"`
}

// SetAside is a row of a log, or a cell of a row that is kept, that could not be used, and why.
type SetAside struct {
	File   string `json:"file"`
	Sheet  string `json:"sheet"`
	Row    int64  `json:"row"`
	Column string `json:"column"`
	Cell   string `json:"cell"`
	Reason string `json:"reason"`
}
