package unit

import "strings"

// ParseRange reads two quantities with a dash or "to" between them, such as
// "7-8 kn" or "6.5 to 7": the lower and the upper end, both in one unit. A unit
// behind the upper end is the lower's too; mark and fallback are as for
// [ParseQuantity]. Text that is no range, or one whose ends do not rise from a
// number that is not negative, is ErrNotQuantity; other errors are those of
// ParseQuantity.
func ParseRange(text string, dim Dimension, fallback Unit, mark Mark) (lo, hi Quantity, err error) {
	from, to, ok := cutRange(strings.TrimSpace(text))
	if !ok {
		return lo, hi, expected(dim)
	}
	if hi, err = ParseQuantity(to, dim, fallback, mark); err != nil {
		return lo, hi, err
	}
	if lo, err = ParseQuantity(from, dim, hi.Unit, mark); err != nil {
		return lo, hi, err
	}
	if lo.Value, err = lo.In(hi.Unit); err != nil {
		return lo, hi, err
	}
	lo.Unit, hi.Stated = hi.Unit, hi.Stated || lo.Stated
	if lo.Value < 0 || lo.Value >= hi.Value {
		return lo, hi, expected(dim)
	}
	return lo, hi, nil
}

func cutRange(s string) (from, to string, ok bool) {
	for _, sep := range []string{" to ", "–", "-"} {
		if strings.Count(s, sep) == 1 {
			from, to, ok = strings.Cut(s, sep)
			return strings.TrimSpace(from), strings.TrimSpace(to), ok
		}
	}
	return "", "", false
}
