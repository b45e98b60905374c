package pipeline

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/meaning"
	"wakeledger/pipeline/normalise"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/store"
	"wakeledger/pipeline/unit"
	"wakeledger/pipeline/zone"
)

// Config is what the user settles.
type Config struct {
	Boat    string        // of logs that name none
	Zone    string        // of logs that name none: IANA name or UTC-9
	Units   string        // of cells that state none: "us", "metric" or "" for the file's own evidence
	Order   unit.Order    // of day and month
	Mark    unit.Mark     // the decimal mark
	Ocean   string        // settles local names of species
	TripGap time.Duration // 0 keeps the season file's
	Mapping Mapping       // how sheets are to be read, where their headings do not tell
	Edges   Edges         // of classes; nil keeps those of the season file
	// TrackClock is added to the times of tracks, for a receiver whose clock is wrong.
	TrackClock     time.Duration
	TrackClockSaid bool // TrackClock holds, also where it is 0
	// without a fix, from which a track is parted; 0: as the log was read before, else 5 minutes
	TrackGap time.Duration
	// Replaces names the logs, by number or name, whose places the logs that are loaded
	// take; Another says that they are logs of their own.
	Replaces []string
	Another  bool
	Now      func() time.Time
	// Progress is told how far reading has come, from the goroutine that reads;
	// nil: nobody wants to know.
	Progress func(Progress)
	// Why has reports tell the evidence for each column.
	Why    bool
	beside []string // files of a log's folder that are tables of the same book
	// Switches leave out kinds of evidence by name, to see what each is worth.
	Switches meaning.Switches
}

// DefaultTripGap is the time without lines in the water that parts two trips
// where the log does not name them.
const DefaultTripGap = 6 * time.Hour

func (c *Config) complete() error {
	var err error
	if c.Zone != "" {
		if c.Zone, err = zone.Name(c.Zone); err != nil {
			return err
		}
	}
	if c.Ocean, err = species.ParseOcean(c.Ocean); err != nil {
		return err
	}
	if c.Units != "" && c.Units != "us" && c.Units != "metric" {
		return fmt.Errorf("units %q: expected us or metric", c.Units)
	}
	if c.TripGap < 0 {
		return errors.New("the gap between trips cannot be negative")
	}
	if c.TrackGap < 0 {
		return errors.New("the gap that parts a track cannot be negative")
	}
	if c.Now == nil {
		c.Now = time.Now
	}
	return nil
}

// Season is a season file with all that is needed to fill it.
type Season struct {
	DB *store.DB

	cfg       Config
	ocean     string                  // of the derivation under way
	answers   map[string]store.Answer // kept, by the id of their question
	shelf     *shelf                  // while logs are loaded
	grouped   bool                    // many are in one transaction
	exhaust   bool                    // each log is held against all others, to test that some are enough
	lexicon   *meaning.Lexicon
	species   *species.List
	catalogue *estimate.Catalogue
}

// Open opens the season file at path, or makes it; "" is one in memory. The
// caller closes DB.
func Open(ctx context.Context, path string, cfg Config) (*Season, error) {
	s, err := newSeason(cfg)
	if err != nil {
		return nil, err
	}
	if s.lexicon, err = meaning.Default(s.species); err != nil {
		return nil, err
	}
	now := s.cfg.Now()
	s.lexicon.Today = unit.DateOf(now.Year(), now.Month(), now.Day())
	if s.DB, err = store.Open(ctx, path); err != nil {
		return nil, err
	}
	if err := s.recall(ctx); err != nil {
		return nil, errors.Join(err, s.DB.Close())
	}
	return s, nil
}

// newSeason is a season without its file, and without the lexicon, which logs alone need.
func newSeason(cfg Config) (*Season, error) {
	if err := cfg.complete(); err != nil {
		return nil, err
	}
	s := &Season{cfg: cfg}
	var err error
	if s.species, err = species.Default(); err != nil {
		return nil, err
	}
	if s.catalogue, err = estimate.Default(); err != nil {
		return nil, err
	}
	return s, nil
}

// recall takes over what the season file keeps: an ocean once given holds for it.
func (s *Season) recall(ctx context.Context) (err error) {
	if s.cfg.Ocean == "" {
		s.cfg.Ocean, err = s.DB.Setting(ctx, "ocean")
	}
	return err
}

// Under is the same season file under another configuration. The caller closes its DB once.
func (s *Season) Under(cfg Config) (*Season, error) {
	if err := cfg.complete(); err != nil {
		return nil, err
	}
	t := *s
	t.cfg = cfg
	return &t, nil
}

func (s *Season) settings() normalise.Settings {
	set := normalise.Settings{Units: s.cfg.Units, Order: s.cfg.Order, Mark: s.cfg.Mark,
		Ocean: s.cfg.Ocean, Species: s.species}
	if loc, err := zone.Load(s.cfg.Zone); s.cfg.Zone != "" && err == nil { // a name that is none was refused before
		set.Zone = loc
	}
	return set
}

// NeedsOcean tells a name of fish that means several species, and that an ocean would
// settle where none, or another, was given.
func (s *Season) NeedsOcean(name string) bool {
	if m := s.species.Find(name, s.cfg.Ocean); m.Found || len(m.Candidates) == 0 {
		return false
	}
	return slices.ContainsFunc(species.Oceans(), func(o string) bool { return s.species.Find(name, o).Found })
}

// Now is the configuration's clock.
func (s *Season) Now() time.Time { return s.cfg.Now() }
