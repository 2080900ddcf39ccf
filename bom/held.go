package bom

import (
	"fmt"
	"math/big"

	"silowright/geometry/measure"
)

// Held is something already on the rack: so many sticks of a length, pieces of
// mesh of a length and width, screws, or what is left in a can. It is used
// before anything is bought.
type Held struct {
	Item   string         `json:"item"`
	Kind   Kind           `json:"unit"`     // a count, a length or a volume; for an area see Width
	Amount float64        `json:"amount"`   // of one, in Kind's own unit
	Width  measure.Length `json:"width_mm"` // of a piece of mesh, screen or sheet; 0 for all else
	Count  int            `json:"count"`
}

// all is the whole amount, exactly as far as it is held.
func (h Held) all() *big.Rat {
	one, ok := exact(h.Amount)
	if !ok {
		return new(big.Rat)
	}
	return one.Mul(one, new(big.Rat).SetInt64(int64(h.Count)))
}

// rack finds what is held of each item.
type rack map[string][]Held

func rackOf(held []Held) rack {
	r := rack{}
	for _, h := range held {
		r[itemKey(h.Item)] = append(r[itemKey(h.Item)], h)
	}
	return r
}

// of are the things held of a need's item. It fails on one that is counted in
// another way than the need, or has no sense for it.
func (r rack) of(n Need) ([]Held, error) {
	held := r[itemKey(n.Item)]
	for _, h := range held {
		sheet := h.Kind == Length && h.Width > 0
		switch {
		case n.Kind == Area && !sheet:
			return nil, fmt.Errorf("on_hand: %s: %s needs a length and a width; hint: as in {amount = \"3 ft\", width = \"48 in\"}", n.Item, n.Kind.by())
		case n.Kind != Area && (h.Kind != n.Kind || h.Width > 0):
			return nil, fmt.Errorf("on_hand: %s: is counted in %s, but a build needs it %s; hint: %s", n.Item, h.Kind, n.Kind.by(), heldHint(n.Kind))
		}
	}
	return held, nil
}

func heldHint(k Kind) string {
	switch k {
	case Length:
		return `write each piece's length, as in ["49 in", "3 ft"]`
	case Volume:
		return `write what is left, as in "150 mL"`
	}
	return "write how many, as in 12"
}
