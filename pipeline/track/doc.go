// Package track reads a boat's track - GPX 1.1, NMEA 0183, CSV, packed or not -
// and turns its fixes into pieces of ten seconds with speed over ground, course
// and rate of turn.
//
// Open tells the format and gives fixes one by one; a Cutter puts them in order,
// drops what cannot be, parts the track at gaps and cuts it into pieces. Both
// hold a few minutes of track at a time, whatever the file's length.
//
// # Speed over ground
//
// Position differences over a second are noise: with 3 m of error they are off
// by 8 kn. The speed of a piece is the median, over all fixes within 20 s of its
// middle, of the distance to the fix 20 s later over the time between; a chord
// is lengthened to its arc by the rate of turn. Where fixes are 10 to 30 s apart
// the 20 s become twice their spacing; where they are more than 30 s apart the
// geodesic between the two fixes about the piece's middle over the time between
// stands for all of it. Medians of slopes: Theil (1950), Sen (1968).
//
// Distances are geodesics on WGS84 (Vincenty 1975; near antipodes, where that
// does not converge, see Distance). Within a window a plane with the ellipsoid's
// radii of curvature stands in for it, equal to 1e-6 over a nautical mile.
package track
