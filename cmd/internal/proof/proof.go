// Package proof is the ledger of what the project's numbers rest on: every
// number built in and every outside check, with source, standing and the test
// that holds it. Numbers are read from where they are declared, never typed
// again; its tests hold the ledger to the code and to the tests it names.
package proof

import (
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/stock"
)

// Row is one number, or one check against something outside the project.
type Row struct {
	Group  string // the table, room or program it belongs to
	What   string
	Value  string // with its unit; of a check what is expected, and how near
	Source string
	// Standing is one of Standings, or several with what of the row each is of:
	// "outside: two sources; wall: seen".
	Standing string
	// Test is where the test stands and its name, as go test takes them:
	// "./geometry/stock TestClamps".
	Test string

	// of names the constants and functions of the code that hold the number,
	// each with its package: "geometry/stock.pressureRows".
	of []string
}

// The standings, surest first.
const (
	run      = "run"
	two      = "two sources"
	seen     = "seen"
	worked   = "worked out"
	memory   = "from memory"
	practice = "common practice"
)

// Standings lists the standings, surest first, each with what it means.
func Standings() [][2]string {
	return [][2]string{
		{run, "an outside program or library says so whenever the test runs"},
		{two, "seen in two independent sources"},
		{seen, "seen in one source"},
		{worked, "worked out from what was seen, or a law of mathematics"},
		{memory, "the source named was not looked up again"},
		{practice, "what the trade does; no source"},
	}
}

// shorter turns the standings of tables and findings into those of a row.
var shorter = strings.NewReplacer(
	string(stock.Two), two, string(stock.One), seen, string(stock.Derived), worked,
	string(stock.Memory), memory, string(stock.Practice), practice,
	geometry.Published, seen, geometry.JobSetting, practice)

// Numbers lists every number built in: the tables, the figures of each room,
// the units, and what a job that leaves a key out is taken to want.
func Numbers() []Row {
	return slices.Concat(tables(), figures(), units(), cautions(), defaults())
}

// Checks lists every check against something outside the project: a published
// standard, table or worked example, open data, a general-purpose program.
func Checks() []Row {
	return slices.Concat(partChecks(), buyingChecks(), waterChecks(), seedChecks(), paperChecks(), programChecks())
}

// With returns the rows that hold every one of the words, whatever their
// capitals.
func With(rows []Row, words ...string) []Row {
	var out []Row
	for _, r := range rows {
		all := strings.ToLower(strings.Join([]string{r.Group, r.What, r.Value, r.Source, r.Standing, r.Test}, " "))
		if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(all, strings.ToLower(w)) }) {
			out = append(out, r)
		}
	}
	return out
}

// weakest is the least sure standing of a row; empty for one that is unknown.
func (r Row) weakest() string {
	list := Standings()
	weakest := -1
	for _, part := range strings.Split(r.Standing, "; ") {
		at := slices.IndexFunc(list, func(s [2]string) bool { return part == s[0] || strings.HasSuffix(part, ": "+s[0]) })
		if at < 0 {
			return ""
		}
		weakest = max(weakest, at)
	}
	return list[weakest][0]
}

// Count is how many rows have each standing, a row of several by its weakest;
// in the order of Standings.
func Count(rows []Row) []int {
	list := Standings()
	out := make([]int, len(list))
	for _, r := range rows {
		for i, s := range list {
			if r.weakest() == s[0] {
				out[i]++
			}
		}
	}
	return out
}
