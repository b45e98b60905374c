package pipeline

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// A pattern stands for the files that fit it, as Windows takes names: capital letters count as
// small ones, and brackets are letters like others.
func TestFitting(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "Logs [2026]")
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"Törn 1.CSV", "törn 2.csv", "Trips [late].xlsx", "Trips l.xlsx"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for pattern, want := range map[string][]string{
		"TÖRN*.csv":         {"Törn 1.CSV", "törn 2.csv"},
		"trips [late].?lsx": {"Trips [late].xlsx"},
		"törn ?.*":          {"Törn 1.CSV", "törn 2.csv"},
	} {
		for i := range want {
			want[i] = filepath.Join(dir, want[i])
		}
		if got, err := fitting(filepath.Join(dir, pattern)); err != nil || !slices.Equal(got, want) {
			t.Errorf("%s: %v, %v, want %v", pattern, got, err, want)
		}
	}
	for _, pattern := range []string{"*.ods", filepath.Join("none", "*.csv")} {
		_, err := fitting(filepath.Join(dir, pattern))
		if want := filepath.Join(dir, pattern) + ": there is no file that fits this name"; err == nil ||
			err.Error() != want {
			t.Errorf("it says %v, want %s", err, want)
		}
	}
}
