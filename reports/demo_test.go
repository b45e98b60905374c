package reports

import (
	"fmt"
	"time"

	"wakeledger/pipeline/factors"
	"wakeledger/queries"
)

func p[T any](v T) *T { return &v }

// demoSeason is an invented season. Its intervals were computed outside, from
// the Poisson and the Wilson formulae, to four decimals.
func demoSeason() SeasonInput {
	in := SeasonInput{
		Title: "Season 2026", Boats: []string{"Grey Heron"}, Units: "metric",
		Generated: time.Date(2026, 11, 2, 18, 30, 0, 0, time.UTC),
		Methods:   []string{"Rates: 16 trips, dispersion 1.0; the intervals are not widened."},
	}
	in.Effort = []queries.Effort{
		{Level: "0 to <6 kn", Trips: 2, Legs: 3, BoatHours: 1.2, LineHours: 6.4, DistanceNmi: p(6.2)},
		{Level: "6 to <8 kn", Trips: 4, Legs: 7, BoatHours: 7.9, LineHours: 41.3, DistanceNmi: p(55.6)},
		{Level: "8 to <10 kn", Trips: 8, Legs: 15, BoatHours: 18.5, LineHours: 96.2, DistanceNmi: p(166.5)},
		{Level: "10 to <12 kn", Trips: 10, Legs: 19, BoatHours: 25.3, LineHours: 131.8, DistanceNmi: p(304.2)},
		{Level: "12 to <14 kn", Trips: 11, Legs: 21, BoatHours: 28.5, LineHours: 148.1, DistanceNmi: p(341.8)},
		{Level: "14 to <16 kn", Trips: 6, Legs: 11, BoatHours: 10.1, LineHours: 52.6, DistanceNmi: p(121.4)},
		{Level: "16 kn and up", Trips: 2, Legs: 3, BoatHours: 1.7, LineHours: 9.1, DistanceNmi: p(21.0)},
		{Level: "not logged", Trips: 3, Legs: 5, BoatHours: 4.7, LineHours: 24.5, UnlinedHours: 3.5,
			UnlinedLegs: 2, UnspedHours: 6.1},
	}
	in.StrikeRate = []queries.StrikeRate{
		{Level: "0 to <6 kn", LineHours: 6.4, Strikes: 0, Hookups: 0, Landed: 0, Released: 0, Rate: p(0.0000),
			RateLo: p(0.0000), RateHi: p(0.5764)},
		{Level: "6 to <8 kn", LineHours: 41.3, Strikes: 2, Hookups: 1, Landed: 1, Released: 0, Rate: p(0.0484),
			RateLo: p(0.0059), RateHi: p(0.1749)},
		{Level: "8 to <10 kn", LineHours: 96.2, Strikes: 9, Hookups: 6, Landed: 2, Released: 1, Rate: p(0.0936),
			RateLo: p(0.0428), RateHi: p(0.1776)},
		{Level: "10 to <12 kn", LineHours: 131.8, Strikes: 18, Hookups: 13, Landed: 4, Released: 5, Rate: p(0.1366),
			RateLo: p(0.0809), RateHi: p(0.2158)},
		{Level: "12 to <14 kn", LineHours: 148.1, Strikes: 31, Hookups: 22, Landed: 7, Released: 9, Rate: p(0.2093),
			RateLo: p(0.1422), RateHi: p(0.2971)},
		{Level: "14 to <16 kn", LineHours: 52.6, Strikes: 7, Hookups: 5, Landed: 1, Released: 1, Rate: p(0.1331),
			RateLo: p(0.0535), RateHi: p(0.2742)},
		{Level: "16 kn and up", LineHours: 9.1, Strikes: 2, Hookups: 1, Landed: 0, Released: 0, Rate: p(0.2198),
			RateLo: p(0.0266), RateHi: p(0.7939)},
		{Level: "not logged", LineHours: 24.5, Strikes: 3, Hookups: 2, Landed: 1, Released: 0, Rate: p(0.1224),
			RateLo: p(0.0253), RateHi: p(0.3578)},
	}
	in.Outcomes = []queries.Outcomes{
		{Level: "0 to <6 kn"},
		{Level: "6 to <8 kn", Strikes: 2, Hookups: 1, Boated: 1, NotLogged: 0, HookupShare: p(0.5000),
			HookupLo: p(0.0945), HookupHi: p(0.9055), BoatedShare: p(0.5000), BoatedLo: p(0.0945), BoatedHi: p(0.9055)},
		{Level: "8 to <10 kn", Strikes: 9, Hookups: 6, Boated: 3, NotLogged: 0, HookupShare: p(0.6667),
			HookupLo: p(0.3542), HookupHi: p(0.8794), BoatedShare: p(0.3333), BoatedLo: p(0.1206), BoatedHi: p(0.6458)},
		{Level: "10 to <12 kn", Strikes: 18, Hookups: 13, Boated: 9, NotLogged: 1, HookupShare: p(0.7647),
			HookupLo: p(0.5274), HookupHi: p(0.9044), BoatedShare: p(0.5294), BoatedLo: p(0.3096), BoatedHi: p(0.7383)},
		{Level: "12 to <14 kn", Strikes: 31, Hookups: 22, Boated: 16, NotLogged: 2, HookupShare: p(0.7586),
			HookupLo: p(0.5789), HookupHi: p(0.8778), BoatedShare: p(0.5517), BoatedLo: p(0.3755), BoatedHi: p(0.7159)},
		{Level: "14 to <16 kn", Strikes: 7, Hookups: 5, Boated: 2, NotLogged: 0, HookupShare: p(0.7143),
			HookupLo: p(0.3589), HookupHi: p(0.9178), BoatedShare: p(0.2857), BoatedLo: p(0.0822), BoatedHi: p(0.6411)},
		{Level: "16 kn and up", Strikes: 2, Hookups: 1, Boated: 0, NotLogged: 0, HookupShare: p(0.5000),
			HookupLo: p(0.0945), HookupHi: p(0.9055), BoatedShare: p(0.0000), BoatedLo: p(0.0000), BoatedHi: p(0.6576)},
		{Level: "not logged", Strikes: 3, Hookups: 2, Boated: 1, NotLogged: 1, HookupShare: p(1.0000),
			HookupLo: p(0.3424), HookupHi: p(1.0000), BoatedShare: p(0.5000), BoatedLo: p(0.0945), BoatedHi: p(0.9055)},
	}
	in.Fish, in.Trips = demoFish(), demoTrips()
	in.Fates = []queries.Fate{{Fate: queries.FateLanded, Strikes: 16}, {Fate: queries.FateReleased, Strikes: 16},
		{Fate: queries.FatePulled, Strikes: 9},
		{Fate: queries.FateLine, Strikes: 5}, {Fate: queries.FateNoCause, Strikes: 4},
		{Fate: queries.FateMissed, Strikes: 18}, {Fate: queries.FateNotLogged, Strikes: 4}}
	in.Pairs = []queries.Pair{{A: "[8, 10)", B: "[250, 500)", Hours: 60, Strikes: 6},
		{A: "[8, 10)", B: "[500, 750)", Hours: 36.2, Strikes: 3},
		{A: "[12, 14)", B: "[250, 500)", Hours: 130, Strikes: 28},
		{A: "[12, 14)", B: "[500, 750)", Hours: 9, Strikes: 2}, {A: factors.NotLogged, B: "[500, 750)", Hours: 4}}
	in.Sizes = sizesOf(in.Fish)
	in.Troubles.Aside = []queries.Trouble{
		{Reason: "not a time of day", File: "log-2026.xlsx", Log: 1, Rows: 1,
			Examples: []queries.Example{{Sheet: "Legs", Row: 17, Found: "25:61"}}, Effect: []string{"boat_hours"}},
		{Reason: "not a length", File: "log-2026.xlsx", Log: 1, Rows: 1,
			Examples: []queries.Example{{Sheet: "Fish", Row: 9, Found: "six feet or so"}}},
		{Reason: "day or month first? nothing in the file tells; see --dates", File: "june.csv", Log: 2, Rows: 1,
			Examples: []queries.Example{{Row: 44, Found: "03/04/2026"}}, Effect: []string{"trips"}},
	}
	return in
}

