package main

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spf13/pflag"

	"silowright/cmd/internal/nearest"
)

// stopError ends a command with exit code 1: the work was done and its answer
// is no. An empty says prints nothing, for when the answer is on stdout.
type stopError struct{ says string }

func (s stopError) Error() string { return s.says }

// usagef returns an error for a command line that cannot be followed. Like any
// other error it ends with exit code 2.
func usagef(format string, args ...any) error { return fmt.Errorf(format, args...) }

// helpAsked says that --help was among the arguments of a command with these
// flags.
type helpAsked struct{ flags *pflag.FlagSet }

func (helpAsked) Error() string { return "help asked" }

// flagsOf returns a command's flags, as its own --help shows them. Nothing of
// the command's work is done: every command reads its flags first.
func flagsOf(c command) *pflag.FlagSet {
	var asked helpAsked
	if err := c.run(&env{}, []string{"--help"}); errors.As(err, &asked) {
		return asked.flags
	}
	return newFlags(c.name)
}

// newFlags returns an empty flag set for the command called name. Parse it
// with parseFlags, never by itself: that one words the errors.
func newFlags(name string) *pflag.FlagSet {
	fs := pflag.NewFlagSet(name, pflag.ContinueOnError)
	fs.SetOutput(io.Discard)
	fs.SortFlags = false
	fs.Usage = func() {}
	return fs
}

// parseFlags reads args into fs and returns the arguments that are no flags,
// of which there must be at least low and at most high.
func parseFlags(fs *pflag.FlagSet, args []string, low, high int) ([]string, error) {
	if err := fs.Parse(args); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return nil, helpAsked{fs}
		}
		return nil, flagError(fs, err)
	}
	rest := fs.Args()
	switch {
	case len(rest) < low:
		return nil, usagef("%s: an argument is missing; hint: silowright %s --help", fs.Name(), fs.Name())
	case len(rest) > high && high == 0:
		return nil, usagef("%s: takes no argument, but got %q; hint: silowright %s --help", fs.Name(), rest[0], fs.Name())
	case len(rest) > high:
		return nil, usagef("%s: one argument too many: %q; hint: put quotes round a value that holds a space, as in \"1 1/2\"", fs.Name(), rest[high])
	}
	return rest, nil
}

// flagError words an error of the flag reader our way.
func flagError(fs *pflag.FlagSet, err error) error {
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) {
		var names []string
		fs.VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
		word := unknown.GetSpecifiedName()
		if near, ok := nearest.Word(word, names); ok {
			return usagef("%s: unknown flag --%s; hint: did you mean --%s?", fs.Name(), word, near)
		}
		return usagef("%s: unknown flag %q; hint: silowright %s --help lists its flags", fs.Name(), word, fs.Name())
	}
	var missing *pflag.ValueRequiredError
	if errors.As(err, &missing) {
		return usagef("%s: --%s needs a value; hint: silowright %s --help", fs.Name(), missing.GetFlag().Name, fs.Name())
	}
	var invalid *pflag.InvalidValueError
	if errors.As(err, &invalid) {
		return usagef("%s: --%s: %q is no %s; hint: silowright %s --help", fs.Name(), invalid.GetFlag().Name,
			invalid.GetValue(), kindOf(invalid.GetFlag().Value.Type()), fs.Name())
	}
	return usagef("%s: %w; hint: silowright %s --help", fs.Name(), err, fs.Name())
}

// kindOf names a flag's type for a reader.
func kindOf(kind string) string {
	switch kind {
	case "int", "uint", "int64":
		return "whole number"
	case "float64":
		return "number"
	case "bool":
		return "yes or no (write true or false)"
	}
	return kind
}

// purpose says in one line what the program is for; aim says what comes of it.
const (
	purpose = "work out nursery silos from second-hand drums"
	aim     = "Work out nursery silos from second-hand drums: templates, cut list, findings and bill from a job file."
)

// more says where to read on.
const more = "silowright COMMAND --help tells more of one; silowright --version tells what this build is."

// exitCodes says what each exit code means.
var exitCodes = [...]string{
	exitOK:   "done",
	exitStop: "it does not fit or holds a stop",
	exitBad:  "bad usage or input",
}

// printUsage writes the whole program's help.
func printUsage(w io.Writer) error {
	var b strings.Builder
	b.WriteString("Usage: silowright COMMAND [FLAGS] [JOB]\n\n" + wrapped(aim, helpWidth) + "\n\nCommands:\n")
	for _, c := range commands() {
		says := strings.ReplaceAll(wrapped(c.summary, helpWidth-summaryAt), "\n", "\n"+strings.Repeat(" ", summaryAt))
		fmt.Fprintf(&b, "  %-*s%s\n", summaryAt-2, c.name, says)
	}
	b.WriteString("\n" + wrapped(more, helpWidth) + "\nExit code:")
	for code, means := range exitCodes {
		sep := ","
		if code == 0 {
			sep = ""
		}
		fmt.Fprintf(&b, "%s %d %s", sep, code, means)
	}
	b.WriteString(".\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// helpWidth is how wide a help is; every screen shows 80 columns.
const helpWidth = 80

// summaryAt is the column where the summaries stand.
const summaryAt = 14

// printHelp writes one command's help.
func printHelp(w io.Writer, c command, flags *pflag.FlagSet) error {
	var b strings.Builder
	fmt.Fprintf(&b, "Usage: %s\n\n%s\n", c.usage(flags), wrapped(c.says(), helpWidth))
	if flags.HasFlags() {
		fmt.Fprintf(&b, "\nFlags:\n%s", flags.FlagUsagesWrapped(helpWidth))
	}
	fmt.Fprintf(&b, "\nExample:\n  %s\n", c.example)
	_, err := io.WriteString(w, b.String())
	return err
}

// usage is how the command is called: "silowright check [FLAGS] [JOB]".
func (c command) usage(flags *pflag.FlagSet) string {
	line := "silowright " + c.name
	if flags.HasFlags() {
		line += " [FLAGS]"
	}
	if c.args != "" {
		line += " " + c.args
	}
	return line
}

// says is the command's summary as sentences, with what holds without a job.
func (c command) says() string {
	s := strings.ToUpper(c.summary[:1]) + c.summary[1:] + "."
	if c.args == "[JOB]" {
		s += " Without JOB the built-in demo is taken."
	}
	return s
}

// wrapped breaks a line at blanks so that none is longer than width where
// that can be done.
func wrapped(s string, width int) string {
	var b strings.Builder
	at := 0
	for i, word := range strings.Fields(s) {
		n := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case at+1+n > width:
			b.WriteString("\n")
			at = 0
		default:
			b.WriteString(" ")
			at++
		}
		b.WriteString(word)
		at += n
	}
	return b.String()
}
