package views

import (
	"math"
	"testing"

	"silowright/geometry"
	"silowright/geometry/path"
)

// The lines beyond the plane of a section, such as the far handle slot's, stop
// at the part that hangs before them, and all that is beside it stays.
func TestNothingIsSeenThroughThePipeSilo(t *testing.T) {
	for name, spec := range map[string]geometry.Spec{"cove": cove(), "little": little(), "large": large()} {
		s := solved(t, spec)
		rim := s.Stations.Rim
		v := view{0.1, path.Pt(200, 100)}
		d := &sheet{}
		beyond := d.cutBody(v, s)
		front := path.Box{Min: v.pt(-0.1*rim, 0.3*rim), Max: v.pt(0.15*rim, 0.98*rim)}
		// how long the lines beyond are inside and outside of the part
		long := func() (in, out float64) {
			for _, q := range d.Strokes[beyond:] {
				for _, chain := range q.Path.Flatten(0.001) {
					for i := 1; i < len(chain); i++ {
						const parts = 1000
						a, b := chain[i-1], chain[i]
						step := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y)) / parts
						for k := range parts {
							m := (length(k) + 0.5) / parts
							p := path.Pt(a.X+m*(b.X-a.X), a.Y+m*(b.Y-a.Y))
							if p.X > front.Min.X && p.X < front.Max.X && p.Y > front.Min.Y && p.Y < front.Max.Y {
								in += step
							} else {
								out += step
							}
						}
					}
				}
			}
			return in, out
		}
		in, out := long()
		d.hide(beyond, [4]path.Point{front.Min, path.Pt(front.Max.X, front.Min.Y), front.Max, path.Pt(front.Min.X, front.Max.Y)})
		inAfter, outAfter := long()
		if in < 1 || inAfter > 0.01 {
			t.Errorf("%s: %.2f mm of lines behind the part, %.2f mm still seen", name, in, inAfter)
		}
		if math.Abs(out-outAfter) > 0.5 {
			t.Errorf("%s: %.2f mm of lines beside the part, %.2f mm left of them", name, out, outAfter)
		}
	}
}

// In the drawing itself the pipe silo stands before a part of the far slot, so
// that no slot is drawn whole.
func TestHangingHidesTheFarSlot(t *testing.T) {
	s := solved(t, cove())
	d := &sheet{units: s.Spec.Units, less: 1}
	d.hanging(path.Box{Min: path.Pt(0, 0), Max: path.Pt(100, 160)}, s)
	slots := 0
	for _, q := range d.Strokes {
		arcs := 0
		for _, g := range q.Path {
			if g.Kind == path.Arc || g.Kind == path.Curve {
				arcs++
			}
		}
		if arcs > 1 && len(q.Path) > 0 && q.Path[len(q.Path)-1].Kind == path.Close {
			slots++
		}
	}
	if slots > 0 {
		t.Errorf("%d slots are drawn whole though the pipe silo stands before them", slots)
	}
}
