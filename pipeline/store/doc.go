// Package store is the season file: the only package that knows the database.
//
// Logs go in as entries, one transaction a log (Load). What the entries say
// together - trips, legs, lines, strikes, fish - is made from them by the
// numbered files of derive/ (Derive): a pure function of the entries, run anew
// after each change, so that nothing has to be patched when a log is read
// again. All SQL is in .sql files.
package store
