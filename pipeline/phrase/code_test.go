package phrase

import (
	"slices"
	"strconv"
	"strings"
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

// TestCodedFish holds that a code between a count and a fate names a fish, and that no other word there does.
func TestCodedFish(t *testing.T) {
	for text, want := range map[string]string{
		"1 missed; 2 QX in the box; 1 QX released": "QX 2, QX 1", "2 hats lost": "", "1 QX": "", "2 pals on board": "",
	} {
		got := ""
		for _, f := range FishList(text, Defaults{}) {
			if f.Name != "" {
				got += ", " + f.Name + " " + strconv.Itoa(f.N)
			}
		}
		if got = strings.TrimPrefix(got, ", "); got != want {
			t.Errorf("%q: %q, expected %q", text, got, want)
		}
	}
}
