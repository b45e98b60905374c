// Package unit turns the text of a log's cell into values: numbers, quantities
// with units, dates, and moments (a date, a clock time, or both).
//
// It is a leaf: it imports the standard library only and keeps no state. What a
// whole file knows (its decimal mark, its order of day and month, the unit in a
// column's header) is gathered by the caller, from [MarkOf] and [OrderOf] over the
// cells, and handed back in. What neither the cell nor the file settles is an error,
// never a guess: [ErrAmbiguousMark], [ErrAmbiguousDate], [ErrAmbiguousUnit].
//
// An error's text is a short phrase for the person who keeps the log. It does not
// repeat the cell, which the caller has.
//
// Plain numbers, numbers with a unit, ISO dates and HH:MM are read without
// allocating, since a large log holds tens of millions of such cells.
package unit
