package bom

import (
	"strconv"

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

// Need is one item that the build uses.
type Need struct {
	Item        string  `json:"item"` // the key in the price list
	Description string  `json:"description"`
	Category    string  `json:"category"`
	Kind        Kind    `json:"unit"`
	Drum        float64 `json:"drum_silos_need"` // used by all drum silos, in Kind's unit
	Pipe        float64 `json:"pipe_silos_need"` // used by all pipe silos
	Why         string  `json:"why"`             // how the number came about
}

// Total is what the whole build uses.
func (n Need) Total() float64 { return n.Drum + n.Pipe }

// Text writes an amount of the need's kind for a reader who works in u.
func (n Need) Text(amount float64, u measure.Unit) string {
	switch n.Kind {
	case Length:
		if u == measure.UnitMM {
			return trim(amount/1000, 2) + " m (" + trim(amount/304.8, 1) + " ft)"
		}
		return trim(amount/304.8, 1) + " ft (" + trim(amount/1000, 2) + " m)"
	case Area:
		if u == measure.UnitMM {
			return trim(amount/1e6, 2) + " m² (" + trim(amount/92903.04, 1) + " ft²)"
		}
		return trim(amount/92903.04, 1) + " ft² (" + trim(amount/1e6, 2) + " m²)"
	case Volume:
		oz := amount * 1000 / float64(measure.USFluidOunce)
		if u == measure.UnitMM {
			return trim(amount, 0) + " mL (" + trim(oz, 1) + " fl oz)"
		}
		return trim(oz, 1) + " fl oz (" + trim(amount, 0) + " mL)"
	}
	return trim(amount, 2)
}

func trim(x float64, places int) string {
	s := strconv.FormatFloat(x, 'f', places, 64)
	if places == 0 {
		return s
	}
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	return s
}
