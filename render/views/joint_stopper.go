package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

func stopperDrawing() jointDrawing {
	return jointDrawing{
		name:   "stopper",
		detail: (*sheet).stopperJoint,
		side: func(d *sheet, v view, h geometry.Hole, side, r, z length) length {
			t, b, deep := h.Stopper.Top/2, h.Stopper.Bottom/2, drawnDeep(h.Stopper)
			x2 := r + h.Stopper.Length - deep
			d.PathOn(render.Outline, path.Polygon(v.poly(path.Pt(side*(r-deep), z-b), path.Pt(side*(r-deep), z+b),
				path.Pt(side*x2, z+t), path.Pt(side*x2, z-t))...))
			return x2
		},
		onPipe: sideOnPipe,
		above: func(h geometry.Hole, r, w length, add func(x1, y1, x2, y2 length)) {
			t := h.Stopper
			if t.SeatDepth <= 0 || t.SeatDepth >= t.Length {
				return // it does not hold
			}
			if t.SeatDepth > w {
				at := t.Bottom + (t.Top-t.Bottom)*(t.SeatDepth-w)/t.Length
				add(r-t.SeatDepth, t.Bottom/2, r-w, at/2)
			}
			at := t.Bottom + (t.Top-t.Bottom)*t.SeatDepth/t.Length
			add(r, at/2, r+t.Length-t.SeatDepth, t.Top/2)
		},
		picture: func(picture, geometry.Hole) {},
		mouth:   func(h geometry.Hole) (at, deep length) { return h.Stopper.Length - drawnDeep(h.Stopper), 0 },
		inner:   func(h geometry.Hole) length { return drawnDeep(h.Stopper) - h.Wall },
	}
}

func (d *sheet) stopperJoint(b path.Box, h geometry.Hole, name string) scale {
	t := h.Stopper
	y := max(t.Top/2, h.Diameter/2) + 6
	deep := drawnDeep(t)
	v, sc, words := d.detail(b, name, -max(deep, h.Wall)-6, t.Length-deep+6, -y, y, 0, 1)
	d.cutWall(v, h, y)
	k := length(v.k)
	d.section(path.Polygon(v.poly(path.Pt(-deep, -t.Bottom/2), path.Pt(-deep, t.Bottom/2),
		path.Pt(t.Length-deep, t.Top/2), path.Pt(t.Length-deep, -t.Top/2))...), t.Bottom*k, -hatchAngle)
	d.Line(render.Centre, v.pt(-deep-4, 0), v.pt(t.Length-deep+4, 0))
	d.detailNotes(words,
		note{v.pt(t.Length-deep, t.Top*0.4), fmt.Sprintf("rubber stopper No. %s, %s to %s over %s", t.Number, keep(d.dia(t.Top)), keep(d.dia(t.Bottom)), keep(d.both(t.Length))), false},
		note{v.pt(-deep*0.5, -t.Bottom*0.2), d.stopperWords(t), true},
		note{v.pt(-h.Wall/2-geometry.Sagitta(h.Radius, 2*(y-2)), -y+2), fmt.Sprintf("wall %s; hole cut %s", keep(d.both(h.Wall)), keep(d.dia(h.Diameter))), true},
	)
	return sc
}

// drawnDeep is how deep a stopper is drawn: one that does not go in with its
// narrow end at the wall, one that goes right through with its wide end there.
func drawnDeep(t geometry.StopperFit) length { return max(0, min(t.SeatDepth, t.Length)) }

// stopperWords says how a stopper goes in, or that it does not hold.
func (d *sheet) stopperWords(t geometry.StopperFit) string {
	switch {
	case t.SeatDepth <= 0:
		return "too large for the hole: it does not go in"
	case t.SeatDepth >= t.Length:
		return "too small for the hole: it goes right through"
	}
	return fmt.Sprintf("%s of it goes into the hole; push and twist it in from outside, wet", keep(d.both(t.SeatDepth)))
}
