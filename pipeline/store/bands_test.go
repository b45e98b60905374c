package store

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"
)

// Other classes stand in the place of the stored ones while f runs, and no longer,
// also where it fails; factors that are not named keep theirs.
func TestWithBands(t *testing.T) {
	ctx := context.Background()
	db := open(t, "")
	was := []Band{{"speed-band", 0, math.Inf(1), "all"}, {"setback", 0, 50, "[0, 50)"},
		{"setback", 50, math.Inf(1), "50 and up"}}
	if err := db.putBands(ctx, was); err != nil {
		t.Fatal(err)
	}
	levels := func() string {
		var all string
		if err := db.conn.QueryRowContext(ctx, "SELECT string_agg(factor || ' ' || level, '; ' ORDER BY factor || ' "+
			"' || level) FROM band").Scan(&all); err != nil {
			t.Fatal(err)
		}
		return all
	}
	stop := errors.New("stop")
	err := db.WithBands(ctx, []Band{{"setback", 0, 45.72, "0 to 50 yd"},
		{"setback", 45.72, math.Inf(1), "50 yd or more"}}, func() error {
		if got := levels(); got != "setback 0 to 50 yd; setback 50 yd or more; speed-band all" {
			t.Errorf("levels %q", got)
		}
		return stop
	})
	if !errors.Is(err, stop) {
		t.Errorf("error %v", err)
	}
	if got := levels(); got != "setback 50 and up; setback [0, 50); speed-band all" {
		t.Errorf("afterwards levels %q", got)
	}
	if got, err := db.Bands(ctx); err != nil || !reflect.DeepEqual(got, was) {
		t.Errorf("%+v, %v", got, err)
	}
}
