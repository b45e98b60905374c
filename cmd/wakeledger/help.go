package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// listed marks a command whose help names its own commands.
const listed = "listed"

// helpTemplate is the help of a command behind its first sentences. Lines fit in 100 columns.
const helpTemplate = `{{if .HasExample}}Examples:
{{.Example}}

{{end}}{{if and .HasAvailableSubCommands (not (index .Annotations "` + listed + `"))}}{{kindsOf .}}
{{commandLines .}}

{{end}}{{if .HasAvailableLocalFlags}}Flags:
{{.LocalFlags.FlagUsagesWrapped 100 | trimTrailingWhitespaces}}
{{end}}{{if .HasAvailableInheritedFlags}}
For every command:
{{.InheritedFlags.FlagUsagesWrapped 100 | trimTrailingWhitespaces}}
{{end}}{{if .HasAvailableSubCommands}}
'{{.CommandPath}} {{subWord .}} --help' says more of one.
{{end}}`

// wordHelp has help and usage in the program's own words.
func wordHelp(root *cobra.Command) {
	cobra.AddTemplateFunc("commandLines", commandLines)
	cobra.AddTemplateFunc("foldedText", foldedText)
	cobra.AddTemplateFunc("subWord", subWord)
	cobra.AddTemplateFunc("kindsOf", kindsOf)
	root.SetHelpTemplate("{{with (or .Long .Short)}}{{. | foldedText}}\n\n{{end}}  {{.UseLine}}\n\n" + helpTemplate)
	root.SetUsageTemplate("  {{.UseLine}}\n\n" + helpTemplate)
	root.SetHelpCommand(&cobra.Command{Hidden: true})
}

// subWord is what stands behind a command that has commands: ask QUESTION.
func subWord(c *cobra.Command) string {
	switch c.Name() {
	case "ask":
		return "QUESTION"
	case "report":
		return "KIND"
	}
	return "COMMAND"
}

// kindsOf is the heading above a command's own commands.
func kindsOf(c *cobra.Command) string {
	if subWord(c) == "KIND" {
		return "Kinds:"
	}
	return "Commands:"
}

// commandLines are a command's own commands, one below the other with what each does.
func commandLines(c *cobra.Command) string {
	var lines []string
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() && sub.Name() != "completion" {
			lines = append(lines, folded(fmt.Sprintf("  %-10s ", sub.Name()), sub.Short))
		}
	}
	return strings.Join(lines, "\n")
}

// foldedText has the lines of a text fit in a table's width; lines that are set out stay.
func foldedText(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if !strings.HasPrefix(line, " ") {
			lines[i] = folded("", line)
		}
	}
	return strings.Join(lines, "\n")
}
