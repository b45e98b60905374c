package main

import (
	"strings"

	"github.com/spf13/cobra"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/species"
)

// The words that a shell offers behind a flag ('wakeledger completion --help').

// offers has a flag of c, where it has it, offer words.
func offers(c *cobra.Command, flag string, words ...string) {
	if c.Flags().Lookup(flag) == nil {
		return
	}
	err := c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
	if err != nil {
		panic(err) // a flag is given its words once
	}
}

func (a *app) completeAsk(c *cobra.Command, q question) {
	offers(c, "by", factors.Names()...)
	offers(c, "format", "table", "csv", "json")
	offers(c, "units", unitNames...)
	var columns []string
	for _, name := range columnsOf(q.columns) {
		name, _, _ = strings.Cut(strings.TrimSuffix(name, "%"), "|")
		columns = append(columns, strings.Split(name, "..")...)
	}
	offers(c, "columns", append(columns, allColumns)...)
	completeSpecies(c)
}

func (a *app) completeReport(c *cobra.Command) {
	offers(c, "units", unitNames...)
	completeSpecies(c)
}

// completeSpecies offers the names of fish. They are listed when a shell asks for them: each
// question has this flag.
func completeSpecies(c *cobra.Command) {
	if c.Flags().Lookup("species") == nil {
		return
	}
	err := c.RegisterFlagCompletionFunc("species",
		func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			list, err := species.Default()
			if err != nil {
				return nil, cobra.ShellCompDirectiveError
			}
			return speciesNames(list), cobra.ShellCompDirectiveNoFileComp
		})
	if err != nil {
		panic(err) // as in offers
	}
}

func completeReading(c *cobra.Command) {
	offers(c, "log-units", unitNames...)
	offers(c, "dates", "day-first", "month-first")
	offers(c, "decimal", "comma", "point")
	offers(c, "ocean", species.Oceans()...)
	offers(c, "units", unitNames...)
}
