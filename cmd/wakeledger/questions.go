package main

import (
	"context"
	"fmt"

	"wakeledger/pipeline/store"
	"wakeledger/pipeline/unit"
	"wakeledger/queries"
)

// question is one that ask answers; rows are a slice of a row of queries.
type question struct {
	name     string
	about    string // what it answers, in a sentence for its help
	columns  string // of its table: see terminal.Column
	takes    options
	answer   func(ctx context.Context, db *store.DB, a asked) (rows any, err error)
	footnote string
}

// options are the flags that a question has beside --format, --columns and --units.
type options struct{ factor, part, ratio, trips, cell bool }

// asked is what the flags of ask settle.
type asked struct {
	factor string
	ratio  float64 // of rates, to be told by next-season and plan
	trips  int     // of plan
	cell   cellFlag
	us     bool // classes round in pounds
}

func typed[T any](f func(context.Context, *store.DB, string) ([]T, error)) func(context.Context,
	*store.DB, asked) (any, error) {
	return func(ctx context.Context, db *store.DB, a asked) (any, error) { return f(ctx, db, a.factor) }
}

func plain[T any](f func(context.Context, *store.DB) ([]T, error)) func(context.Context,
	*store.DB, asked) (any, error) {
	return func(ctx context.Context, db *store.DB, _ asked) (any, error) { return f(ctx, db) }
}

var (
	byFactor = options{factor: true, part: true}
	ofPart   = options{part: true}
)

// questions are in the order of the help.
func questions() []question {
	return append(append(whatWorked(), whatWasCaught()...), whatWasRead()...)
}

func whatWorked() []question {
	return []question{
		{"strike-rate", "Strikes per line-hour at each speed, or for each lure, month, ... (--by), each held " +
			"against the most fished one.",
			"level line_hours trips strikes rate rate_lo..rate_hi|rate,_95_% ratio ratio_lo..ratio_hi|ratio,_95_% note",
			byFactor, typed(queries.AskStrikeRate), "rate: strikes per line-hour. ratio: of rates, on the same trips."},
		{"findings", "What mattered: each factor's verdict (settled, leaning, not settled) in a sentence.",
			"factor verdict sentence", ofPart, plain(queries.AskFindings), ""},
		{"next-season", "What to try next, for each factor: which two settings, and how many trips settle it.",
			"factor setting_a|most_fished setting_b|to_try trips|trips_to_settle line_hours_each paired_day|how",
			options{part: true, ratio: true}, func(ctx context.Context, db *store.DB, a asked) (any, error) {
				return queries.AskNextSeason(ctx, db, a.ratio)
			}, "Trips are for 4 chances in 5 that one setting's rate shows as --ratio times the other's."},
		{"plan", "A plan for the next trips: which speed and which lures to run in each half of the day.",
			"trip first_half second_half port starboard boat_chance%|chance,_speed line_chance%|chance,_lures",
			options{part: true, ratio: true, trips: true},
			func(ctx context.Context, db *store.DB, a asked) (any, error) {
				return queries.AskPlan(ctx, db, a.ratio, a.trips)
			}, "Port and starboard change sides at half time. chance: that it is settled after this trip."},
		{"effort", "Hours, line-hours and miles fished at each speed, or for each lure, month, ... (--by).",
			"level trips legs boat_hours line_hours distance_nmi|miles unlined_hours|hours_without_lines_logged " +
				"no_speed_hours|hours_without_speed",
			byFactor, typed(queries.AskEffort), ""},
		{"outcomes", "What became of the strikes: how many came tight, how many reached the boat.",
			"level strikes hookups hookup_share%|hooked hookup_lo..hookup_hi%|hooked,_95_% boated " +
				"boated_share%|boated boated_lo..boated_hi%|boated,_95_% outcome_not_logged",
			byFactor, typed(queries.AskOutcomes), "boated: landed or released at the boat."},
		{"mixed-up", "Which factors changed together, so that the season cannot tell them apart.",
			"factor with inflation note", ofPart, plain(queries.AskMixedUp), ""},
		{"spread", "Tangles by the smallest gap between two lines: how close is too close.",
			"gap_lo_m..gap_hi_m|gap legs leg_hours tangles tangles_per_leg_hour|tangles_an_hour " +
				"rate_lo..rate_hi|95_% smallest_supported|smallest_that_kept_clear",
			ofPart, plain(queries.AskSpread), ""},
		{"trips", "Every trip: hours, strikes, fish, the heaviest.",
			"trip date boat legs boat_hours line_hours strikes landed released heaviest_kg|heaviest " +
				"heaviest_method|weighed_by",
			ofPart, plain(queries.AskTrips), ""},
	}
}

