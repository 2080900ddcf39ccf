package bom

import (
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Run is pipe of the manifold or the mains: so many pieces of one length.
type Run struct {
	Name   string
	Pipe   geometry.PipeRef
	Length measure.Length
	Count  int
}

// runs counts the pipe that serves all silos; none where no silo is built. It is
// on the drum silos' account where there are any.
func (t *takeoff) runs(batches []Batch, list []Run) {
	s, kerf, built := forPipe, measure.Length(0), 0
	for _, b := range batches {
		built += b.Drum + b.Pipe
		if b.Drum > 0 {
			s = forDrum
		}
		kerf = max(kerf, b.Silo.Spec.Saw.Kerf)
	}
	for _, q := range list {
		if q.Count > 0 && built > 0 {
			t.sawn(q.Pipe, q.Length, kerf, q.Count, s, q.Name)
		}
	}
}
