package pipeline

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// A day: out at 20 kn, 40 minutes at 9, a minute's stop for a strike, 20 more at
// 9, 30 at 13, ten at 9 (too short), home at 20.
func TestProposeLegs(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,lat,lon\n")
	at, lat := time.Date(2026, 2, 13, 17, 30, 10, 0, time.UTC), -37.0
	for _, s := range []struct{ minutes, kn float64 }{{30, 20}, {40, 9}, {0.5, 0}, {20, 9},
		{30, 13}, {10, 9}, {30, 20}} {
		for range int(s.minutes * 30) {
			fmt.Fprintf(&b, "%s,%.7f,176.2\n", at.Format(time.RFC3339), lat)
			at, lat = at.Add(2*time.Second), lat+s.kn*2*1852/3600/110976
		}
	}
	file := filepath.Join(t.TempDir(), "day.csv")
	if err := os.WriteFile(file, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	n, _, err := ProposeLegs(context.Background(), Config{Zone: "UTC+13"}, []string{file}, Trolling{}, &out)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, r := range rows[1:] {
		got = append(got, strings.Join(r[:4], " "))
	}
	want := []string{"2026-02-14 07:01 08:00 9.0", "2026-02-14 08:01 08:30 13.0"}
	if n != 2 || !slices.Equal(got, want) {
		t.Errorf("%d legs: %q, want %q", n, got, want)
	}
	if math.Abs(lat+37) > 2 {
		t.Fatal("the boat is elsewhere")
	}
}
