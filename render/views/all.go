package views

import (
	"silowright/geometry"
	"silowright/render"
)

// View is one drawing of the set.
type View struct {
	ID    string // a plain word, for file names
	Title string // for a bookmark
	Pipe  bool   // of the pipe silo alone: left out when none is built
	Draw  func(geometry.Silo, Size) render.Drawing
}

// All lists the drawings in the order a shop meets them. A new view is one
// more function in a file of its own, named here.
func All() []View {
	return []View{
		{"assembly", "Assembly", false, drawAssembly},
		{"views", "Views from side and above", false, drawProjected},
		{"body", "Body", false, drawBody},
		{"base", "Base", false, drawBase},
		{"lattice", "Lattice", false, Lattice},
		{"ring", "Retaining ring", false, drawRing},
		{"mesh-disc", "Mesh disc", false, drawMeshDisc},
		{"pipe-silo", "Pipe silo", true, drawPipeSilo},
		{"pipe-joints", "Outlet and inlet", false, drawPipeJoints},
		{"foot-joints", "Drain and ring", false, drawFootJoints},
	}
}
