package proof

import "fmt"

// TrackDays asks which order the days of a track are in, where nothing in it and no
// leg tells. It is of the track's headings, so that the next file of the same
// receiver has the same one. text is a date as written, day and month what it may be.
func TrackDays(headings []string, member, text, day, month string) Question {
	return Question{ID: id("track days", headings...), Kind: "track days", Sheet: member,
		About:   "the days of the track",
		Text:    fmt.Sprintf("%s: is that %s or %s? Neither the track nor a leg says.", text, day, month),
		Brief:   "The days of a track may be day first or month first, and none of it is used.",
		Options: []string{"day first: " + day, "month first: " + month},
		Choices: []string{dayFirst, monthFirst}, Effect: []string{"bands"}}
}

const dayFirst, monthFirst = "day first", "month first"
