package unit

import "math"

// Days from a spreadsheet's serials to Date's count.
const (
	serial1970 = 25569 // the 1900 system's serial of 1970-01-01, its fictitious 29 February 1900 counted
	shift1904  = 1462  // the 1904 system counts from 1904-01-01 as 0
	firstDated = 20000 // 1954-10-03; a smaller serial in a log is a slip or a plain number
	maxSerial  = 1e6   // far past LastYear, and well inside a Date
)

// FromSerial reads a date or time as a workbook stores it: days and fractions of a day,
// rounded to the second. Below 1 it is a time of day; from 1 to below 2 hours that passed
// midnight (1.0416667 is 25:00), up to 48 h; from 20000 a date, with a time if the fraction
// is half a second or more. All else is ErrSerial, a year outside the log's ErrYear.
//
// Serials of the 1900 system count a 29 February 1900 that never was (61 is 1900-03-01);
// it lies below 20000, so no date read here is touched by it. Serials of the 1904 system
// are 1462 less for the same day.
func FromSerial(v float64, date1904 bool) (Moment, error) {
	switch {
	case !(v >= 0) || v >= 2 && v < firstDated:
		return Moment{}, ErrSerial
	case v < 2:
		return Moment{Seconds: int(math.Round(v * secondsPerDay)), HasTime: true}, nil
	case v > maxSerial:
		return Moment{}, ErrYear
	}
	day, fraction := math.Modf(v)
	if date1904 {
		day += shift1904
	}
	seconds := int(math.Round(fraction * secondsPerDay))
	d := Date(day) - serial1970 + Date(seconds/secondsPerDay)
	if y, _, _ := d.Civil(); y < FirstYear || y > LastYear {
		return Moment{}, ErrYear
	}
	return Moment{Date: d, HasDate: true, Seconds: seconds % secondsPerDay, HasTime: seconds > 0}, nil
}
