package views

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/path"
	"silowright/render"
)

// The view from above stands above the side view in third angle and below it
// in first, on one centre line, at the side view's scale; the title strip says
// which in words and by the symbol (ISO 5456-2, from memory); all is clean.
func TestProjectionPlacesThePlan(t *testing.T) {
	for name, spec := range map[string]geometry.Spec{"cove": cove(), "little": little(), "large": large()} {
		s := solved(t, spec)
		for size, room := range sizes {
			for _, first := range []bool{false, true} {
				for sheet, draw := range map[string]func(geometry.Silo, Size) render.Drawing{"views": drawProjected, "body": drawBody, "base": drawBase} {
					room.FirstAngle = first
					d := draw(s, room)
					at := fmt.Sprintf("%s, %s, %s, first angle %v", name, size, sheet, first)
					if err := render.Check(d); err != nil {
						t.Fatal(at, err)
					}
					for _, o := range render.Overlaps(d) {
						t.Errorf("%s: %s", at, o)
					}
					plan, side := largestRound(d), body(d)
					if above := plan.Min.Y > side.Max.Y; above == first {
						t.Errorf("%s: plan above the side view %v", at, above)
					}
					if below := plan.Max.Y < side.Min.Y; below != first {
						t.Errorf("%s: plan below the side view %v", at, below)
					}
					if off := (plan.Min.X + plan.Max.X - side.Min.X - side.Max.X).Abs() / 2; off > 0.01 {
						t.Errorf("%s: the views are %.2f mm off one centre line", at, float64(off))
					}
					if off := boxW(plan) - boxW(side); off.Abs() > 0.01 {
						t.Errorf("%s: the plan is %.2f mm wider than the side view", at, float64(off))
					}
					want, other := "third angle", "first angle"
					if first {
						want, other = other, want
					}
					said := map[string]int{}
					for _, w := range d.Texts {
						said[w.Words]++
					}
					if said[want] != 1 || said[other] != 0 {
						t.Errorf("%s: says %q %d times, %q %d times", at, want, said[want], other, said[other])
					}
					letters := 0
					for _, w := range d.Texts {
						for _, f := range strings.Fields(w.Words) {
							if len(w.Words) < 8 && strings.Contains("DOHIW", f) {
								letters++
							}
						}
					}
					if all := map[string]int{"views": 7, "body": 4, "base": 3}[sheet]; letters != all {
						t.Errorf("%s: %d of %d places have their letter", at, letters, all)
					}
					circles, cone := symbol(d)
					if (circles.Max.X < cone.Min.X) == first || (circles.Min.X > cone.Max.X) != first {
						t.Errorf("%s: symbol's circles at %v, cone at %v", at, circles, cone)
					}
				}
			}
		}
	}
}

// symbol is where the title strip's circles and cone stand.
func symbol(d render.Drawing) (circles, cone path.Box) {
	for _, s := range d.Strokes {
		b := s.Path.Bounds()
		if s.Layer != render.Outline || b.Max.Y >= stripTall || boxW(b) > 5 {
			continue
		}
		if len(s.Path) > 1 && s.Path[1].Kind == path.Arc {
			if boxW(b) > boxW(circles) {
				circles = b
			}
			continue
		}
		cone = b
	}
	return circles, cone
}

// What stands out of the wall does so at its place: distances run from the
// datum to the right as one faces the wall, so that from above, the datum at
// the foot, a quarter of the way round lies at the right, half at the top and
// three quarters at the left. The distances along the wall are the job's.
func TestJointsStandAtTheirPlaceFromAbove(t *testing.T) {
	for _, c := range []struct {
		quarters float64
		x, y     float64 // where it points
	}{{0, 0, -1}, {1, 1, 0}, {2, 0, 1}, {3, -1, 0}} {
		for _, joint := range geometry.PipeJoints() {
			spec := cove()
			turn := spec.Drum.Outside * math.Pi / 4 * length(c.quarters)
			spec.Outlet.Round, spec.Outlet.Joint = turn, joint
			spec.Inlet.Round, spec.Inlet.Joint = turn, joint
			spec.Drain.Round = turn + spec.Drum.Outside*math.Pi/2 // opposite
			s := solved(t, spec)
			r := float64(s.Spec.Drum.Outside / 2)
			for name, a := range map[string]seenFromAbove{"body": bodyAbove(s), "base": baseAbove(s)} {
				furthest := 0.0
				for _, e := range a.ends {
					if e.Layer != render.Outline {
						continue
					}
					b := e.Path.Bounds()
					out := math.Max(
						float64(b.Max.X)*math.Max(c.x, 0)+float64(b.Max.Y)*math.Max(c.y, 0),
						-float64(b.Min.X)*math.Max(-c.x, 0)-float64(b.Min.Y)*math.Max(-c.y, 0))
					furthest = math.Max(furthest, out)
				}
				// beyond the widest hoop, and by no more than a coupling or the pipe
				// drawn through a grommet is long
				if widest := float64(a.edges[0]); furthest < widest+5 || furthest > r+150 {
					t.Errorf("%s, %v, %v quarters: reaches %.0f mm where the joint should, the hoop %.0f", name, joint, c.quarters, furthest, widest)
				}
			}
		}
	}
}

// largestRound is the box of the first large circle drawn: the body's plan.
func largestRound(d render.Drawing) path.Box {
	for _, s := range d.Strokes {
		if len(s.Path) > 1 && s.Path[1].Kind == path.Arc {
			if b := s.Path.Bounds(); boxW(b) > 8 && (boxW(b)-boxH(b)).Abs() < 0.01 {
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
