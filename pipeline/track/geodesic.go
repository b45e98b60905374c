package track

import "math"

// WGS84 (NIMA TR8350.2).
const (
	semiMajor  = 6378137.0
	flattening = 1 / 298.257223563
	semiMinor  = semiMajor * (1 - flattening)
)

const radian = math.Pi / 180

// Distance is the length in metres of the geodesic on WGS84 between two points
// in degrees: Vincenty's inverse formula (Survey Review 23, 1975). Near antipodes,
// where that does not converge and no boat comes between two fixes, it is the great
// circle on a sphere of the mean radius, off by 0.5 % at most.
func Distance(lat1, lon1, lat2, lon2 float64) float64 {
	if d, ok := vincenty(lat1, lon1, lat2, lon2); ok {
		return d
	}
	sin1, cos1 := math.Sincos(lat1 * radian)
	sin2, cos2 := math.Sincos(lat2 * radian)
	cos := sin1*sin2 + cos1*cos2*math.Cos((lon2-lon1)*radian)
	return (2*semiMajor + semiMinor) / 3 * math.Acos(max(-1, min(1, cos)))
}

// vincenty is Vincenty's inverse formula; ok is false where it does not converge.
func vincenty(lat1, lon1, lat2, lon2 float64) (metres float64, ok bool) {
	sinU1, cosU1, h1 := reduced(lat1)
	sinU2, cosU2, h2 := reduced(lat2)
	// the sine of U2 - U1, without the loss of taking two near angles' sines apart
	sinU := (1 - flattening) * math.Sin((lat2-lat1)*radian) / (h1 * h2)
	l := math.Remainder(lon2-lon1, 360) * radian
	lambda := l
	for range 100 {
		sinL, cosL := math.Sincos(lambda)
		half := math.Sin(lambda / 2)
		sinS := math.Hypot(cosU2*sinL, sinU+2*sinU1*cosU2*half*half)
		if sinS == 0 {
			return 0, cosL > 0
		}
		cosS := sinU1*sinU2 + cosU1*cosU2*cosL
		sigma := math.Atan2(sinS, cosS)
		sinA := cosU1 * cosU2 * sinL / sinS
		cos2A := 1 - sinA*sinA
		cos2M := 0.0
		if cos2A > 1e-15 { // else along the equator
			cos2M = cosS - 2*sinU1*sinU2/cos2A
		}
		c := flattening / 16 * cos2A * (4 + flattening*(4-3*cos2A))
		next := l + (1-c)*flattening*sinA*(sigma+c*sinS*(cos2M+c*cosS*(2*cos2M*cos2M-1)))
		if math.Abs(next) > math.Pi {
			return 0, false
		}
		if math.Abs(next-lambda) <= 1e-14*math.Abs(next) {
			return geodesic(cos2A, sigma, sinS, cosS, cos2M), true
		}
		lambda = next
	}
	return 0, false
}

// geodesic is Vincenty's length of a geodesic from its spherical arc sigma.
func geodesic(cos2A, sigma, sinS, cosS, cos2M float64) float64 {
	u2 := cos2A * (semiMajor*semiMajor - semiMinor*semiMinor) / (semiMinor * semiMinor)
	a := 1 + u2/16384*(4096+u2*(-768+u2*(320-175*u2)))
	b := u2 / 1024 * (256 + u2*(-128+u2*(74-47*u2)))
	delta := b * sinS * (cos2M + b/4*(cosS*(2*cos2M*cos2M-1)-b/6*cos2M*(4*sinS*sinS-3)*(4*cos2M*cos2M-3)))
	return semiMinor * a * (sigma - delta)
}

// reduced is the sine and cosine of the reduced latitude, and the cosine of the
// latitude over that.
func reduced(lat float64) (sin, cos, ratio float64) {
	s, c := math.Sincos(lat * radian)
	s *= 1 - flattening
	h := math.Hypot(s, c)
	return s / h, c / h, h
}

// plane maps positions near a latitude to metres east and north, by the radii
// of curvature there.
type plane struct{ lat, lon, east, north float64 }

func planeAt(lat, lon float64) plane {
	const e2 = flattening * (2 - flattening)
	sin, cos := math.Sincos(lat * radian)
	w := 1 - e2*sin*sin
	return plane{lat, lon, semiMajor / math.Sqrt(w) * cos * radian, semiMajor * (1 - e2) / (w * math.Sqrt(w)) * radian}
}

func (p plane) of(lat, lon float64) (x, y float64) {
	return math.Remainder(lon-p.lon, 360) * p.east, (lat - p.lat) * p.north
}
