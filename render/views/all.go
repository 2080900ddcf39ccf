package views

import (
	"silowright/geometry"
	"silowright/render"
)

// View is one drawing of the set.
type View struct {
	ID   string // a plain word, for file names and bookmarks
	Wide bool   // it uses a sheet lying on its long side better
	Draw func(geometry.Silo, Size) render.Drawing
}

// All lists the drawings in the order a shop meets them. A new view is one
// more function in a file of its own, named here.
func All() []View {
	return []View{
		{"assembly", false, Assembly},
		{"body", false, Body},
		{"base", false, Base},
		{"lattice", false, Lattice},
		{"ring", false, Ring},
		{"mesh-disc", false, MeshDisc},
		{"pipe-silo", false, PipeSilo},
		{"joints", false, Joints},
	}
}
