package bom

import "silowright/geometry/measure"

// Flat is a number of equal parts cut out of a roll or a sheet.
type Flat struct {
	Name   string         `json:"name"`
	Shape  Shape          `json:"shape"`
	Across measure.Length `json:"across_mm"` // diameter, or side
	Count  int            `json:"count"`
}

// Shape is the shape of a flat part.
type Shape string

// The shapes. A square of screen lies straight to the weave; plates of several
// sizes are nested on a sheet.
const (
	Disc   Shape = "disc"
	Square Shape = "square"
	Plate  Shape = "plate"
)

// area is what the parts take of an item sold by area, each taken as a square.
func (f Flat) area() measure.Area { return f.Across.Times(f.Across) * measure.Area(f.Count) }

// flats notes what is cut out of a ware that is used.
func (t *takeoff) flats(w ware, f Flat) {
	if i, ok := t.at[itemKey(w.item)]; ok && f.Count > 0 {
		t.needs[i].addFlat(f)
	}
}

// addFlat adds to the flats, equal ones in one row.
func (n *Need) addFlat(f Flat) {
	for i, g := range n.Flats {
		if g.Shape == f.Shape && g.Across == f.Across {
			n.Flats[i].Count += f.Count
			return
		}
	}
	n.Flats = append(n.Flats, f)
}
