package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/estimate"
	"wakeledger/pipeline/species"
	"wakeledger/pipeline/unit"
	"wakeledger/queries"
)

type weighFlags struct {
	species, stock, ocean, length, kind, girth, scale, state, units string
	certified, list                                                 bool
}

func (a *app) weighCmd() *cobra.Command {
	var w weighFlags
	c := &cobra.Command{
		Use:   "weigh",
		Short: "Weigh one fish from the tape: every estimate, its interval and its source",
		Long: "Weigh one fish from the tape: every estimate, its interval and its source.\n\n" +
			"Where the season file is there, the boat's own coefficient from its fish with tape and scale is used as well.",
		Example: "  wakeledger weigh --species PBF --length 74in --girth 55in\n  wakeledger weigh --species \"blue marlin\" --length 280cm --length-kind LJFL\n  wakeledger weigh --species YFT --stock YFT-ATL --length 120cm",
		Args:    takes(cobra.NoArgs),
		RunE: func(c *cobra.Command, _ []string) error {
			cat, err := estimate.Default()
			if err != nil {
				return err
			}
			if w.list {
				return writeTable(a.out, relationRows(cat))
			}
			own, err := a.ownCoefficients(c.Context(), c.Flags().Changed("db"))
			if err != nil {
				return err
			}
			return a.weigh(cat, own, w)
		},
	}
	f := c.Flags()
	f.StringVar(&w.species, "species", "", "FAO 3-alpha code or name")
	f.StringVar(&w.ocean, "ocean", "", "settles a local name and the stock")
	f.StringVar(&w.stock, "stock", "", "the stock or the relation, as --list names them")
	f.StringVar(&w.length, "length", "", "such as 74in, 6'2\" or 188cm")
	f.StringVar(&w.kind, "length-kind", "", "FL, CFL, TL, LJFL or EFL")
	f.StringVar(&w.girth, "girth", "", "at the thickest point")
	f.StringVar(&w.scale, "scale", "", "what a scale said, such as 187lb")
	f.StringVar(&w.state, "weight-state", "", "of the fish on the scale: round, bled, gutted, gilled-gutted or dressed")
	f.BoolVar(&w.certified, "certified", false, "the scale is certified")
	f.StringVar(&w.units, "units", "metric", "us or metric: what is shown")
	f.BoolVar(&w.list, "list", false, "list the published relations")
	return c
}

// ownCoefficients are the boat's own, from the season file; none where there is no
// file, which is an error only where one was named.
func (a *app) ownCoefficients(ctx context.Context, named bool) (own map[string]estimate.Own, err error) {
	if _, err := os.Stat(a.db); err != nil && !named {
		return nil, nil
	}
	s, err := a.openRead(ctx, a.db)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, s.DB.Close()) }()
	pairs, err := queries.AskOwnPairs(ctx, s.DB)
	return estimate.FitOwn(pairs), err
}

func (a *app) weigh(cat *estimate.Catalogue, own map[string]estimate.Own, w weighFlags) error {
	fish, name, err := w.fish()
	if err != nil {
		return err
	}
	if w.stock != "" && !cat.HasStock(fish.Species, w.stock) {
		return usage("--stock %s: the relations of this species that may be chosen are %s", w.stock, strings.Join(cat.Stocks(fish.Species), ", "))
	}
	found := cat.Weigh(fish, own)
	fmt.Fprintf(a.out, "%s\n", name)
	if r, why, ok := cat.Choice(fish); ok {
		fmt.Fprintf(a.out, "relation for its length alone: %s, %s, because %s\n", r.ID, r.Stock, why)
	}
	for _, e := range found {
		a.tellEstimate(e, w.units)
	}
	if len(found) == 0 {
		for _, why := range cat.Unused(fish, own) {
			fmt.Fprintf(a.out, "\nnot used: %s\n", why)
		}
		return fmt.Errorf("nothing to weigh by: give --scale, --length and --girth, or --length with a --species that has a relation")
	}
	fmt.Fprintln(a.out)
	for _, sentence := range estimate.Compare(found) {
		fmt.Fprintln(a.out, sentence)
	}
	fmt.Fprintf(a.out, "A weight from the tape is a median: half of such fish are heavier.\n%s\n", estimate.Caution)
	return nil
}

