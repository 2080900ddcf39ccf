package views_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/views"
)

const in = measure.Inch

var letter = views.Size{Width: 8.5*in - 30, Height: 11*in - 20, Sheet: "1 of 10", Job: "Tidewrack Cove nursery", Revision: "A"}

// silosOf is a silo for each of: an invented drum 0.3 m and one 1.2 m across,
// in inches and in millimetres, every joint for pipe, a bulkhead fitting with
// either end, few bars and many.
func silosOf(t *testing.T) map[string]geometry.Silo {
	t.Helper()
	out := map[string]geometry.Silo{}
	for _, across := range []measure.Length{300, 1200} {
		for _, u := range []measure.Unit{measure.UnitInch, measure.UnitMM} {
			for _, joint := range append(geometry.PipeJoints(), "threaded bulkhead") {
				for _, bars := range []int{2, 6} {
					k := across / 580
					s := geometry.DefaultSpec(geometry.Drum{Label: "invented", Count: 1, Outside: across, Height: across * 1.5, Wall: 2 + 3*k,
						FootOutside: across * 0.94, FootHeight: 55 * k, HeadRecess: 20 * k,
						Hoops: []geometry.Hoop{{From: across * 0.45, To: across * 0.51, Outside: across * 1.04}, {From: across, To: across * 1.06, Outside: across * 1.04}}}, u)
					s.Lattice.Bars = bars
					if across < 400 { // the usual bars, slots and pipe silo are too large for it
						s.Lattice.BarWidth = 15
						s.Handle.Length, s.Handle.Height, s.Handle.BelowRim = 90, 35, 30
						s.Outlet.BelowRim = 110
					}
					s.Outlet.Joint, s.Inlet.Joint = joint, joint
					if joint == "threaded bulkhead" {
						s.Outlet.Joint, s.Inlet.Joint = geometry.JointBulkhead, geometry.JointBulkhead
						thread := geometry.BulkheadMeasure{Ends: geometry.EndThread}
						s.Fittings = geometry.Fittings{Bulkheads: map[string]geometry.BulkheadMeasure{s.Outlet.Pipe.Size: thread, s.Inlet.Pipe.Size: thread}}
					}
					name := fmt.Sprintf("%v mm, %v, %v, %d bars", float64(across), u, joint, bars)
					got, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{s}})
					if err != nil {
						t.Fatalf("%s: %v", name, err)
					}
					out[name] = got[0]
				}
			}
		}
	}
	return out
}

// Lengths in words: "10 1/2 in (266.7)" in an inch job and "266.7 (10 1/2 in)"
// in a metric one; the title strip names the units.
var (
	inches   = regexp.MustCompile(`\d in\b`)
	inPair   = regexp.MustCompile(`\d in \(\d[\d.]*[);, ]?`)
	mmPair   = regexp.MustCompile(`-?\d[\d.]* \([\d /.]+ in\)?`)
	areas    = regexp.MustCompile(`\d in²`)
	scaleBar = regexp.MustCompile(`^\d+ in$`)
)

// Every drawing of every silo: on its sheet, in the fonts' letters, no words
// under a line or on words, and no inches without their millimetres.
func TestDrawingsOfEveryKind(t *testing.T) {
	for name, s := range silosOf(t) {
		for i, v := range slices.Concat(views.All(), views.All()) {
			size := letter
			size.FirstAngle = i >= len(views.All())
			d := v.Draw(s, size)
			if err := render.Check(d); err != nil {
				t.Errorf("%s: %s: %v", name, v.ID, err)
			}
			for _, o := range render.Overlaps(d) {
				t.Errorf("%s: %s: %s", name, v.ID, o)
			}
			for _, w := range d.Texts {
				bare := len(inches.FindAllString(w.Words, -1)) - len(areas.FindAllString(w.Words, -1))
				pairs := len(inPair.FindAllString(w.Words, -1)) + len(mmPair.FindAllString(w.Words, -1))
				if bare > pairs && !scaleBar.MatchString(w.Words) {
					t.Errorf("%s: %s: inches alone in %q", name, v.ID, w.Words)
				}
			}
		}
		for _, st := range views.Steps(s) {
			if err := render.Check(st.Picture); err != nil {
				t.Errorf("%s: step %s: %v", name, st.ID, err)
			}
			for _, o := range render.Overlaps(st.Picture) {
				t.Errorf("%s: step %s: %s", name, st.ID, o)
			}
		}
	}
}

