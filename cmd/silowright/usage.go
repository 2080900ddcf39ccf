package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

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

// helpAsked says that --help was among the arguments.
type helpAsked struct{ flags string }

func (helpAsked) Error() string { return "help asked" }

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
			return nil, helpAsked{fs.FlagUsages()}
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

// printUsage writes the whole program's help.
func printUsage(w io.Writer) error {
	var b strings.Builder
	b.WriteString("Usage: silowright COMMAND [FLAGS] [JOB]\n\n" +
		"Work out nursery silos from second-hand drums: templates, cut list,\nfindings and bill from a job file.\n\nCommands:\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-8s %s\n", c.name, c.summary)
	}
	b.WriteString("\nsilowright COMMAND --help tells more of one; silowright --version prints the version.\n" +
		"Exit code: 0 done, 1 it does not fit or holds a stop, 2 bad usage or input.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// printHelp writes one command's help.
func printHelp(w io.Writer, c command, flags string) error {
	line := "Usage: silowright " + c.name
	if flags != "" {
		line += " [FLAGS]"
	}
	if c.args != "" {
		line += " " + c.args
	}
	first := strings.ToUpper(c.summary[:1]) + c.summary[1:]
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n%s.\n", line, first)
	if flags != "" {
		fmt.Fprintf(&b, "\nFlags:\n%s", flags)
	}
	fmt.Fprintf(&b, "\nExample:\n  %s\n", c.example)
	_, err := io.WriteString(w, b.String())
	return err
}
