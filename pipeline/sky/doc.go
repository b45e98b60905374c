// Package sky says where the sun and the moon stand: sunrise and sunset, the
// light of an instant or of a stretch of time, and the moon's phase.
//
//	sun.go    declination, equation of time, rising and setting
//	light.go  dawn, day, dusk, night
//	moon.go   illuminated share and phase
//
// It imports nothing of ours. Instants are in UTC, latitudes and longitudes in
// degrees, north and east positive.
//
// The sun follows the equations of NOAA's Global Monitoring Laboratory, which
// are the low-precision ones of Meeus 1998, Astronomical Algorithms, 2nd ed.,
// chapter 25; the moon follows Meeus, chapter 48, the formula for the phase
// angle without positions. Universal Time stands for dynamical time: the
// difference, a little over a minute, moves the sun by 0.001 degrees.
package sky
