package views

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/pdf"
)

const in = measure.Inch

func solved(t testing.TB, spec geometry.Spec) geometry.Silo {
	t.Helper()
	silos, err := geometry.Solve(geometry.Job{Kinds: []geometry.Spec{spec}})
	if err != nil {
		t.Fatal(err)
	}
	return silos[0]
}

// cove is an invented drum of the usual size.
func cove() geometry.Spec {
	s := geometry.DefaultSpec(geometry.Drum{Label: "Cove", Count: 20, Outside: geometry.OutsideFromCircumference(72.125 * in), Height: 34.5 * in,
		Wall: 0.1875 * in, FootOutside: 21.125 * in, FootHeight: 2.25 * in, HeadRecess: 0.875 * in,
		Hoops: []geometry.Hoop{{From: 10.5 * in, To: 12 * in, Outside: 23.875 * in}, {From: 22.75 * in, To: 24.25 * in, Outside: 23.875 * in}}},
		measure.UnitInch)
	s.Lattice = geometry.LatticeSpec{Across: 18.5 * in, Bars: 3, BarWidth: 1.625 * in, Pilot: 0.3125 * in, Edge: geometry.EdgeArc}
	s.Pipe.Pipe = geometry.PipeRef{Size: "6", Series: "sdr35"}
	s.Pipe.OutletAboveScreen, s.Pipe.Length = 8.5*in, 13*in
	return s
}

// little is a drum 0.3 m across with a 100 mm class pipe, all metric.
func little() geometry.Spec {
	s := geometry.DefaultSpec(geometry.Drum{Label: "little", Count: 2, Outside: 300, Height: 460, Wall: 3.2,
		FootOutside: 280, FootHeight: 25, HeadRecess: 12,
		Hoops: []geometry.Hoop{{From: 120, To: 140, Outside: 314}, {From: 300, To: 320, Outside: 314}}}, measure.UnitMM)
	s.Lattice.Bars = 2
	s.Pipe.Pipe = geometry.PipeRef{Size: "110", Series: "en1401-sn4"}
	s.Pipe.PipeOut = geometry.PipeRef{Size: "50", Series: "pn10"}
	s.Pipe.Length, s.Pipe.OutletAboveScreen = 150, 90
	s.Handle.Length, s.Handle.Height, s.Handle.BelowRim = 90, 35, 30
	s.Outlet.BelowRim, s.Outlet.Pipe, s.Outlet.Saw = 100, geometry.PipeRef{Size: "50", Series: "pn10"}, 52
	s.Inlet.AboveGround, s.Drain.AboveGround = 70, 70
	return s
}

// large is a drum 1.2 m across, straight-edged lattice of five bars, a grommet
// at the outlet.
func large() geometry.Spec {
	s := geometry.DefaultSpec(geometry.Drum{Label: "a large one with a long name", Count: 1, Outside: 1200, Height: 1300, Wall: 9,
		FootOutside: 1130, FootHeight: 80, HeadRecess: 30,
		Hoops: []geometry.Hoop{{From: 380, To: 430, Outside: 1240}, {From: 850, To: 900, Outside: 1240}}}, measure.UnitMM)
	s.Lattice.Bars, s.Lattice.Edge = 5, geometry.EdgeStraight
	s.Outlet.Joint = geometry.JointGrommet
	s.Handle.Round = 300
	s.Outlet.Round = 500
	return s
}

var sizes = map[string]Size{
	"letter":        {Width: 8.5*in - 30, Height: 11*in - 30, Sheet: "3 of 12", Job: "Tidewrack Cove nursery", Revision: "A"},
	"letter-wide":   {Width: 11*in - 30, Height: 8.5*in - 30, Sheet: "3 of 12", Job: "Tidewrack Cove nursery"},
	"A4":            {Width: 180, Height: 267, Sheet: "12 of 12", Job: "a nursery whose name is far longer than any cell of a title strip"},
	"A4-wide":       {Width: 267, Height: 180},
	"letter-first":  {Width: 8.5*in - 30, Height: 11*in - 30, Sheet: "3 of 12", Job: "Tidewrack Cove nursery", Revision: "A", FirstAngle: true},
	"A4-first":      {Width: 180, Height: 267, FirstAngle: true},
	"A4-wide-first": {Width: 267, Height: 180, FirstAngle: true},
}

// write keeps a drawing as a PDF to look at, when SILO_VIEWS names a place.
func write(t *testing.T, name string, d render.Drawing) {
	dir := os.Getenv("SILO_VIEWS")
	if dir == "" {
		return
	}
	b := pdf.New(pdf.Meta{Title: d.Title})
	if err := b.Page(d, "", 0); err != nil {
		t.Error(err)
		return
	}
	var buf bytes.Buffer
	if _, err := b.WriteTo(&buf); err != nil {
		t.Error(err)
		return
	}
	if err := os.WriteFile(filepath.Join(dir, name+".pdf"), buf.Bytes(), 0o644); err != nil {
		t.Error(err)
	}
}

