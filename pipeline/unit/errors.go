package unit

import "errors"

// Errors that the parsers return, alone or wrapped; match them with errors.Is.
var (
	// ErrNotNumber: ParseNumber and ParseQuantity, for text that is no number.
	ErrNotNumber = errors.New("not a number: expected digits, like 12.5")
	// ErrTooLarge: ParseNumber, ParseQuantity and Convert, for a value beyond float64.
	ErrTooLarge = errors.New("number too large")
	// ErrAmbiguousMark: ParseNumber and ParseQuantity, for "1,234" in a file whose decimal mark is not known.
	ErrAmbiguousMark = errors.New("decimal mark unclear: a number like 1,234 may be 1234 or 1.234")

	// ErrNotQuantity: ParseQuantity, for text that is not a value of the wanted dimension.
	ErrNotQuantity = errors.New("not a quantity")
	// ErrNoUnit: ParseQuantity, when neither the cell nor the caller names a unit.
	ErrNoUnit = errors.New("no unit: write it with the number or in the column's header")
	// ErrUnknownUnit: Convert, for a Unit that is none of the package's.
	ErrUnknownUnit = errors.New("unknown unit")
	// ErrAmbiguousUnit: ParseQuantity, for a spelling with two meanings at sea.
	ErrAmbiguousUnit = errors.New("unit unclear: write nmi for nautical miles, mi for land miles, m for metres")
	// ErrDimension: Convert and ParseQuantity, for a unit of another dimension.
	ErrDimension = errors.New("unit of another kind")
	// ErrApproximate: ParseQuantity, for "~12", "approx 12", "12?" and the like.
	ErrApproximate = errors.New("a guess, not a measurement: write one plain number, like 187 lb, and the doubt in " +
		"the notes")
	// ErrRange: ParseQuantity, for "12-14".
	ErrRange = errors.New("two numbers: write one, like 12.5 kn")

	// ErrNotDate: ParseDate, for text that is no date.
	ErrNotDate = errors.New("not a date: expected one like 2026-06-25 or 25 Jun 2026")
	// ErrAmbiguousDate: ParseDate and ParseMoment, for "03/04/2026" in a file whose order is not known.
	ErrAmbiguousDate = errors.New("day and month unclear: a date like 03/04/2026 may be 3 April or March 4")
	// ErrDateOrder: ParseDate and ParseMoment, for "25/06/2026" in a month-first file and the reverse.
	ErrDateOrder = errors.New("day and month stand the other way round than in the rest of the file")
	// ErrNoSuchDay: ParseDate and ParseMoment, for 31 February and the like.
	ErrNoSuchDay = errors.New("no such day in the calendar")
	// ErrYear: ParseDate, ParseMoment and FromSerial, for a year outside FirstYear to LastYear.
	ErrYear = errors.New("year outside 1950 to 2100")
	// ErrNotMoment: ParseMoment, for text that is neither date nor clock time.
	ErrNotMoment = errors.New("not a date or time: expected one like 2026-06-25 22:30, 22:30 or 10:30 pm")
	// ErrSerial: FromSerial, for a number that is neither a clock time nor a date.
	ErrSerial = errors.New("not a date or time: the cell holds a plain number")
)

// reason is an error whose text stands alone and whose kind is a sentinel, so that
// a captain reads one phrase and code still has errors.Is.
type reason struct {
	kind error
	text string
}

func (r *reason) Error() string { return r.text }
func (r *reason) Unwrap() error { return r.kind }
