package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"silowright/cmd/internal/nearest"
	"silowright/geometry/stock"
	"silowright/nursery/flow"
	"silowright/nursery/seed"
)

var tablesCommand = command{
	name:    "tables",
	args:    "[NAME]",
	summary: "print the built-in dimensions, or with --checks every number and outside check, with source and standing",
	example: "silowright tables hole-saws",
	run:     runTables,
}

func runTables(e *env, args []string) error {
	fs := newFlags("tables")
	asCSV := fs.Bool("csv", false, "write the table as CSV")
	checks := fs.Bool("checks", false, "every number built in and every outside check, with the test that holds it; words narrow it down")
	rest, err := parseFlags(fs, args, 0, 9)
	if err != nil {
		return err
	}
	if *checks {
		return writeChecks(e.stdout, *asCSV, rest)
	}
	if len(rest) > 1 {
		return usagef("tables: one table at a time; hint: silowright tables %s", rest[0])
	}
	if len(rest) == 0 {
		if *asCSV {
			return usagef("tables: --csv needs the name of a table; hint: silowright tables hole-saws --csv")
		}
		return listTables(e.stdout)
	}
	at := slices.IndexFunc(allTables(), func(t stock.Table) bool { return t.Name == rest[0] })
	if at < 0 {
		return unknownTable(rest[0])
	}
	t := allTables()[at]
	if *asCSV {
		w := csv.NewWriter(e.stdout)
		if err := w.Write(t.Columns); err != nil {
			return err
		}
		return w.WriteAll(t.Rows)
	}
	return printTable(e.stdout, t)
}

// allTables are the tables of parts, then those of water and of seed.
func allTables() []stock.Table {
	return slices.Concat(stock.Tables(), []stock.Table{flow.LossTable()}, seed.Tables())
}

func unknownTable(name string) error {
	var names []string
	for _, t := range allTables() {
		names = append(names, t.Name)
	}
	guess := ""
	if near, ok := nearest.Word(name, names); ok {
		guess = fmt.Sprintf("did you mean %q? ", near)
	}
	return usagef("tables: unknown table %q; hint: %sthe tables are %s", name, guess, strings.Join(names, ", "))
}

func listTables(w io.Writer) error {
	var rows [][]string
	for _, t := range allTables() {
		rows = append(rows, []string{t.Name, t.Title})
	}
	_, err := io.WriteString(w, align(rows)+"\nsilowright tables NAME prints one; --checks every number built in and every outside check, with its test.\nWhat you can measure, measure: the job file's own numbers win.\n")
	return err
}

// printTable writes t aligned. Source and standing, the last two columns, are
// long and the same for many rows, so rows refer to them by number and they
// stand below.
func printTable(w io.Writer, t stock.Table) error {
	last := len(t.Columns) - 2
	rows := [][]string{append(slices.Clone(t.Columns[:last]), "from")}
	var origins []string
	for _, r := range t.Rows {
		origin := "source: " + r[last] + "\n    standing: " + r[last+1]
		at := slices.Index(origins, origin)
		if at < 0 {
			at = len(origins)
			origins = append(origins, origin)
		}
		rows = append(rows, append(slices.Clone(r[:last]), "["+strconv.Itoa(at+1)+"]"))
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n%s\n", t.Title, align(rows))
	for i, o := range origins {
		fmt.Fprintf(&b, "[%d] %s\n", i+1, o)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// align writes rows in columns, two blanks apart.
func align(rows [][]string) string {
	var widths []int
	for _, r := range rows {
		for i, cell := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	var b strings.Builder
	for _, r := range rows {
		var line strings.Builder
		for i, cell := range r {
			line.WriteString(cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)+2))
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
	return b.String()
}
