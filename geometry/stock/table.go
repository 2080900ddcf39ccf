package stock

import (
	"strconv"
	"strings"
	"time"

	"silowright/geometry/measure"
)

// Table is a table for a reader. The last two columns are always "source" and
// "standing".
type Table struct {
	Name    string // one word for the command line: "hole-saws"
	Title   string
	Columns []string
	Rows    [][]string
}

// Tables lists every table, in the order a reader is shown them. Lengths are
// in both units; the one the part is sold by comes first.
func Tables() []Table {
	return []Table{
		pressureTable(), outOfRoundTable(), sewerTable(), metricSewerTable(), metricPressureTable(),
		socketTable(), couplingTable(), stockLengthTable(),
		holeSawTable(), pipeHoleTable(), stopperTable(), clampTable(), screwTable(), screwLengthTable(), screwRuleTable(),
		meshTable(), cartridgeTable(), cementTable(), plasticsTable(), sheetTable(), handHoldTable(),
	}
}

// newTable starts a table; columns are all but the last two.
func newTable(name, title string, columns ...string) Table {
	return Table{Name: name, Title: title, Columns: append(columns, "source", "standing")}
}

// add appends a row that is from one place.
func (t *Table) add(o Origin, cells ...string) { t.addMixed([]part{{"", o}}, cells...) }

// part is an origin and what of the row it is of.
type part struct {
	of string
	Origin
}

// addMixed appends a row whose cells are from several places. What is the same
// for all parts is said once.
func (t *Table) addMixed(parts []part, cells ...string) {
	source := merge(parts, func(p part) string { return p.Source })
	standing := merge(parts, func(p part) string { return string(p.Standing) })
	t.Rows = append(t.Rows, append(cells, source, standing))
}

// merge writes "outside: …; wall: …", with parts that say the same put
// together, or the saying alone when all say it.
func merge(parts []part, say func(part) string) string {
	var sayings []string
	of := map[string][]string{}
	for _, p := range parts {
		s := say(p)
		if of[s] == nil {
			sayings = append(sayings, s)
		}
		of[s] = append(of[s], p.of)
	}
	if len(sayings) == 1 {
		return sayings[0]
	}
	for i, s := range sayings {
		sayings[i] = strings.Join(of[s], ", ") + ": " + s
	}
	return strings.Join(sayings, "; ")
}

// unknown is the cell of what no source gave.
const unknown = "not known"

// inchMM writes a length of an inch part as the standards print it, to the
// thousandth: "1.900 (48.26)".
func inchMM(l measure.Length) string {
	if l == 0 {
		return unknown
	}
	return thousandth(l) + " (" + measure.Number(l.MM(), 2) + ")"
}

// mmInch writes a length of a metric part: "110 (4.331)".
func mmInch(l measure.Length) string {
	if l == 0 {
		return unknown
	}
	return measure.Number(l.MM(), 2) + " (" + thousandth(l) + ")"
}

// thousandth writes l in inches to three places, all of them.
func thousandth(l measure.Length) string {
	return strconv.FormatFloat(l.Inches()*(1+1e-12), 'f', 3, 64)
}

// shopInch writes a length as a label does: "2 1/2 (63.5)".
func shopInch(l measure.Length) string {
	if l == 0 {
		return unknown
	}
	return tape(l) + " (" + l.Metric() + ")"
}

// tape writes l in inches as a tape reads it, the division as fine as it takes.
func tape(l measure.Length) string {
	s, _ := l.Tape()
	return s
}

// span writes a range of labels, or one when both ends are the same.
func span(a, b measure.Length) string {
	switch {
	case b == 0:
		return unknown
	case a == b:
		return shopInch(a)
	}
	return tape(a) + " to " + tape(b) + " (" + a.Metric() + " to " + b.Metric() + ")"
}

// hours writes a time in the unit a person would: "15 min", "6 h".
func hours(d time.Duration) string {
	if d < time.Hour {
		return measure.Number(d.Minutes(), 0) + " min"
	}
	return measure.Number(d.Hours(), 1) + " h"
}
