// Package reports turns the answers of package queries into pages. It takes
// typed rows and writes HTML; it never reads a log nor the season file.
//
// A report is built in three steps:
//
//  1. The caller asks the questions and fills in the report's input
//     ([SeasonInput]); the time comes in with it, so that the same input gives
//     the same bytes.
//  2. Each section is built by one function in its own file: sentences first,
//     then a chart, its table, and what must be known to read them.
//  3. Package page renders the sections as one file (how it looks is there).
//
// # What a sentence may say
//
// A sentence is never stronger than its interval. Two levels are called apart
// only where their 95 % intervals do not touch, which asks for more than a test
// at 5 % would; where they do touch, the report says that the season does not
// settle it. A level with little effort never leads.
package reports
