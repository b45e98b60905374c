package identity

import "slices"

// Boats says whether two logs are of one boat.
type Boats int

// Of two logs: one of them names no boat, they name one in common, or only others.
const (
	BoatOpen Boats = iota
	SameBoat
	OtherBoat
)

// Likeness is what a log that comes in has in common with one of the season file. A row
// is found again where its kind, day, start and line are in both logs.
type Likeness struct {
	Log      int64 // of the season file
	Track    bool  // of tracks: two receivers run side by side, and each second counts once
	SameFile bool  // name and folder are the same
	SameName bool
	SameHand bool // most of the earlier log's headings are the new one's
	Older    bool // the file that comes in was changed last before the other was
	Apart    bool // their owner said that they are different logs
	Boats    Boats
	Rows     int64 // of the earlier log
	Days     []Day // those on which either log has rows of a kind that both have

	ApartFrom []int64 // logs of the season file that are different from this one by their owner's word

	Moved    int64 // rows that are equal but for their day
	Legs     int64 // of the earlier log on the days of the new one, that have a start
	NewLegs  int64 // of the log that comes in
	Same     int64 // legs of both with the same end and speed
	Differ   int64 // legs of both with another end or speed
	Twin     int64 // legs with the same start, end and speed, but of another boat
	Overlaps int64 // legs that only one log has, in the midst of a leg of the other
	Loose    int64 // days on which both logs have hours without a start, which cannot be told apart
}

// Day is how many rows two logs have on a day.
type Day struct {
	Day    string // 2026-07-04, or "" for rows without a day
	Before int64  // rows of the earlier log
	Now    int64
	Found  int64 // of Before, those found again
	Equal  int64 // of Found, those that did not change
}

// Sum adds up days.
func Sum(days []Day) Day {
	var s Day
	for _, d := range days {
		s.Before, s.Now, s.Found, s.Equal = s.Before+d.Before, s.Now+d.Now, s.Found+d.Found, s.Equal+d.Equal
	}
	return s
}

// Act is what becomes of a log that comes in.
type Act int

// A log of its own; in place of an earlier one; or nothing, until its owner says which.
const (
	Another Act = iota
	Replace
	Ask
)

// Verdict is what becomes of a log, and for which logs of the season file.
type Verdict struct {
	Act  Act
	Logs []int64 // replaced: one; asked about: one or more
	Why  Reason  // of an Ask
}

// Reason is why something is asked.
type Reason string

// Reasons, in words that follow the other log's name.
const (
	Several   Reason = "it may be a changed copy of each of them"
	PartOf    Reason = "most of it stands there, but it has no more than half of that log's rows"
	SamePath  Reason = "it has that log's name, and some of its rows"
	OlderFile Reason = "it looks like a changed copy, but its file is older"
	NoDays    Reason = "the rows of both have no day of their own, and many are alike"
	NewDays   Reason = "its rows are that log's rows on other days: was a date put right?"
	Retold    Reason = "most of the same legs stand there under other headings, with other figures"
	Clash     Reason = "both have legs of the same hours, with other starts: both would be counted"
	NoStart   Reason = "both have hours of the same days without a start: both would be counted"
	SameDays  Reason = "both have the same days, with other starts"
	TwoBoats  Reason = "the same legs stand there under another boat"
)

// SameHand reports whether two logs are kept under the same headings: most of the earlier
// one's are the later one's too, and half of the later one's are not new. A log whose
// headings are not known, and a track, is of any hand.
func SameHand(earlier, later []string) bool {
	if len(earlier) == 0 || len(later) == 0 {
		return true
	}
	both := 0
	for _, h := range earlier {
		if slices.Contains(later, h) {
			both++
		}
	}
	return 3*both >= 2*len(earlier) && 2*both >= len(later)
}

// Compare says whether two logs are of one boat, from the boats that they name.
func Compare(a, b []string) Boats {
	if len(a) == 0 || len(b) == 0 {
		return BoatOpen
	}
	if slices.ContainsFunc(a, func(x string) bool { return slices.Contains(b, x) }) {
		return SameBoat
	}
	return OtherBoat
}

// leastMoved is from how many rows on, equal but for their day, a log may be one whose
// dates were put right; a few may be equal by chance. Our own judgement, no source.
const leastMoved = 6

// MayBeMoved reports whether a log of so many rows may be one that comes in with its dates
// put right.
func MayBeMoved(before, now int64) bool {
	return min(before, now) >= leastMoved && 4*before <= 5*now
}

// AsksMoved reports whether Moved counts.
func (x *Likeness) AsksMoved() bool {
	return x.SameHand && !x.Apart && x.Boats != OtherBoat && Sum(x.Days).Found == 0
}

