// Package logbook writes an empty logbook to fill in: a workbook with a sheet a
// role, units in the headings, drop-downs for the closed lists, one example row
// that the loader passes over, and a sheet that explains each column. Its
// columns are data: columns.csv.
package logbook