// demoFish are one fish a landing or release of the strike rows.
func demoFish() []queries.Fish {
	bands := []struct {
		level  string
		speed  float64
		number int
		landed int
	}{{"6 to <8 kn", 7.2, 1, 1}, {"8 to <10 kn", 9.1, 3, 2}, {"10 to <12 kn", 11.3, 9, 4},
		{"12 to <14 kn", 12.8, 16, 7}, {"14 to <16 kn", 14.6, 2, 1}}
	var out []queries.Fish
	for _, b := range bands {
		for i := range b.number {
			n := len(out)
			f := queries.Fish{Trip: p(fmt.Sprintf("T%02d", n/2+1)), Date: p(demoDay(n / 2)),
				Species: p("Thunnus thynnus"), SpeedKn: p(b.speed),
				SpeedBand: b.level, Kept: p(i < b.landed), Boat: p("Grey Heron"), File: "log-2026.xlsx",
				Sheet: "Fish", Row: int64(n + 2)}
			if n%5 == 3 {
				f.Species = p("Thunnus albacares")
			}
			length := 104 + float64((n*37)%71)
			girth := length * 0.72
			kg := length * girth * girth / 27680
			f.LengthCM, f.LengthKind, f.GirthCM, f.WeightKG = p(length),
				p("straight fork"), p(float64(int(girth))), p(kg)
			switch {
			case n%4 == 0:
				f.ScaleKG, f.WeightKG, f.Method = p(float64(int(kg*1.03*2))/2),
					p(float64(int(kg*1.03*2))/2), p("dock scale")
			case n%7 == 5:
				f.LengthCM, f.LengthKind, f.GirthCM, f.WeightKG = nil, nil, nil, nil
			case n%3 == 0:
				f.Method, f.GirthCM, f.WeightLoKG, f.WeightHiKG = p("length"), nil, p(kg*0.78), p(kg*1.29)
			case n%3 == 1:
				f.Method, f.WeightLoKG, f.WeightHiKG = p("own coefficient"), p(kg*0.88), p(kg*1.14)
			default:
				f.Method = p("length and girth")
			}
			out = append(out, f)
		}
	}
	out = append(out, queries.Fish{Date: p("2026-09-20"), Species: p("Coryphaena hippurus"), ScaleKG: p(9.1),
		WeightKG: p(9.1), Method: p("dock scale"),
		SpeedBand: factors.NotLogged, Kept: p(true), Boat: p("Grey Heron"), File: "june.csv", Row: 12})
	return out
}

