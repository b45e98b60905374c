package page

import "time"

// Page is one report. Every string is plain text and is escaped on rendering.
type Page struct {
	Report    Report
	Title     string
	Kicker    string    // the few words above the title: what kind of page it is
	Subtitle  string    // under the title: boats, span of time
	Lang      string    // BCP 47 tag, "en" where empty
	Generated time.Time // printed in the foot; the clock is the caller's
	Open      []string  // paragraphs at the top: what is open in the logs; none where all is clear
	Tiles     []Tile
	Box       *Box     // under the figures; nil for none
	Left      []string // paragraphs under the box: what the page leaves out, and why
	Sections  []Section
	Folds     []Fold   // after the sections
	Footer    []string // paragraphs at the foot
}

// Box is what to do, a line each.
type Box struct {
	Heading string
	Lines   []BoxLine
}

// BoxLine is one line of a Box.
type BoxLine struct {
	Head  string // one to three words
	Words string
	To    string // ID of the section that shows it; empty for none
}

// Fold is sections behind one heading: they show, and print, only once opened.
type Fold struct {
	Heading  string
	Sections []Section
}

// Tile is one figure of the row at the top.
type Tile struct {
	Label string
	Value string // as printed, unit apart
	Unit  string
	Note  string // a second, smaller line
}

// Section is one question and its answer: sentences first, the chart next, its
// table under it, and what must be known to read them.
type Section struct {
	ID        string // anchor; lower-case letters, digits and hyphens
	Heading   string
	Sentences []string // the first is the answer, set larger
	Chart     *Chart   // nil: no chart
	Table     *Table   // nil: no table
	Tables    []*Table // further ones, under it
	Folded    *Folded  // nil: nothing to unfold
	Notes     []string
}

// Folded are lines that most readers pass over: they show, and print, only once
// opened.
type Folded struct {
	Summary string
	Lines   []string
}

// Key explains one kind of mark of a chart, in words and with a swatch.
type Key struct {
	Mark  Mark
	Words string
}

// Mark is the swatch of a Key.
type Mark string

// The swatches that the style sheet and the template know.
const (
	MarkBar      Mark = "bar"      // solid bar: strike rate
	MarkEffort   Mark = "effort"   // solid bar: effort
	MarkThin     Mark = "thin"     // pale hatched bar with a dashed edge: little effort
	MarkInterval Mark = "interval" // line with two caps
	MarkRing     Mark = "ring"     // open circle on an interval: estimated from the tape
	MarkDisc     Mark = "disc"     // filled circle: weighed on a scale
	MarkCircle   Mark = "circle"   // filled circle on an interval: the first of two shares
	MarkDiamond  Mark = "diamond"  // filled diamond on an interval: the second of two shares
	MarkSolid    Mark = "solid"    // solid bar of the ordered scale
	MarkHatched  Mark = "hatched"  // hatched bar of the ordered scale
	MarkDash     Mark = "dash"     // dashed line: a reference
	MarkBoated   Mark = "boated"   // dark bar
	MarkStruck   Mark = "struck"   // hatched bar
	MarkEarlier  Mark = "earlier"  // solid bar: the earlier of two seasons
	MarkLater    Mark = "later"    // solid bar: the later of two seasons
	MarkLost     Mark = "lost"     // solid bar: hooked and lost
	MarkTape     Mark = "tape"     // hatched bar: estimated from the tape
	MarkOpen     Mark = "open"     // open circle
	MarkLine     Mark = "line"     // solid line
	MarkLimits   Mark = "limits"   // two dashed lines
	MarkBand     Mark = "band"     // pale strip
)
