// Package export describes and writes a season for other programs.
//
//	fields.csv     the data dictionary: every column with its unit
//	dictionary.go  reads it
//	package.go     the description of an export, as a Frictionless Data Package
//	workbook.go    sheets of typed rows with number formats and charts
//
// The tables themselves are written by the store. The package knows no database.
package export
