package geometry

import (
	"math"
	"testing"
)

// The strip's closing mark lies one circumference past the datum line, and
// every opening is drawn whole wherever round the wall it is.
func TestStripsHoldEveryOpeningWhole(t *testing.T) {
	for round := length(0); round < 72*inch; round += 37 {
		s := exampleSilo(t, func(s *Spec) { s.Outlet.Round, s.Handle.Round, s.Inlet.Round = round, round, round })
		for _, tp := range s.Templates {
			if !tp.Strip {
				continue
			}
			cuts := 0
			for _, sh := range tp.Shapes {
				if sh.Role != Cut {
					continue
				}
				cuts++
				if b := sh.Path.Bounds(); b.Min.X < 0 || b.Min.Y < 0 || b.Max.X > tp.Width || b.Max.Y > tp.Height {
					t.Fatalf("%s, round %v: an opening leaves the strip: %v", tp.ID, round, b)
				}
			}
			if want := map[string]int{"body": 3, "base": 2}[tp.Part]; cuts != want {
				t.Errorf("%s: %d openings, want %d", tp.ID, cuts, want)
			}
			left, right := tp.Shapes[1].Path[0].To.X, tp.Shapes[2].Path[0].To.X
			near(t, "closing mark", right-left, math.Pi*s.Spec.Drum.Outside, 1e-9)
		}
	}
}

// Each template's enclosed area: the lattice's own sum, a slot's length and
// ends by hand, the mesh disc's circle.
func TestTemplateAreas(t *testing.T) {
	s := exampleSilo(t)
	want := map[string]float64{
		"blue-lattice":     float64(s.Lattice.OpenArea),
		"blue-mesh-disc":   math.Pi / 4 * float64(s.Disc.Across*s.Disc.Across),
		"blue-handle-slot": float64((4.5-2)*2*inch*inch) + math.Pi*float64(inch*inch),
	}
	for _, tp := range s.Templates {
		if w, ok := want[tp.ID]; ok && math.Abs(float64(tp.OpenArea)/w-1) > 1e-9 {
			t.Errorf("%s: %.3f mm², want %.3f", tp.ID, tp.OpenArea, w)
		}
	}
}
