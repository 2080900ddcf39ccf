// Package sweep takes random jobs the whole way, from the text of the job file
// to the bytes of the pack, and holds what comes out against programs and sums
// of its own. It holds tests alone.
package sweep

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"silowright/geometry/measure"
)

// value is what a key of a job file holds: a length, which is written in
// either unit, or words of TOML that stand for themselves.
type value struct {
	words  string  // of TOML; empty for a length
	mm     float64 // of a length
	sixty4 int     // the same in 64ths of an inch, where it is a whole number of them
	style  int
}

// The ways a length is written.
const (
	asBare   = iota // a number in the job's units
	asOwn           // text in the job's units, with a fraction where there is one
	asMM            // text in millimetres, whatever the job's units
	asBareMM        // a bare number of millimetres, for keys that are in mm in any job
	styles
)

func words(format string, args ...any) value { return value{words: fmt.Sprintf(format, args...)} }

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// in writes the value for a job in u.
func (v value) in(u measure.Unit) string {
	switch {
	case v.words != "":
		return v.words
	case v.style == asBareMM:
		return plain(v.mm)
	case v.style == asMM && v.mm >= 0:
		return `"` + plain(v.mm) + ` mm"`
	case u == measure.UnitMM && (v.style == asBare || v.mm < 0):
		return plain(v.mm)
	case u == measure.UnitMM:
		return `"` + plain(v.mm) + `"`
	case v.sixty4 > 0 && v.style == asOwn:
		return `"` + fraction(v.sixty4) + ` in"`
	case v.sixty4 > 0:
		return plain(float64(v.sixty4) / 64)
	case v.style == asBare || v.mm < 0:
		return plain(v.mm / 25.4)
	}
	return `"` + plain(v.mm) + ` mm"`
}

// fraction writes 64ths of an inch as a tape reads: 34 3/4.
func fraction(n int) string {
	whole, over, under := n/64, n%64, 64
	for over > 0 && over%2 == 0 {
		over, under = over/2, under/2
	}
	switch {
	case over == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", over, under)
	}
	return fmt.Sprintf("%d %d/%d", whole, over, under)
}

// onTape is a length as near mm as a tape in inches reads it.
func onTape(mm float64, style int) value {
	n := int(math.Round(mm / 25.4 * 64))
	return value{mm: float64(n) * 25.4 / 64, sixty4: n, style: style}
}

// line is one key of a job file.
type line struct {
	name string
	v    value
}

// block is a section with its heading as it is written; the keys above the
// first section have none.
type block struct {
	head  string
	lines []line
}

func (b *block) put(name string, v value) { b.lines = append(b.lines, line{name, v}) }

func (b *block) has(name string) bool {
	for _, l := range b.lines {
		if l.name == name {
			return true
		}
	}
	return false
}

// doc is a job file.
type doc struct{ blocks []*block }

// section finds a section by its heading, or adds it.
func (d *doc) section(head string) *block {
	for _, b := range d.blocks {
		if b.head == head && !strings.HasPrefix(head, "[[") {
			return b
		}
	}
	b := &block{head: head}
	d.blocks = append(d.blocks, b)
	return b
}

// holds reports whether there is a section.
func (d *doc) holds(head string) bool {
	for _, b := range d.blocks {
		if b.head == head {
			return true
		}
	}
	return false
}

// text writes the job in u.
func (d *doc) text(u measure.Unit) string {
	var b strings.Builder
	fmt.Fprintf(&b, "units = %q\n", u.String())
	for _, k := range d.blocks {
		if k.head != "" {
			b.WriteString(k.head + "\n")
		}
		for _, l := range k.lines {
			fmt.Fprintf(&b, "%s = %s\n", l.name, l.v.in(u))
		}
	}
	return b.String()
}

// copied is d with blocks that can be added to.
func (d *doc) copied() *doc {
	out := &doc{}
	for _, b := range d.blocks {
		out.blocks = append(out.blocks, &block{b.head, append([]line(nil), b.lines...)})
	}
	return out
}