// Every view of every drum on every sheet: all on the sheet, every rune in
// the fonts, no words on words, no line through words.
func TestViewsAreClean(t *testing.T) {
	for drum, spec := range map[string]geometry.Spec{"cove": cove(), "little": little(), "large": large()} {
		s := solved(t, spec)
		for paper, size := range sizes {
			for _, v := range All() {
				t.Run(fmt.Sprintf("%s/%s/%s", drum, paper, v.ID), func(t *testing.T) {
					d := v.Draw(s, size)
					if err := render.Check(d); err != nil {
						t.Error(err)
					}
					for _, o := range render.Overlaps(d) {
						t.Error(o)
					}
					write(t, v.ID+"-"+drum+"-"+paper, d)
				})
			}
		}
	}
}

// Every step of the build has its picture, all of it inside the picture, and
// a contact sheet of them to look at.
func TestStepPictures(t *testing.T) {
	for drum, spec := range map[string]geometry.Spec{"cove": cove(), "little": little(), "large": large()} {
		s := solved(t, spec)
		page := render.Drawing{Title: "steps", Width: 4*(pictureWidth+6) + 6, Height: 5*(pictureHeight+6) + 6}
		for i, st := range Steps(s) {
			if err := render.Check(st.Picture); err != nil {
				t.Errorf("%s/%s: %v", drum, st.ID, err)
			}
			for _, f := range st.Picture.Fills {
				if b := f.Path.Bounds(); b.Min.X < 0 || b.Min.Y < 0 || b.Max.X > pictureWidth || b.Max.Y > pictureHeight {
					t.Errorf("%s/%s: a fill leaves the picture: %v", drum, st.ID, b)
				}
			}
			if len(st.Picture.Strokes)+len(st.Picture.Fills) < 12 {
				t.Errorf("%s/%s: hardly anything drawn", drum, st.ID)
			}
			page.Place(st.Picture, path.Pt(6+measure.Length(i%4)*(pictureWidth+6), 6+measure.Length(4-i/4)*(pictureHeight+6)), 1)
		}
		write(t, "steps-"+drum, page)
	}
}

// Sizes that do not go together are stops, and drawn all the same, as far as
// the page goes.
func TestImpossiblePartsAreDrawn(t *testing.T) {
	mm := measure.Length(1)
	for what, change := range map[string]func(*geometry.Spec){
		"stopper far too small": func(s *geometry.Spec) { s.Drain.Saw, s.Drain.Stopper = 80*mm, "6" },
		"stopper far too large": func(s *geometry.Spec) { s.Drain.Saw, s.Drain.Stopper = 20*mm, "13" },
		"pipe wider than its hole": func(s *geometry.Spec) {
			s.Outlet.Pipe, s.Outlet.Joint = geometry.PipeRef{Size: "12", Series: "sdr35"}, geometry.JointGrommet
			s.Pipe.PipeOut, s.Pipe.Joint = geometry.PipeRef{Size: "10", Series: "sdr35"}, geometry.JointCouplings
		},
		"pipe silo wider than the drum": func(s *geometry.Spec) {
			d := &s.Drum
			for _, l := range []*measure.Length{&d.Outside, &d.Height, &d.FootOutside, &d.FootHeight, &d.HeadRecess} {
				*l *= 0.25
			}
			for i, h := range d.Hoops {
				d.Hoops[i] = geometry.Hoop{From: h.From / 4, To: h.To / 4, Outside: h.Outside / 4}
			}
			s.Lattice.Across, s.Lattice.BarWidth, s.Lattice.Pilot = d.FootInside()-10, 5, 3
			s.Handle.BelowRim, s.Handle.Height, s.Handle.Length = 20, 20, 40
			s.Outlet.BelowRim, s.Inlet.AboveGround, s.Drain.AboveGround = 60, 30, 30
		},
	} {
		spec := cove()
		spec.Drum.Hoops = append([]geometry.Hoop(nil), spec.Drum.Hoops...)
		change(&spec)
		s := solved(t, spec)
		for paper, size := range sizes {
			for _, v := range All() {
				if err := render.Check(v.Draw(s, size)); err != nil {
					t.Errorf("%s, %s: %v", what, paper, err)
				}
			}
		}
		for _, st := range Steps(s) {
			if err := render.Check(st.Picture); err != nil {
				t.Errorf("%s, %s: %v", what, st.ID, err)
			}
		}
	}
}

// What is cut at the page's edge is what lies on the page: a circle about a
// corner leaves its quarter, by area and by length.
func TestCutAtTheEdge(t *testing.T) {
	d := &sheet{}
	d.Width, d.Height = 100, 80
	d.Shade(path.Circle(path.Pt(0, 0), 40), 1)
	d.Circle(render.Outline, path.Pt(100, 80), 40)
	d.Line(render.Outline, path.Pt(10, 10), path.Pt(90, 70))
	d.Line(render.Outline, path.Pt(-10, -10), path.Pt(-5, 90))
	d.atEdge()
	if len(d.Strokes) != 2 || len(d.Fills) != 1 {
		t.Fatalf("%d lines and %d fills left, want 2 and 1", len(d.Strokes), len(d.Fills))
	}
	if got, want := math.Abs(float64(d.Fills[0].Path.Area())), math.Pi*400; math.Abs(got-want) > 0.01*want {
		t.Errorf("a quarter of %.1f mm² is left as %.1f", want, got)
	}
	if got, want := float64(d.Strokes[0].Path.Length()), math.Pi*20; math.Abs(got-want) > 0.01*want {
		t.Errorf("a quarter of %.1f mm is left as %.1f", want, got)
	}
}
