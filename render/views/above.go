package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// seenFromAbove is a part as it shows from above, about its middle, the datum's side
// at the foot of the sheet. Edges nearer together on paper than two wide lines
// can be told apart are left off, outermost kept (ISO 128, from memory).
type seenFromAbove struct {
	edges  []length        // radii of upper edges, outermost first
	inside []length        // radii of what is seen down in the part
	below  []path.Path     // seen through what lies over it: dashed
	ends   []render.Stroke // joints where they stand out of the wall, in and out
	places []place
	wall   length // outside radius, on which distances round are measured
}

// place is something at a distance round the wall from the datum.
type place struct {
	letter string
	round  length
}

// angle is where a distance round the wall lies as seen from above: the datum
// at the foot of the sheet, to the right of it as one faces the wall.
func (a seenFromAbove) angle(round length) measure.Angle {
	return measure.Angle(-math.Pi/2) + measure.Angle(round/a.wall)
}

// bounds is the box that holds all of it about its middle.
func (a seenFromAbove) bounds() path.Box {
	r := a.edges[0]
	b := path.Box{Min: path.Pt(-r, -r), Max: path.Pt(r, r)}
	for _, s := range a.ends {
		e := s.Path.Bounds()
		b.Min = path.Pt(min(b.Min.X, e.Min.X), min(b.Min.Y, e.Min.Y))
		b.Max = path.Pt(max(b.Max.X, e.Max.X), max(b.Max.Y, e.Max.Y))
	}
	return b
}

// half is how far it reaches to the side that reaches further.
func (a seenFromAbove) half() length {
	b := a.bounds()
	return max(-b.Min.X, b.Max.X)
}

// bodyAbove is the body from above: hoop, rim, ring, and the lattice through
// the mesh.
func bodyAbove(s geometry.Silo) seenFromAbove {
	p, r := bodyProfile(s), s.Spec.Drum.Outside/2
	a := seenFromAbove{edges: []length{p.widest(), r, r - s.Spec.Drum.Wall}, inside: []length{s.Ring.InnerRadius}, below: s.Lattice.Outlines, wall: r,
		places: []place{{"D", 0}, {"O", s.Outlet.Round}, {"H", s.Slots[0].Round}, {"H", s.Slots[1].Round}}}
	a.joint(p, s.Outlet)
	for _, sl := range s.Slots {
		// under the rim: dashed across the wall at both ends
		for _, end := range []length{-sl.Length / 2, sl.Length / 2} {
			t := a.angle(sl.Round + end)
			one, two := polar(r-s.Spec.Drum.Wall, float64(t)), polar(r, float64(t))
			a.ends = append(a.ends, render.Stroke{Layer: render.Hidden, Path: path.Polyline(one, two)})
		}
	}
	return a
}

// baseAbove is the base from above, mouth up: its hoop round the mouth, and
// the joints of the plenum.
func baseAbove(s geometry.Silo) seenFromAbove {
	p, r := baseProfile(s), s.Spec.Drum.Outside/2
	mouth := p[len(p)-1].X
	a := seenFromAbove{edges: []length{p.widest(), mouth - s.Spec.Drum.Wall}, inside: []length{r - s.Spec.Drum.Wall}, wall: r,
		places: []place{{"D", 0}, {"I", s.Inlet.Round}, {"W", s.Drain.Round}}}
	a.joint(p, s.Inlet)
	a.joint(p, s.Drain)
	return a
}

// joint adds what stands out of the wall at a hole; what a hoop above it
// covers is dashed.
func (a *seenFromAbove) joint(p profile, h geometry.Hole) {
	r, w := a.wall, h.Wall
	cover := r
	for _, q := range p {
		if q.Y > h.Height {
			cover = max(cover, q.X)
		}
	}
	add := func(x1, y1, x2, y2 length) { // between two radii, half as wide as y1 and y2 there
		cut := func(layer render.Layer, x1, y1, x2, y2 length) {
			turn := path.Rotate(a.angle(h.Round))
			a.ends = append(a.ends, render.Stroke{Layer: layer,
				Path: path.Polygon(path.Pt(x1, -y1), path.Pt(x2, -y2), path.Pt(x2, y2), path.Pt(x1, y1)).Transform(turn)})
		}
		switch {
		case x1 < r || x1 >= cover:
			cut(render.Outline, x1, y1, x2, y2)
		case x2 <= cover:
			cut(render.Hidden, x1, y1, x2, y2)
		default:
			y := y1 + (y2-y1)*(cover-x1)/(x2-x1)
			cut(render.Hidden, x1, y1, cover, y)
			cut(render.Outline, cover, y, x2, y2)
		}
	}
	drawingOf(h).above(h, r, w, add)
}

