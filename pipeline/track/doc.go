// Package track reads a boat's track - GPX 1.1, NMEA 0183, CSV, packed or not -
// and turns its fixes into pieces of ten seconds with speed over ground, course
// and rate of turn.
//
// Each tells the format and gives fixes one by one; Cut puts them in order, drops
// what cannot be, parts the track at gaps and cuts it into pieces. Both hold a few
// minutes of track at a time, whatever the file's length, but for fixes far out of
// order, which wait for the end of their segment.
//
// A table is told from a sheet of a log by what stands in it (sniff.go, oflog.go):
// most rows have a time and a place, and nothing speaks of lines or fish.
//
// # Speed over ground
//
// Position differences over a second are noise: with 3 m of error they are off
// by 8 kn. The speed of a piece is the median, over all fixes within 20 s of its
// middle, of the distance to the fix 20 s later over the time between; a chord
// is lengthened to its arc by the rate of turn. Where fixes are 10 to 30 s apart
// the 20 s become up to three times their spacing, and where the receiver is noisy
// up to a minute. Where fixes are more than 30 s apart the three ways about the
// piece stand for it; more than 90 s, the way about it alone. Medians of slopes:
// Theil (1950), Sen (1968).
//
// Where fixes are 3 to 30 s apart and the noise would leave a speed worse than 0.15 kn, an
// arc of a circle is laid through all of them by least squares (arc.go). Its window is
// widened, to three minutes either way at most, as long as what the arc leaves over is the
// track's own noise and the speed does not change in it. TestAccuracy prints how good
// all that is. What the fixes cannot tell is counted: Summary.Loose, Noisy, Astray.
//
// Where fixes are missing while the boat turned or changed its speed, nothing is
// known of the way run, and no piece tells of it.
//
// Distances are geodesics on WGS84 (Vincenty 1975). Within a window a plane with
// the ellipsoid's radii of curvature stands in for it, equal to 1e-6 over a
// nautical mile.
package track
