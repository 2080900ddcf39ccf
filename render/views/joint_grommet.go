package views

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// A pipe through a grommet is drawn so far into the drum and out of it.
const (
	throughIn  length = 35
	throughOut length = 55
)

func grommetDrawing() jointDrawing {
	return jointDrawing{
		name:   "rubber grommet",
		detail: (*sheet).grommetJoint,
		side: func(d *sheet, v view, h geometry.Hole, side, r, z length) length {
			f, p, w := h.Footprint/2, h.PipeOutside/2, h.Wall
			for _, s := range []length{1, -1} {
				d.PathOn(render.Outline, box(side*r, z+s*p, side*(r+5), z+s*f).Transform(v.to()))
				d.PathOn(render.Outline, box(side*(r-w), z+s*p, side*(r-w-5), z+s*f).Transform(v.to()))
			}
			return r + 25
		},
		onPipe: (*sheet).cutGrommet,
		above: func(h geometry.Hole, r, w length, add func(x1, y1, x2, y2 length)) {
			const lip = 5
			f, q := h.Footprint/2, h.PipeOutside/2
			add(r, f, r+lip, f)
			add(r+lip, q, r+throughOut, q)
			add(r-w-lip, f, r-w, f)
		},
		picture: grommetPicture,
		mouth:   func(geometry.Hole) (at, deep length) { return 0, 0 },
		inner:   func(geometry.Hole) length { return throughIn },
		through: true, piped: true,
	}
}

func (d *sheet) grommetJoint(b path.Box, h geometry.Hole, name string) scale {
	y := h.Footprint/2 + 10
	v, sc, words := d.detail(b, name, -45, 60, -y, y, 0, 1)
	p, bore := h.PipeOutside/2, h.PipeInside/2
	d.cutWall(v, h, y)
	gap := geometry.Sagitta(h.Radius, h.Diameter)
	d.cutGrommet(v, h, -gap, 0)
	for _, s := range []length{1, -1} {
		d.section(box(-35, s*bore, 55, s*p).Transform(v.to()), (p-bore)*length(v.k), hatchAngle)
	}
	d.Line(render.Centre, v.pt(-42, 0), v.pt(60, 0))
	hole := "read its label for the hole"
	if h.Grommet.Known {
		hole = "wants a hole of " + keep(d.dia(h.Grommet.Hole))
		if !h.Grommet.Label {
			hole += " by the usual table: read its label"
		}
	}
	d.detailNotes(words,
		note{v.pt(3-gap, h.Footprint*0.45), "rubber pipe-to-tank grommet, " + hole, false},
		note{v.pt(40, (p+bore)/2), pipeWords(h.Pipe) + ", edge rounded and wetted, pushed through", true},
		note{v.pt(-h.Wall/2-gap, -y*0.95), fmt.Sprintf("wall %s; hole cut %s, burrs off", keep(d.both(h.Wall)), keep(d.dia(h.Diameter))), true},
	)
	return sc
}

// cutGrommet draws a rubber grommet in section in a wall whose outside stands
// upright at x, the pipe going through to the right at height z.
func (d *sheet) cutGrommet(v view, h geometry.Hole, x, z length) {
	f, p, hole, w, lip := h.Footprint/2, h.PipeOutside/2, h.Diameter/2, h.Wall, length(4)
	for _, s := range []length{1, -1} {
		pts := []path.Point{
			path.Pt(x+lip, z+s*p), path.Pt(x+lip, z+s*f), path.Pt(x, z+s*f), path.Pt(x, z+s*hole),
			path.Pt(x-w, z+s*hole), path.Pt(x-w, z+s*(hole+(f-hole)*0.7)), path.Pt(x-w-lip, z+s*(hole+(f-hole)*0.4)), path.Pt(x-w-lip, z+s*p),
		}
		d.section(path.Polygon(v.poly(pts...)...), (f-p)*length(v.k)*0.6, -hatchAngle)
		if (f-p)*length(v.k)*0.6 >= solidUnder {
			continue
		}
		d.PathOn(render.Thin, path.Polygon(v.poly(pts...)...))
	}
}

func grommetPicture(p picture, h geometry.Hole) {
	y := h.Footprint/2 + 10
	k := min(float64(boxW(p.area)/110), float64(boxH(p.area)/(2*y)))
	v := view{k, path.Pt(midX(p.area)-5, midY(p.area))}
	p.cutWall(v, h, y)
	gap := geometry.Sagitta(h.Radius, h.Diameter)
	p.cutGrommet(v, h, -gap, 0)
	po, bore := h.PipeOutside/2, h.PipeInside/2
	for _, s := range []length{1, -1} {
		p.section(box(12, s*bore, 50, s*po).Transform(v.to()), (po-bore)*length(k), hatchAngle)
	}
	p.Line(render.Centre, v.pt(-40, 0), v.pt(52, 0))
	p.arrowLine(v.pt(34, bore*0.4), v.pt(-14, bore*0.4))
}