// apart is how far two circles drawn wide keep from each other on paper: a
// gap of 0.7 mm between lines 0.5 mm wide would be 1.2; 0.9 still prints open.
const apart length = 0.9

// fromAbove draws a part from above, and a letter inside the wall for each thing
// at its place.
func (d *sheet) fromAbove(v view, a seenFromAbove) {
	k := length(v.k)
	last := length(math.Inf(1))
	for i, e := range append(append([]length{}, a.edges...), a.inside...) {
		if last-e*k < apart {
			continue
		}
		last = e * k
		layer := render.Outline
		if i >= len(a.edges) {
			layer = render.Thin
		}
		d.Circle(layer, v.at, e*k)
	}
	for _, o := range a.below {
		d.PathOn(render.Hidden, o.Transform(v.to()))
	}
	for _, s := range a.ends {
		d.PathOn(s.Layer, s.Path.Transform(v.to()))
	}
	b := a.bounds()
	d.Line(render.Centre, path.Pt(v.x(b.Min.X)-2, v.at.Y), path.Pt(v.x(b.Max.X)+2, v.at.Y))
	d.Line(render.Centre, path.Pt(v.at.X, v.y(b.Min.Y)-2), path.Pt(v.at.X, v.y(b.Max.Y)+2))
	d.letters(v, a)
}

// letters sets the places' letters inside the wall, clear of the joints; those
// too near to each other stand side by side.
func (d *sheet) letters(v view, a seenFromAbove) {
	k := length(v.k)
	out := a.edges[0] * k
	room := a.inner()*k - 0.6           // for words to stay within
	near := 6 / float64(max(room-3, 1)) // radians within which letters are set side by side
	var at []measure.Angle
	var words []string
	for _, p := range a.places {
		t := a.angle(p.round)
		merged := false
		for i := range at {
			if math.Abs(math.Remainder(float64(t-at[i]), 2*math.Pi)) < near && !merged {
				words[i] += " " + p.letter
				merged = true
			}
		}
		if !merged {
			at, words = append(at, t), append(words, p.letter)
		}
		one, two := polar(a.wall*k-1.5, float64(t)), polar(out+1.5, float64(t))
		d.Line(render.Thin, path.Pt(v.at.X+one.X, v.at.Y+one.Y), path.Pt(v.at.X+two.X, v.at.Y+two.Y))
	}
	var taken []path.Box // about the middle, on paper
	for _, s := range a.ends {
		if s.Layer == render.Outline {
			b := s.Path.Transform(path.Scale(v.k, v.k)).Bounds()
			taken = append(taken, inner(b, -1, -1, -1, -1))
		}
	}
	for i, t := range at {
		spot, ok := clearSpot(t, room, wide(words[i])/2, small*0.85, taken)
		if !ok {
			continue
		}
		half := wide(words[i])/2 + 0.8
		taken = append(taken, path.Box{Min: path.Pt(spot.X-half, spot.Y-small*0.85), Max: path.Pt(spot.X+half, spot.Y+small*0.85)})
		d.Words(path.Pt(v.at.X+spot.X, v.at.Y+spot.Y-small/2), small, render.Middle, words[i])
	}
}

// clearSpot is the middle of words, half so wide and high, within a circle
// about the origin, as near to its edge at an angle as leaves boxes clear.
func clearSpot(t measure.Angle, room, halfWide, halfTall length, taken []path.Box) (path.Point, bool) {
	const step = 0.5
	best, least, found := path.Point{}, math.Inf(1), false
	want := polar(room, float64(t))
	n := int(math.Ceil(float64(room) / step))
	for i := -n; i <= n; i++ {
		for j := -n; j <= n; j++ {
			q := path.Pt(length(i)*step, length(j)*step)
			if math.Hypot(float64(q.X.Abs()+halfWide), float64(q.Y.Abs()+halfTall)) > float64(room) {
				continue
			}
			free := true
			for _, b := range taken {
				free = free && (q.X+halfWide < b.Min.X || q.X-halfWide > b.Max.X || q.Y+halfTall < b.Min.Y || q.Y-halfTall > b.Max.Y)
			}
			if off := float64(radius(path.Pt(q.X-want.X, q.Y-want.Y))); free && off < least-1e-9 {
				best, least, found = q, off, true
			}
		}
	}
	return best, found
}

// inner is the radius inside every edge that is drawn wide or may be.
func (a seenFromAbove) inner() length {
	r := a.edges[0]
	for _, e := range a.edges {
		r = min(r, e)
	}
	return r
}