// Decide says what becomes of a log from what it has in common with the logs of the
// season file.
func Decide(all []Likeness) Verdict {
	var replaced, asked []Likeness
	var why Reason
	for _, x := range all {
		switch act, reason := x.decide(); act {
		case Replace:
			replaced = append(replaced, x)
		case Ask:
			asked = append(asked, x)
			if why == "" {
				why = reason
			}
		}
	}
	if len(replaced) > 1 {
		one, ok := nearest(replaced)
		if !ok {
			return Verdict{Act: Ask, Logs: numbers(replaced), Why: Several}
		}
		replaced = []Likeness{one}
	}
	if len(replaced) == 1 { // what was settled for the earlier log holds for the changed one
		asked = slices.DeleteFunc(asked, func(x Likeness) bool { return slices.Contains(replaced[0].ApartFrom, x.Log) })
	}
	switch {
	case len(asked) > 0:
		return Verdict{Act: Ask, Logs: numbers(append(replaced, asked...)), Why: why}
	case len(replaced) > 0:
		return Verdict{Act: Replace, Logs: numbers(replaced)}
	}
	return Verdict{}
}

func numbers(of []Likeness) []int64 {
	var out []int64
	for _, x := range of {
		out = append(out, x.Log)
	}
	return out
}

// nearest is the one of several logs, different ones by their owner's word, of which the
// new one is the changed copy: that of the same file, else the only one with the most
// equal rows.
func nearest(of []Likeness) (Likeness, bool) {
	for _, x := range of {
		for _, y := range of {
			if x.Log != y.Log && !slices.Contains(x.ApartFrom, y.Log) {
				return Likeness{}, false
			}
		}
	}
	for _, x := range of {
		if x.SameFile {
			return x, true
		}
	}
	slices.SortStableFunc(of, func(x, y Likeness) int { return int(Sum(y.Days).Equal - Sum(x.Days).Equal) })
	return of[0], Sum(of[0].Days).Equal > Sum(of[1].Days).Equal
}

func (x *Likeness) decide() (Act, Reason) {
	all := Sum(x.Days)
	switch {
	case x.Apart:
		return Another, ""
	case x.Boats == OtherBoat:
		if 2*x.Twin > min(x.Legs, x.NewLegs) {
			return Ask, TwoBoats
		}
		return Another, ""
	case x.SameHand, x.SameFile: // a column more or less does not make another file of it
		return x.sameHand(all)
	}
	return x.otherHand()
}

// sameHand decides on a log with the headings of another.
func (x *Likeness) sameHand(all Day) (Act, Reason) {
	most := 2*all.Found > all.Before && all.Before > 0
	switch {
	case x.SameFile && x.Rows == 0: // nothing of the earlier reading could be used
		return Replace, ""
	case most && 5*(x.Rows-all.Before) > x.Rows: // a table of several
		return Ask, PartOf
	case most && x.undated() && !(x.SameFile && 5*all.Equal >= 4*min(all.Before, all.Now)):
		return Ask, NoDays
	case most && x.Older && !x.SameFile:
		return Ask, OlderFile
	case most:
		return Replace, ""
	case 2*all.Found > all.Now:
		return Ask, PartOf
	case x.SameName && all.Found > 0 && !x.undated():
		return Ask, SamePath
	case all.Found == 0 && x.Moved >= leastMoved && 5*x.Moved >= 4*x.Rows:
		return Ask, NewDays
	case all.Found == 0 && x.sharesDays() && !x.Track:
		return Ask, SameDays
	}
	return x.together()
}

// otherHand decides on a log that was kept in another way.
func (x *Likeness) otherHand() (Act, Reason) {
	if x.Differ > 0 && 2*(x.Same+x.Differ) > min(x.Legs, x.NewLegs) {
		return Ask, Retold
	}
	return x.together()
}

// together asks about hours that would be counted twice.
func (x *Likeness) together() (Act, Reason) {
	switch {
	case x.Overlaps > 0:
		return Ask, Clash
	case x.Loose > 0:
		return Ask, NoStart
	}
	return Another, ""
}

// undated reports whether most rows of the earlier log have no day: those of another year
// may look the same.
func (x *Likeness) undated() bool {
	var without int64
	for _, d := range x.Days {
		if d.Day == "" {
			without += d.Before
		}
	}
	return 2*without > x.Rows
}

// sharesDays reports whether more than half of either log's days are the other's too.
func (x *Likeness) sharesDays() bool {
	var before, now, both int
	for _, d := range x.Days {
		if d.Day == "" {
			continue
		}
		if d.Before > 0 {
			before++
		}
		if d.Now > 0 {
			now++
		}
		if d.Before > 0 && d.Now > 0 {
			both++
		}
	}
	return both > 0 && 2*both > min(before, now)
}
