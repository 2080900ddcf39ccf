package workbook

import (
	"math"
	"math/big"
	"strings"

	"silowright/bom/money"
	"silowright/bom/work"
)

// effort is what Sums takes from Work: where the labour of the two sorts of
// silo stands, and what it is.
type effort struct {
	ops              []work.Operation
	block            int // the row where what is common to the work begins
	drum, pipe       money.Money
	drumOff, pipeOff float64 // see offHalf
}

// The rows of the block, from its heading on.
const (
	learningRow = iota + 1
	exponentRow
	countRow
	earlyRow
	lateRow
	timesRow
	firstRow
	allRow
	kindsRow
	setUpRow
	setUpAllRow
	minutesRow
	wageRow
	labourRow
)

func (w *writing) efforts() effort {
	h := w.plan.Cost.Hours
	e := effort{ops: h.Operations, block: len(h.Operations) + 3}
	e.drum, e.drumOff = w.wages(h.SetUpDrum + h.Drum)
	e.pipe, e.pipeOff = w.wages(h.SetUpPipe + h.Pipe)
	return e
}

// wages are what so much work costs, and by how many minutes the workbook's
// number has to be moved so that its binary sums fall on the same side of half
// a coin; 0 unless they are within a ten-thousandth of one.
func (w *writing) wages(m work.Minutes) (money.Money, float64) {
	wage := w.plan.Site.Wage
	wage.Currency = w.plan.Currency
	hours := new(big.Rat).SetFloat64(float64(m)) // finite: the plan has been costed
	hours.Quo(hours, big.NewRat(60, 1))
	out, err := wage.TimesRat(hours)
	if err != nil || wage.Minor == 0 {
		return out, 0
	}
	exact := new(big.Rat).Mul(hours, new(big.Rat).SetInt64(wage.Minor))
	above := exact.Sub(exact, new(big.Rat).SetInt64(out.Minor)) // from -1/2 to below 1/2
	off, _ := above.Float64()
	const close = 1e-4
	switch {
	case off <= -0.5+close: // rounded up
		return out, 2 * close * 60 / float64(wage.Minor)
	case off >= 0.5-close:
		return out, -2 * close * 60 / float64(wage.Minor)
	}
	return out, 0
}

var workHeadings = headings("part", "work", "counted in", "units a silo", "minutes a unit (input)", "first silo, minutes", "whole build, minutes", "why")

var workWidths = []float64{24, 34, 12, 13, 13, 13, 14, 70}

// work is the sheet of the work.
func (w *writing) work() *sheet {
	s := &sheet{name: workSheet, widths: workWidths, frozen: 1}
	s.add(workHeadings...)
	times := map[string]string{work.DrumSilo: ref("$D$", w.effort.block+timesRow), work.PipeSilo: ref("$E$", w.effort.block+timesRow)}
	for _, o := range w.effort.ops {
		r := len(s.rows) + 1
		s.add(wordsOf(o.Part), wordsOf(o.Name), wordsOf(o.Unit), cell{value: o.PerSilo, look: quantity},
			cell{value: float64(o.Each), look: inputMinutes},
			cell{value: float64(o.First), formula: ref("D", r) + "*" + ref("E", r), look: minutes},
			cell{value: float64(o.All), formula: ref("F", r) + "*" + times[o.Part], look: minutes},
			cell{value: o.Why, look: wrapped})
	}
	for len(s.rows) < w.effort.block-1 {
		s.add()
	}
	w.common(s)
	return s
}

