// Package pipeline brings logs into a season file. Its stages, in order:
//
//  1. sheet      opens a file and gives the rows of its sheets, as text
//  2. recognise  finds the header and tells what each column and row is
//  3. normalise  turns rows into entries: units, dates, closed lists, species
//  4. batch      fills Arrow record batches, one reader ahead of the database
//  5. store      keeps the entries, and makes trips, legs, lines, strikes and
//     fish from them by SQL
//  6. estimate   weighs every fish that has a tape or a scale
//
// A boat's track (GPX, NMEA 0183, CSV of fixes) is a log too: package track cuts
// it into pieces of ten seconds, store keeps them and lays them beside the legs.
//
// record (places and problems), entry (typed values), unit, zone and species
// are leaves that the stages share. Only store knows the database; everything
// before it can be tested without.
package pipeline
