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
//     round by a published factor; without one the scale gives no round weight.
//  2. The boat's own coefficient K in W = K L G^2: the geometric mean over its
//     fish with tape and scale, judged by leave-one-out error (FitOwn).
//  3. Length and girth, W(lb) = L(in) G(in)^2 / 800: common practice, older than
//     any test of it. Ault and Luo (2013), Fisheries Research 139:110-117, found
//     it more than 15 % low on over 1,100 tarpon.
//  4. Length alone, by the published relations of the species.
//
// An interval is a 90 % prediction interval for one fish. It is given only where
// a spread is known: the boat's own pairs, or a published residual standard
// deviation on the log scale. r2 is no such spread, so most published relations
// carry no interval, and the notes say so.
//
// Units are centimetres and kilograms throughout; a zero means "not logged".
package estimate
