package normalise_test

import (
	"slices"
	"testing"
)

// TestSetsOfFish makes a fish of each of the row's columns for one, with the lure that stands once beside them, and
// none of a lure alone; a weight with the mark of a guess behind it is not logged.
func TestSetsOfFish(t *testing.T) {
	told, aside := readEvents(t, "log.csv", `Data;Calata;Salpata;Canne;Nodi;Abboccate;Mancate;Slamate;`+
		`Pesce 1;cm;kg;Esito;Pesce 2;cm;kg;Esito;Artificiale
17/05/2025;7:00;10:25;3;5;1;;1;;;;;;;;;piuma rossa
24/05/2025;6:15;8:05;5;5,5;3;2;;tonno rosso;142,5;49,9;a bordo;;;;;testa a jet
31/05/2025;7:55;11:20;4;6;4;2;;lampuga;94;7,2;a bordo;palamita;50,5;2 st.;rilasciato;testa a jet
23/06/2025;9:40;13:25;5;7;2;2;;;;;;;;;;skirt piccolo
29/06/2025;9:25;12:30;5;5;3;;1;lampuga;70,5;3;a bordo;alletterato;66,5;1 st.;a bordo;piuma rossa
`)
	expectTold(t, told, `
0:00 landed tonno rosso 142.5 49.9
0:00 landed lampuga 94.0 7.2
0:00 released palamita 50.5
0:00 landed lampuga 70.5 3.0
0:00 landed alletterato 66.5`)
	expectTold(t, aside, "")
}

// TestSpeedsOfSets gives a strike that a remark names by its number the speed that it tells, where its row has none.
func TestSpeedsOfSets(t *testing.T) {
	sides, _ := sidesOf(t, "log.csv", "Date,In,Out,Rods,Kts,Strike 1 Time,Strike 1 Result,Strike 2 Time,"+
		"Strike 2 Result,Notes\n2025-06-07,8:20,11:20,3,7,8:30,missed,9:10,lost,\n"+
		"2025-06-14,6:10,8:30,4,7,6:20,missed,7:10,lost,\n"+
		"2025-06-21,6:10,8:30,4,,6:30,missed,7:00,missed,GPS down. Strike 2 came at 6.3 kt on the handheld\n")
	var speeds []float64
	for _, s := range sides {
		speeds = append(speeds, s.Values["strike_speed_kn"].Real)
	}
	if want := []float64{0, 0, 0, 0, 0, 6.3}; !slices.Equal(speeds, want) {
		t.Errorf("speeds %v, expected %v", speeds, want)
	}
}

// TestScaleInRemarks gives a fish of the row's list the weight that a remark says was on a scale.
func TestScaleInRemarks(t *testing.T) {
	told, _ := readEvents(t, "log.csv", "Date,In,Out,Rods,Kts,Hits,Fish,Inches,Notes\n"+
		"2025-06-07,8:20,11:20,3,7,3,bft / dodo / dodo,38 / 30 / 26,bft 37 lb dock scale\n"+
		"2025-06-14,6:10,8:30,4,11,2,yt / yft,- / 37,yt maybe 20 lb\n2025-06-21,6:10,8:30,4,8,1,dodo,31,dolphins\n")
	expectTold(t, told, "0:00  bft 16.8\n0:00  dodo\n0:00  dodo\n0:00  yt\n0:00  yft\n0:00  dodo")
}
