package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

func picturePipe(p picture, s geometry.Silo) {
	r, long := s.Pipe.Outside/2, s.Spec.Pipe.Length
	h := s.Pipe.Hole
	v := p.fitted(r*1.1, r*1.1+24/0.12, long)
	a := r * 0.6
	at := onWall(v, r, a, h.Height)
	p.holeSaw(path.Pt(at.X+3.2, at.Y), -measure.FullTurn/4, h.Diameter*length(v.k))
	p.solid(v, profile{path.Pt(r, 0), path.Pt(r, long)}, s.Pipe.Wall)
	p.Shade(p.wallShape(render.Cut, v, r, a, h.Height, h.Outline()), 0.2)
}

// pictureScreen stands the pipe on its open end, the screen drawn over the
// other and clamped.
func pictureScreen(p picture, s geometry.Silo) {
	r := s.Pipe.Outside / 2
	high := min(s.Spec.Pipe.Length, s.Pipe.Outside*1.1)
	skirt := min(s.Spec.Pipe.Drape, high*0.5)
	v := p.fitted(r*1.35, r*1.6, high)
	band := max(13, r*0.12)
	zc := high - skirt*0.55
	// clamp first: it lies in front of the screen
	rc := r * 1.02
	for _, z := range []length{zc - band/2, zc + band/2} {
		p.line(render.Outline, hoopLine(v, rc, z, false))
	}
	for _, x := range []length{-1, 1} {
		p.Line(render.Outline, v.pt(x*rc, zc-band/2), v.pt(x*rc, zc+band/2))
	}
	c := onWall(v, rc, rc*0.5, zc)
	p.PathOn(render.Outline, box(c.X-2, c.Y-1.6, c.X+2, c.Y+1.6))
	p.Shade(box(c.X-2, c.Y-1.6, c.X+2, c.Y+1.6), 1)
	p.solid(v, profile{path.Pt(r, 0), path.Pt(r, high)}, 0)
	// the screen's square, its corners hanging
	var hem path.Path
	for i := range 25 {
		a := math.Pi * (float64(i)/24 - 0.5) * 2 / 2
		wave := 0.75 + 0.25*math.Cos(4*a)
		q := v.pt(r*1.05*length(math.Sin(a)), high-skirt*length(2-wave)*0.8-r*tilt*length(math.Cos(a)))
		if i == 0 {
			hem.MoveTo(q)
		} else {
			hem.LineTo(q)
		}
	}
	p.line(render.Thin, hem)
	for _, x := range []length{-1, 1} {
		p.line(render.Thin, path.Polyline(v.pt(x*r, high), v.pt(x*r*1.05, high-skirt*0.8)))
	}
	// weave on top
	m := path.Scale(1, tilt).Then(path.Translate(0, high)).Then(v.to())
	for i := -5; i <= 5; i++ {
		y := r * length(i) / 6
		x := length(math.Sqrt(float64(r*r - y*y)))
		p.line(render.Thin, path.Polyline(path.Pt(-x, y), path.Pt(x, y)).Transform(m))
		p.line(render.Thin, path.Polyline(path.Pt(y, -x), path.Pt(y, x)).Transform(m))
	}
}

func picturePipeOutlet(p picture, s geometry.Silo) {
	r, long := s.Pipe.Outside/2, s.Spec.Pipe.Length
	h := s.Pipe.Hole
	stick := s.Spec.Pipe.PipeOutLength
	k := min(float64(boxW(p.area)/(2*r+stick+20)), float64(boxH(p.area)/(long+10)))
	v := view{k, path.Pt(p.area.Min.X+(boxW(p.area)-(2*r+stick+20)*length(k))/2+r*length(k), midY(p.area)-long/2*length(k))}
	p.cutPipe(v, s, 1)
	p.resin(v, s)
	drawingOf(h).onPipe(p.sheet, v, h, r, h.Height)
	x1 := r + 14
	p.pipeBetween(v, x1, x1+stick, h.Height, h.PipeOutside)
	p.Line(render.Outline, v.pt(x1, h.Height-h.PipeOutside/2), v.pt(x1, h.Height+h.PipeOutside/2))
	y := h.Height - h.PipeOutside
	p.arrowLine(v.pt(x1+stick*0.7, y), v.pt(x1, y))
}
