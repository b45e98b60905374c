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
		Short: "Weigh one fish by the tape: the weight to use, then every other and its source",
		Long: "Weigh one fish by the tape: the weight to use first, then every other, how sure it is and its " +
			"source.\n\n" +
			"With a season file, the boat's own fish that had tape and scale count too.",
		Example: "  wakeledger weigh --species PBF --length 74in --girth 55in\n  wakeledger weigh --species \"blue " +
			"marlin\" --length 280cm --length-kind LJFL\n" +
			"  wakeledger weigh --species YFT --stock YFT-ATL --length 120cm",
		Args: takesNothing,
		RunE: func(c *cobra.Command, _ []string) error {
			cat, err := estimate.Default()
			if err != nil {
				return err
			}
			if w.list {
				return a.writeRelations(relationRows(cat))
			}
			own, err := a.ownCoefficients(c.Context(), c.Flags().Changed("db"))
			if err != nil {
				return err
			}
			return a.weigh(cat, own, w)
		},
	}
	f := c.Flags()
	f.StringVar(&w.species, "species", "", "the `species`, by name or FAO code")
	f.StringVar(&w.ocean, "ocean", "", "the `ocean`, such as pacific or \"western atlantic\": which fish and which "+
		"stock is meant")
	f.StringVar(&w.stock, "stock", "", "the `stock`, or the relation, as --list names them")
	f.StringVar(&w.length, "length", "", "the `length`, such as 74in, 6'2\" or 188cm")
	f.StringVar(&w.kind, "length-kind", "", "`how` it was measured: FL, CFL, TL, LJFL, EFL, PCL (to the notch "+
		"before the tail) or PCKL (head off: pectoral fin to keel)")
	f.StringVar(&w.girth, "girth", "", "the `girth` at the thickest point, such as 55in")
	f.StringVar(&w.scale, "scale", "", "the `weight` that a scale showed, such as 187lb")
	f.StringVar(&w.state, "weight-state", "", "the `state` of the fish on the scale: round, bled, gutted, "+
		"gilled-gutted or dressed")
	f.BoolVar(&w.certified, "certified", false, "the scale is certified")
	f.StringVar(&w.units, "units", "", "`us` or metric; left out: as the measures are given")
	offers(c, "units", unitNames...)
	offers(c, "ocean", species.Oceans()...)
	offers(c, "length-kind", lengthKinds...)
	offers(c, "weight-state", weightStates...)
	completeSpecies(c)
	f.BoolVar(&w.list, "list", false, "list the published relations and their sources")
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
	m, err := w.read()
	if err != nil {
		return err
	}
	if w.stock != "" && !cat.HasStock(m.fish.Species, w.stock) {
		stocks := strings.Join(cat.Stocks(m.fish.Species), ", ")
		return usage("--stock %q is not known. %sThis species has %s", w.stock,
			didYouMean(w.stock, cat.Stocks(m.fish.Species)), stocks)
	}
	found := cat.Weigh(m.fish, own)
	if len(found) == 0 {
		return nothingToWeighBy(cat.Unused(m.fish, own))
	}
	fmt.Fprintf(a.out, "%s\n\n", m.name)
	a.tellAnswer(found[0], m)
	for _, d := range m.doubts(cat) {
		a.tellFolded("", fmt.Sprintf("Doubtful: %s (%s).", d.Reason, d.Found))
	}
	if r, why, ok := cat.Choice(m.fish); ok {
		a.tellFolded("", fmt.Sprintf("By its length alone: relation %s, %s, because %s.", r.ID, r.Stock, why))
	}
	told := map[string]bool{}
	for i, e := range found {
		if i == 1 {
			fmt.Fprint(a.out, "\nThe others, to compare with:\n")
		}
		a.tellEstimate(e, m, told)
	}
	fmt.Fprintln(a.out)
	for _, sentence := range estimate.Compare(found) {
		a.tellFolded("", sentence)
	}
	a.tellFolded("", "A weight from the tape is a median: half of such fish are heavier.")
	a.tellFolded("", estimate.Caution)
	return nil
}

// tellFolded prints a text behind a beginning, in lines that fit on a terminal.
func (a *app) tellFolded(begin, text string) { fmt.Fprintln(a.out, folded(begin, text)) }

// nothingToWeighBy says what is missing and why what was given is not enough.
func nothingToWeighBy(unused []string) error {
	missing := "nothing to weigh by: give --length and --girth, or --length and --species, or --scale"
	return errors.New(strings.Join(append([]string{missing}, unused...), "\n"))
}

var byMethod = map[string]string{
	estimate.CertifiedScale: "by a certified scale", estimate.DockScale: "by a dock scale",
	estimate.OwnCoefficient: "by the boat's own divisor", estimate.LengthAndGirth: "by the girth rule",
	estimate.LengthAlone: "by the length alone",
}

// tellAnswer prints the one weight to use, and what to know before leaning on it.
func (a *app) tellAnswer(e estimate.Estimate, m measuredFish) {
	fmt.Fprintf(a.out, "Use %s, %s.", m.weight(e.WeightKG), byMethod[e.Method])
	switch {
	case e.HasInterval:
		fmt.Fprintf(a.out, " 90 %% of such fish weigh %s to %s.", m.weight(e.LoKG), m.weight(e.HiKG))
	case e.Method != estimate.CertifiedScale && e.Method != estimate.DockScale:
		fmt.Fprint(a.out, " How far off it may be is not known.")
	}
	fmt.Fprintln(a.out)
	if e.Outside != nil {
		a.tellFolded("", fmt.Sprintf("The length is outside those of %s, %s: less sure than it looks.",
			e.Outside.Of, e.Outside.Words(m.length)))
	}
}

// tellEstimate prints an estimate with its source and those of its notes that were not
// told yet.
func (a *app) tellEstimate(e estimate.Estimate, m measuredFish, told map[string]bool) {
	fmt.Fprintf(a.out, "\n%s: %s", estimate.Words(e.Method), m.weight(e.WeightKG))
	if e.HasInterval {
		fmt.Fprintf(a.out, ", 90 %% of such fish %s to %s\n", m.weight(e.LoKG), m.weight(e.HiKG))
	} else {
		fmt.Fprint(a.out, ", how far off is not known\n")
	}
	source := e.Source
	if e.Relation != "" {
		source = e.Relation + ", " + source
	}
	a.tellFolded("  source: ", source)
	for _, n := range e.Notes {
		if !told[n] {
			a.tellFolded("  ", n)
		}
		told[n] = true
	}
}
