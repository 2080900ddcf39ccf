package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

func bulkheadDrawing() jointDrawing {
	return jointDrawing{
		name:   "bulkhead fitting",
		detail: (*sheet).bulkheadJoint,
		side: func(d *sheet, v view, h geometry.Hole, side, r, z length) length {
			q := bulkheadShape(h)
			for _, part := range [][3]length{{q.face - q.head, q.face - q.flangeThick, q.body}, {q.face - q.flangeThick, q.face, q.flange},
				{0, q.nutThick, q.nut}, {q.nutThick, q.outer, q.body}, {q.outer, q.mouth, q.across}} {
				if part[1] > part[0] {
					d.PathOn(render.Outline, box(side*(r+part[0]), z-part[2], side*(r+part[1]), z+part[2]).Transform(v.to()))
				}
			}
			return r + q.mouth
		},
		onPipe: sideOnPipe,
		above: func(h geometry.Hole, r, w length, add func(x1, y1, x2, y2 length)) {
			q := bulkheadShape(h)
			add(r, q.nut, r+q.nutThick, q.nut)
			add(r+q.nutThick, q.body, r+q.outer, q.body)
			if q.mouth > q.outer {
				add(r+q.outer, q.across, r+q.mouth, q.across)
			}
			add(r+q.face-q.flangeThick, q.flange, min(r+q.face, r-w), q.flange)
			add(r+q.face-q.head, q.body, r+q.face-q.flangeThick, q.body)
		},
		picture: bulkheadPicture,
		mouth: func(h geometry.Hole) (at, deep length) {
			q := bulkheadShape(h)
			return q.mouth, q.socket
		},
		inner: func(h geometry.Hole) length {
			q := bulkheadShape(h)
			return q.head - q.face - h.Wall
		},
		piped: true,
	}
}

// bulkhead is a bulkhead fitting's outline, half sections from its axis, the
// wall's outside at x = 0. How thick flange and locknut are is not measured:
// half the head, and 1/2 in where there is room.
type bulkhead struct {
	face, head, outer     length // gasket's face; length of the head; outer end
	flangeThick, nutThick length
	body, flange, nut     length // half their widths
	pipe, bore            length
	deep                  length // of a socket, or of a thread
	// Where the pipe goes in, and how deep: the fitting's socket, or that of a
	// male adapter half so far across.
	mouth, socket, across length
}

func bulkheadShape(h geometry.Hole) bulkhead {
	b := h.Bulkhead
	q := bulkhead{face: -b.Stack, head: b.Head, outer: b.Outer, flangeThick: b.Head / 2, nutThick: min(12.7, b.Outer*0.8),
		pipe: h.PipeOutside / 2, bore: h.Bore() / 2}
	q.body = max(b.Thread/2, q.pipe+1)
	q.flange, q.nut = max(b.Flange/2, q.body+1), max(b.Nut/2, q.body+1)
	q.deep = min(b.Depth, (q.outer+b.Stack+q.head)*0.45)
	q.mouth, q.socket = q.outer, q.deep
	if b.Adapter > 0 {
		q.mouth, q.socket, q.across = q.outer+b.Adapter, b.Depth, max(b.Across/2, q.pipe+1)
	}
	return q
}

func (d *sheet) bulkheadJoint(b path.Box, h geometry.Hole, name string) scale {
	q, f := bulkheadShape(h), h.Bulkhead
	y := max(q.flange, q.nut, h.Diameter/2) * 1.15
	const shows = 30 // of the pipe outside
	v, sc, words := d.detail(b, name, q.face-q.head, q.mouth+shows, -y, y, 0, 1)
	d.cutBulkhead(v, h, y, 0)
	pipe := h.PipeInside / 2
	for _, s := range []length{1, -1} {
		d.section(box(q.mouth-q.socket, s*pipe, q.mouth+shows, s*q.pipe).Transform(v.to()), (q.pipe-pipe)*length(v.k), hatchAngle)
		d.cutAdapter(v, q, s, pipe)
	}
	d.Line(render.Centre, v.pt(q.face-q.head-4, 0), v.pt(q.mouth+shows+4, 0))
	into := fmt.Sprintf("%s solvent-cemented into the socket, %s deep", pipeWords(h.Pipe), keep(d.both(f.Depth)))
	if f.Adapter > 0 {
		into = fmt.Sprintf("male adapter in the outer thread, with thread tape; %s solvent-cemented into its socket, %s deep", pipeWords(h.Pipe), keep(d.both(f.Depth)))
	}
	d.detailNotes(words,
		note{v.pt(q.nutThick*0.6, q.nut), fmt.Sprintf("locknut outside, %s across; by hand and a quarter turn, no more", keep(d.both(f.Nut))), false},
		note{v.pt(q.mouth+shows*0.7, (pipe+q.pipe)/2), into, true},
		note{v.pt(q.face-q.flangeThick/2, -q.flange*0.9), fmt.Sprintf("flange inside, %s across, on a gasket %s thick; the wall falls away %s under it", keep(d.both(f.Flange)), keep(d.both(f.Gasket)), keep(d.both(f.Gap))), true},
		note{v.pt(-h.Wall/2-geometry.Sagitta(h.Radius, 2*y*0.95), -y*0.95), fmt.Sprintf("wall %s; hole cut %s, burrs off, flat and clean", keep(d.both(h.Wall)), keep(d.dia(h.Diameter))), true},
	)
	return sc
}

