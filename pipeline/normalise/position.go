package normalise

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"wakeledger/pipeline/entry"
	"wakeledger/pipeline/unit"
)

func latitudeCell(r *Reader, t *target, text string) error {
	return r.degrees(t, text, 90, "a latitude", "NS")
}

func longitudeCell(r *Reader, t *target, text string) error {
	return r.degrees(t, text, 180, "a longitude", "EW")
}

// headedNegative tells a heading like "Lon W", whose cells are degrees west (or
// south) without a sign.
func headedNegative(parse, heading string) bool {
	h := plain(heading)
	return parse == "latitude" && strings.HasSuffix(h, " s") || parse == "longitude" && strings.HasSuffix(h, " w")
}

func (r *Reader) degrees(t *target, text string, limit float64, what, letters string) error {
	v, ok := parseDegrees(text, letters, r.mark())
	if !ok || math.Abs(v) > limit {
		return errors.New("not " + what + ": expected degrees such as " + example(letters))
	}
	if v > 0 && t.negative {
		v = -v
	}
	r.values[t.field] = entry.OfReal(v)
	return nil
}

// positionCell reads a latitude and a longitude in one cell.
func positionCell(r *Reader, t *target, text string) error {
	north, east, ok := splitPosition(text)
	if !ok {
		return errors.New("not a position: expected a latitude and a longitude such as 32 15.2 N, 117 30.0 W")
	}
	if err := r.degrees(t, north, 90, "a latitude", "NS"); err != nil {
		return err
	}
	lat := r.values[t.field]
	lon := &target{field: r.index["lon"]}
	if err := r.degrees(lon, east, 180, "a longitude", "EW"); err != nil {
		r.values[t.field] = entry.Value{}
		return err
	}
	r.values[t.field] = lat
	return nil
}

// splitPosition parts a position's latitude from its longitude: at the letters
// of the hemispheres, before or behind their numbers, or at what stands between.
func splitPosition(text string) (lat, lon string, ok bool) {
	s := strings.ToUpper(text)
	i, j := strings.IndexAny(s, "NS"), strings.IndexAny(s, "EW")
	switch {
	case i == 0 && j > 0:
		lat, lon = s[:j], s[j:]
	case i > 0 && j > i:
		lat, lon = s[:i+1], s[i+1:]
	case i < 0 && j < 0:
		for _, sep := range []string{";", "/", ", ", ",", " "} {
			if strings.Count(s, sep) == 1 {
				lat, lon, _ = strings.Cut(s, sep)
				break
			}
		}
	}
	lat, lon = strings.Trim(lat, " ,;/"), strings.Trim(lon, " ,;/")
	return lat, lon, lat != "" && lon != ""
}

func example(letters string) string {
	if letters == "NS" {
		return "32.2533 or 32 15.2 N"
	}
	return "-117.5 or 117 30.0 W"
}

// parseDegrees reads decimal degrees, or degrees with minutes and maybe seconds,
// with a sign or one of the two letters (north or east first) at either end.
func parseDegrees(text, letters string, mark unit.Mark) (float64, bool) {
	if c := text[len(text)-1]; c >= '0' && c <= '9' && text[0] <= '9' {
		if v, err := strconv.ParseFloat(text, 64); err == nil {
			return v, !math.IsInf(v, 0)
		}
	}
	s := strings.ToUpper(strings.TrimSpace(text))
	sign := 1.0
	for i, l := range []string{letters[:1], letters[1:]} {
		if strings.HasPrefix(s, l) || strings.HasSuffix(s, l) {
			s = strings.TrimSpace(strings.Trim(s, l))
			if i == 1 {
				sign = -1
			}
			break
		}
	}
	if strings.HasPrefix(s, "-") || strings.HasPrefix(s, "\u2212") {
		s = strings.TrimLeft(s, "-\u2212")
		sign = -sign
	}
	parts := strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" \u00a0°º'\"’”′″:", r) })
	if len(parts) == 0 || len(parts) > 3 {
		return 0, false
	}
	v, scale := 0.0, 1.0
	for i, p := range parts {
		if mark == unit.MarkComma || len(parts) > 1 { // 35,4' are minutes
			p = strings.Replace(p, ",", ".", 1)
		}
		x, err := strconv.ParseFloat(p, 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x, 0) || x < 0 || (i > 0 && x >= 60) {
			return 0, false
		}
		v += x / scale
		scale *= 60
	}
	return sign * v, true
}
