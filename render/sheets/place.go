package sheets

import (
	"silowright/geometry/path"
	"silowright/render"
)

// place sets a drawing, scaled by k, with its upper left corner at (x, y) from
// the top.
func (f *flow) place(d render.Drawing, x, y length, k float64) {
	f.page().Place(d, path.Pt(x, f.h-y-d.Height*length(k)), k)
}
