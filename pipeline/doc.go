// Package pipeline brings logs into a season file. Its stages, in order:
//
//  1. sheet      opens a file and gives the rows of its sheets, as text
//  2. layout     finds the tables, forms and notes of a sheet, as records
//  3. meaning    infers what each record and each of its labels is: the plan
//  4. normalise  runs the plan: rows to entries, units, dates, closed lists, species
//  5. proof      holds what was read against the log's own sums, and asks what is open
//  6. batch      fills Arrow record batches, one reader ahead of the database
//  7. store      keeps the entries, and makes trips, legs, lines, strikes and
//     fish from them by SQL
//  8. estimate   weighs every fish that has a tape or a scale
//
// What the log's owner answered is kept by question and put into the plan before rows
// are stored (answers.go).
//
// A boat's track (GPX, NMEA 0183, CSV of fixes) is a log too: package track cuts
// it into pieces of ten seconds, store keeps them and lays them beside the legs.
//
// plan, words, phrase, record (places and problems), entry (typed values), unit, zone,
// spelling and species are what the stages share. Only store knows the database; everything
// before it can be tested without.
package pipeline
