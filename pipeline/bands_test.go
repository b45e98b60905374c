package pipeline

import (
	"math"
	"testing"
)

func TestParseEdges(t *testing.T) {
	e, err := ParseEdges([]string{"speed-band=0, 7,9.5", "light=45"})
	if err != nil || e.String() != "light=45 speed-band=0,7,9.5" || e.margin().Minutes() != 45 {
		t.Fatalf("%v %v", e, err)
	}
	bands := e.bands()
	if b := bands[1]; b.Level != "[7, 9.5)" || b.Lo != 7 || b.Hi != 9.5 {
		t.Errorf("%+v", b)
	}
	if b := bands[2]; b.Level != "9.5 and up" || !math.IsInf(b.Hi, 1) || bands[3].Factor != "lure-weight" {
		t.Errorf("%+v", bands[:4])
	}
	again, err := ParseEdges([]string{"speed-band=0,7,9.5", "light=45"})
	if err != nil || again.String() != e.String() {
		t.Error("the text does not come back")
	}
	if none, err := ParseEdges(nil); err != nil || none.String() != "" || none.margin().Minutes() != 60 {
		t.Errorf("%v %v", none, err)
	}
}

// Nothing that is logged falls below the classes.
func TestFirstClassReachesDown(t *testing.T) {
	e, err := ParseEdges([]string{"sea-temp=20,25"})
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range e.bands() {
		if b.Factor == "sea-temp" {
			if b.Lo != -3 || b.Hi != 20 {
				t.Errorf("%+v", b)
			}
			break
		}
	}
}

func TestParseEdgesRefuses(t *testing.T) {
	for _, s := range []string{"speed", "speed-band=", "speed-band=a", "speed-band=8,6", "speed-band=1,1",
		"speed-band=NaN", "depth=1", "light=10,20", "light=-1"} {
		if e, err := ParseEdges([]string{s}); err == nil {
			t.Errorf("%q gives %v", s, e)
		}
	}
}
