// Package terminal lays rows out as a table that is read on a terminal: chosen columns,
// headings in words, units as asked for, texts wrapped to a width. Programs read JSON and
// CSV instead, which have every column under its own name and in the season file's units.
package terminal
