package bom

import (
	"fmt"
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// The categories, in the order a bill lists them.
const (
	Drums       = "drums"
	Pipe        = "pipe"
	Fittings    = "fittings"
	MeshScreen  = "mesh and screen"
	Fasteners   = "screws, sealant, resin, cement"
	Hose        = "hose"
	Consumables = "consumables"
	Tools       = "tools, bought once"
)

// categories lists the categories in order.
func categories() []string {
	return []string{Drums, Pipe, Fittings, MeshScreen, Fasteners, Hose, Consumables, Tools}
}

// Takeoff lists what the batches use, item by item, categories in order and
// items within one in the order they first come up. The package comment says
// how items are named. runs is further pipe, for manifold and mains.
func Takeoff(batches []Batch, r Rates, u measure.Unit, runs ...Run) []Need {
	t := &takeoff{at: map[string]int{}, units: u, rates: r}
	for _, b := range batches {
		if b.Drum > 0 {
			t.drumSilos(b)
		}
	}
	for _, b := range batches {
		if b.Pipe > 0 {
			t.pipeSilos(b)
		}
	}
	t.runs(batches, runs)
	t.bores(batches)
	t.tools(batches)
	drums, pipes := 0, 0
	for _, b := range batches {
		drums, pipes = drums+b.Drum, pipes+b.Pipe
	}
	for i, n := range t.needs {
		t.needs[i].EachDrum, t.needs[i].EachPipe = share(n.Drum, drums), share(n.Pipe, pipes)
	}
	return byCategory(t.needs)
}

// byCategory puts needs in the order of their categories, otherwise as they
// are. One of a category that is not listed comes last; none is left out.
func byCategory(needs []Need) []Need {
	order := categories()
	place := func(n Need) int {
		if i := slices.Index(order, n.Category); i >= 0 {
			return i
		}
		return len(order)
	}
	out := append([]Need{}, needs...)
	slices.SortStableFunc(out, func(a, b Need) int { return place(a) - place(b) })
	return out
}

func share(all float64, n int) float64 {
	if n == 0 {
		return 0
	}
	return all / float64(n)
}

// takeoff gathers needs by item.
type takeoff struct {
	needs []Need
	at    map[string]int
	units measure.Unit
	rates Rates
}

// ware is an item as it is asked for.
type ware struct {
	item, description, category string
	kind                        Kind
}

// use counts what drum silos and pipe silos use of w; why says how the number
// came about.
func (t *takeoff) use(w ware, drum, pipe float64, why string, args ...any) {
	if !(drum+pipe > 0) {
		return
	}
	i, ok := t.at[itemKey(w.item)]
	if !ok {
		i = len(t.needs)
		t.at[itemKey(w.item)] = i
		t.needs = append(t.needs, Need{Item: w.item, Description: w.description, Category: w.category, Kind: w.kind})
	}
	n := &t.needs[i]
	n.Drum += drum
	n.Pipe += pipe
	if why = fmt.Sprintf(why, args...); n.Why != "" {
		why = n.Why + "; " + why
	}
	n.Why = why
}

// itemKey is what two spellings of one item have in common.
func itemKey(item string) string {
	if isKey(item) {
		return item
	}
	return strings.ToLower(strings.Join(strings.Fields(item), " "))
}

// isKey is whether item is its own key, as most names in a list are: small
// ASCII letters with single blanks between.
func isKey(item string) bool {
	last := byte(' ')
	for i := range len(item) {
		c := item[i]
		if c < ' ' || c > '~' || 'A' <= c && c <= 'Z' || c == ' ' && last == ' ' {
			return false
		}
		last = c
	}
	return last != ' ' || item == ""
}

// slug writes a size as part of an item's name: "1 1/2" → "1-1/2".
func slug(size string) string { return strings.Join(strings.Fields(size), "-") }

// fits names what a fitting fits: pipe of a nominal size. Sewer pipe in inch
// sizes is not as wide as pressure pipe of the same name (4.215 and 4.500 in for
// size 4: ASTM D3034, D1785), so a fitting for it is another item. A metric
// size is the pipe's outside in every series.
func fits(p geometry.PipeRef) string {
	if p.Series == stock.SDR35 || p.Series == stock.SDR26 {
		return "sewer " + p.Size
	}
	return p.Size
}

// side says who uses something: drum silos or pipe silos.
type side bool

const (
	forDrum side = false
	forPipe side = true
)

// of counts q on the side's own account.
func (s side) of(q float64) (drum, pipe float64) {
	if s == forPipe {
		return 0, q
	}
	return q, 0
}

// sawn counts n pieces of a pipe, each with a kerf. The kerf is the saw's that
// parts the drum: another saw for pipe is not asked for.
func (t *takeoff) sawn(p geometry.PipeRef, l, kerf measure.Length, n int, s side, what string) {
	if l <= 0 {
		return
	}
	drum, pipe := s.of(float64(n) * float64(l+kerf))
	w := ware{"pipe-" + p.Series + "-" + slug(p.Size), "pipe " + p.String(), Pipe, Length}
	t.use(w, drum, pipe, "%d × %s, %s and a kerf of %s", n, what, l.Both(t.units), kerf.Both(t.units))
	t.pieces(w, Piece{Length: l, Kerf: kerf, Count: n, Name: what})
}

// pieces notes what is sawn off a ware that is used.
func (t *takeoff) pieces(w ware, p Piece) {
	if i, ok := t.at[itemKey(w.item)]; ok {
		t.needs[i].Pieces = addPiece(t.needs[i].Pieces, p)
	}
}

// each counts per pieces for each of n silos.
func (t *takeoff) each(item, description, category string, per, n int, s side, what string) {
	drum, pipe := s.of(float64(per * n))
	t.use(ware{item, description, category, Each}, drum, pipe, "%d × %d %s", per, n, what)
}

// joint counts what seals a pipe, or a stopper, in a hole of n silos.
func (t *takeoff) joint(h geometry.Hole, bead geometry.SealantSpec, n int, s side) {
	m := h.Makeup()
	size := fits(h.Pipe)
	if !m.Piped {
		size = h.Stopper.Number
	}
	at := "at the " + h.Name
	t.each(m.Part+"-"+slug(size), fmt.Sprintf(m.Item, size), Fittings, m.Parts, n, s, at)
	t.cement(m.Sockets, n, s, at)
	if m.Adapters > 0 {
		t.adapters(h, m.Adapters, n, s, at)
	}
	if m.Faces > 0 {
		faces := measure.Length(m.Faces) * circle(h.Coupling.Outside)
		ml := bead.Bead.Times(bead.Bead).Times(faces).ML() * (1 + bead.Waste)
		drum, pipe := s.of(float64(n) * ml)
		t.use(sealant, drum, pipe, "%d × %s mL under both coupling faces %s: bead %s, round %s twice, waste %s %%",
			n, measure.Number(ml, 1), at, bead.Bead.Both(t.units), h.Coupling.Outside.Both(t.units), measure.Number(100*bead.Waste, 1))
	}
}

// The wares that several parts use.
var (
	sealant = ware{"sealant", "sealant, cured inert in sea water", Fasteners, Volume}
	acetone = ware{"acetone", "acetone, to wipe before sealant and resin", Fasteners, Volume}
)

// cement counts cement and primer for so many sockets on each of n silos.
func (t *takeoff) cement(sockets, n int, s side, at string) {
	for _, c := range []struct {
		w   ware
		per measure.Volume
	}{
		{ware{"cement", "solvent cement", Fasteners, Volume}, t.rates.CementJoint},
		{ware{"primer", "primer for solvent cement", Fasteners, Volume}, t.rates.PrimerJoint},
	} {
		drum, pipe := s.of(float64(sockets*n) * c.per.ML())
		t.use(c.w, drum, pipe, "%d sockets × %d %s, %s mL each", sockets, n, at, measure.Number(c.per.ML(), 1))
	}
}

// wipe counts acetone for the ground of a bead on each of n silos.
func (t *takeoff) wipe(run measure.Length, n int, s side, what string) {
	drum, pipe := s.of(float64(n) * run.Metres() * t.rates.AcetonePerM.ML())
	t.use(acetone, drum, pipe, "%d × %s m of %s, %s mL a metre", n, measure.Number(run.Metres(), 2), what, measure.Number(t.rates.AcetonePerM.ML(), 1))
}
