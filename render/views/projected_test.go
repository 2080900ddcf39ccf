package views

import (
	"testing"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// The view from above stands above the side view in third angle and below it
// in first, on one centre line, and both sheets are clean (ISO 5456-2).
func TestProjectionPlacesThePlan(t *testing.T) {
	for name, spec := range map[string]geometry.Spec{"cove": cove(), "little": little(), "large": large()} {
		for size, room := range sizes {
			for _, first := range []bool{false, true} {
				room.FirstAngle = first
				d := Projected(solved(t, spec), room)
				if err := render.Check(d); err != nil {
					t.Fatal(err)
				}
				for _, o := range render.Overlaps(d) {
					t.Errorf("%s, %s, first angle %v: %s", name, size, first, o)
				}
				plan, side := largestRound(d), body(d)
				if above := plan.Min.Y > side.Max.Y; above == first {
					t.Errorf("%s, %s: first angle %v, plan above the side view %v", name, size, first, above)
				}
				if off := (plan.Min.X + plan.Max.X - side.Min.X - side.Max.X).Abs() / 2; off > 0.01 {
					t.Errorf("%s, %s: the views are %.2f mm off one centre line", name, size, float64(off))
				}
			}
		}
	}
}

// largestRound is the box of the first large circle drawn: the body's plan.
func largestRound(d render.Drawing) path.Box {
	for _, s := range d.Strokes {
		if len(s.Path) > 1 && s.Path[1].Kind == path.Arc {
			if b := s.Path.Bounds(); boxW(b) > 20 && (boxW(b)-boxH(b)).Abs() < 0.01 {
				return b
			}
		}
	}
	return path.Box{}
}

// body is the box of the body's outline: the first closed outline of many
// sides after the frame.
func body(d render.Drawing) path.Box {
	for _, s := range d.Strokes {
		if s.Layer == render.Outline && len(s.Path) > 6 {
			return s.Path.Bounds()
		}
	}
	return path.Box{}
}
