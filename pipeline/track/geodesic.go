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
// in degrees: Vincenty's inverse formula (Survey Review 23, 1975). Near
// antipodes, where that does not converge, it is the shortest way over the
// circle of points a quarter of the sphere away, from each of which the formula
// converges to both ends: every path crosses that circle.
func Distance(lat1, lon1, lat2, lon2 float64) float64 {
	if d, ok := vincenty(lat1, lon1, lat2, lon2); ok {
		return d
	}
	over := func(azimuth float64) float64 {
		lat, lon := quarter(lat1, lon1, azimuth)
		d1, ok1 := vincenty(lat1, lon1, lat, lon)
		d2, ok2 := vincenty(lat, lon, lat2, lon2)
		if !ok1 || !ok2 {
			return math.Inf(1)
		}
		return d1 + d2
	}
	const steps = 72
	best, least := 0.0, math.Inf(1)
	for i := range steps {
		azimuth := 2 * math.Pi * float64(i) / steps
		if d := over(azimuth); d < least {
			best, least = azimuth, d
		}
	}
	return minimum(over, best-2*math.Pi/steps, best+2*math.Pi/steps)
}

// minimum of f between lo and hi, by golden section.
func minimum(f func(float64) float64, lo, hi float64) float64 {
	const golden = 0.6180339887498949
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := f(a), f(b)
	for hi-lo > 1e-9 {
		if fa < fb {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = f(b)
		}
	}
	return min(fa, fb)
}

// quarter is the point a quarter of the sphere from another on a bearing.
func quarter(lat, lon, azimuth float64) (lat2, lon2 float64) {
	sin, cos := math.Sincos(lat * radian)
	lat2 = math.Asin(cos * math.Cos(azimuth))
	return lat2 / radian, lon + math.Atan2(math.Sin(azimuth)*cos, -sin*math.Sin(lat2))/radian
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
			return arc(cos2A, sigma, sinS, cosS, cos2M), true
		}
		lambda = next
	}
	return 0, false
}

// arc is Vincenty's length of a geodesic from its spherical arc sigma.
func arc(cos2A, sigma, sinS, cosS, cos2M float64) float64 {
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
