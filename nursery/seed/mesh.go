package seed

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"silowright/geometry/measure"
)

// Kind says which silo.
type Kind int

// The two kinds of silo: sewer pipe for the smallest seed, drums after it.
const (
	Pipe Kind = iota
	Drum
)

// String returns "pipe" or "drum".
func (k Kind) String() string {
	if k == Drum {
		return "drum"
	}
	return "pipe"
}

// MarshalText writes the kind as its word.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// Mesh is one mesh the nursery has for its silos. Opening is the clear width
// between strands the narrower way, Long the other way; Long may be zero for a
// square weave.
type Mesh struct {
	Name    string         `json:"name"`
	In      Kind           `json:"in"`
	Opening measure.Length `json:"opening_mm"`
	Long    measure.Length `json:"long_mm,omitempty"`
}

// Square returns the side of the square opening that lets through all that m
// does: √((a² + b²)/2). What passes a × b lengthwise with an oval section of
// axes h and w has h² + w² ≤ a² + b², and passes a square of that side. It
// equals Opening for a square weave and errs to the wide side for any other.
func (m Mesh) Square() Sieve {
	if !(m.Long > m.Opening) {
		return Sieve(m.Opening)
	}
	return Sieve(math.Sqrt((m.Opening.MM()*m.Opening.MM() + m.Long.MM()*m.Long.MM()) / 2))
}

// LargestOpening returns the largest opening that holds seed whose smallest is
// held by the sieve v, with a margin: the smallest seed must be larger than
// the opening by the share margin (0.2 is 20 %).
func LargestOpening(v Sieve, margin float64) measure.Length {
	return v.Length() / measure.Length(1+max(0, margin))
}

// SmallestHeld returns the smallest seed that m holds with the margin.
func (m Mesh) SmallestHeld(margin float64) Sieve {
	return m.Square() * Sieve(1+max(0, margin))
}

// Rung is one mesh of a ladder: it takes the seed over at From and hands it on
// at To. Both are what the smallest seed is held by.
type Rung struct {
	Mesh Mesh  `json:"mesh"`
	From Sieve `json:"from_mm"`
	To   Sieve `json:"to_mm"`
	// Ends says that no coarser mesh of the kind takes over before the seed
	// leaves.
	Ends bool `json:"ends"`
}

// Holds reports whether m holds seed whose smallest is held by v, with margin.
func (m Mesh) Holds(v Sieve, margin float64) bool {
	return float64(m.SmallestHeld(margin)) <= float64(v)*(1+1e-12)
}

// coarsest returns the coarsest mesh of kind k that holds v.
func coarsest(meshes []Mesh, k Kind, v Sieve, margin float64) (Mesh, bool) {
	var best Mesh
	found := false
	for _, m := range meshes {
		if m.In == k && m.Holds(v, margin) && (!found || m.Square() > best.Square()) {
			best, found = m, true
		}
	}
	return best, found
}

// Ladder returns the meshes the seed goes over, finest first, from arrival to
// leaving (what the smallest seed is held by at either time): the coarsest that
// holds it, in a drum as soon as a drum's mesh does. No pipe mesh follows a
// drum's. Error when no mesh holds the seed that arrives, or the sizes run
// backwards.
func Ladder(meshes []Mesh, arrival, leaving Sieve, margin float64) ([]Rung, error) {
	if !(arrival > 0) || !(leaving >= arrival) || !finite(float64(leaving)) {
		return nil, fmt.Errorf("seed.leave_on: %s, is not above what holds the arriving seed (%s), allowed: more than that; hint: seed leaves larger than it comes",
			leaving.Both(measure.UnitMM), arrival.Both(measure.UnitMM))
	}
	first, ok := coarsest(meshes, Drum, arrival, margin)
	if !ok {
		first, ok = coarsest(meshes, Pipe, arrival, margin)
	}
	if !ok {
		most := LargestOpening(arrival, margin)
		return nil, fmt.Errorf("seed.%s: no mesh holds the arriving seed, allowed: an opening of at most %s; hint: add a finer mesh", KeyPipeMeshes, most.Both(measure.UnitMM))
	}
	out := []Rung{{Mesh: first, From: arrival}}
	for _, m := range finestFirst(meshes) {
		last, from := &out[len(out)-1], m.SmallestHeld(margin)
		if m.Holds(arrival, margin) || from >= leaving || (last.Mesh.In == Drum && m.In == Pipe) {
			continue
		}
		last.To = from
		out = append(out, Rung{Mesh: m, From: from})
	}
	last := &out[len(out)-1]
	last.To, last.Ends = leaving, true
	return out, nil
}

// finestFirst returns the meshes by opening, one of each, of two alike the drum's.
func finestFirst(meshes []Mesh) []Mesh {
	ms := slices.Clone(meshes)
	slices.SortStableFunc(ms, func(a, b Mesh) int {
		return cmp.Or(cmp.Compare(a.Square(), b.Square()), cmp.Compare(b.In, a.In))
	})
	return slices.CompactFunc(ms, func(a, b Mesh) bool { return a.Square() == b.Square() })
}
