package bom

import (
	"fmt"

	"silowright/geometry/measure"
)

// Cut is one kind of piece to cut.
type Cut struct {
	From   string         // what it is cut from
	Piece  string         // what it becomes
	Drum   string         // drum kind; none for pipe that serves all silos
	Count  int            // pieces
	Length measure.Length // or height, or diameter: the note says
	Width  measure.Length // 0 where there is none
	Note   string
}

// CutList lists the pieces of a build in the order they are cut: kind by kind
// the drum, mesh and pipe of the drum silos, then the pipe silos, then the pipe
// of the manifold and the mains where anything is built. Lengths are those of
// the finished piece; kerfs are not in them.
func CutList(batches []Batch, u measure.Unit, list ...Run) []Cut {
	out := []Cut{}
	for _, b := range batches {
		if b.Drum > 0 {
			out = append(out, drumCuts(b, u)...)
		}
	}
	for _, b := range batches {
		if b.Pipe > 0 {
			out = append(out, pipeCuts(b)...)
		}
	}
	if len(out) == 0 {
		return out
	}
	for _, q := range list {
		if q.Count > 0 {
			out = append(out, Cut{"pipe " + q.Pipe.String(), q.Name, "", q.Count, q.Length, 0, cleanEnds})
		}
	}
	return out
}

func drumCuts(b Batch, u measure.Unit) []Cut {
	s, n := b.Silo, b.Drum
	st, label := s.Stations, s.Spec.Drum.Label
	cut := func(from, piece string, l, w measure.Length, note string, args ...any) Cut {
		return Cut{From: from, Piece: piece, Drum: label, Count: n, Length: l, Width: w, Note: fmt.Sprintf(note, args...)}
	}
	out := []Cut{
		cut("drum", "base", st.BaseHeight, 0, "height; first cut %s above the foot, right under the uppermost hoop", st.BaseCut.Both(u)),
		cut("drum", "retaining ring strip", s.Ring.StripLength, s.Spec.Ring.Width, "second cut: from %s down to %s above the foot", st.RingTop.Both(u), st.RingBottom.Both(u)),
		cut("ring strip", "retaining ring", s.Ring.Length, s.Spec.Ring.Width, "cut open and trim %s off; fit before the last trim", s.Ring.Surplus.Both(u)),
		cut("drum", "body", st.Rim, 0, "height; what is left below the ring, its cut edge is the rim"),
		cut("mesh", "mesh disc", s.Disc.Across, s.Disc.Across, "diameter; %d snips, %s deep", s.Disc.Snips, s.Disc.SnipDepth.Both(u)),
	}
	return append(out, pipeRows(drumPieces(s), label, n)...)
}

func pipeCuts(b Batch) []Cut {
	s, n, label := b.Silo, b.Pipe, b.Silo.Spec.Drum.Label
	square := s.Pipe.ScreenSquare
	return append(pipeRows(pipePieces(s), label, n),
		Cut{"screen", "screen square", label, n, square, square, "stretch, clamp, bond, trim flush"})
}

// cleanEnds is how pipe is cut for a joint.
const cleanEnds = "ends square, burrs off"

// pipeRows are the rows of pieces of pipe, n silos each; a piece of no length
// is none.
func pipeRows(pieces []piece, label string, n int) []Cut {
	var out []Cut
	for _, p := range pieces {
		if p.length <= 0 {
			continue
		}
		note := cleanEnds
		if p.name == "pipe silo" {
			note = "both ends square; clean the screened end"
		}
		if p.into != "" {
			note += "; one end goes into " + p.into
		}
		out = append(out, Cut{"pipe " + p.pipe.String(), p.name, label, n, p.length, 0, note})
	}
	return out
}
