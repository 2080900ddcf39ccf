// Package sticks plans how pieces are sawn from stock lengths for the least
// money: the cutting stock problem in one dimension, with several stock
// lengths, prices, limited numbers on the rack, kerf, end trim and a shortest
// length that the saw can hold.
//
// Method. Lengths are whole nanometres (1/64 in is 396,875 nm exactly), merged
// by length, so that the work depends on the number of different lengths and
// not on counts. The linear relaxation over all patterns is solved by column
// generation (Gilmore and Gomory, Operations Research 9, 1961, 849-859, and
// 11, 1963, 863-888), its patterns found by a bounded knapsack in whole
// numbers. The lower bound is not taken from that floating-point answer:
// each piece is given a whole-number worth, the most that a stick of each stock
// can be worth is found exactly or from above, and sticks must together be
// worth the demand at least. Plans come from rounding the relaxation down and
// planning the few pieces left, from diving, from filling stick by stick, and
// from a branch and bound over whole sticks, longest piece first.
//
// A plan is proven when its cost meets the bound or when branch and bound has
// run through. That is the rule up to 30 lengths with one or two stock lengths,
// in any number. It may stay unproven where more lengths, or many stock lengths
// with unlike prices, leave more cases than the limits of work; these are
// counts, never a clock, so that the same task always has the same plan; nor
// does it hang on the processor, for products are rounded, float64(a*b), before
// anything is added to them. An
// unproven plan still states a certain bound, and costs no more than first fit
// decreasing from any one stock that no other betters in length and price.
package sticks

import (
	"math"

	"silowright/geometry/measure"
)

// Piece is a number of equal pieces wanted.
type Piece struct {
	Length measure.Length // above 0, at most 10 km
	Count  int            // 1 to 10⁹
	Name   string         // carried through, and used in errors
}

// Stock is a length on sale or on the rack. Sticks already owned are stock
// with a price of 0 and a Have.
type Stock struct {
	Length measure.Length // above 0, at most 10 km
	Price  int64          // of one stick in minor units of one currency, 0 to 10¹²
	Have   int            // how many there are; below 0 any number
	Name   string         // carried through, and used in errors
}

// Task is what is to be sawn, from what, with which saw.
type Task struct {
	Pieces []Piece
	Stock  []Stock
	// Kerf is what a cut turns to dust.
	Kerf measure.Length
	// Trim is cut off one end of every stick first, its own kerf included.
	Trim measure.Length
	// Hold is the shortest length that the saw's clamp holds: a stick's longest
	// piece, or the offcut that it leaves, must be as long.
	Hold measure.Length
}

// Pattern is a number of sticks that are all sawn alike.
type Pattern struct {
	Stock int   // index into Task.Stock
	Count int   // how many sticks are sawn so
	Takes []int // pieces out of one stick, for each of Task.Pieces
	// Length is the stick's.
	Length measure.Length
	// Offcut is what one stick leaves, after trim, pieces and kerfs.
	Offcut measure.Length
}

// Plan is a way to saw all pieces, exactly as many as are wanted.
type Plan struct {
	Patterns []Pattern // by stock, then those with most of the longest piece first
	Used     []int     // sticks taken, for each of Task.Stock
	Cost     int64     // of the sticks, minor units
	Bound    int64     // no plan is cheaper than this: certain, minor units
	Proven   bool      // Cost == Bound: there is no cheaper plan
}

// Limits of what Solve takes.
const (
	longest measure.Length = 1e7 // mm

	mostCount = 1e9  // of one piece
	mostPrice = 1e12 // of one stick
	mostRows  = 2000 // rows of pieces
	mostKinds = 500  // different lengths, and stocks
)

// nanometres is l in whole millionths of a millimetre, to the nearest.
func nanometres(l measure.Length) int64 { return int64(math.Round(float64(l) * 1e6)) }

// length is so many nanometres as a length.
func length(nm int64) measure.Length { return measure.Length(float64(nm) / 1e6) }

// Solve plans the task for the least money. An empty task is an empty plan.
// It returns an error for lengths, counts and prices out of range, for a piece
// that no stick can give, and where the sticks there are do not suffice.
func Solve(t Task) (Plan, error) {
	if len(t.Pieces) == 0 {
		return Plan{Used: make([]int, len(t.Stock)), Proven: true}, t.check()
	}
	in, err := t.instance()
	if err != nil {
		return Plan{}, err
	}
	s := newSolver(in)
	s.run()
	if err := t.short(in, s); err != nil {
		return Plan{}, err
	}
	return t.plan(in, s), nil
}