func (a *app) tellEstimate(e estimate.Estimate, units string) {
	show := func(kg float64) string {
		if units == "us" {
			return fmt.Sprintf("%.1f lb", kg/kgPerPound)
		}
		return fmt.Sprintf("%.1f kg", kg)
	}
	fmt.Fprintf(a.out, "\n%s: %s", e.Method, show(e.WeightKG))
	if e.HasInterval {
		fmt.Fprintf(a.out, ", 90 %% of such fish %s to %s\n", show(e.LoKG), show(e.HiKG))
	} else {
		fmt.Fprint(a.out, ", no interval is known\n")
	}
	fmt.Fprintf(a.out, "  source: %s\n", e.Source)
	for _, n := range e.Notes {
		fmt.Fprintf(a.out, "  %s\n", n)
	}
}

const kgPerPound = 0.45359237

// fish reads the flags; the name is what the species was understood as.
func (w *weighFlags) fish() (estimate.Fish, string, error) {
	f := estimate.Fish{Stock: w.stock, LengthKind: w.kind, WeightState: w.state, Certified: w.certified}
	if w.units != "us" && w.units != "metric" {
		return f, "", usage("--units %q: expected us or metric", w.units)
	}
	var err error
	if f.Ocean, err = species.ParseOcean(w.ocean); err != nil {
		return f, "", usage("--ocean: %v", err)
	}
	for _, q := range []struct {
		flag, text string
		dim        unit.Dimension
		to         unit.Unit
		into       *float64
	}{
		{"length", w.length, unit.Length, unit.Centimetre, &f.LengthCM},
		{"girth", w.girth, unit.Length, unit.Centimetre, &f.GirthCM},
		{"scale", w.scale, unit.Mass, unit.Kilogram, &f.ScaleKG},
	} {
		if q.text == "" {
			continue
		}
		v, err := unit.ParseQuantity(q.text, q.dim, "", unit.MarkUnknown)
		if err == nil {
			*q.into, err = v.In(q.to)
		}
		if err != nil {
			return f, "", usage("--%s %s: %v", q.flag, q.text, err)
		}
	}
	name, err := w.named(&f)
	return f, name, err
}

func (w *weighFlags) named(f *estimate.Fish) (string, error) {
	if w.species == "" {
		return "a fish of no named species", nil
	}
	list, err := species.Default()
	if err != nil {
		return "", err
	}
	m := list.Find(w.species, f.Ocean)
	switch {
	case m.Found:
		f.Species = m.Species.Code
		return fmt.Sprintf("%s, %s (%s)", m.Species.Name, m.Species.Scientific, m.Species.Code), nil
	case len(m.Candidates) > 0:
		return "", usage("--species %s means %v: name one, or give --ocean", w.species, m.Candidates)
	}
	return "", usage("--species %s is not known: 'wakeledger weigh --list' shows the species with a relation", w.species)
}

// relationRow is a relation as --list prints it.
type relationRow struct {
	Species  string `json:"species"`
	Relation string `json:"relation"`
	Stock    string `json:"stock"`
	Sex      string `json:"sex"`
	A        string `json:"a"`
	B        string `json:"b"`
	Length   string `json:"length"`
	Weight   string `json:"weight"`
	Fish     string `json:"fish"`
	RangeCM  string `json:"range_cm"`
	Spread   string `json:"residual_s"` // of ln W, where published
	Default  bool   `json:"default"`
	Citation string `json:"citation"`
	Document string `json:"document"`
	Seen     string `json:"seen"`
}

func relationRows(cat *estimate.Catalogue) []relationRow {
	var rows []relationRow
	for _, r := range cat.Relations() {
		row := relationRow{Species: r.Species, Relation: r.ID, Stock: r.Stock, Sex: r.Sex, A: fmt.Sprintf("%.6g", r.A), B: fmt.Sprintf("%.7g", r.B),
			Length: r.LengthKind, Weight: r.WeightState, Default: r.Default, Citation: r.Citation, Document: r.Document, Seen: r.Seen}
		if r.N > 0 {
			row.Fish = fmt.Sprint(r.N)
		}
		switch {
		case r.MinCM > 0 && r.MaxCM > 0:
			row.RangeCM = fmt.Sprintf("%g to %g", r.MinCM, r.MaxCM)
		case r.MaxCM > 0:
			row.RangeCM = fmt.Sprintf("up to %g", r.MaxCM)
		case r.MinCM > 0:
			row.RangeCM = fmt.Sprintf("from %g", r.MinCM)
		}
		if r.ResidualS > 0 {
			row.Spread = fmt.Sprintf("%g", r.ResidualS)
		}
		rows = append(rows, row)
	}
	return rows
}
