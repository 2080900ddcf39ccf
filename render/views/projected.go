package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// Projected draws body and base from the datum's side with the view from above
// in its place: above the side view in third angle, below it in first angle
// (ISO 5456-2). The view from above has the datum's side at the foot of the
// sheet in both.
func Projected(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Views", "body and base")
	key := "D datum, O outlet, H handle slots, I inlet, W drain: their middles, seen from above."
	foot := max(listTall(boxW(d.area)-symbolWide-6, key), symbolTall) + 4
	area := inner(d.area, 0, 0, 0, foot)
	left, right := columns(area, 0.5, 6)
	body := projectedPart{bodyProfile(s), d.bodyMap(s), []place{{"D", 0}, {"O", s.Outlet.Round}, {"H", s.Slots[0].Round}, {"H", s.Slots[1].Round}}}
	base := projectedPart{baseProfile(s), d.baseMap(s), []place{{"D", 0}, {"I", s.Inlet.Round}, {"W", s.Drain.Round}}}
	const gap = 14
	across := 2 * max(body.p.widest(), base.p.widest())
	tall := max(body.tall(), base.tall()) + across
	sc := fit(across, tall, boxW(left)-16, boxH(left)-gap-24, 1)
	d.projectedPart(d.heading(left, "Body", sc), sc, body, gap)
	d.projectedPart(d.heading(right, "Base, mouth up", sc), sc, base, gap)
	box := path.Box{Min: path.Pt(d.area.Min.X+1, d.area.Min.Y), Max: path.Pt(d.area.Max.X-symbolWide-5, d.area.Min.Y+foot-4)}
	d.list(box, key)
	d.projectionSymbol(path.Pt(d.area.Max.X-symbolWide-2, d.area.Min.Y+2))
	return d.finish(sc)
}

// place is something at a distance round the wall from the datum.
type place struct {
	letter string
	round  length
}

type projectedPart struct {
	p      profile
	m      wallMap
	places []place
}

func (q projectedPart) tall() length {
	low, high := q.m.extent()
	return high - low
}

// projectedPart draws one part's two views in a column, on one centre line.
func (d *sheet) projectedPart(b path.Box, sc scale, q projectedPart, gap length) {
	k := length(sc.k)
	r := q.p.widest()
	low, _ := q.m.extent()
	sideTall, planTall := q.tall()*k, 2*r*k
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
	d.plan(view{sc.k, path.Pt(midX(b), planY+planTall/2)}, q)
	d.Line(render.Centre, path.Pt(midX(b), start-3), path.Pt(midX(b), start+sideTall+planTall+gap+3))
}

// plan draws the part from above: its widest circle, its upper edge, and a
// letter inside the wall for each thing at its place.
func (d *sheet) plan(v view, q projectedPart) {
	k := length(v.k)
	edge := q.p[len(q.p)-1].X
	d.Circle(render.Outline, v.at, q.p.widest()*k)
	if q.p.widest()-edge > 0.3/k {
		d.Circle(render.Outline, v.at, edge*k)
	}
	arm := max(3, q.p.widest()*k*0.12)
	r := q.p.widest()*k - arm - 3       // of the letters' circle
	const least = 16                    // below it the ticks alone are drawn
	near := 13 / float64(max(r, least)) // radians within which letters are set side by side
	var at []measure.Angle
	var words []string
	for _, p := range q.places {
		a := measure.Angle(-math.Pi/2) + measure.Angle(p.round/q.m.radius)
		merged := false
		for i := range at {
			if math.Abs(math.Remainder(float64(a-at[i]), 2*math.Pi)) < near && !merged {
				words[i] += " " + p.letter
				merged = true
			}
		}
		if !merged {
			at, words = append(at, a), append(words, p.letter)
		}
		out := q.p.widest()*k + 1.5
		in := out - arm
		d.Line(render.Thin, path.Pt(v.at.X+in*length(a.Cos()), v.at.Y+in*length(a.Sin())), path.Pt(v.at.X+out*length(a.Cos()), v.at.Y+out*length(a.Sin())))
	}
	for i, a := range at {
		if r < least {
			continue
		}
		aside := length(0)
		if math.Abs(a.Cos()) < 0.3 { // clear of the centre line
			aside = wide(words[i])/2 + 1.5
		}
		// a row of letters is wide: it moves inwards until the wall is clear
		at, room := path.Point{}, edge*k-1.2
		for q := r; q >= 0; q -= 0.5 {
			at = path.Pt(v.at.X+q*length(a.Cos())+aside, v.at.Y+q*length(a.Sin()))
			x, y := (at.X-v.at.X).Abs()+wide(words[i])/2, (at.Y-v.at.Y).Abs()+small*0.8
			if math.Hypot(float64(x), float64(y)) <= float64(room) {
				break
			}
		}
		d.Words(path.Pt(at.X, at.Y-small/2), small, render.Middle, words[i])
	}
}

// The room of the projection symbol and its words.
const (
	symbolWide length = 40
	symbolTall length = 12
)

// projectionSymbol draws the truncated cone's two views in the order of the
// projection, at its lower left corner (ISO 5456-2, from memory).
func (d *sheet) projectionSymbol(at path.Point) {
	const big, little, long = 4.0, 2.0, 8.0
	circles, cone := at.X+big, at.X+2*big+3
	words := "third angle"
	if d.size.FirstAngle {
		cone, circles = at.X, at.X+long+3+big
		words = "first angle"
	}
	y := at.Y + big
	d.Circle(render.Outline, path.Pt(circles, y), big)
	d.Circle(render.Outline, path.Pt(circles, y), little)
	d.PathOn(render.Outline, path.Polygon(path.Pt(cone, y-little), path.Pt(cone+long, y-big), path.Pt(cone+long, y+big), path.Pt(cone, y+little)))
	d.Line(render.Centre, path.Pt(at.X-1, y), path.Pt(at.X+2*big+long+4, y))
	d.Words(path.Pt(at.X+2*big+long+6, y-small/2), small, render.Left, words)
}
