package terminal

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"wakeledger/pipeline/unit"
)

// Column is one of a table. It is written "rate", "rate_lo..rate_hi" (one column of two
// ends), "share%" (a share of 1 as per cent), each with "|heading" where its name does not
// do as one.
type Column struct {
	names   []string // one field or two, by their json tags
	heading string   // "" for one made of the name
	percent bool
}

func parse(spec string) Column {
	var c Column
	spec, c.heading, _ = strings.Cut(spec, "|")
	spec, c.percent = strings.CutSuffix(spec, "%")
	c.names = strings.Split(spec, "..")
	return c
}

// Names are the fields of a row, by their json tags, in order.
func Names(rows any) []string {
	t := reflect.TypeOf(rows).Elem()
	names := make([]string, t.NumField())
	for i := range names {
		names[i] = t.Field(i).Tag.Get("json")
	}
	return names
}

// measure is a unit that ends the name of a column, and what it is shown in by US units:
// the pound, the inch and the yard are exact (international yard and pound agreement, 1959).
type measure struct {
	ending, unit, us string
	perUS            float64
}

var measures = []measure{
	{"_kg", "kg", "lb", unit.KgPerPound}, {"_cm", "cm", "in", unit.CmPerInch}, {"_m", "m", "yd", unit.MetresPerYard},
}

// unitOf is the unit of a column and how many of it the unit shown has; "" and 1 where
// nothing is converted.
func unitOf(name string, us bool) (unit string, per float64) {
	for _, m := range measures {
		switch {
		case !strings.HasSuffix(name, m.ending):
		case us:
			return m.us, m.perUS
		default:
			return m.unit, 1
		}
	}
	return "", 1
}

// head is a column's heading: its name in words, with the unit shown.
func (c Column) head(us bool) string {
	name := c.names[0]
	unit, _ := unitOf(name, us)
	words := c.heading
	if words == "" {
		for _, m := range measures {
			name = strings.TrimSuffix(name, m.ending)
		}
		words = strings.ReplaceAll(name, "_", " ")
	}
	if unit != "" {
		words += ", " + unit
	}
	return words
}

// numeric reports whether a column stands to the right.
func (c Column) numeric(t reflect.Type) bool {
	if len(c.names) > 1 {
		return false
	}
	k := kindOf(field(t, c.names[0]).Type)
	return k == reflect.Float64 || k == reflect.Int64 || k == reflect.Int
}

// breakable reports whether a cell of the column may go on in a line below.
func (c Column) breakable(t reflect.Type) bool {
	if len(c.names) > 1 {
		return false
	}
	k := kindOf(field(t, c.names[0]).Type)
	return k == reflect.String || k == reflect.Slice
}

func kindOf(t reflect.Type) reflect.Kind {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return t.Kind()
}

// field is that of a json tag; a name that is none is a fault of the program.
func field(t reflect.Type, name string) reflect.StructField {
	for i := range t.NumField() {
		if t.Field(i).Tag.Get("json") == name {
			return t.Field(i)
		}
	}
	panic("terminal: " + t.Name() + " has no column " + name)
}

// cell is the text of a column in a row; what is not known is "".
func (c Column) cell(row reflect.Value, v View) string {
	texts := make([]string, len(c.names))
	for i, name := range c.names {
		texts[i] = c.one(row, name, v)
	}
	if len(texts) == 1 {
		return texts[0]
	}
	lo, hi := strings.TrimSuffix(texts[0], " %"), texts[1]
	switch {
	case lo == "" && hi == "":
		return ""
	case hi == "":
		return lo + " and up"
	case lo == "":
		return "up to " + hi
	}
	return lo + " to " + hi
}

func (c Column) one(row reflect.Value, name string, v View) string {
	f := row.FieldByIndex(field(row.Type(), name).Index)
	if f.Kind() == reflect.Pointer {
		if f.IsNil() {
			return ""
		}
		f = f.Elem()
	}
	switch f.Kind() {
	case reflect.Bool:
		if f.Bool() {
			return "yes"
		}
		return "no"
	case reflect.Float64:
		if strings.HasSuffix(name, "_deg") {
			return strconv.FormatFloat(f.Float(), 'f', -1, 64)
		}
		if c.percent {
			return decimals(100*f.Float(), 1, 10) + " %"
		}
		return number(name, f.Float(), v.US)
	}
	text := fmt.Sprint(f.Interface())
	if v.Text != nil && text != "" {
		text = v.Text(name, text, func(other string) string {
			return Column{names: []string{other}}.one(row, other, View{})
		})
	}
	return text
}

// number is a number of a column: measures, speeds and hours to a tenth, ends of classes as
// they are, others to three digits that mean something.
func number(name string, x float64, us bool) string {
	unit, per := unitOf(name, us)
	x /= per
	switch {
	case strings.HasPrefix(name, "class_") || strings.HasPrefix(name, "gap_"):
		return strconv.FormatFloat(math.Round(10*x)/10, 'f', -1, 64)
	case unit != "" || strings.HasSuffix(name, "_kn") || strings.HasSuffix(name, "hours"):
		return strconv.FormatFloat(x, 'f', 1, 64)
	case strings.HasSuffix(name, "_nmi") || name == "minutes":
		return strconv.FormatFloat(x, 'f', 0, 64)
	}
	if name == "relation_a" {
		return strconv.FormatFloat(x, 'g', 4, 64)
	}
	return digits(x, 3)
}

// decimals is a number with so many digits behind the point, and none from the bound on.
func decimals(x float64, behind int, bound float64) string {
	if math.Abs(x) >= bound || x == 0 {
		behind = 0
	}
	return strconv.FormatFloat(x, 'f', behind, 64)
}

// digits is a number with so many digits that mean something, all of those before the
// point and at most three behind it.
func digits(x float64, n int) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	if x > 0 && x < 0.0005 {
		return "<0.001"
	}
	behind := min(max(n-1-int(math.Floor(math.Log10(math.Abs(x)))), 0), 3)
	return strconv.FormatFloat(x, 'f', behind, 64)
}