func demoDay(i int) string {
	return time.Date(2026, 6, 3, 0, 0, 0, 0, time.UTC).AddDate(0, 0, 7*i).Format(time.DateOnly)
}

func demoTrips() []queries.Trip {
	strikes := []int64{2, 0, 5, 3, 0, 11, 1, 4, 8, 0, 13, 2, 6, 9, 0, 8}
	landed := []int64{0, 0, 1, 0, 0, 3, 0, 1, 2, 0, 3, 0, 1, 3, 0, 2}
	released := []int64{1, 0, 1, 0, 0, 2, 0, 1, 2, 0, 3, 0, 1, 3, 0, 2}
	var out []queries.Trip
	for i, n := range strikes {
		t := queries.Trip{Trip: fmt.Sprintf("T%02d", i+1), Boat: "Grey Heron",
			Date: p(demoDay(i)), Legs: int64(3 + i%3),
			BoatHours: 5.1 + float64(i%4)*0.7, LineHours: 27 + float64(i%4)*3, Strikes: n,
			Landed: landed[i], Released: released[i]}
		if landed[i]+released[i] > 0 {
			t.HeaviestKG, t.HeaviestMethod = p(61.5+float64(i)), p("dock scale")
		}
		out = append(out, t)
	}
	out[15].LineHours += 6 // the sum of the bands
	return out
}

// sizesOf counts fish in classes of 25 kg, as the question on sizes does.
func sizesOf(fish []queries.Fish) []queries.Sizes {
	var out []queries.Sizes
	for _, f := range fish {
		row := queries.Sizes{Level: f.SpeedBand, Fish: 1}
		if f.WeightKG != nil {
			lo := float64(int(*f.WeightKG/25)) * 25
			row.ClassLoKG, row.ClassHiKG = p(lo), p(lo+25)
		}
		found := false
		for i := range out {
			if out[i].Level == row.Level && sameEdge(out[i].ClassLoKG, row.ClassLoKG) {
				out[i].Fish++
				found = true
			}
		}
		if !found {
			out = append(out, row)
		}
	}
	return out
}
