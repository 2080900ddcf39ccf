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
			// the words stand beside the line they are of, where no opening reaches
			for _, l := range tp.Labels {
				if off := minLength((l.At.X - left).Abs(), (right - l.At.X).Abs()); off > 60 || l.At.X < left || l.At.X > right {
					t.Errorf("%s, round %v: %q stands %.0f mm from its line", tp.ID, round, l.Text, off)
				}
				for _, sh := range tp.Shapes {
					if b := sh.Path.Bounds(); sh.Role == Cut && b.Max.Y > l.At.Y-0.7 && b.Min.Y < l.At.Y+l.Size {
						t.Errorf("%s, round %v: an opening reaches %q", tp.ID, round, l.Text)
					}
				}
			}
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

// A hole that breaks out of the rim, the chime or the pipe's end is a stop, and
// drawn whole all the same: by patch, strip and wrap, of a pipe of any size.
func TestTemplatesHoldHolesPastAnEdge(t *testing.T) {
	for what, change := range map[string]func(*Spec){
		"outlet past the rim":                   func(s *Spec) { s.Outlet.BelowRim, s.Outlet.Saw = 10, 4*inch },
		"outlet past the rim, no joint as wide": func(s *Spec) { s.Outlet.BelowRim, s.Outlet.Saw, s.Outlet.Joint = 15, 5*inch, JointGrommet },
		"drain past the chime":                  func(s *Spec) { s.Drain.AboveGround, s.Drain.Saw = 5, 4*inch },
		"drain wider than its stopper":          func(s *Spec) { s.Drain.Saw, s.Drain.Stopper = 6*inch, "6" },
		"pipe silo's outlet past the screen":    func(s *Spec) { s.Pipe.OutletAboveScreen = 5 },
		"pipe silo's outlet past the open end":  func(s *Spec) { s.Pipe.OutletAboveScreen = s.Pipe.Length - 5 },
		"a pipe silo as small as can be": func(s *Spec) {
			s.Pipe.Pipe, s.Pipe.Saw, s.Pipe.Length, s.Pipe.OutletAboveScreen = PipeRef{"1/2", "sch40"}, 6, 50, 25
		},
		"a pipe silo of the widest pipe, short": func(s *Spec) { s.Pipe.Pipe, s.Pipe.Length, s.Pipe.OutletAboveScreen = PipeRef{"12", "sdr35"}, 50, 10 },
	} {
		for _, tp := range exampleSilo(t, change).Templates {
			for _, sh := range tp.Shapes {
				if b := sh.Path.Bounds(); b.Min.X < -1e-9 || b.Min.Y < -1e-9 || b.Max.X > tp.Width+1e-9 || b.Max.Y > tp.Height+1e-9 {
					t.Errorf("%s: %s: a %s line leaves the template: %v of %v × %v", what, tp.ID, sh.Role, b, tp.Width, tp.Height)
				}
			}
		}
	}
	// the line that the rim lies along is as far above the outlet as the job says
	s := exampleSilo(t, func(s *Spec) { s.Outlet.BelowRim, s.Outlet.Saw = 10, 4*inch })
	for _, tp := range s.Templates {
		if tp.Part != "body" || !tp.Strip {
			continue
		}
		hole := tp.Shapes[4].Path.Bounds() // after the frame, datum, closing mark and rim
		near(t, "rim above the outlet's middle", tp.Shapes[3].Path[0].To.Y-(hole.Min.Y+hole.Max.Y)/2, 10, 1e-9)
	}
}
