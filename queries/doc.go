// Package queries answers the questions of a season file. Each has a .sql file
// in sql/ and a typed row in rows.go, whose json tags are the answer's columns:
//
//	question      sql                rows
//	effort        effort.sql         Effort
//	strike-rate   strike_rate.sql    StrikeRate
//	outcomes      outcomes.sql       Outcomes
//	fish          fish.sql           Fish
//	sizes         sizes.sql          Sizes
//	trips         trips.sql          Trip
//	set-aside     set_aside.sql      SetAside
//	              unsettled.sql      Unsettled
//	findings      cells.sql          Finding, in findings.go (evidence.go: every factor's evidence)
//	mixed-up      cells.sql          MixedUp, in mixed.go
//	size-medians  weights.sql        SizeMedian, in medians.go
//	next-season   cells.sql          NextSeason, in next.go
//	plan          cells.sql          PlanDay, in next.go
//	spread        gaps.sql           SpreadGap, in spread.go
//	methods       methods.csv        Method, in methods.go
//	scale-check   scale_fish.sql     ScaleCheck, in scale.go
//	scale-fish    scale_fish.sql     ScaleFish, in scale.go
//	gear          gear_strikes.sql   Drag, in gear.go
//	failures      gear_strikes.sql   Failure, in gear.go
//	              deck_spread.sql    SpreadPlace, in deck.go: the pages' own
//	              fates.sql          Fate, in pictures.go: the pages' own
//	track-speed   track_speed.sql    TrackSpeed, in track.go
//	tracks        tracks.sql         Track, in trackclock.go
//	strike-speed  strike_speed.sql   StrikeSpeed, in track.go
//	current       current.sql        Current, in trackcurrent.go
//	area          area.sql           Area, in track.go: for the boat alone
//
// Questions by a factor share _levels.sql, which gives every piece of effort
// and every strike its level; a level that is not logged is "not logged", so
// that the levels add up to the season. Intervals are added here from the
// counts, by package queries/stats.
package queries
