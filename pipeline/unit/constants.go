package unit

// Exact by definition: the pound, inch, yard and mile by the international yard and pound agreement of
// 1959, the nautical mile and the knot as in NIST Special Publication 811, appendix B.
const (
	KgPerPound    = 0.45359237
	GramsPerOunce = 1000 * KgPerPound / 16
	CmPerInch     = 2.54
	MetresPerYard = 0.9144
	MetresPerMile = 1609.344
	MetresPerNmi  = 1852
	KnotMS        = MetresPerNmi / 3600.0 // metres per second of a knot
	CelsiusPerF   = 5.0 / 9               // of a difference
	FreezingF     = 32
)
