package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"silowright/cmd/internal/proof"
)

// writeChecks writes the ledger of numbers and checks, or those of its rows
// that hold every one of the words.
func writeChecks(w io.Writer, asCSV bool, words []string) error {
	numbers, checks := proof.With(proof.Numbers(), words...), proof.With(proof.Checks(), words...)
	if len(numbers)+len(checks) == 0 {
		return usagef("tables: no number and no check holds %q; hint: silowright tables --checks lists them all", strings.Join(words, " "))
	}
	if asCSV {
		out := csv.NewWriter(w)
		if err := out.Write([]string{"kind", "what", "value", "source", "standing", "test"}); err != nil {
			return err
		}
		for _, part := range []struct {
			kind string
			rows []proof.Row
		}{{"built in", numbers}, {"outside check", checks}} {
			for _, r := range part.rows {
				if err := out.Write([]string{part.kind, r.What, r.Value, r.Source, r.Standing, r.Test}); err != nil {
					return err
				}
			}
		}
		out.Flush()
		return out.Error()
	}
	var b strings.Builder
	checksText(&b, "Numbers built in", numbers)
	checksText(&b, "Outside checks", checks)
	counts(&b, numbers, checks)
	_, err := io.WriteString(w, b.String())
	return err
}

// checksText writes rows; those that follow one another with the same source,
// standing and test stand under one heading.
func checksText(b *strings.Builder, title string, rows []proof.Row) {
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(b, "%s\n", title)
	var last proof.Row
	for _, r := range rows {
		if r.Group != last.Group {
			fmt.Fprintf(b, "\n%s\n", r.Group)
			last = proof.Row{Group: r.Group}
		}
		if r.Source != last.Source || r.Standing != last.Standing || r.Test != last.Test {
			room, test, _ := strings.Cut(r.Test, " ")
			fmt.Fprintf(b, "\n  source: %s\n  standing: %s\n  test: go test %s -run '^%s$'\n", r.Source, r.Standing, room, test)
		}
		fmt.Fprintf(b, "    %s: %s\n", r.What, r.Value)
		last = r
	}
	b.WriteString("\n")
}

// counts writes how many rows have each standing, and what the standings mean.
func counts(b *strings.Builder, numbers, checks []proof.Row) {
	rows := [][]string{{"standing", "numbers", "checks", "means"}}
	of, by := proof.Count(numbers), proof.Count(checks)
	for i, s := range proof.Standings() {
		rows = append(rows, []string{s[0], fmt.Sprint(of[i]), fmt.Sprint(by[i]), s[1]})
	}
	rows = append(rows, []string{"all", fmt.Sprint(len(numbers)), fmt.Sprint(len(checks)), "a row with several standings counts by its weakest"})
	b.WriteString(align(rows))
}
