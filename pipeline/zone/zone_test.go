package zone

import (
	"strings"
	"testing"
	"time"
)

func TestName(t *testing.T) {
	for text, want := range map[string]string{
		"UTC-9": "UTC-9", "utc+12": "UTC+12", "GMT-8": "UTC-8", "+05:30": "UTC+5:30", "UTC+0930": "UTC+9:30",
		"\u22129": "UTC-9", "Pacific/Auckland": "Pacific/Auckland", " UTC ": "UTC",
	} {
		got, err := Name(text)
		if err != nil || got != want {
			t.Errorf("%q: %q, %v; want %q", text, got, err, want)
			continue
		}
		if _, err := Load(got); err != nil {
			t.Errorf("%q cannot be loaded: %v", got, err)
		}
	}
	for _, text := range []string{"", "local", "Atlantis/Harbour", "UTC+15", "UTC-9:75", "9", "+"} {
		if got, err := Name(text); err == nil {
			t.Errorf("%q: %q, want an error", text, got)
		}
	}
}

// Letters that are an hour off all summer name the place that is meant, and their own
// offset (RFC 5322, section 4.3, for those of North America).
func TestLettersNameAPlace(t *testing.T) {
	for text, want := range map[string]string{
		"EST": "America/New_York, or the offset itself, UTC-5", "mst": "America/Denver, or the offset itself, UTC-7",
		"NZST": "Pacific/Auckland, or the offset itself, UTC+12",
		"PDT":  "America/Los_Angeles, or the offset itself, UTC-7",
	} {
		if got, err := Name(text); err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("%q: %q, %v, want an error that ends in %s", text, got, err, want)
		}
	}
	for short, place := range letters {
		if offsetAs(short, place) == "" {
			t.Errorf("no clock of %s goes by %s", place, short)
		}
		loc, err := time.LoadLocation(place)
		if err != nil {
			t.Fatal(err)
		}
		_, winter := time.Date(2026, 1, 1, 0, 0, 0, 0, loc).Zone()
		if _, summer := time.Date(2026, 7, 1, 0, 0, 0, 0, loc).Zone(); winter == summer {
			t.Errorf("%s changes no clocks", place)
		}
	}
}

func TestLoad(t *testing.T) {
	loc, err := Load("UTC-9")
	if err != nil {
		t.Fatal(err)
	}
	if _, offset := time.Date(2026, 7, 4, 0, 0, 0, 0, loc).Zone(); offset != -9*3600 {
		t.Errorf("UTC-9 is %d s east of UTC", offset)
	}
	if _, err := Load("Atlantis/Harbour"); err == nil {
		t.Error("a zone that is none: no error")
	}
}
