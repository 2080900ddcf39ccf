package views

import (
	"silowright/geometry"
	"silowright/render"
)

// Step is the small picture of one step of the build, without words.
type Step struct {
	ID      string // of the step it belongs to
	Picture render.Drawing
}

// Steps draws a picture for every step of the build in the silo's own
// proportions. A new picture is one more function, named here.
func Steps(s geometry.Silo) []Step {
	var out []Step
	for _, f := range []struct {
		id, title string
		draw      func(picture, geometry.Silo)
	}{
		{"drum", "measuring the drum", pictureDrum},
		{"mark", "datum and cuts marked", pictureMark},
		{"base-cut", "cutting the base off", pictureBaseCut},
		{"ring-cut", "cutting the ring strip off", pictureRingCut},
		{"lattice", "sawing the lattice", pictureLattice},
		{"holes", "boring the wall holes", pictureHoles},
		{"handles", "cutting the handle slots", pictureHandles},
		{"mesh", "laying the mesh disc in", pictureMesh},
		{"ring", "screwing the ring", pictureRing},
		{"sealant", "sealing the ring's edge", pictureSealant},
		{"outlet", "outlet joint", pictureOutlet},
		{"inlet", "inlet and drain", pictureInlet},
		{"pipe", "boring the pipe silo", picturePipe},
		{"screen", "screen under the clamp", pictureScreen},
		{"pipe-outlet", "the pipe silo's outlet", picturePipeOutlet},
		{"seat", "seating the body", pictureSeat},
		{"leak", "leak test", pictureLeak},
		{"cure", "rinsing and soaking", pictureCure},
		{"work", "at work", pictureWork},
	} {
		p := newPicture(s, f.title)
		f.draw(p, s)
		out = append(out, Step{f.id, p.whole()})
	}
	return out
}
