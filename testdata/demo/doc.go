// Command demo writes Wakeledger's demo season: two invented seasons of one
// invented boat, kept as a person keeps them, in three logs of three shapes.
//
//	go run ./testdata/demo             writes testdata/demo/logs and the truth beside it
//	go run ./testdata/demo --out DIR   writes the logs to DIR and the truth to DIR's parent
//
// How it goes, in order:
//
//  1. model.go and strikes.go simulate trips, legs, lines, strikes and fish
//     from the tables in data.go, with a fixed seed.
//  2. mistakes.go adds rows that hold one unreadable cell each. Nothing else
//     in the logs refers to them.
//  3. log2025.go, flat2026.go and csv2026.go lay the logs out; table.go keeps
//     the place of each mistake as it is laid down; workbook.go and csvfile.go
//     write the files; tracks.go runs the boat along some of the trips.
//  4. truth.go adds up the model, never the files, without the mistakes.
//
// The program shares no code with the loader, so that truth.json can be held
// against what the loader finds. Boat, people, port, grounds and lures are
// invented; the species are real and their sizes follow published relations.
package main
