package bundle

import (
	"fmt"
	"io"
	"reflect"
	"strconv"
	"strings"
	"text/tabwriter"
)

// headings say what each table shows, in the words of the list.
var headings = map[string]string{
	"season":   "The season",
	"months":   "By month",
	"speeds":   "By speed over ground, kn",
	"lures":    "By weight of the lure, g",
	"species":  "Fish by species (FAO ASFIS codes)",
	"sizes":    "Fish by round weight, kg",
	"heaviest": "Single fish, the heaviest of each list",
	"people":   "Names",
}

// List writes all that a season shares, figure by figure, to be read before it
// leaves the boat.
func List(w io.Writer, s Season) error {
	t := tabwriter.NewWriter(w, 0, 4, 2, ' ', 0)
	fmt.Fprintf(t, "What leaves the boat, as boat %s. This is all of it.\n", s.ID)
	if s.Open > 0 {
		fmt.Fprintf(t, "Questions about the logs that are open: %d. The club's page says that these figures may "+
			"change.\n", s.Open)
	}
	total := []Total{s.Total}
	for _, p := range s.parts(&total) {
		rows := reflect.ValueOf(p.rows).Elem()
		fmt.Fprintf(t, "\n%s\n", headings[p.name])
		if rows.Len() == 0 {
			fmt.Fprintln(t, "  nothing")
			continue
		}
		fmt.Fprintln(t, "  "+strings.Join(names(rows.Type().Elem()), "\t"))
		for i := range rows.Len() {
			fmt.Fprintln(t, "  "+strings.Join(values(rows.Index(i)), "\t"))
		}
	}
	fmt.Fprintf(t, "\nNo position, no note, no file name, no lure's name and no day is in it. No row but the single "+
		"fish is of fewer than %d trips on\n"+
		"%d days with effort; levels of fewer stand together as %q. A figure of which one trip or day is more than "+
		"four fifths, also\n"+
		"when any other is taken off, is not shown (-), nor is one that is nothing at all, nor what would give it "+
		"away by subtraction.\n"+
		"A later summary of the same season is held against this one before it is written.\n", MinTrips, MinTrips,
		Merged)
	return t.Flush()
}

func names(row reflect.Type) []string {
	var out []string
	for i := range row.NumField() {
		out = append(out, row.Field(i).Tag.Get("json"))
	}
	return out
}

func values(row reflect.Value) []string {
	var out []string
	for i := range row.NumField() {
		v := row.Field(i)
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				out = append(out, "-")
				continue
			}
			v = v.Elem()
		}
		if v.Kind() == reflect.Float64 {
			out = append(out, strconv.FormatFloat(v.Float(), 'f', -1, 64))
			continue
		}
		out = append(out, fmt.Sprint(v.Interface()))
	}
	return out
}
