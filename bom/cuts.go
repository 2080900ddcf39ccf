package bom

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// Cut is one kind of piece to cut.
type Cut struct {
	From   string         // what it is cut from
	Piece  string         // what it becomes
	Drum   string         // drum kind
	Count  int            // pieces
	Length measure.Length // or height, or diameter
	Width  measure.Length // 0 where there is none
	Note   string
}

// CutList lists the pieces of a build in the order they are cut.
func CutList(batches []Batch, u measure.Unit) []Cut {
	var out []Cut
	for _, b := range batches {
		out = append(out, drumCuts(b, u)...)
	}
	for _, b := range batches {
		out = append(out, pipeCuts(b)...)
	}
	return out
}

func drumCuts(b Batch, u measure.Unit) []Cut {
	s, n := b.Silo, b.Drum
	if n == 0 {
		return nil
	}
	spec, st := s.Spec, s.Stations
	label := spec.Drum.Label
	cut := func(from, piece string, count int, l, w measure.Length, note string) Cut {
		return Cut{From: from, Piece: piece, Drum: label, Count: count, Length: l, Width: w, Note: note}
	}
	nipple := func(h geometry.Hole, l measure.Length) Cut {
		return cut("pipe "+h.Pipe.String(), h.Name+" nipple", n, l, 0, "ends square, burrs off")
	}
	return []Cut{
		cut("drum", "base", n, st.BaseHeight, 0, fmt.Sprintf("first cut: %s above the foot, right under the uppermost hoop", st.BaseCut.Both(u))),
		cut("drum", "retaining ring strip", n, s.Ring.StripLength, spec.Ring.Width, fmt.Sprintf("second cut: lower edge %s above the foot", st.RingBottom.Both(u))),
		cut("ring strip", "retaining ring", n, s.Ring.Length, spec.Ring.Width, fmt.Sprintf("cut open and trim %s off; fit before the last trim", s.Ring.Surplus.Both(u))),
		cut("drum", "body", n, st.Rim, 0, "what is left below the ring; its cut edge is the rim"),
		cut("mesh", "mesh disc", n, s.Disc.Across, 0, fmt.Sprintf("diameter; %d snips %s deep", s.Disc.Snips, s.Disc.SnipDepth.Both(u))),
		nipple(s.Outlet, spec.Outlet.Nipple),
		nipple(s.Inlet, spec.Inlet.Nipple),
		cut("pipe "+spec.Inlet.Pipe.String(), "inlet stub", n, spec.Inlet.Stub, 0, "ends square, burrs off"),
	}
}

func pipeCuts(b Batch) []Cut {
	s, n := b.Silo, b.Pipe
	if n == 0 {
		return nil
	}
	q := s.Spec.Pipe
	label := s.Spec.Drum.Label
	return []Cut{
		{"pipe " + q.Pipe.String(), "pipe silo", label, n, q.Length, 0, "both ends square; clean the screened end"},
		{"pipe " + q.PipeOut.String(), "short pipe of the pipe silo", label, n, q.PipeOutLength, 0, "ends square, burrs off"},
		{"screen", "screen square", label, n, s.Pipe.ScreenSquare, s.Pipe.ScreenSquare, "stretch, clamp, bond, trim flush"},
	}
}