// common adds what both sorts of silo have in common.
func (w *writing) common(s *sheet) {
	h, site := w.plan.Cost.Hours, w.plan.Site
	at := func(column string, row int) string { return ref(column, w.effort.block+row) }
	both := func(label string, l look, f func(column string) string, drum, pipe float64, note string) {
		s.add(wordsOf(label), cell{}, cell{}, cell{value: drum, formula: f("D"), look: l}, cell{value: pipe, formula: f("E"), look: l}, cell{}, cell{}, cell{value: note, look: wrapped})
	}
	pair := func(label string, l look, drum, pipe float64, note string) {
		both(label, l, func(string) string { return "" }, drum, pipe, note)
	}
	s.add(headings("both sorts", "", "", "drum silos", "pipe silos", "", "", "")...)
	b := exponent(site.Work.Learning)
	pair("left of a unit's time by a doubling of the count (input)", inputPercent, site.Work.Learning, site.Work.Learning,
		"learning curve, unit-time form: the n-th silo takes n^b times the first one's time")
	both("exponent b", quantity, func(c string) string {
		r := at(c, learningRow)
		return "IF(AND(" + r + ">0," + r + "<1),LN(" + r + ")/LN(2),0)"
	}, b, b, "")
	both("silos", whole, func(c string) string {
		return fix(sumsSheet, "B", map[string]int{"D": drumsRow, "E": pipesRow}[c])
	}, float64(h.DrumSilos), float64(h.PipeSilos), "")
	early := func(n int) float64 { return work.Sum(min(n, direct-1), site.Work.Learning) }
	both("the first 31, times the first one's time", quantity, func(c string) string { return earlySum(at(c, countRow), at(c, exponentRow)) },
		early(h.DrumSilos), early(h.PipeSilos), "the sum of n^b")
	late := func(n int) float64 { return work.Sum(n, site.Work.Learning) - early(n) }
	both("all further ones", quantity, func(c string) string { return lateSum(at(c, countRow), at(c, exponentRow)) },
		late(h.DrumSilos), late(h.PipeSilos), "the same sum by the Euler–Maclaurin formula, so that any count works")
	both("all, times the first one's time", quantity, func(c string) string { return at(c, earlyRow) + "+" + at(c, lateRow) },
		work.Sum(h.DrumSilos, site.Work.Learning), work.Sum(h.PipeSilos, site.Work.Learning), "")
	of := func(column, part string) string {
		if len(w.effort.ops) == 0 {
			return ""
		}
		end := number(len(w.effort.ops) + 1)
		return `SUMIF($A$2:$A$` + end + `,` + quoted(part) + `,` + column + `$2:` + column + `$` + end + `)`
	}
	parts := map[string]string{"D": work.DrumSilo, "E": work.PipeSilo}
	both("first silo, minutes", minutes, func(c string) string { return of("$F", parts[c]) }, float64(h.FirstDrum), float64(h.FirstPipe), "")
	both("whole build, minutes", minutes, func(c string) string { return of("$G", parts[c]) }, float64(h.Drum), float64(h.Pipe), "")
	dk, pk := int64(0), int64(0)
	for _, b := range w.plan.Cost.Batches {
		if b.Drum > 0 {
			dk++
		}
		if b.Pipe > 0 {
			pk++
		}
	}
	pair("kinds built (input)", inputWhole, float64(dk), float64(pk), "of several kinds the units a silo are the average of those built")
	pair("set-up of a kind, minutes (input)", inputMinutes, moved(site.Work.SetUp, w.effort.drumOff, dk), moved(site.Work.PipeSetUp, w.effort.pipeOff, pk), w.movedNote())
	both("set-up, minutes", minutes, func(c string) string {
		return "IF(" + at(c, countRow) + ">0," + at(c, kindsRow) + "*" + at(c, setUpRow) + ",0)"
	}, float64(h.SetUpDrum)+w.effort.drumOff, float64(h.SetUpPipe)+w.effort.pipeOff, "")
	both("all work, minutes", minutes, func(c string) string { return at(c, allRow) + "+" + at(c, setUpAllRow) },
		float64(h.SetUpDrum+h.Drum)+w.effort.drumOff, float64(h.SetUpPipe+h.Pipe)+w.effort.pipeOff, "of one person")
	wage := w.coin.of(site.Wage)
	both("wage of an hour (input)", inputAmount, func(c string) string { return map[string]string{"E": at("D", wageRow)}[c] }, wage, wage, string(w.plan.Currency))
	s.rows[len(s.rows)-1][4].look = amount // the same as for drum silos
	both("labour", bold, func(c string) string {
		return w.coin.amount(w.coin.coins(at(c, wageRow)) + "*" + at(c, minutesRow) + "/60")
	}, w.coin.of(w.effort.drum), w.coin.of(w.effort.pipe), "half a coin is rounded away from zero")
}

// moved is the set-up of a kind with what keeps the labour off half a coin.
func moved(m work.Minutes, off float64, kinds int64) float64 {
	if kinds == 0 {
		return float64(m)
	}
	return float64(m) + off/float64(kinds)
}

func (w *writing) movedNote() string {
	if w.effort.drumOff == 0 && w.effort.pipeOff == 0 {
		return ""
	}
	return "moved by what costs a five-thousandth of the smallest coin, so that half a coin of labour is rounded as the program does"
}

// direct is from which silo on the sum of n^b is taken by formula.
const direct = 32

func exponent(r float64) float64 {
	if !(r > 0 && r < 1) {
		return 0
	}
	return math.Log2(r)
}

// earlySum is Σ k^b over k to 31 or to n.
func earlySum(n, b string) string {
	k := make([]string, direct-1)
	for i := range k {
		k[i] = number(i + 1)
	}
	list := "{" + strings.Join(k, ";") + "}"
	return "SUMPRODUCT(--(" + list + "<=" + n + ")," + list + "^" + b + ")"
}

// lateSum is Σ k^b over k from 32 to n by the Euler–Maclaurin formula (NIST
// Digital Library of Mathematical Functions, 2.10.1), as the program has it.
func lateSum(n, b string) string {
	return strings.NewReplacer("n", n, "b", b).Replace("IF(n<32,0,IF(ABS(b+1)<0.000000001,32^(b+1)*LN(n/32),(n^(b+1)-32^(b+1))/(b+1))+(32^b+n^b)/2" +
		"+b/12*(n^(b-1)-32^(b-1))-b*(b-1)*(b-2)/720*(n^(b-3)-32^(b-3))+b*(b-1)*(b-2)*(b-3)*(b-4)/30240*(n^(b-5)-32^(b-5)))")
}
