// Package estimate says what a fish weighed: from a scale, from the boat's own
// coefficient, from length and girth, and from length alone.
//
// It is pure: no file, no clock, no database. Two embedded tables hold what is
// published, one row a relation and one row a conversion, each with its source
// and with how the row was verified:
//
//	relations.csv    W = a L^b by species, sex, stock and ocean
//	conversions.csv  one length kind to another, and dressed weights to round
//
// Methods, best first (Weigh returns them in this order):
//
//  1. A scale, certified before dock. A gutted or dressed weight is converted to
//     round by a published factor; without one the scale gives no round weight. A
//     bled weight without one stands as read, and says so.
//  2. The boat's own coefficient K in W = K L G^2: the geometric mean over its
//     fish with tape and scale, shrunk towards the common constant where the fish
//     are few, judged by leave-one-out error (FitOwn). Fish whose measures are doubted
//     (Measures.Doubts) are in no fit.
//  3. Length and girth, W(lb) = L(in) G(in)^2 / 800: common practice, older than
//     any test of it. Ault and Luo (2013), Fisheries Research 139:110-117, found
//     it more than 15 % low on over 1,100 tarpon.
//  4. Length alone, by the published relations of the species.
//
// An interval is a 90 % prediction interval for one fish. It is given only where
// a spread is known: the boat's own pairs, or a published residual standard
// deviation on the log scale. That of an own coefficient allows for its having been
// chosen on the fish that it is fitted to (ownSpread). r2 is no such spread, so most published relations
// carry no interval until five of the boat's own fish have judged them, and the
// notes say so.
//
// Every tape weight is a median, exp of a fitted line or of a mean of logs: half of
// such fish are heavier. The factor exp(s^2/2) from the median to the mean (Sprugel
// 1983, Ecology 64:209-210) is not applied: one fish is weighed here, not a catch,
// and at the usual spread of 0.08 it would add 0.3 %. A relation that its source
// calls bias-corrected gives a mean as it stands.
//
// Units are centimetres and kilograms throughout; a zero means "not logged".
package estimate
