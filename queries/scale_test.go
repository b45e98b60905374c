package queries_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"wakeledger/pipeline"
	"wakeledger/pipeline/store"
	"wakeledger/queries"
)

// demoSeason is the demo season of testdata/demo, loaded as `make demo` does.
func demoSeason(t *testing.T) *store.DB {
	t.Helper()
	logs, err := filepath.Glob("../testdata/demo/logs/*")
	if err != nil || len(logs) == 0 {
		t.Fatalf("no demo logs: %v", err)
	}
	s, err := pipeline.Open(context.Background(), "", pipeline.Config{Ocean: "pacific"})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.DB.Close() })
	if _, err := s.Load(context.Background(), logs); err != nil {
		t.Fatal(err)
	}
	if err := s.Derive(context.Background()); err != nil {
		t.Fatal(err)
	}
	return s.DB
}

// objects is rows as a reader of --format json sees them.
func objects(t *testing.T, rows any) []map[string]any {
	t.Helper()
	b, err := json.Marshal(rows)
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]any
	if err := json.Unmarshal(b, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// TestScaleCheckAgainstR: every number of scale-check on the demo season equals to 6
// digits what R computes from tape and scale alone (testdata/scale_check.R, made again
// where the demo season changes).
func TestScaleCheckAgainstR(t *testing.T) {
	db := demoSeason(t)
	rows, err := queries.AskScaleCheck(context.Background(), db)
	if err != nil {
		t.Fatal(err)
	}
	b, err := os.ReadFile("testdata/scale_check.json")
	if err != nil {
		t.Fatal(err)
	}
	var want []map[string]any
	if err := json.Unmarshal(b, &want); err != nil {
		t.Fatal(err)
	}
	got := objects(t, rows)
	if len(got) != len(want) || len(want) < 6 {
		t.Fatalf("%d rows, want %d", len(got), len(want))
	}
	compared := 0
	for i, w := range want {
		for column, value := range w {
			g := got[i][column]
			if s, isText := value.(string); isText {
				if g != s {
					t.Errorf("row %d %s: %v, want %q", i, column, g, s)
				}
				continue
			}
			v, ok := g.(float64)
			if x := value.(float64); !ok || math.Abs(v-x) > 1e-6*math.Abs(x) {
				t.Errorf("%s %s: %v, R has %.10g", w["method"], column, g, x)
			}
			compared++
		}
		if len(w) != len(got[i]) {
			t.Errorf("%s: %d columns, R has %d", w["method"], len(got[i]), len(w))
		}
	}
	if compared < 140 {
		t.Errorf("only %d numbers compared", compared)
	}
}

// TestScaleCheckColumns: the contract's columns, in its order.
func TestScaleCheckColumns(t *testing.T) {
	want := strings.Fields("method n bias_kg bias_pct mae_kg mape_pct rmse_kg loa_lo_kg loa_hi_kg concordance")
	typ := reflect.TypeFor[queries.ScaleCheck]()
	for i, column := range want {
		if got := typ.Field(i).Tag.Get("json"); got != column {
			t.Errorf("column %d is %s, want %s", i, got, column)
		}
	}
}

// TestScaleFishOfDemo: the demo's model multiplies the common girth coefficient by
// 1.05 (testdata/demo/truth.json, 59 fish on a scale) and lengthens curved lengths by
// 1.04, so that the two nearly cancel for them.
func TestScaleFishOfDemo(t *testing.T) {
	db := demoSeason(t)
	fish, err := queries.AskScaleFish(context.Background(), db)
	if err != nil {
		t.Fatal(err)
	}
	if len(fish) != 59 {
		t.Errorf("%d fish on a scale, want 59", len(fish))
	}
	pairs, err := queries.AskOwnPairs(context.Background(), db)
	if err != nil || len(pairs) != 53 {
		t.Errorf("%d pairs, %v", len(pairs), err)
	}
	var straight []queries.ScaleFish
	converted := 0
	for _, f := range fish {
		if f.LengthKind != nil && *f.LengthKind == "FL" {
			straight = append(straight, f)
		}
		if f.WeightState != nil && *f.WeightState == "gilled-gutted" && f.RoundKG != nil &&
			math.Abs(*f.RoundKG/f.ScaleKG-1.13) < 1e-9 {
			converted++
		}
	}
	c := queries.CheckMethod(straight, queries.ByGirth)
	if c.N < 40 || math.Abs(*c.Ratio*1.05-1) > 0.01 {
		t.Errorf("the girth rule reads %.4f of the scale on %d fish, the model says 1/1.05", *c.Ratio, c.N)
	}
	if converted == 0 {
		t.Error("no gilled and gutted fish was converted")
	}
}

func kg(v float64) *float64 { return &v }

// onScale is a fish of 100 cm and its weights.
func onScale(scale string, round float64, girth, length *float64) queries.ScaleFish {
	return queries.ScaleFish{LengthCM: kg(100), Scale: &scale, RoundKG: kg(round), ScaleKG: round,
		GirthKG: girth, LengthKG: length}
}

// TestCheckMethodByHand: tape 11, 19, 33 on scale 10, 20, 30.
//
//	differences 1, -1, 3: bias 1, MAE 5/3, RMSE sqrt(11/3), SD 2
//	per cent 10, -5, 10: bias 5, MAPE 25/3; limits of few fish, of the next one:
//	1 -/+ 2 t sqrt(1 + 1/3), where t = 4.30265272974946 has 2 degrees of freedom (R: qt(.975, 2))
func TestCheckMethodByHand(t *testing.T) {
	fish := []queries.ScaleFish{onScale("dock scale", 10, kg(11), nil), onScale("dock scale", 20, kg(19), nil),
		onScale("dock scale", 30, kg(33), nil),
		onScale("dock scale", 40, nil, kg(40)), {ScaleKG: 5, GirthKG: kg(7)}}
	c := queries.CheckMethod(fish, queries.ByGirth)
	half := 2 * 4.30265272974946 * math.Sqrt(4.0/3)
	for _, tt := range []struct {
		name      string
		got       *float64
		want, tol float64
	}{
		{"bias", c.BiasKG, 1, 1e-12}, {"MAE", c.MAEKG, 5.0 / 3, 1e-12}, {"RMSE", c.RMSEKG, math.Sqrt(11.0 / 3), 1e-12},
		{"SD", c.SDKG, 2, 1e-12},
		{"bias %", c.BiasPct, 5, 1e-12}, {"MAPE", c.MAPEPct, 25.0 / 3, 1e-12},
		{"lower limit", c.LOALoKG, 1 - half, 1e-9}, {"upper limit", c.LOAHiKG, 1 + half, 1e-9},
		{"median", c.MedianAbsKG, 1, 1e-12}, {"ratio", c.Ratio, math.Cbrt(1.1 * 0.95 * 1.1), 1e-12},
	} {
		if tt.got == nil || math.Abs(*tt.got-tt.want) > tt.tol {
			t.Errorf("%s: %v, want %g", tt.name, tt.got, tt.want)
		}
	}
	if c.N != 3 {
		t.Errorf("n = %d", c.N)
	}
}

// TestCheckScaleEdges: none, one, and all equal give no number that is not finite.
func TestCheckScaleEdges(t *testing.T) {
	for name, fish := range map[string][]queries.ScaleFish{
		"none": nil, "one": {onScale("dock scale", 10, kg(11), nil)},
		"equal": {onScale("dock scale", 10, kg(10), kg(10)), onScale("dock scale", 10, kg(10), kg(10)),
			onScale("dock scale", 10, kg(10), kg(10))},
	} {
		rows := queries.CheckScale(fish)
		if len(rows) != 3 {
			t.Errorf("%s: %d rows", name, len(rows))
		}
		if _, err := json.Marshal(rows); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if name == "one" && (rows[1].N != 1 || rows[1].LOALoKG != nil || rows[1].BiasKG == nil) {
			t.Errorf("one fish: %+v", rows[1])
		}
	}
}

// TestScalesApart: certified and dock scales stand apart from 5 fish of each.
func TestScalesApart(t *testing.T) {
	var fish []queries.ScaleFish
	for i := range 5 {
		fish = append(fish, onScale("certified scale", 20, kg(21+float64(i)), nil),
			onScale("dock scale", 20, kg(19-float64(i)), nil))
	}
	rows := queries.CheckScale(fish)
	names := map[string]queries.ScaleCheck{}
	for _, r := range rows {
		names[r.Method] = r
	}
	if c, d := names["length and girth, certified scales"], names["length and girth, dock scales"]; c.N != 5 ||
		d.N != 5 || *c.BiasKG != 3 || *d.BiasKG != -3 {
		t.Errorf("%+v\n%+v", c, d)
	}
	if got := len(queries.CheckScale(fish[:8])); got != 3 {
		t.Errorf("4 of each gave %d rows", got)
	}
}
