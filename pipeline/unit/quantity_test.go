package unit_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"wakeledger/pipeline/unit"
)

func TestParseQuantity(t *testing.T) {
	tests := []struct {
		text  string
		dim   unit.Dimension
		value float64
		unit  unit.Unit
	}{
		{`6'2"`, unit.Length, 74, unit.Inch}, // 6 x 12 + 2
		{`6' 2.5"`, unit.Length, 74.5, unit.Inch},
		{`6' 2,5"`, unit.Length, 74.5, unit.Inch},
		{`6 ft 2 in`, unit.Length, 74, unit.Inch},
		{`6ft2`, unit.Length, 74, unit.Inch},
		{`6ft. 2in.`, unit.Length, 74, unit.Inch},
		{`6'2`, unit.Length, 74, unit.Inch},
		{`6'2''`, unit.Length, 74, unit.Inch},
		{`6′2″`, unit.Length, 74, unit.Inch},
		{`6’2”`, unit.Length, 74, unit.Inch},
		{`6 feet, 2 inches`, unit.Length, 74, unit.Inch},
		{`6 feet and 2 inches`, unit.Length, 74, unit.Inch},
		{`6 ft .5 in`, unit.Length, 72.5, unit.Inch},
		{`6'0"`, unit.Length, 72, unit.Inch},
		{`6'`, unit.Length, 6, unit.Foot},
		{`6.5 ft`, unit.Length, 6.5, unit.Foot},
		{`74"`, unit.Length, 74, unit.Inch},
		{`74''`, unit.Length, 74, unit.Inch},
		{`74 in`, unit.Length, 74, unit.Inch},
		{`74 1/2"`, unit.Length, 74.5, unit.Inch},
		{`74½"`, unit.Length, 74.5, unit.Inch},
		{`6'2 3/4"`, unit.Length, 74.75, unit.Inch},
		{`6'1/2"`, unit.Length, 72.5, unit.Inch},
		{`188cm`, unit.Length, 188, unit.Centimetre},
		{`188 CM.`, unit.Length, 188, unit.Centimetre},
		{`1.88 m`, unit.Length, 1.88, unit.Metre},
		{`1 m 88 cm`, unit.Length, 188, unit.Centimetre},
		{`1 234 mm`, unit.Length, 1234, unit.Millimetre},
		{`2 yd 1 ft`, unit.Length, 7, unit.Foot},
		{`1yd 2' 3"`, unit.Length, 63, unit.Inch}, // 36 + 24 + 3
		{`0.3 nmi`, unit.Length, 0.3, unit.NauticalMile},
		{`212#`, unit.Mass, 212, unit.Pound},
		{`187 lb`, unit.Mass, 187, unit.Pound},
		{`187lbs.`, unit.Mass, 187, unit.Pound},
		{`12 lb 8 oz`, unit.Mass, 200, unit.Ounce}, // 12 x 16 + 8
		{`12lb8`, unit.Mass, 200, unit.Ounce},
		{`12 lbs, 8 oz.`, unit.Mass, 200, unit.Ounce},
		{`1/2 oz`, unit.Mass, 0.5, unit.Ounce},
		{`2 1/4 lb`, unit.Mass, 2.25, unit.Pound},
		{`1'234 g`, unit.Mass, 1234, unit.Gram},
		{`84,8 kg`, unit.Mass, 84.8, unit.Kilogram},
		{`1 kg 250 g`, unit.Mass, 1250, unit.Gram},
		{`12.5 kts`, unit.Speed, 12.5, unit.Knot},
		{`14 MPH`, unit.Speed, 14, unit.MilePerHour},
		{`22 km/h`, unit.Speed, 22, unit.KilometrePerHour},
		{`6.2 m/s`, unit.Speed, 6.2, unit.MetrePerSecond},
		{`68F`, unit.Temperature, 68, unit.Fahrenheit},
		{`68°f`, unit.Temperature, 68, unit.Fahrenheit},
		{`20 °C`, unit.Temperature, 20, unit.Celsius},
		{`20 deg C`, unit.Temperature, 20, unit.Celsius},
		{`−1.5 °C`, unit.Temperature, -1.5, unit.Celsius},
		{`2 h 15 min`, unit.Duration, 135, unit.Minute}, // 2 x 60 + 15
		{`2h15m`, unit.Duration, 135, unit.Minute},
		{`2H15`, unit.Duration, 135, unit.Minute},
		{`2 hrs 15 mins 30 secs`, unit.Duration, 8130, unit.Second}, // 135 x 60 + 30
		{`45 min`, unit.Duration, 45, unit.Minute},
		{`45'`, unit.Duration, 45, unit.Minute},
		{`4'30"`, unit.Duration, 270, unit.Second},
		{`1.5 h`, unit.Duration, 1.5, unit.Hour},
		{`1:30`, unit.Duration, 90, unit.Minute},
		{`0:05`, unit.Duration, 5, unit.Minute},
		{`25:10`, unit.Duration, 1510, unit.Minute},
		{`1:30:15`, unit.Duration, 5415, unit.Second},
		{`270°`, unit.Angle, 270, unit.Degree},
		{`-117.5 deg`, unit.Angle, -117.5, unit.Degree},
	}
	for _, tt := range tests {
		got, err := unit.ParseQuantity(tt.text, tt.dim, "", unknown)
		if want := (unit.Quantity{Value: tt.value, Unit: tt.unit, Stated: true}); err != nil || got != want {
			t.Errorf("ParseQuantity(%q, %v) = %+v, %v; want %v", tt.text, tt.dim, got, err, want)
		}
	}
}

