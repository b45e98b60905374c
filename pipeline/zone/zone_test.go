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

// Letters that are an hour off all summer name the place that is meant.
func TestLettersNameAPlace(t *testing.T) {
	for text, place := range map[string]string{"EST": "America/New_York", "mst": "America/Denver", "NZST": "Pacific/Auckland", "PDT": "America/Los_Angeles"} {
		if got, err := Name(text); err == nil || !strings.Contains(err.Error(), place) {
			t.Errorf("%q: %q, %v, want an error that names %s", text, got, err, place)
		}
	}
	for _, place := range letters {
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
