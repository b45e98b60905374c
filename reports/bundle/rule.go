package bundle

// The rule of what a figure may be shown of. Its units are the trip, known by its first
// day so that two trips of one day are one unit, and the day.
//
// Sources: Hundepool, Domingo-Ferrer, Franconi, Giessing, Lenz, Longhurst, Schulte
// Nordholt, Seri and De Wolf, Handbook on Statistical Disclosure Control (CENEX and ESSnet
// SDC for Eurostat): section 4.2.1, minimum frequency rule with n = 3 ("the common
// choice") and the p% rule, which it recommends over the dominance rule; section 4.2.2,
// secondary suppression. With p = 25, what a cell says of its largest unit is too high by
// a quarter or more, also for who knows the second largest: the largest is no more than
// four fifths of what is left. A (1, 80) dominance rule holds with it.

// MinTrips is the fewest trips, and the fewest days, with effort that a cell may be of.
const MinTrips = 3

// share is the most that one unit may be of a figure, and of what is left of it when any
// other unit is taken off: 100 / (100 + p) of the p% rule.
const share = 0.8

// quantity is one figure of a cell, or what is left between two of them.
type quantity int

const (
	boatHours quantity = iota
	lineHours
	strikes
	hookups
	missed // strikes without a hook-up
	boated // landed or released
	lost   // hook-ups neither landed nor released
	away   // strikes neither landed nor released
	landed
	released
	onScale
	unweighed
	fish
	afloat // hours of the boat where nothing that a class is made of is logged
	quantities
	named = quantities // fish that a list of the heaviest names: no figure of a cell
)

// amounts are the quantities of a piece, of a unit or of a cell.
type amounts [quantities + 1]float64

func amountsOf(p Piece) amounts {
	f := func(n int64) float64 { return float64(n) }
	a := amounts{boatHours: p.BoatHours, lineHours: p.LineHours, strikes: f(p.Strikes),
		hookups: f(p.Hookups), missed: f(p.Strikes - p.Hookups), boated: f(p.Landed + p.Released),
		lost: f(p.Hookups - p.Landed - p.Released), away: f(p.Strikes - p.Landed - p.Released),
		landed: f(p.Landed), released: f(p.Released), fish: f(p.Fish), onScale: f(p.OnScale),
		unweighed: f(p.Fish - p.OnScale)}
	if p.named {
		a[named] = 1
	}
	if p.Level == NotLogged {
		a[afloat] = p.Afloat
	}
	if p.Fish > 0 {
		a[lost], a[away] = 0, 0 // a fish is landed or released
	}
	return a
}

// units are the amounts of each unit of a cell, by its day; "" is all whose day is not known.
type units map[string]amounts

func (u units) add(day string, a amounts, sign float64) {
	sum := u[day]
	for q := range a {
		sum[q] += sign * a[q]
	}
	u[day] = sum
}

// least is what is no more than the noise of adding up.
const least = 1e-6

// spread tells whether a figure of size x shows none of the units that it is of, or that
// could be all of it: none is more than its share of what is left without any other.
// A figure of nothing shows that each had nothing. Who knows this rule knows that a third
// unit is in it: of a count that is one more to take off.
func (u units) spread(q quantity, x float64) bool {
	var first, second, third float64
	if q != boatHours && q != lineHours {
		third = 1
	}
	for _, a := range u {
		if a[q] < -least { // a difference that is not of new trips only
			return false
		}
		if v := a[q]; v > first {
			first, second = v, first
		} else if v > second {
			second = v
		}
	}
	return x > least && first <= share*(x-second-third)+least
}

// nothing tells whether no unit has any of q.
func (u units) nothing(q quantity) bool {
	for _, a := range u {
		if a[q] > least || a[q] < -least {
			return false
		}
	}
	return true
}

// days is the number of units of a known day that have any of the quantities.
func (u units) days(of ...quantity) int {
	n := 0
	for day, a := range u {
		for _, q := range of {
			if day != "" && a[q] > least {
				n++
				break
			}
		}
	}
	return n
}

// heap is what stands in one cell, by trip and by day.
type heap struct {
	byTrip, byDay units
	sum           amounts
}

func newHeap() heap { return heap{byTrip: units{}, byDay: units{}} }

// put adds a piece; with sign -1 it is taken off.
func (h *heap) put(p Piece, sign float64) {
	a := amountsOf(p)
	h.byTrip.add(p.Start, a, sign)
	h.byDay.add(p.Day, a, sign)
	for q := range a {
		h.sum[q] += sign * a[q]
	}
}

func (h *heap) take(o heap) {
	for day, a := range o.byTrip {
		h.byTrip.add(day, a, 1)
	}
	for day, a := range o.byDay {
		h.byDay.add(day, a, 1)
	}
	for q := range o.sum {
		h.sum[q] += o.sum[q]
	}
}

// safe tells whether the cell's figure of q shows no single trip or day.
func (h heap) safe(q quantity) bool { return h.within(q, h.sum[q]) }

// within is safe where no more than x is known of q.
func (h heap) within(q quantity, x float64) bool {
	return h.byTrip.spread(q, x) && h.byDay.spread(q, x)
}

func (h heap) nothing(q quantity) bool { return h.byDay.nothing(q) && h.byTrip.nothing(q) }

// stands tells whether the cell may be shown at all: three trips on three days with what
// the table counts by, and that shows none of them.
func (h heap) stands(by ...quantity) bool {
	if h.byTrip.days(by...) < MinTrips || h.byDay.days(by...) < MinTrips {
		return false
	}
	for _, q := range by {
		if q != afloat && !h.nothing(q) && !h.safe(q) {
			return false
		}
	}
	return true
}
