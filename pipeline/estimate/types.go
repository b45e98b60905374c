package estimate

// The methods of an Estimate, best first.
const (
	CertifiedScale = "certified scale"
	DockScale      = "dock scale"
	OwnCoefficient = "own coefficient"
	LengthAndGirth = "length and girth"
	LengthAlone    = "length"
)

// Words is a method as a captain says it, as it is shown; data keep the method's name.
func Words(method string) string {
	switch method {
	case OwnCoefficient:
		return "own divisor"
	case LengthAndGirth:
		return "girth rule"
	case LengthAlone:
		return "length alone"
	}
	return method
}

// Caution goes with every weight that is shown to a reader.
const Caution = "A weight from the tape is an estimate: it is not for records, for sale or for legal size. The " +
	"local authority's rules, in force that day, stand above it."

// Length kinds: how a length was measured, in cm.
const (
	ForkLength  = "FL"    // straight, tip of the upper jaw to the fork of the tail (also written SFL)
	CurvedFork  = "CFL"   // the same, by tape over the body
	TotalLength = "TL"    // to the tip of the tail
	LowerJaw    = "LJFL"  // billfish: straight, tip of the lower jaw to the fork
	EyeFork     = "EFL"   // billfish: hind edge of the eye to the fork
	PreCaudal   = "PCL"   // to the notch before the tail
	PectoralKL  = "PCKL"  // tunas, head off: from the pectoral fin to the keel before the tail
	PectoralCFL = "PFCFL" // head off: curved, from the pectoral fin to the fork
)

// Weight states: what was left of the fish on the scale.
const (
	Round        = "round"         // the whole fish
	Bled         = "bled"          // whole but for the blood
	Gutted       = "gutted"        // entrails out, gills in
	GilledGutted = "gilled-gutted" // gills and entrails out
	Dressed      = "dressed"       // head, gills, entrails and fins off
)

// Fish is what was logged of one fish. A zero or empty field was not logged;
// a negative, infinite or not-a-number measure counts as not logged.
type Fish struct {
	Species     string  // FAO 3-alpha code; empty where it is not settled
	Stock       string  // as in Relation.Stock; usually empty
	Ocean       string  // "pacific", "north atlantic", ...; empty where not set
	LengthCM    float64 // as measured
	LengthKind  string  // one of the length kinds
	GirthCM     float64 // maximum girth
	ScaleKG     float64 // as read, in WeightState
	WeightState string  // one of the weight states
	Certified   bool    // the scale was certified
}

// Estimate is one weight of one fish by one method.
type Estimate struct {
	Method      string   // one of the method constants
	WeightKG    float64  // round weight, kg
	LoKG, HiKG  float64  // 90 % prediction interval for one fish; zero without one
	HasInterval bool     // false where no spread is published or fitted
	Relation    string   // Relation.ID for LengthAlone, else empty
	Source      string   // where the method or the coefficients come from
	Notes       []string // plain sentences: what was converted, assumed or doubtful
	Outside     *Studied // the lengths of the fish that it rests on, where the fish is outside them
}

// Studied is the range of the lengths of the fish that a method rests on; a bound of zero
// is not known.
type Studied struct {
	LoCM, HiCM float64
	Of         string // whose: "the fish studied"
}

// outside is the range where a length is outside it, else nil.
func outside(l, lo, hi float64, of string) *Studied {
	if (lo == 0 || l >= lo) && (hi == 0 || l <= hi) {
		return nil
	}
	return &Studied{lo, hi, of}
}

// Words is the range in words, each bound as show writes it.
func (s Studied) Words(show func(cm float64) string) string {
	switch {
	case s.LoCM == 0:
		return "up to " + show(s.HiCM)
	case s.HiCM == 0:
		return "from " + show(s.LoCM)
	}
	return show(s.LoCM) + " to " + show(s.HiCM)
}

// Own is the boat's own coefficient for one species, as FitOwn found it.
type Own struct {
	Species    string
	K          float64 // kg per cm^3 in W = K L G^2: Geometric, shrunk towards the common constant
	Geometric  float64 // geometric mean of W / (L G^2)
	Share      float64 // how much of its difference from the common constant is in K: 0 to 1
	N          int     // fish it rests on
	LOOOwn     float64 // mean absolute error (kg) of K fitted without the fish it predicts
	LOOCommon  float64 // mean absolute error (kg) of the common constant on the same fish
	SLog       float64 // standard deviation of ln(W / (L G^2)), n-1 degrees of freedom
	Used       bool    // false where N is too small or the common constant does as well
	Why        string  // one sentence: why it is used or not
	CommonS    float64 // root of the mean squared ln(W / (L G^2) / common constant)
	LengthKind string  // the length kind of its pairs: FL (also for not logged and LJFL), CFL, TL, ...

	// How far the published relation of most pairs was from the scale: RelationS is the
	// root of the mean squared ln(W / weight by the relation) over RelationN fish.
	Relation  string
	RelationN int
	RelationS float64

	MinCM float64 // range of the lengths it was fitted on
	MaxCM float64

	Doubted int // fish left out because their measures are doubted
}

// Pair is one fish with tape and scale; ScaleKG is its round weight.
// LengthKind may stay empty: the boat's usual way of measuring. Relation and
// RelationKG are the chosen relation and its weight by the length alone, where one is.
type Pair struct {
	Species                    string
	LengthCM, GirthCM, ScaleKG float64
	LengthKind                 string
	Relation                   string
	RelationKG                 float64
	Doubted                    bool // its measures may be wrong (Measures.Doubts): it is in no fit
}

// Relation is one published W = A L^B, L in cm of LengthKind, W in kg of
// WeightState. Zero means that the source seen does not give it.
type Relation struct {
	ID          string
	Species     string // FAO 3-alpha code
	Sex         string // "both", "female" or "male"
	Stock       string // stock, region or season of the study
	Ocean       string // ocean words, separated by ";"
	A, B        float64
	LengthKind  string
	WeightState string
	N           int     // fish measured
	MinCM       float64 // range of their lengths
	MaxCM       float64
	ResidualS   float64 // residual standard deviation of ln W
	Default     bool    // may be chosen; others are shown as further estimates
	Citation    string
	Document    string // DOI or document number
	Seen        string // SeenSource, SeenQuoted or SeenMemory, and where
	Note        string
}

// How a row was verified: Relation.Seen and Conversion.Seen begin with one of these.
const (
	SeenSource = "seen in the source"
	SeenQuoted = "quoted by a second source"
	SeenMemory = "from memory"
)

// Conversion turns one length kind into another (To = C + M x From, or
// To = C x From^M), or a dressed weight into a round one (To = M x From).
type Conversion struct {
	Species  string
	Ocean    string // empty: any
	What     string // "length" or "weight"
	From, To string // length kinds, or weight states
	Form     string // "linear" or "power"
	C, M     float64
	N        int
	MinCM    float64 // range of From, where published
	MaxCM    float64
	Source   string
	Document string
	Seen     string
	Note     string
}