// Every scale that a view's heading names stands in the title strip as well
// (ISO 7200 has the scale there, ISO 5455 has every one of them).
func TestEveryScaleIsInTheStrip(t *testing.T) {
	scale := regexp.MustCompile(` {3}(\d+:\d+)$`)
	for name, s := range silosOf(t) {
		for _, v := range views.All() {
			d := v.Draw(s, letter)
			var strip []string
			for _, w := range d.Texts {
				if regexp.MustCompile(`^\d+:\d+(, \d+:\d+)*$`).MatchString(w.Words) {
					strip = strings.Split(w.Words, ", ")
				}
			}
			for _, w := range d.Texts {
				if m := scale.FindStringSubmatch(w.Words); m != nil && !slices.Contains(strip, m[1]) {
					t.Errorf("%s: %s: %q, but the title strip has %v", name, v.ID, w.Words, strip)
				}
			}
		}
	}
}

// No slot's number runs into its measure: "handle slot 1 18 1/16 in" can be
// read as 1 18 1/16.
func TestNumbersAreToldApart(t *testing.T) {
	runs := regexp.MustCompile(`slot \d+ \d`)
	for name, s := range silosOf(t) {
		for _, v := range views.All() {
			for _, w := range v.Draw(s, letter).Texts {
				if runs.MatchString(w.Words) {
					t.Errorf("%s: %s: %q", name, v.ID, w.Words)
				}
			}
		}
	}
}

// What does not fit is not described as if it did: each change makes one part
// of an invented drum not go together, and the drawing may not promise it.
func TestMisfitsAreNotPromised(t *testing.T) {
	drum := geometry.Drum{Label: "invented", Count: 1, Outside: 580, Height: 880, Wall: 5, FootOutside: 540, FootHeight: 55, HeadRecess: 20,
		Hoops: []geometry.Hoop{{From: 260, To: 300, Outside: 604}, {From: 570, To: 610, Outside: 604}}}
	for _, c := range []struct {
		reason  string
		view    func(geometry.Silo, views.Size) render.Drawing
		change  func(*geometry.Spec)
		promise string // said when it fits
		instead string
	}{
		{"a stopper smaller than its hole falls through", drawn("foot-joints"), func(s *geometry.Spec) { s.Drain.Saw = 70 }, "twist", "goes right through"},
		{"a stopper larger than its hole stays outside", drawn("foot-joints"), func(s *geometry.Spec) { s.Drain.Saw = 35 }, "twist", "does not go in"},
		{"pipe does not pass a hole smaller than itself", drawn("pipe-joints"), func(s *geometry.Spec) { s.Outlet.Saw, s.Inlet.Saw = 45, 30 }, "clearance", "too small for the pipe"},
		{"a slot as low as the outlet is not above the water", drawn("assembly"), func(s *geometry.Spec) { s.Handle.BelowRim = s.Outlet.BelowRim }, "above the water", "handle slot"},
		{"a foot wider than the mouth does not nest", drawn("assembly"), func(s *geometry.Spec) {
			s.Drum.FootOutside, s.Drum.Hoops[1].Outside = 580, 582
		}, "the foot enters", "does not enter"},
	} {
		t.Run(c.reason, func(t *testing.T) {
			words := func(change func(*geometry.Spec)) string {
				d := drum
				d.Hoops = slices.Clone(drum.Hoops)
				s := geometry.DefaultSpec(d, measure.UnitMM)
				change(&s)
				silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{s}})
				if err != nil {
					t.Fatal(err)
				}
				var all []string
				for _, w := range c.view(silos[0], letter).Texts {
					all = append(all, w.Words)
				}
				return strings.Join(all, " ")
			}
			if w := words(func(*geometry.Spec) {}); !strings.Contains(w, c.promise) {
				t.Errorf("%q is not said when it fits: %s", c.promise, w)
			}
			w := words(c.change)
			if strings.Contains(w, c.promise) || !strings.Contains(w, c.instead) {
				t.Errorf("want %q and not %q: %s", c.instead, c.promise, w)
			}
		})
	}
}

// drawn is how the view of an id is drawn.
func drawn(id string) func(geometry.Silo, views.Size) render.Drawing {
	for _, v := range views.All() {
		if v.ID == id {
			return v.Draw
		}
	}
	panic("no view " + id)
}
