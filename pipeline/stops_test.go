package pipeline

import (
	"os"
	"path/filepath"
	"testing"
)

// TestStops holds that what a boat stopped in a stretch is no hours of it, but that a strike near its end is of it all
// the same, and that a stretch on a row of two days ends on the second of them.
func TestStops(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log.csv")
	log := "Trip,Date,In,Out,Stopped min,Lines,Knots\n1,22/8/26,07:00,11:00,90,4,6.5\n2,24/8/26,07:10,12:10,,4,7\n" +
		"3,27-28/8/26,17:00,10:00,600,4,6.5\n4,30/8/26,06:50,11:50,30,4,7\n\n\nTrip,Time,Lure,Fish,Result\n" +
		"1,10:40,blue plug,wahoo,landed\n2,07:40,blue plug,wahoo,lost\n3,18:20,pink squid,mahi,landed\n" +
		"3,09:15,cedar plug,tuna,landed\n4,11:45,cedar plug,tuna,landed\n4,12:30,cedar plug,tuna,landed\n"
	if err := os.WriteFile(path, []byte(log), 0o644); err != nil {
		t.Fatal(err)
	}
	s := openSeason(t)
	r, err := s.Load(t.Context(), []string{path})
	if err != nil {
		t.Fatal(err)
	}
	if len(r[0].Questions) > 0 {
		t.Errorf("asked: %+v", r[0].Questions)
	}
	for query, want := range map[string]float64{"SELECT sum(hours) FROM leg": 19,
		"SELECT count(*) FROM strike WHERE leg_id IS NOT NULL":                               5,
		"SELECT date_part('hour', max(end_at)) FROM leg WHERE start_at::DATE = '2026-08-27'": 10} {
		if got := totalOf(t, s, query); got != want {
			t.Errorf("%s: %v, expected %v", query, got, want)
		}
	}
}