func whatWasCaught() []question {
	return []question{
		{"fish", "Every fish with its weight and how that was found.",
			"date boat species length_cm girth_cm weight_kg weight_lo_kg..weight_hi_kg|90_% method|weighed_by " +
				"speed_kn|speed,_kn",
			ofPart, plain(queries.AskFish), "90 %: of such fish weigh so much; none for a weight from a scale."},
		{"sizes", "How many fish of each weight, at each speed or by another factor (--by).",
			"level class_lo_kg..class_hi_kg|weight fish on_scale", byFactor, askSizes, ""},
		{"size-medians", "Whether one speed, lure, ... (--by) brought larger fish than another.",
			"species level fish trips median_kg|median shift_kg|larger_by shift_lo_kg..shift_hi_kg|larger_by,_95_% " +
				"verdict",
			byFactor, typed(queries.AskSizeMedians), "larger by: than the level of that species with the most " +
				"weights. Empty: that level, or too few fish."},
		{"scale-check", "Trust the tape? How far each way to weigh by tape was from the scale.",
			"method n|fish bias_pct|reads_heavy_by,_% bias_kg|or median_abs_kg|half_the_fish_within " +
				"loa_lo_kg..loa_hi_kg|a_single_fish,_95_%",
			ofPart, plain(queries.AskScaleCheck), "A minus: the tape reads light."},
		{"scale-fish", "The fish that were on a scale, beside what the tape says of each.",
			"date name|fish length_cm girth_cm round_kg|scale own_kg|own_divisor girth_kg|girth_rule " +
				"length_kg|length_alone doubt left_out",
			ofPart, plain(queries.AskScaleFish), ""},
		{"failures", "What broke: line, leader, knot and hook, and on how many hook-ups.",
			"part gear hookups end_known failed share%|share lo..hi%|95_%", ofPart, plain(queries.AskFailures), ""},
		{"gear", "Break-offs and pulled hooks by drag, as a share of the line's class.",
			"level|drag hookups lost break_offs|broke_off break_off_share%|share break_off_lo..break_off_hi%|95_% " +
				"pulled_hooks|pulled pulled_hook_share%|share pulled_hook_lo..pulled_hook_hi%|95_%",
			ofPart, plain(queries.AskDrag), "drag: in per cent of the line's class."},
	}
}

func whatWasRead() []question {
	return []question{
		{"set-aside", "What was not read: every row or cell that could not be used, and why.",
			"file sheet row column cell reason", options{}, plain(queries.AskSetAside), ""},
		{"doubts", "What was kept but looks wrong, and why.",
			"file sheet row check found reason", options{}, plain(queries.AskDoubts), ""},
		{"questions", "What only you can settle: the open questions about the logs.",
			"id file text options effect|moves", options{}, plain(queries.AskQuestions), ""},
		{"methods", "How the numbers are worked out, each with its source.",
			"method words source", options{}, plain(queries.AskMethods), ""},
		{"track-speed", "The speed logged beside the speed run, by trip.",
			"trip date boat legs legs_with_track measured_hours remembered_hours logged_kn|logged,_kn " +
				"ran_kn|ran,_kn difference_kn|difference,_kn stopped_hours",
			ofPart, plain(queries.AskTrackSpeed), ""},
		{"strike-speed", "The speed run when each fish struck, beside the one logged.",
			"trip at boat outcome species logged_kn|logged,_kn ran_kn|ran,_kn plus_minus_kn|plus_or_minus turning",
			ofPart, plain(queries.AskStrikeSpeed), ""},
		{"current", "The current along the boat's course, where it ran both ways over the same water.",
			"trip date boat course_deg|course out_kn|out,_kn back_kn|back,_kn current_kn|current,_kn " +
				"current_lo..current_hi|current,_95_% set_deg|sets_to minutes",
			ofPart, plain(queries.AskCurrent), ""},
		{"tracks", "The tracks that were loaded, and what is wrong with any.",
			"file member boat first_utc|first_fix,_UTC last_utc|last_fix,_UTC hours gaps legs leg_hours note",
			options{}, plain(queries.AskTracks), ""},
		{"area", "Hours and strikes by area of sea. It shows where you fish: for the boat alone.",
			"lat_deg|latitude lon_deg|longitude trips boat_hours line_hours distance_nmi|miles strikes",
			options{part: true, cell: true}, func(ctx context.Context, db *store.DB, a asked) (any, error) {
				return queries.AskArea(ctx, db, a.cell.minutes)
			}, "The south-west corner of each cell."},
	}
}

// askSizes has classes that are round in the unit shown.
func askSizes(ctx context.Context, db *store.DB, a asked) (any, error) {
	perUnit := 1.0
	if a.us {
		perUnit = unit.KgPerPound
	}
	width, err := queries.RoundClass(ctx, db, perUnit)
	if err != nil {
		return nil, err
	}
	return queries.AskSizes(ctx, db, a.factor, width)
}

// find is the question of a name; one that is none is a fault of the program.
func find(name string) question {
	for _, q := range questions() {
		if q.name == name {
			return q
		}
	}
	panic(fmt.Sprintf("no question %q", name))
}
