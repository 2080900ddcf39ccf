package bom

import (
	"silowright/geometry"
	"silowright/geometry/measure"
)

// pipePieces are the lengths of pipe in one pipe silo.
func pipePieces(s geometry.Silo) []piece {
	q := s.Spec.Pipe
	return []piece{{"pipe silo", q.Pipe, q.Length, ""}, {"short pipe", q.PipeOut, q.PipeOutLength, intoAdapter(s.Pipe.Hole)}}
}

// pipeSilos counts what one kind's pipe silos use. The reducing adapter is
// cemented to the short pipe; its other end is only pushed into the drum
// silo's outlet, so that the pipe silo lifts out.
func (t *takeoff) pipeSilos(b Batch) {
	s, n := b.Silo, b.Pipe
	for _, p := range pipePieces(s) {
		t.sawn(p.pipe, p.length, s.Spec.Saw.Kerf, n, forPipe, p.name)
	}
	t.joint(s.Pipe.Hole, s.Spec.Sealant, n, forPipe)
	large, small := fits(s.Spec.Outlet.Pipe), fits(s.Spec.Pipe.PipeOut)
	t.each("adapter-"+slug(large)+"x"+slug(small), "reducing adapter "+large+" × "+small, Fittings, 1, n, forPipe, "on the short pipe")
	t.cement(1, n, forPipe, "in the reducing adapter")
	if m := s.Outlet.Makeup(); m.Adapters > 0 {
		// The reducing adapter does not go into a thread.
		t.adapters(s.Outlet, 1, n, forPipe, "in the inner end of the drum silo's outlet")
	}
	side := s.Pipe.ScreenSquare
	screen := ware{"screen-" + openingSlug(s.Spec.Pipe.Screen), "screen, " + opening(s.Spec.Pipe.Screen) + " opening", MeshScreen, Area}
	t.use(screen, 0, float64(n)*side.Times(side).MM2(), "%d squares of %s", n, side.Both(t.units))
	t.flats(screen, Flat{"screen square", Square, side, n})
	ml := s.Pipe.Resin.Volume.ML()
	t.use(ware{"resin", "resin for the screen's bead", Fasteners, Volume}, 0, float64(n)*ml, "%d × %s mL: bead with legs of %s, %s long, waste %s %%",
		n, measure.Number(ml, 1), s.Spec.Pipe.Bead.Both(t.units), s.Pipe.Resin.Run.Both(t.units), measure.Number(s.Spec.Sealant.Waste*100, 1))
	t.wipe(s.Pipe.Resin.Run, n, forPipe, "resin bead")
	t.marker(n, forPipe)
}
