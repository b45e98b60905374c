package seasons

// field is a column of a log: headings that people give it, and for a quantity
// the units it is kept in. bare says in which system a heading needs no unit.
type field struct {
	headings   []string
	us, metric string
	also       string // a third unit
	bare       string // both, metric, or "" for no quantity
}

var fields = map[string]field{
	"trip":     {headings: []string{"Trip", "Trip no", "Outing"}},
	"boat":     {headings: []string{"Boat", "Vessel"}},
	"captain":  {headings: []string{"Captain", "Skipper"}},
	"port":     {headings: []string{"Port", "Harbour"}},
	"anglers":  {headings: []string{"Anglers", "Crew"}},
	"notes":    {headings: []string{"Notes", "Remarks"}},
	"date":     {headings: []string{"Date", "DATE", "Day"}},
	"depart":   {headings: []string{"Depart", "Departure", "Left"}},
	"return":   {headings: []string{"Return", "Returned"}},
	"leg":      {headings: []string{"Leg", "Leg #"}},
	"start":    {headings: []string{"Start", "Start time", "Lines in"}},
	"end":      {headings: []string{"End", "End time", "Lines up"}},
	"speed":    {headings: []string{"Speed", "SOG", "Boat speed"}, us: "kn", metric: "kn", also: "km/h", bare: "both"},
	"lines":    {headings: []string{"Lines", "No. of lines", "Rods out"}},
	"heading":  {headings: []string{"Heading", "Course"}, us: "deg", metric: "deg", bare: "both"},
	"lat":      {headings: []string{"Lat", "Latitude"}},
	"lon":      {headings: []string{"Lon", "Longitude"}},
	"area":     {headings: []string{"Area", "Bank"}},
	"seatemp":  {headings: []string{"Sea temperature", "SST", "Water temp"}, us: "F", metric: "C", bare: "both"},
	"wind":     {headings: []string{"Wind"}},
	"seastate": {headings: []string{"Sea state"}},
	"approach": {headings: []string{"Approach"}},
	"school": {headings: []string{"Distance to the school", "School distance"},
		us: "yd", metric: "m", bare: "metric"},
	"nearest":  {headings: []string{"Nearest boat"}, us: "nmi", metric: "m", bare: "metric"},
	"tangle":   {headings: []string{"Tangle", "Tangles"}},
	"line":     {headings: []string{"Line", "Rod", "Position"}},
	"lure":     {headings: []string{"Lure"}},
	"weight":   {headings: []string{"Lure weight", "Lure wt"}, us: "oz", metric: "g", bare: "both"},
	"colour":   {headings: []string{"Colour", "Color"}},
	"hooks":    {headings: []string{"Hooks"}},
	"leader":   {headings: []string{"Leader"}},
	"class":    {headings: []string{"Line class"}, us: "lb", metric: "kg", bare: "both"},
	"drag":     {headings: []string{"Drag", "Drag set"}, us: "lb", metric: "kg", bare: "both"},
	"setback":  {headings: []string{"Setback", "Distance back"}, us: "yd", metric: "m", also: "ft", bare: "metric"},
	"count":    {headings: []string{"Count", "Seconds back"}, us: "s", metric: "s", bare: "both"},
	"letout":   {headings: []string{"Let-out speed"}, us: "kn", metric: "kn", also: "km/h", bare: "both"},
	"time":     {headings: []string{"Time", "Time of strike", "When"}},
	"outcome":  {headings: []string{"Outcome", "Result"}},
	"species":  {headings: []string{"Species"}},
	"cause":    {headings: []string{"Cause of loss", "How lost"}},
	"fight":    {headings: []string{"Fight time", "Fight"}, us: "min", metric: "min", bare: "both"},
	"angler":   {headings: []string{"Angler", "Who"}},
	"strike":   {headings: []string{"Strike", "Strike no"}},
	"length":   {headings: []string{"Length", "Fish length"}, us: "in", metric: "cm", bare: "both"},
	"kind":     {headings: []string{"Length kind", "Measured as"}},
	"girth":    {headings: []string{"Girth", "Max girth"}, us: "in", metric: "cm", bare: "both"},
	"scale":    {headings: []string{"Scale weight", "Weight", "Dock scale"}, us: "lb", metric: "kg", bare: "both"},
	"state":    {headings: []string{"Weight state"}},
	"cert":     {headings: []string{"Certified"}},
	"kept":     {headings: []string{"Kept or released"}},
	"strikes":  {headings: []string{"Strikes", "Hits"}},
	"hooked":   {headings: []string{"Hooked", "Hook-ups"}},
	"landed":   {headings: []string{"Landed", "Boated"}},
	"released": {headings: []string{"Released"}},
	"lost":     {headings: []string{"Lost"}},
	"missed":   {headings: []string{"Missed"}},
}

// spellings of units as people write them; the first is the symbol.
var spellings = map[string][]string{
	"kn": {"kn", "kts", "knots"}, "km/h": {"km/h"}, "deg": {"deg"}, "F": {"F", "°F"}, "C": {"C", "°C"},
	"yd": {"yd", "yards"}, "ft": {"ft", "feet"}, "m": {"m"}, "nmi": {"nmi"}, "oz": {"oz"}, "g": {"g"},
	"lb": {"lb", "lbs", "#"}, "kg": {"kg"}, "s": {"s", "sec"}, "min": {"min"}, "in": {"in", "inches"}, "cm": {"cm"},
}

// needsUnit tells whether a heading without a unit leaves the field open in a system.
func (f field) needsUnit(system string) bool { return f.bare == "metric" && system == "us" }

func (f field) unit(system string) string {
	if system == "us" {
		return f.us
	}
	return f.metric
}
