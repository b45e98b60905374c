package main

// Everything invented stands here, as data: names, grounds, lures, crew.

const (
	// Of four hundred seeds tried, one whose same-trip ratio of 12-14 to 8-10 kn
	// came out near the 1.8 built in, in both seasons, and whose naive ratio did
	// not: a few hundred strikes scatter widely.
	seed = 20251162

	boatName = "Tacking Stitch"
	portName = "Hemmery Harbour"
	zoneName = "UTC-9" // the invented coast keeps one time all year
	captain  = "Renée Ostrand"
)

var (
	anglers = []string{"Bram Hollick", "Suki Tarrow", "Odd Pellim", "Wenna Dray"}
	colours = []string{"blue/white", "purple/black", "green/yellow", "red/black", "pink/white", "black"}
	hooks   = []string{"single 9/0", "single 10/0", "double 10/0"}
	winds   = []string{"N", "NW", "W", "SW", "NE"}
	causes  = []choice{{"pulled hook", .54}, {"broke off", .24}, {"chafed leader", .13}, {"hook straightened", .09}}
	remarks = []string{"birds working", "glass calm till noon", "short chop after noon", "fog till nine",
		"weed on the lines", "bait balls on the sounder"}
)

// choice is a text with its share.
type choice struct {
	text  string
	share float64
}

// ground is an area of the invented bank, with its middle.
type ground struct {
	name     string
	lat, lon float64
}

var grounds = []ground{
	{"Selvedge", 33.24, -137.10}, {"Pleat Ridge", 33.11, -137.32},
	{"Bodkin Rise", 33.38, -137.24}, {"Hollow Hem", 33.05, -136.96},
}

// lureKind is a lure and the weights that the boat has it in, ounces.
type lureKind struct {
	name string
	oz   []int
}

var lures = []lureKind{
	{"Pintuck", []int{6, 10}}, {"Treadle", []int{10, 16}}, {"Gusset", []int{16, 24}},
	{"Ferrule", []int{24}}, {"Basting Iron", []int{36}},
}

// place is a line's place in the spread and how far back it is meant to run, m.
type place struct {
	name string
	back float64
}

var places = []place{
	{"Port long", 62}, {"Starboard long", 68}, {"Shotgun", 98},
	{"Port short", 36}, {"Starboard short", 42}, {"Down the middle", 24},
}

// speedKind is a way of trolling: speeds [lo, hi) tenths of a knot, how often
// the boat runs it, and the strike rate against 8 to 10 kn: the truth built in.
type speedKind struct {
	name   string
	lo, hi int
	share  float64
	factor float64
}

var speedKinds = []speedKind{
	{"6-8", 60, 80, .16, .85}, {"8-10", 80, 100, .33, 1}, {"10-12", 100, 120, .11, 1.3},
	{"12-14", 120, 140, .29, 1.8}, {"14-16", 140, 160, .11, 1.25},
}

const (
	baseRate    = .190 // strikes per line-hour at 8 to 10 kn on a middling day
	effectShape = 1.4  // of the gamma-distributed trip effect
	weightPower = .10  // rate goes with (lure weight / 16 oz) to this power
	hookShare   = .70
	boatShare   = .70
	sizeScatter = .08                // of weight about the published relation, log scale
	girthBias   = 1.05               // this boat's W/(L G^2) against the common constant
	commonLG2   = .45359237 / 2.54 / // kg/cm^3 of W(lb) = L(in) G(in)^2 / 800, common practice
		2.54 / 2.54 / 800
	curvedFactor = 1.04 // tape over the body against straight; common practice, no source
)

// mode is one size group of a species: straight length, cm.
type mode struct{ share, mean, sd float64 }

// species holds names as each log writes them, W = a L^b (kg, cm, straight
// fork length; lower jaw to fork for the marlin) and the sizes met.
type species struct {
	code    string // FAO ASFIS
	names   map[string]string
	a, b    float64
	share   float64
	modes   []mode
	jaw     bool
	release float64
	gutted  float64 // round weight / gilled-and-gutted weight, 0 unknown
}

func names(y25, early, late string) map[string]string {
	return map[string]string{log2025: y25, logEarly: early, logLate: late}
}

// Relations: Kai 2007 (PBF, ISC); SPC WCPFC assessments 2023 to 2026 (YFT, BET,
// SKJ); Watanabe, Uosaki et al. 2006, third quarter (ALB, ISC); Melo-Barrera et
// al. 2003 (MLS); FishBase Ref. 55642 (WAH); Lasso and Zapata 1999 (DOL).
// Gilled-and-gutted yellowfin: x 1.13, IOTC.
var allSpecies = []species{
	{"PBF", names("Pacific bluefin", "Bluefin", "Pacific bluefin tuna"), 1.7117e-5, 3.0382, .39,
		[]mode{{.45, 96, 9}, {.35, 134, 11}, {.20, 176, 11}}, false, .25, 0},
	{"YFT", names("Yellowfin", "yellowfin", "Yellowfin tuna"), 1.986475e-5, 2.990779, .23,
		[]mode{{.55, 78, 8}, {.45, 116, 10}}, false, .15, 1.13},
	{"DOL", names("Dolphinfish", "dorado", "Dolphinfish"), 2.24e-5, 2.78, .09,
		[]mode{{1, 94, 12}}, false, .2, 0},
	{"ALB", names("Albacore", "albacore", "Albacore"), 2.1e-5, 2.99, .09,
		[]mode{{1, 79, 7}}, false, .1, 0},
	{"SKJ", names("Skipjack", "skipjack", "Skipjack tuna"), 1.1437255e-5, 3.148282, .07,
		[]mode{{1, 57, 6}}, false, .6, 0},
	{"BET", names("Bigeye", "bigeye", "Bigeye tuna"), 3.073533e-5, 2.932410, .05,
		[]mode{{1, 98, 13}}, false, .1, 0},
	{"MLS", names("Striped marlin", "striped marlin", "Striped marlin"), 8.0e-5, 2.523, .05,
		[]mode{{1, 212, 14}}, true, 1, 0},
	{"WAH", names("Wahoo", "wahoo", "Wahoo"), 1.6e-6, 3.275, .03,
		[]mode{{1, 126, 13}}, false, 0, 0},
}
