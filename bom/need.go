package bom

import (
	"math"
	"strings"

	"silowright/geometry/measure"
)

// Kind is what a quantity counts in.
type Kind string

// The kinds, named by the unit a quantity is held in.
const (
	Each   Kind = "each"
	Length Kind = "mm"
	Area   Kind = "mm2"
	Volume Kind = "mL"
)

// by says how a quantity of the kind is counted.
func (k Kind) by() string {
	switch k {
	case Length:
		return "by length"
	case Area:
		return "by area"
	case Volume:
		return "by volume"
	}
	return "by count"
}

// Need is one item that the build uses.
type Need struct {
	Item        string  `json:"item"` // the key in the price list
	Description string  `json:"description"`
	Category    string  `json:"category"`
	Kind        Kind    `json:"unit"`
	Drum        float64 `json:"drum_silos_need"`     // used by all drum silos, in Kind's unit
	Pipe        float64 `json:"pipe_silos_need"`     // used by all pipe silos
	EachDrum    float64 `json:"each_drum_silo_need"` // Drum over the drum silos built, 0 for none
	EachPipe    float64 `json:"each_pipe_silo_need"` // Pipe over the pipe silos built
	Pieces      []Piece `json:"pieces,omitempty"`    // what is sawn off, longest first; none when it need not be in one piece
	Flats       []Flat  `json:"flats,omitempty"`     // what is cut out of a roll or sheet
	Why         string  `json:"why"`                 // how the number came about
}

// Total is what the whole build uses, to a millionth of Kind's unit, so that
// sums of binary fractions do not pass a whole pack by a hair.
func (n Need) Total() float64 { return math.Round((n.Drum+n.Pipe)*1e6) / 1e6 }

// Text writes an amount of the need's kind for a reader who works in u, in
// both units: "4.3 ft (1.3 m)". A count that is no whole number, such as
// blades worn, is written to two places.
func (n Need) Text(amount float64, u measure.Unit) string {
	if n.Kind == Each {
		return measure.Number(amount, 2)
	}
	m, unit := n.Kind.in(amount, u == measure.UnitMM)
	o, other := n.Kind.in(amount, u != measure.UnitMM)
	return m + " " + printed(unit) + " (" + o + " " + printed(other) + ")"
}

// in writes an amount for print: in metres, square metres and millilitres, or
// in feet, square feet and fluid ounces.
func (k Kind) in(amount float64, metric bool) (text, unit string) {
	c := k.customaryUnit()
	places := 1
	if metric {
		c, places = k.metricUnit(), 2
		if k == Volume {
			places = 0
		}
	}
	return measure.Number(amount/c.per, places), c.name
}

// printed writes a unit's name with its raised 2.
func printed(unit string) string { return strings.Replace(unit, "2", "²", 1) }

// metric writes an amount in metres, square metres or millilitres, to a tenth
// of a millimetre or a square centimetre.
func (k Kind) metric(amount float64) (text, unit string) {
	u := k.metricUnit()
	return measure.Number(amount/u.per, 4), u.name
}

// customary writes an amount in feet, square feet or US fluid ounces.
func (k Kind) customary(amount float64) (text, unit string) {
	u := k.customaryUnit()
	return measure.Number(amount/u.per, 4), u.name
}

// scale is a unit and how many of a kind's own unit it is.
type scale struct {
	name string
	per  float64
}

func (k Kind) metricUnit() scale {
	switch k {
	case Length:
		return scale{"m", 1000}
	case Area:
		return scale{"m2", 1e6}
	case Volume:
		return scale{"mL", 1}
	}
	return scale{"each", 1}
}

func (k Kind) customaryUnit() scale {
	switch k {
	case Length:
		return scale{"ft", 304.8}
	case Area:
		return scale{"ft2", 304.8 * 304.8}
	case Volume:
		return scale{"fl oz", measure.USFluidOunce.ML()}
	}
	return scale{"each", 1}
}
