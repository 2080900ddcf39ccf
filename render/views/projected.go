package views

import (
	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// drawProjected draws body and base from the datum's side with the view from above
// in its place: above the side view in third angle, below it in first angle
// (ISO 5456-2). The view from above has the datum's side at the foot of the
// sheet in both.
func drawProjected(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Views", "body and base")
	key := "D datum, O outlet, H handle slots, I inlet, W drain: their middles, seen from above."
	d.projects = true
	foot := listTall(boxW(d.area)-2, key) + 4
	area := inner(d.area, 0, 0, 0, foot)
	left, right := columns(area, 0.5, 6)
	body := projectedPart{bodyProfile(s), d.bodyMap(s), bodyAbove(s)}
	base := projectedPart{baseProfile(s), d.baseMap(s), baseAbove(s)}
	const gap = 14
	across := 2 * max(body.p.widest(), base.p.widest(), body.a.half(), base.a.half())
	tall := max(body.tall()+boxH(body.a.bounds()), base.tall()+boxH(base.a.bounds()))
	sc := fit(across, tall, boxW(left)-8, boxH(left)-gap-24, 1)
	d.projectedPart(d.heading(left, "Body", sc), sc, body, gap)
	d.projectedPart(d.heading(right, "Base, mouth up", sc), sc, base, gap)
	box := path.Box{Min: path.Pt(d.area.Min.X+1, d.area.Min.Y), Max: path.Pt(d.area.Max.X-1, d.area.Min.Y+foot-4)}
	d.list(box, key)
	return d.finish(sc)
}

type projectedPart struct {
	p profile
	m wallMap
	a seenFromAbove
}

func (q projectedPart) tall() length {
	low, high := q.m.extent()
	return high - low
}

// projectedPart draws one part's two views in a column, on one centre line.
func (d *sheet) projectedPart(b path.Box, sc scale, q projectedPart, gap length) {
	k := length(sc.k)
	seen := q.a.bounds()
	low, _ := q.m.extent()
	sideTall, planTall := q.tall()*k, boxH(seen)*k
	start := b.Min.Y + (boxH(b)-sideTall-planTall-gap)/2
	sideY, planY := start, start+sideTall+gap
	if d.size.FirstAngle {
		planY, sideY = start, start+planTall+gap
	}
	v := view{sc.k, path.Pt(midX(b), sideY-low*k)}
	d.PathOn(render.Outline, q.p.outline().Transform(v.to()))
	for _, at := range q.p[1 : len(q.p)-1] {
		d.Line(render.Thin, v.pt(-at.X, at.Y), v.pt(at.X, at.Y))
	}
	for _, c := range q.m.cuts {
		d.facing(v, q.m, c)
	}
	d.fromAbove(view{sc.k, path.Pt(midX(b), planY-seen.Min.Y*k)}, q.a)
	d.Line(render.Centre, path.Pt(midX(b), sideY-3), path.Pt(midX(b), sideY+sideTall+3))
}

// projectionSymbol draws the truncated cone's two views in the order of the
// projection and its name, in the title strip's cell at its lower left corner
// (ISO 5456-2, from memory).
func (d *sheet) projectionSymbol(at path.Point, room length) {
	const big, little, long = 1.9, 0.95, 3.8
	circles, cone := at.X+big, at.X+2*big+1.4
	words := "third angle"
	if d.size.FirstAngle {
		cone, circles = at.X, at.X+long+1.4+big
		words = "first angle"
	}
	y := at.Y + big
	d.Circle(render.Outline, path.Pt(circles, y), big)
	d.Circle(render.Outline, path.Pt(circles, y), little)
	d.PathOn(render.Outline, path.Polygon(path.Pt(cone, y-little), path.Pt(cone+long, y-big), path.Pt(cone+long, y+big), path.Pt(cone, y+little)))
	d.Line(render.Centre, path.Pt(at.X-0.8, y), path.Pt(at.X+2*big+1.4+long+0.8, y))
	const past = 2*big + 1.4 + long + 2
	d.fitWords(path.Pt(at.X+past, at.Y+0.6), room-past, small, false, words)
}
