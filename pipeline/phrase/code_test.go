package phrase

import (
	"slices"
	"testing"
)

// TestCodesBehind holds which letters behind a fish are a code that nobody explains.
func TestCodesBehind(t *testing.T) {
	for text, want := range map[string][]string{
		"albacore 31 in GB, bonito": {"GB"}, "2 wahoo QX; mahi 28in QX": {"QX", "QX"}, "mahi 28 in FL": nil,
		"wahoo 44 in M": nil, "wahoo T&R, mahi": nil, "GB for wahoo": nil, "wahoo on GB lure": nil, "WAHOO, MAHI": nil,
		"mahi released": nil, "": nil,
	} {
		if got := CodesBehind(text); !slices.Equal(got, want) {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}