// cutAdapter draws half a male adapter in section, its thread in the fitting's
// outer end; nothing where there is none.
func (d *sheet) cutAdapter(v view, q bulkhead, s, bore length) {
	if q.mouth <= q.outer {
		return
	}
	d.section(path.Polygon(v.poly(path.Pt(q.outer-q.deep, s*bore), path.Pt(q.outer-q.deep, s*q.pipe), path.Pt(q.outer, s*q.pipe), path.Pt(q.outer, s*q.across),
		path.Pt(q.mouth, s*q.across), path.Pt(q.mouth, s*q.pipe), path.Pt(q.mouth-q.socket, s*q.pipe), path.Pt(q.mouth-q.socket, s*bore))...),
		(q.across-q.pipe)*length(v.k), -2*hatchAngle)
}

// cutBulkhead draws wall and fitting in the level section through the hole;
// drawn apart by so much, gasket and locknut stand off the wall.
func (d *sheet) cutBulkhead(v view, h geometry.Hole, y, apart length) {
	q, k := bulkheadShape(h), length(v.k)
	d.cutWall(v, h, y)
	face, nut := q.face-apart, apart
	inside := func(y length) length { return -h.Wall - geometry.Sagitta(h.Radius-h.Wall, 2*y) }
	for _, s := range []length{1, -1} {
		hole := max(h.Diameter/2, q.body)
		gasket := []path.Point{path.Pt(face, s*hole), path.Pt(face, s*q.flange), path.Pt(inside(q.flange), s*q.flange), path.Pt(inside(hole), s*hole)}
		if apart > 0 { // not squeezed yet: flat, between flange and wall
			x := (face + inside(q.flange)) / 2
			gasket = []path.Point{path.Pt(x, s*hole), path.Pt(x, s*q.flange), path.Pt(x+h.Bulkhead.Gasket, s*q.flange), path.Pt(x+h.Bulkhead.Gasket, s*hole)}
		}
		d.Shade(path.Polygon(v.poly(gasket...)...), 0.45)
		end, out := face-q.head, q.outer-apart
		d.section(path.Polygon(v.poly(path.Pt(end, s*q.pipe), path.Pt(end, s*q.body), path.Pt(face-q.flangeThick, s*q.body), path.Pt(face-q.flangeThick, s*q.flange),
			path.Pt(face, s*q.flange), path.Pt(face, s*q.body), path.Pt(out, s*q.body), path.Pt(out, s*q.pipe),
			path.Pt(out-q.deep, s*q.pipe), path.Pt(out-q.deep, s*q.bore), path.Pt(end+q.deep, s*q.bore), path.Pt(end+q.deep, s*q.pipe))...),
			(q.body-q.pipe)*k, -hatchAngle)
		d.section(box(nut, s*q.body, nut+q.nutThick, s*q.nut).Transform(v.to()), (q.nut-q.body)*k, hatchAngle)
	}
}

// bulkheadPicture draws body and gasket going in from inside, the locknut from
// outside.
func bulkheadPicture(p picture, h geometry.Hole) {
	q := bulkheadShape(h)
	apart := max(q.outer*0.8, 20)
	y := max(q.flange, q.nut) * 1.15
	low, high := q.face-apart-q.head, apart+q.nutThick
	k := min(float64(boxW(p.area)/(high-low)), float64(boxH(p.area)/(2*y+10)))
	v := view{k, path.Pt(midX(p.area)-(low+high)/2*length(k), midY(p.area)+1)}
	p.cutBulkhead(v, h, y, apart)
	p.Line(render.Centre, v.pt(low-4, 0), v.pt(high+4, 0))
	yl := v.y(-max(q.flange, q.nut)) - 4
	p.arrowLine(path.Pt(v.x(low), yl), path.Pt(v.x(q.face-2), yl))
	p.arrowLine(path.Pt(v.x(high), yl), path.Pt(v.x(2), yl))
}
