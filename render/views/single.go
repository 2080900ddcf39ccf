package views

import (
	"math"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// Frame says where a wall laid flat stands in its drawing.
type Frame struct {
	// Foot is the datum line's lower end: the foot of the body, the ground of
	// the base.
	Foot path.Point
	// Scale is how many millimetres of the drawing one of the wall takes.
	Scale float64
	// Lead is how much of the wall is drawn left of the datum; what lies
	// further round than the circumference less this is drawn there.
	Lead length
}

// Section draws the seated silo in vertical section by itself, without frame
// and title strip: for a screen.
func Section(s geometry.Silo, size Size) render.Drawing {
	d := bare(s, size, "Seated silo in section")
	sc := d.seated(d.area, s)
	// again without the room it leaves, if that costs no scale
	low, high := size.Height, length(0)
	for _, t := range d.Strokes {
		b := t.Path.Bounds()
		low, high = min(low, b.Min.Y), max(high, b.Max.Y)
	}
	less := size
	less.Height = high - low + 16
	if again := bare(s, less, "Seated silo in section"); less.Height < size.Height && again.seated(again.area, s).k == sc.k {
		d = again
	}
	return d.bareDrawing()
}

// Above draws body and base from above by themselves, the datum's side at the
// foot of the drawing: for a screen.
func Above(s geometry.Silo, size Size) render.Drawing {
	d := bare(s, size, "Body and base from above")
	key := "D datum, O outlet, H handle slots, I inlet, W drain."
	foot := listTall(boxW(d.area)-2, key) + 4
	left, right := columns(inner(d.area, 0, 0, 0, foot), 0.5, 6)
	body, base := bodyAbove(s), baseAbove(s)
	across := 2 * max(body.half(), base.half())
	tall := max(boxH(body.bounds()), boxH(base.bounds()))
	sc := fit(across, tall, boxW(left)-10, boxH(left)-20, 1)
	if left.Max.Y-left.Min.Y > tall*length(sc.k)+20 { // no more room than they take
		d.Height -= boxH(left) - tall*length(sc.k) - 20
		d.area.Max.Y = d.Height - 1
		left, right = columns(inner(d.area, 0, 0, 0, foot), 0.5, 6)
	}
	d.plan(d.heading(left, "Body", sc), sc, body)
	d.plan(d.heading(right, "Base, mouth up", sc), sc, base)
	d.list(path.Box{Min: path.Pt(d.area.Min.X+1, d.area.Min.Y), Max: path.Pt(d.area.Max.X-1, d.area.Min.Y+foot-4)}, key)
	return d.bareDrawing()
}

// plan draws a part from above in the middle of a box.
func (d *sheet) plan(b path.Box, sc scale, a seenFromAbove) {
	seen := a.bounds()
	d.fromAbove(view{sc.k, path.Pt(midX(b), midY(b)-(seen.Min.Y+seen.Max.Y)/2*length(sc.k))}, a)
}

// BodyWall draws the body's wall laid flat by itself, and where it stands: for
// a screen on which its openings can be moved.
func BodyWall(s geometry.Silo, size Size) (render.Drawing, Frame) {
	d := bare(s, size, "Body's wall laid flat")
	return d.wall(d.bodyMap(s), "Body's wall laid flat, outside towards you")
}

// BaseWall draws the base's wall laid flat, mouth up.
func BaseWall(s geometry.Silo, size Size) (render.Drawing, Frame) {
	d := bare(s, size, "Base's wall laid flat")
	return d.wall(d.baseMap(s), "Base's wall laid flat, mouth up, outside towards you")
}

func (d *sheet) wall(m wallMap, name string) (render.Drawing, Frame) {
	m.key = "Places round the wall are measured from the datum."
	before := len(d.Strokes)
	// no more room than it takes
	in, sc := d.flatRoom(d.area, m, m.lines(d, m.cuts))
	low, high := m.extent()
	if spare := boxH(in) - (high-low)*length(sc.k) - 2; spare > 0 {
		d.Height -= spare
		d.area.Max.Y -= spare
	}
	d.flat(d.area, m, name)
	f := Frame{Lead: m.parting()}
	for _, s := range d.Strokes[before:] {
		if s.Layer == render.Outline { // the wall's edge is drawn first
			b := s.Path.Bounds()
			f.Scale = float64(boxW(b) / (2 * math.Pi * m.radius))
			f.Foot = path.Pt(b.Min.X+f.Lead*length(f.Scale), b.Min.Y)
			break
		}
	}
	return d.bareDrawing(), f
}

// bare begins a drawing without frame and title strip.
func bare(s geometry.Silo, size Size, title string) *sheet {
	d := &sheet{less: 1, units: s.Spec.Units, size: size, drum: plain(s.Spec.Drum.Label)}
	d.Title, d.Description = title, "drum "+d.drum
	d.Width, d.Height = size.Width, size.Height
	d.area = path.Box{Min: path.Pt(1, 1), Max: path.Pt(size.Width-1, size.Height-1)}
	return d
}

func (d *sheet) bareDrawing() render.Drawing {
	for i := range d.Texts {
		d.Texts[i].Words = plain(d.Texts[i].Words)
	}
	d.breakAtWords()
	return d.Drawing
}