func TestParseQuantityFallback(t *testing.T) {
	tests := []struct {
		text     string
		dim      unit.Dimension
		fallback unit.Unit
		mark     unit.Mark
		want     unit.Quantity
	}{
		{"45", unit.Duration, unit.Minute, unknown, unit.Quantity{Value: 45, Unit: unit.Minute}},
		{" 74,5 ", unit.Length, unit.Inch, comma, unit.Quantity{Value: 74.5, Unit: unit.Inch}},
		{"74 1/2", unit.Length, unit.Inch, unknown, unit.Quantity{Value: 74.5, Unit: unit.Inch}},
		{"20°", unit.Temperature, unit.Celsius, unknown, unit.Quantity{Value: 20, Unit: unit.Celsius}},
		{"74 in", unit.Length, unit.Centimetre, unknown, unit.Quantity{Value: 74, Unit: unit.Inch, Stated: true}},
		{"1,234", unit.Mass, unit.Gram, point, unit.Quantity{Value: 1234, Unit: unit.Gram}},
		{"1.0416E-2", unit.Duration, unit.Hour, unknown, unit.Quantity{Value: 0.010416, Unit: unit.Hour}},
	}
	for _, tt := range tests {
		if got, err := unit.ParseQuantity(tt.text, tt.dim, tt.fallback, tt.mark); err != nil || got != tt.want {
			t.Errorf("ParseQuantity(%q, %v, %q, %v) = %+v, %v; want %+v", tt.text, tt.dim,
				tt.fallback, tt.mark, got, err, tt.want)
		}
	}
}

