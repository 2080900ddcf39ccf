package flow

import (
	"math"
	"strconv"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// fitting is a minor loss: head lost = K·V²/2g with V in the pipe it is on.
// low and high are the range in which handbooks and makes differ, from memory.
type fitting struct {
	name         string
	k, low, high float64
	origin       stock.Origin
}

const (
	srcMinor  = "Çengel and Cimbala, Fluid Mechanics, table 8-4"
	srcTables = "two engineering tables of loss coefficients"
)

// fittings are in the order water meets them. k is good to a tenth at best:
// sizes and makes differ.
var fittings = [...]fitting{
	{"entrance, pipe reaching in", 0.8, 0.8, 1.0, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"entrance, sharp", 0.5, 0.5, 0.5, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"entrance, rounded", 0.04, 0.03, 0.12, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"exit", 1.0, 1.0, 1.05, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"elbow 90°, socket or thread", 0.9, 0.9, 1.5, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"elbow 90°, flanged", 0.3, 0.3, 0.3, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"elbow 45°, socket or thread", 0.4, 0.4, 0.4, stock.Origin{Source: srcMinor, Standing: stock.Memory}},
	{"tee, straight through", 0.9, 0.2, 0.9, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"tee, branch", 2.0, 1.0, 2.0, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"coupling or union", 0.08, 0.04, 0.08, stock.Origin{Source: srcMinor, Standing: stock.Memory}},
	{"ball valve, open", 0.05, 0.05, 0.05, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"ball valve, one third closed", 5.5, 5.5, 5.5, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"ball valve, two thirds closed", 200, 200, 210, stock.Origin{Source: srcTables, Standing: stock.Two}},
	{"swing check valve", 2.0, 2.0, 2.5, stock.Origin{Source: srcMinor, Standing: stock.Memory}},
	{"foot valve, hinged, with strainer", 1.4, 1.1, 2.0, stock.Origin{Source: "75 times the fully turbulent friction factor of steel pipe", Standing: stock.Memory}},
	{"foot valve, poppet, with strainer", 7.5, 6.5, 9.0, stock.Origin{Source: "420 times the fully turbulent friction factor of steel pipe", Standing: stock.Memory}},
}

// LossTable is the minor losses as a table for a reader, each row with its
// source and standing.
func LossTable() stock.Table {
	t := stock.Table{Name: "fitting-losses", Title: "Head lost in fittings: K times the velocity head in the pipe; its range is from memory",
		Columns: []string{"fitting", "K", "lowest", "highest", "source", "standing"}}
	for _, f := range fittings {
		t.Rows = append(t.Rows, []string{f.name, number(f.k), number(f.low), number(f.high), f.origin.Source, string(f.origin.Standing)})
	}
	return t
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Widening is K of a sudden step from a bore to a wider one, on the velocity
// in the narrow bore: (1 − (d/D)²)², exact for turbulent flow that mixes out
// (Borda and Carnot; Çengel and Cimbala, Fluid Mechanics, table 8-4). It is 0
// when the second is not the wider.
func Widening(from, to measure.Length) float64 {
	if !(from > 0 && to > from) {
		return 0
	}
	x := 1 - float64(Disc(from)/Disc(to))
	return x * x
}

// sharpEntrance is K of a pipe flush with a wall (Çengel and Cimbala, table 8-4).
const sharpEntrance = 0.5

// Narrowing is K of a sudden step from a bore to a narrower one, on the
// velocity in the narrow bore: 0.5·(1 − (d/D)²), the line from a sharp
// entrance to no step at all (Idelchik, Handbook of Hydraulic Resistance,
// diagram 3-9, whose power of ¾ is left out: from memory, within 0.06 of it).
// It is 0 when the second is not the narrower.
func Narrowing(from, to measure.Length) float64 {
	if !(to > 0 && from > to) {
		return 0
	}
	return sharpEntrance * (1 - float64(Disc(to)/Disc(from)))
}

// Barb is K of a hose barb, on the velocity in the hose: water narrows into
// the barb's bore and widens out of it, (Narrowing + Widening)·(hose/barb)⁴.
// No published figure was found for barbs; this is worked out from their bore
// and leaves out its friction.
func Barb(hose, barb measure.Length) float64 {
	if !(barb > 0 && hose > barb) {
		return 0
	}
	return (Narrowing(hose, barb) + Widening(barb, hose)) * math.Pow(float64(hose/barb), 4)
}
