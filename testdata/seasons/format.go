package seasons

import (
	"fmt"
	"math/rand/v2"
)

// Format is one way to keep a season's log. Each field is the name of one of Options.
type Format struct {
	Layout    string
	Container string
	Units     string
	Separator string // of text files
	Encoding  string // of text files
	Dates     string
	Clock     string
}

// Option is one choice of a Format, with its values.
type Option struct {
	Name   string
	Values []string
}

// Options are the choices and their values.
//
// Layouts: roles is a sheet a role with trip labels; dates is the same without
// labels; undated has labels, and days on the trips sheet alone; flat is a line
// or strike a row with labels; flat-dates has none; counts is flat with the
// number of strikes by outcome in place of each strike.
func Options() []Option {
	return []Option{
		{"layout", []string{"roles", "dates", "undated", "flat", "flat-dates", "counts"}},
		{"container", []string{"text", "workbook"}},
		{"units", []string{"us", "metric", "headings", "cells"}},
		{"separator", []string{"comma", "semicolon", "tab", ""}}, // semicolon: with decimal commas
		{"encoding", []string{"utf-8", "utf-8-bom", "utf-16le", "windows-1252", ""}},
		{"dates", []string{"iso", "day-first", "month-first", "names", "real-1900", "real-1904"}},
		{"clock", []string{"22:30", "2230", "10:30 pm", "24:00", "real"}},
	}
}

// Choices are the values of a format, in the order of Options.
func (f Format) Choices() []string {
	return []string{f.Layout, f.Container, f.Units, f.Separator, f.Encoding, f.Dates, f.Clock}
}

func (f Format) String() string {
	return fmt.Sprintf("%s/%s/%s/%s/%s/%s/%s", f.Layout, f.Container, f.Units,
		f.Separator, f.Encoding, f.Dates, f.Clock)
}

func (f Format) book() bool { return f.Container == "workbook" }

// labelled tells whether rows name their trip.
func (f Format) labelled() bool { return f.Layout != "dates" && f.Layout != "flat-dates" }

func (f Format) flat() bool {
	return f.Layout == "flat" || f.Layout == "flat-dates" || f.Layout == "counts"
}

// possible: separators and encodings are for text, real dates and times for workbooks.
func (f Format) possible() bool {
	if f.book() {
		return f.Separator == "" && f.Encoding == ""
	}
	return f.Separator != "" && f.Encoding != "" && f.Dates != "real-1900" &&
		f.Dates != "real-1904" && f.Clock != "real"
}

// Random is a possible format.
func Random(r *rand.Rand) Format {
	for {
		var v []string
		for _, o := range Options() {
			v = append(v, o.Values[r.IntN(len(o.Values))])
		}
		if f := (Format{v[0], v[1], v[2], v[3], v[4], v[5], v[6]}); f.possible() {
			return f
		}
	}
}

// pair is two values of two options that stand together in a format.
type pair struct {
	i, j int
	a, b string
}

func (f Format) pairs() []pair {
	var ps []pair
	v := f.Choices()
	for i := range v {
		for j := range i {
			ps = append(ps, pair{j, i, v[j], v[i]})
		}
	}
	return ps
}

// Sample is n formats that together hold as many pairs of values as a greedy
// search finds: each is the best of some random ones.
func Sample(r *rand.Rand, n int) []Format {
	seen := map[pair]bool{}
	var fs []Format
	for range n {
		best, most := Format{}, -1
		for range 60 {
			f, fresh := Random(r), 0
			for _, p := range f.pairs() {
				if !seen[p] {
					fresh++
				}
			}
			if fresh > most {
				best, most = f, fresh
			}
		}
		for _, p := range best.pairs() {
			seen[p] = true
		}
		fs = append(fs, best)
	}
	return fs
}