func TestParseQuantityRefuses(t *testing.T) {
	tests := []struct {
		text     string
		dim      unit.Dimension
		fallback unit.Unit
		want     error
	}{
		{"45", unit.Duration, "", unit.ErrNoUnit},
		{"20°", unit.Temperature, "", unit.ErrNoUnit},
		{"45", unit.Duration, unit.Inch, unit.ErrDimension},
		{"12 kn", unit.Length, unit.Inch, unit.ErrDimension},
		{"6'2\"", unit.Mass, unit.Pound, unit.ErrDimension},
		{"187 lb", unit.Speed, unit.Knot, unit.ErrDimension},
		{"1,234 lb", unit.Mass, "", unit.ErrAmbiguousMark},
		{"2 miles", unit.Length, "", unit.ErrAmbiguousUnit},
		{"2 M", unit.Length, "", unit.ErrAmbiguousUnit},
		{"~74", unit.Length, unit.Inch, unit.ErrApproximate},
		{"≈74 in", unit.Length, unit.Inch, unit.ErrApproximate},
		{"approx 187 lb", unit.Mass, "", unit.ErrApproximate},
		{"Approx. 187", unit.Mass, unit.Pound, unit.ErrApproximate},
		{"187 lb est.", unit.Mass, "", unit.ErrApproximate},
		{"env. 80", unit.Mass, unit.Kilogram, unit.ErrApproximate},
		{"unas 12", unit.Mass, unit.Pound, unit.ErrApproximate},
		{"187?", unit.Mass, unit.Pound, unit.ErrApproximate},
		{"12-8", unit.Mass, unit.Pound, unit.ErrRange},
		{"12 – 14 kn", unit.Speed, "", unit.ErrRange},
		{"12kn-14kn", unit.Speed, "", unit.ErrRange},
		{"12 to 14", unit.Speed, unit.Knot, unit.ErrRange},
		{"1e400 in", unit.Length, "", unit.ErrTooLarge},
		{"", unit.Length, unit.Inch, unit.ErrNotQuantity},
		{"?", unit.Length, unit.Inch, unit.ErrNotQuantity},
		{"approx", unit.Length, unit.Inch, unit.ErrNotQuantity},
		{"big", unit.Mass, unit.Pound, unit.ErrNotQuantity},
		{"in", unit.Length, unit.Inch, unit.ErrNotQuantity},
		{"e5 in", unit.Length, "", unit.ErrNotQuantity},
		{"74 in FL", unit.Length, "", unit.ErrNotQuantity},
		{`5'14"`, unit.Length, "", unit.ErrNotQuantity},          // 14 in is more than a foot
		{`5.5'2"`, unit.Length, "", unit.ErrNotQuantity},         // half a foot said twice
		{`-5'2"`, unit.Length, "", unit.ErrNotQuantity},          //
		{`6 ft.5`, unit.Length, "", unit.ErrNotQuantity},         // 6'5" or 6.5 ft?
		{`2 in 6 ft`, unit.Length, "", unit.ErrNotQuantity},      // wrong way round
		{`6 ft 2 cm`, unit.Length, "", unit.ErrNotQuantity},      //
		{`1 m 8`, unit.Length, "", unit.ErrNotQuantity},          // 8 cm or 80 is not said
		{`6 2`, unit.Length, unit.Foot, unit.ErrNotQuantity},     //
		{`1/2`, unit.Mass, unit.Ounce, unit.ErrNotQuantity},      // a date, or "1 of 2"
		{`1/3 oz`, unit.Mass, "", unit.ErrNotQuantity},           // not on a tape or a lure
		{`12.5 1/2 oz`, unit.Mass, "", unit.ErrNotQuantity},      //
		{`12 lb 16 oz`, unit.Mass, "", unit.ErrNotQuantity},      //
		{`1:60`, unit.Duration, "", unit.ErrNotQuantity},         //
		{`1:5`, unit.Duration, "", unit.ErrNotQuantity},          //
		{`1:30:60`, unit.Duration, "", unit.ErrNotQuantity},      //
		{`1:30 pm`, unit.Duration, "", unit.ErrNotQuantity},      //
		{`:30`, unit.Duration, unit.Hour, unit.ErrNotQuantity},   //
		{`1234:30`, unit.Duration, "", unit.ErrNotQuantity},      //
		{`1:30:`, unit.Duration, "", unit.ErrNotQuantity},        //
		{`32°30'`, unit.Angle, "", unit.ErrDimension},            // minutes of arc are not read here
		{"\xff12 in", unit.Length, "", unit.ErrNotQuantity},      //
		{"12 \xff", unit.Length, unit.Inch, unit.ErrNotQuantity}, //
		{"74", unit.Dimension(0), "", unit.ErrNoUnit},            //
	}
	for _, tt := range tests {
		got, err := unit.ParseQuantity(tt.text, tt.dim, tt.fallback, unknown)
		if !errors.Is(err, tt.want) || got != (unit.Quantity{}) {
			t.Errorf("ParseQuantity(%q, %v, %q) = %+v, %v; want %v", tt.text, tt.dim, tt.fallback, got, err, tt.want)
		}
	}
}

func TestQuantityIn(t *testing.T) {
	q, err := unit.ParseQuantity(`6'2"`, unit.Length, "", unknown)
	if err != nil {
		t.Fatal(err)
	}
	if cm, err := q.In(unit.Centimetre); err != nil || math.Abs(cm-187.96) > 1e-12 { // 74 x 2.54
		t.Errorf("6'2\" = %v cm, %v; want 187.96", cm, err)
	}
	if _, err := q.In(unit.Knot); !errors.Is(err, unit.ErrDimension) {
		t.Errorf("6'2\" in knots: %v; want ErrDimension", err)
	}
}

func ExampleParseQuantity() {
	for _, cell := range []string{`6'2"`, "188 cm", "74", "12 kn", "~74 in", "long"} {
		q, err := unit.ParseQuantity(cell, unit.Length, "", unit.MarkUnknown)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(q)
	}
	// Output:
	// 74 in
	// 188 cm
	// no unit: write it with the number or in the column's header
	// kn is a unit of speed, not of length
	// a guess, not a measurement: write one plain number, like 187 lb, and the doubt in the notes
	// not a length: expected a number with in, cm or ft, like 74in or 6'2"
}
