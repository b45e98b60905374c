package main

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"wakeledger/pipeline/factors"
	"wakeledger/pipeline/spelling"
)

// notOne is the error for a word that is none of a list: what is what the word was given
// for, such as --by.
func notOne(what, word string, list []string) error {
	near := didYouMean(word, list)
	if len(list) > 1 || near == "" {
		near += oneOf(list)
	}
	return usage("%s %q is not known. %s", what, word, strings.TrimSpace(near))
}

// didYouMean names the nearest word of a list, as a sentence with a space behind; "" where
// none is near.
func didYouMean(word string, list []string) string {
	if near := spelling.Nearest(word, list); near != "" {
		return "Did you mean " + near + "? "
	}
	return ""
}

func oneOf(list []string) string {
	if len(list) < 2 {
		return "It can be " + strings.Join(list, "")
	}
	return "It can be " + strings.Join(list[:len(list)-1], ", ") + " or " + list[len(list)-1]
}

// oneWord fails where a flag's word is none of those that it takes.
func oneWord(flag, word string, list ...string) error {
	for _, x := range list {
		if word == x {
			return nil
		}
	}
	return notOne("--"+flag, word, list)
}

// takesLogs, takesNothing and takesOne are what stands behind a command's name.
func takesLogs(c *cobra.Command, args []string) error {
	if len(args) == 0 {
		return usage("%s what? Name one log or more, such as: %s my-log.xlsx", c.Name(), c.CommandPath())
	}
	return nil
}

func takesNothing(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		if near := didYouMean(args[0], commandNames(c)); near != "" {
			return usage("%s: there is no %q. %s", called(c), args[0], strings.TrimSpace(near))
		}
		return usage("%s takes nothing but flags: %q is one word too many", called(c), args[0])
	}
	return nil
}

func takesOne(what, such string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) == 0:
			return usage("%s needs %s, such as: %s %s", called(c), what, c.CommandPath(), such)
		case len(args) > 1:
			return usage("%s takes %s: %q is one word too many", called(c), what, args[1])
		}
		return nil
	}
}

var unitNames = []string{"us", "metric"}

// wrongFlag says of a flag that could not be read what is wrong in words.
func wrongFlag(c *cobra.Command, err error) error {
	var none *pflag.NotExistError
	var bad *pflag.InvalidValueError
	var bare *pflag.ValueRequiredError
	if given := c.Flags().Args(); errors.As(err, &none) && !c.HasParent() && len(given) > 0 {
		return noCommand(c, given[0])
	}
	switch {
	case errors.As(err, &none) && len(none.GetSpecifiedName()) > 1:
		return usage("%s takes no --%s. %s", called(c), none.GetSpecifiedName(), nearFlag(c, none.GetSpecifiedName()))
	case errors.As(err, &none):
		return usage("%s takes no -%s: flags have two hyphens and a whole word, such as --help",
			called(c), none.GetSpecifiedName())
	case errors.As(err, &bad):
		return usage("--%s %q: expected %s", bad.GetFlag().Name, bad.GetValue(), expected(bad.GetFlag().Value.Type()))
	case errors.As(err, &bare):
		return usage("--%s needs a word after it: %s", bare.GetSpecifiedName(), bare.GetFlag().Usage)
	}
	return usage("%v", err)
}

// called is a command's name as a user says it.
func called(c *cobra.Command) string {
	return strings.TrimPrefix(c.CommandPath(), "wakeledger ")
}

// nearFlag names the nearest flag of a command, with its two hyphens.
func nearFlag(c *cobra.Command, name string) string {
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden {
			names = append(names, f.Name)
		}
	})
	near := spelling.Nearest(name, names)
	if near == "" {
		return "It takes --" + strings.Join(names, ", --")
	}
	return "Did you mean --" + near + "?"
}

// expected is what a flag of a kind takes.
func expected(kind string) string {
	switch kind {
	case "int":
		return "a whole number, such as 10"
	case "float64":
		return "a number, such as 1.5"
	case "bool":
		return "true or false, or the flag alone"
	case "duration":
		return "a time with its unit, such as 6h or 90m"
	}
	return "another value"
}

// noCommand is the error for a first word that is neither a command nor a log.
func noCommand(root *cobra.Command, word string) error {
	names := commandNames(root)
	what := "command"
	if strings.ContainsAny(word, `./\`) {
		what = "log or command"
	}
	near := ""
	if meant := nearestOfAll(word, names); meant != "" {
		near = "Did you mean " + meant + "? "
	}
	return usage("there is no %s %q. %sThe commands are %s", what, word, near, strings.Join(names, ", "))
}

// nearestOfAll is the command that a word was to be, or the question, the report or the factor
// with the command that it belongs to: "ask strike-rate" for strikerate. "" where none is near.
func nearestOfAll(word string, commands []string) string {
	belongs := map[string]string{}
	all := slices.Clone(commands)
	for _, of := range []struct {
		before string
		names  []string
	}{{"", commands}, {"ask ", questionNames()}, {"report ", reportNames()},
		{"ask strike-rate --by ", factors.Names()}} {
		for _, name := range of.names {
			if _, ok := belongs[name]; !ok {
				belongs[name] = of.before + name
				all = append(all, name)
			}
		}
	}
	return belongs[spelling.Nearest(word, all)]
}

// commandNames are those of a command's own commands.
func commandNames(c *cobra.Command) []string {
	var names []string
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() {
			names = append(names, sub.Name())
		}
	}
	return names
}

// noFile says that a file is not there, and which one beside it was meant.
func noFile(file string) string {
	return strings.TrimSpace(file + ": there is no such file. " + nearFileOf(file))
}

// nearFileOf names the file beside that was meant, as a sentence; "" where none is near.
func nearFileOf(file string) string {
	var beside []string
	entries, err := os.ReadDir(filepath.Dir(file))
	for _, e := range entries {
		if err == nil && !strings.HasPrefix(e.Name(), ".") {
			beside = append(beside, filepath.Join(filepath.Dir(file), e.Name()))
		}
	}
	return strings.TrimSpace(didYouMean(file, beside))
}

// asMeant is a command line as it is meant: 'help ask' is 'ask --help', and logs that stand
// alone, as they do where files are dropped on the program, are for season.
func asMeant(root *cobra.Command, args []string) []string {
	if len(args) > 0 && args[0] == "help" {
		return append(args[1:len(args):len(args)], "--help")
	}
	if c, _, err := root.Find(args); len(args) == 0 || err == nil && c != root {
		return args
	}
	logs := 0
	for i, word := range args {
		if strings.HasPrefix(word, "-") {
			continue
		}
		_, err := os.Stat(word)
		if err == nil {
			logs++
		} else if i == 0 || spelling.Nearest(word, commandNames(root)) != "" {
			return args
		}
	}
	if logs == 0 {
		return args
	}
	return append([]string{"season"}, args...)
}
