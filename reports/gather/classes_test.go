package gather

import (
	"math"
	"strconv"
	"testing"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/store"
)

// By hand: 8 oz are 226.796185 g, 50 yd 45.72 m, 50 °F 10 °C and 70 °F 21.111111 °C to
// six decimals.
func TestUSClassesByHand(t *testing.T) {
	for at, want := range map[[2]string]store.Band{
		{"lure-weight", "1"}: {Factor: "lure-weight", Lo: 226.796185, Hi: 453.59237, Level: "8 to 16 oz"},
		{"lure-weight", "6"}: {Factor: "lure-weight", Lo: 1360.77711, Hi: math.Inf(1), Level: "48 oz or more"},
		{"setback", "1"}:     {Factor: "setback", Lo: 45.72, Hi: 91.44, Level: "50 to 100 yd"},
		{"gap", "1"}:         {Factor: "gap", Lo: 4.572, Hi: 9.144, Level: "5 to 10 yd"},
		{"sea-temp", "1"}:    {Factor: "sea-temp", Lo: 10, Hi: 12.222222, Level: "50 to 54 °F"},
		{"sea-temp", "6"}:    {Factor: "sea-temp", Lo: 21.111111, Hi: 23.333333, Level: "70 to 74 °F"},
	} {
		i, _ := strconv.Atoi(at[1])
		if got := usBands(factors.Of(at[0]), nil, false)[i]; got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
	}
}

// Classes that the user has set keep their edges and are told in the unit shown.
func TestUSClassesThatAreSet(t *testing.T) {
	stored := []store.Band{{Factor: "speed-band", Lo: 0, Hi: 6}, {Factor: "lure-weight", Lo: 0, Hi: 250},
		{Factor: "lure-weight", Lo: 250, Hi: math.Inf(1)}}
	got := usBands(factors.Of("lure-weight"), stored, true)
	if len(got) != 2 || got[0].Level != "0 to 8.8 oz" || got[1].Level != "8.8 oz or more" || got[1].Lo != 250 {
		t.Errorf("%+v", got)
	}
}

// Each class begins where the one before ends, and all that may be logged is in one.
func TestUSClassesHoldEverything(t *testing.T) {
	for _, f := range factors.Shown() {
		bands := usBands(f, nil, false)
		least := map[string]float64{"sea-temp": -3}[f.Name]
		if bands[0].Lo > least || !math.IsInf(bands[len(bands)-1].Hi, 1) {
			t.Errorf("%s: from %v", f.Name, bands[0].Lo)
		}
		for i := range bands[1:] {
			if bands[i].Hi != bands[i+1].Lo || bands[i].Hi <= bands[i].Lo {
				t.Errorf("%s: %+v, then %+v", f.Name, bands[i], bands[i+1])
			}
		}
	}
}
