// Silowright works out nursery silos built from second-hand drums: it reads a
// job file and writes the shop pack, the findings and the bill.
package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"silowright/cmd/internal/nearest"
)

// The exit codes. They are the same for every command.
const (
	exitOK   = 0
	exitStop = 1 // it was worked out, and it does not fit or holds a stop
	exitBad  = 2 // bad usage, bad input or a fault outside, such as a full disk
)

// env is what a command sees of the world outside.
type env struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	dir            string // relative names start here; empty: the process's own directory
}

// path returns name as this process can open it.
func (e *env) path(name string) string {
	if name == "" || e.dir == "" || filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(e.dir, name)
}

// command is one word of the command line.
type command struct {
	name    string
	args    string // how its arguments are written in the usage line: "[JOB]"
	summary string // one line, lower case, no full stop
	example string // one line to copy
	run     func(e *env, args []string) error
}

func main() {
	collectLater()
	if err := enoughHandles(); err != nil {
		fmt.Fprintf(os.Stderr, "silowright: %s\n", oneLine(err.Error()))
		os.Exit(exitBad)
	}
	os.Exit(run(os.Args[1:], &env{stdin: os.Stdin, stdout: printer{os.Stdout}, stderr: os.Stderr}))
}

// printer is standard output; its errors say what was lost.
type printer struct{ to io.Writer }

func (p printer) Write(b []byte) (int, error) {
	n, err := p.to.Write(b)
	if inner := (*fs.PathError)(nil); errors.As(err, &inner) {
		err = inner.Err
	}
	if err != nil {
		err = fmt.Errorf("the answer cannot be printed: %w; hint: files that were asked for are written; is the disk full that the answer goes to?", err)
	}
	return n, err
}

// run does what args ask and returns the exit code.
func run(args []string, e *env) int {
	err := dispatch(args, e)
	var stop stopError
	switch {
	case err == nil:
		return exitOK
	case errors.As(err, &stop):
		if stop.says != "" {
			fmt.Fprintf(e.stderr, "silowright: %s\n", oneLine(stop.says))
		}
		return exitStop
	}
	fmt.Fprintf(e.stderr, "silowright: %s\n", oneLine(err.Error()))
	return exitBad
}

func dispatch(args []string, e *env) error {
	if len(args) == 0 {
		return usagef("no command given; hint: silowright --help lists them")
	}
	switch word := args[0]; word {
	case "--help", "-h", "help":
		return help(args[1:], e)
	case "--version":
		return printVersion(e.stdout)
	default:
		c, err := find(word)
		if err != nil {
			return err
		}
		err = c.run(e, args[1:])
		var asked helpAsked
		if errors.As(err, &asked) {
			return printHelp(e.stdout, c, asked.flags)
		}
		return err
	}
}

// help answers "help" and "help COMMAND".
func help(args []string, e *env) error {
	if len(args) == 0 {
		return printUsage(e.stdout)
	}
	return dispatch([]string{args[0], "--help"}, e)
}

func find(word string) (command, error) {
	var names []string
	for _, c := range commands() {
		if c.name == word {
			return c, nil
		}
		names = append(names, c.name)
	}
	if strings.HasPrefix(word, "-") {
		return command{}, usagef("unknown flag %q before the command; hint: write the command first, as in silowright check --json", word)
	}
	if near, ok := nearest.Word(word, names); ok {
		return command{}, usagef("unknown command %q; hint: did you mean %q?", word, near)
	}
	return command{}, usagef("unknown command %q; hint: the commands are %s", word, strings.Join(names, ", "))
}

// oneLine keeps a message to one line whatever it quotes.
func oneLine(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == '\n' || r == '\r' }), " ")
}
