package bom

import (
	"fmt"
	"math"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
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

// Categories lists the categories in order.
func Categories() []string {
	return []string{Drums, Pipe, Fittings, MeshScreen, Fasteners, Hose, Consumables, Tools}
}

// takeoff gathers needs by item, in the order they first come up.
type takeoff struct {
	needs []Need
	at    map[string]int
	units measure.Unit
}

// add counts q of an item for drum silos, or for pipe silos when pipe is set.
func (t *takeoff) add(item, description, category string, k Kind, q float64, pipe bool, why string, args ...any) {
	if !(q > 0) {
		return
	}
	item = strings.ToLower(item) // as a price list is read
	i, ok := t.at[item]
	if !ok {
		i = len(t.needs)
		t.at[item] = i
		t.needs = append(t.needs, Need{Item: item, Description: description, Category: category, Kind: k})
	}
	n := &t.needs[i]
	if pipe {
		n.Pipe += q
	} else {
		n.Drum += q
	}
	if w := fmt.Sprintf(why, args...); n.Why == "" {
		n.Why = w
	} else if !strings.Contains(n.Why, w) {
		n.Why += "; " + w
	}
}

// Batch is how many of one kind of drum silo are built, and how many pipe
// silos hang in them.
type Batch struct {
	Silo geometry.Silo
	Drum int
	Pipe int
}

// Batches shares out a build of so many drum and pipe silos over the kinds
// solved: drum silos in proportion to the job's own counts, pipe silos into
// the kinds in their order, as many as there are drum silos to hang in and the
// rest with the last.
func Batches(silos []geometry.Silo, drums, pipes int) []Batch {
	total := 0
	for _, s := range silos {
		total += s.Build
	}
	out := make([]Batch, len(silos))
	left := drums
	for i, s := range silos {
		n := left
		if i < len(silos)-1 && total > 0 {
			n = min(left, int(math.Round(float64(drums)*float64(s.Build)/float64(total))))
		}
		left -= n
		p := min(pipes, n)
		if i == len(silos)-1 {
			p = pipes
		}
		pipes -= p
		out[i] = Batch{s, n, p}
	}
	return out
}

// Takeoff lists what the batches use, item by item. Items are the keys of the
// price list: a plain word, then what tells sizes apart, as in "coupling-2",
// "pipe-sch40-1-1/2", "stopper-11", "screw-8-5/8in".
func Takeoff(batches []Batch, r Rates, u measure.Unit) []Need {
	t := &takeoff{at: map[string]int{}, units: u}
	for _, b := range batches {
		t.drumSilos(b, r)
	}
	for _, b := range batches {
		t.pipeSilos(b, r)
	}
	t.tools(batches, r)
	return byCategory(t.needs)
}

// byCategory orders needs by category, else as they came up.
func byCategory(needs []Need) []Need {
	var out []Need
	for _, c := range Categories() {
		for _, n := range needs {
			if n.Category == c {
				out = append(out, n)
			}
		}
	}
	return out
}

// key writes a size as part of an item's name: "1 1/2" → "1-1/2".
func key(size string) string { return strings.ReplaceAll(size, " ", "-") }

// sawn adds pipe of a size: n pieces of a length, each with its kerf.
func (t *takeoff) sawn(p geometry.PipeRef, l, kerf measure.Length, n int, pipe bool, what string) {
	t.add("pipe-"+p.Series+"-"+key(p.Size), "pipe "+p.String(), Pipe, Length, float64(n)*float64(l+kerf), pipe,
		"%d × %s of %s and a kerf each", n, what, l.Both(t.units))
}

// joint adds what goes through a hole n times.
func (t *takeoff) joint(h geometry.Hole, r Rates, n int, pipe bool) {
	size := key(h.Pipe.Size)
	switch h.Joint {
	case geometry.JointCouplings:
		t.add("coupling-"+size, "coupling for "+h.Pipe.Size+" pipe", Fittings, Each, float64(2*n), pipe, "2 × %d at the %s", n, h.Name)
		t.cement(h.Pipe, 2*n, r, pipe, h.Name)
	case geometry.JointGrommet:
		t.add("grommet-"+size, "pipe-to-tank grommet for "+h.Pipe.Size+" pipe", Fittings, Each, float64(n), pipe, "1 × %d at the %s", n, h.Name)
	case geometry.JointStopper:
		t.add("stopper-"+h.Stopper.Number, "tapered rubber stopper No. "+h.Stopper.Number, Fittings, Each, float64(n), pipe, "1 × %d at the %s", n, h.Name)
	}
}

// cement adds cement and primer for n sockets.
func (t *takeoff) cement(p geometry.PipeRef, n int, r Rates, pipe bool, what string) {
	t.add("cement", "solvent cement", Fasteners, Volume, float64(n)*r.CementJoint.ML(), pipe, "%d sockets at the %s × %g mL", n, what, r.CementJoint.ML())
	t.add("primer", "primer for solvent cement", Fasteners, Volume, float64(n)*r.PrimerJoint.ML(), pipe, "%d sockets at the %s × %g mL", n, what, r.PrimerJoint.ML())
}

func (t *takeoff) drumSilos(b Batch, r Rates) {
	s, n := b.Silo, b.Drum
	if n == 0 {
		return
	}
	spec := s.Spec
	each := float64(n)
	t.add("drum", "closed-head plastic drum, second-hand", Drums, Each, each, false, "%d of kind %s", n, spec.Drum.Label)
	t.joint(s.Outlet, r, n, false)
	t.sawn(spec.Outlet.Pipe, spec.Outlet.Nipple, spec.Saw.Kerf, n, false, "outlet nipple")
	t.joint(s.Inlet, r, n, false)
	t.sawn(spec.Inlet.Pipe, spec.Inlet.Nipple, spec.Saw.Kerf, n, false, "inlet nipple")
	t.sawn(spec.Inlet.Pipe, spec.Inlet.Stub, spec.Saw.Kerf, n, false, "inlet stub")
	t.cement(spec.Inlet.Pipe, 1*n, r, false, "inlet stub")
	size := key(spec.Inlet.Pipe.Size)
	t.add("hose-adapter-"+size, "adapter from "+spec.Inlet.Pipe.Size+" pipe to hose", Fittings, Each, each, false, "1 × %d", n)
	t.add("hose-"+size, "supply hose for "+spec.Inlet.Pipe.Size+" adapter", Hose, Length, each*float64(r.HosePerInlet), false, "%d × %s", n, r.HosePerInlet.Both(t.units))
	t.add("hose-clamp-"+size, "clamp for that hose", Hose, Each, each*float64(r.HoseClamps), false, "%d × %d", r.HoseClamps, n)
	t.joint(s.Drain, r, n, false)

	side := float64(s.Disc.Across)
	t.add("mesh", fmt.Sprintf("mesh, %s opening", mm(spec.Mesh.Opening)), MeshScreen, Area, each*side*side, false,
		"%d discs of %s, each taken as a square", n, s.Disc.Across.Both(t.units))
	t.add("screw-"+spec.Screws.Size+"-"+key(spec.Screws.Length.In(t.units)), "pan-head screw, stainless, No. "+spec.Screws.Size+" × "+spec.Screws.Length.Both(t.units),
		Fasteners, Each, each*float64(s.Ring.Screws), false, "%d × %d in the ring", s.Ring.Screws, n)
	t.add("sealant", "sealant, cured inert in sea water", Fasteners, Volume, each*(s.Sealant.Volume.ML()+facesML(s)), false,
		"%d × (ring %.0f mL with waste + joint faces %.0f mL)", n, s.Sealant.Volume.ML(), facesML(s))
	t.add("acetone", "acetone, to wipe before sealant and resin", Fasteners, Volume, each*r.AcetonePerM.ML()*s.Sealant.Run.Metres(), false,
		"%d × %.2f m of bead × %g mL", n, s.Sealant.Run.Metres(), r.AcetonePerM.ML())

	travel := s.JigsawTravel()
	t.add("jigsaw-blade", "jigsaw blade, fine, for plastics", Consumables, Each, each*float64(travel/r.BladeLife), false,
		"%d × %.1f m of cut, %g m a blade", n, travel.Metres(), r.BladeLife.Metres())
	t.add("sandpaper", "sandpaper sheet, 120", Consumables, Each, each*float64(travel/r.SandpaperLife), false,
		"%d × %.1f m of edge, %g m a sheet", n, travel.Metres(), r.SandpaperLife.Metres())
	t.add("marker", "marker", Consumables, Each, each/float64(r.MarkerSilos), false, "one for %d silos", r.MarkerSilos)
}

// facesML is the sealant under the flat faces of couplings: a bead of the
// ring's own section round each face, with the same waste.
func facesML(s geometry.Silo) float64 {
	sum := 0.0
	section := s.Spec.Sealant.Bead.Times(s.Spec.Sealant.Bead)
	for _, h := range []geometry.Hole{s.Outlet, s.Inlet} {
		if h.Joint == geometry.JointCouplings {
			sum += 2 * section.Times(math.Pi*h.Coupling.Outside).ML()
		}
	}
	return sum * (1 + s.Spec.Sealant.Waste)
}

func (t *takeoff) pipeSilos(b Batch, r Rates) {
	s, n := b.Silo, b.Pipe
	if n == 0 {
		return
	}
	q := s.Spec.Pipe
	each := float64(n)
	t.sawn(q.Pipe, q.Length, s.Spec.Saw.Kerf, n, true, "pipe silo")
	t.joint(s.Pipe.Hole, r, n, true)
	t.sawn(q.PipeOut, q.PipeOutLength, s.Spec.Saw.Kerf, n, true, "short pipe")
	t.add("adapter-"+key(s.Spec.Outlet.Pipe.Size)+"x"+key(q.PipeOut.Size),
		"reducing adapter "+s.Spec.Outlet.Pipe.Size+" × "+q.PipeOut.Size, Fittings, Each, each, true, "1 × %d", n)
	side := float64(s.Pipe.ScreenSquare)
	t.add("screen", fmt.Sprintf("screen, %s opening", mm(q.Screen)), MeshScreen, Area, each*side*side, true,
		"%d squares of %s", n, s.Pipe.ScreenSquare.Both(t.units))
	t.add("resin", "resin for the screen's bead", Fasteners, Volume, each*s.Pipe.Resin.Volume.ML(), true,
		"%d × %.0f mL", n, s.Pipe.Resin.Volume.ML())
	t.add("acetone", "acetone, to wipe before sealant and resin", Fasteners, Volume, each*r.AcetonePerM.ML()*s.Pipe.Resin.Run.Metres(), true,
		"%d × %.2f m of resin bead × %g mL", n, s.Pipe.Resin.Run.Metres(), r.AcetonePerM.ML())
	t.add("marker", "marker", Consumables, Each, each/float64(r.MarkerSilos), true, "one for %d silos", r.MarkerSilos)
}

// tools adds what is bought once, whatever the count.
func (t *takeoff) tools(batches []Batch, r Rates) {
	seen := map[string]bool{}
	once := func(item, description string, q float64, pipe bool, why string) {
		if !seen[item] {
			seen[item] = true
			t.add(item, description, Tools, Each, q, pipe, "%s", why)
		}
	}
	for _, b := range batches {
		s := b.Silo
		if b.Drum > 0 {
			for _, h := range []geometry.Hole{s.Outlet, s.Inlet, s.Drain} {
				once("hole-saw-"+key(h.Saw.In(t.units)), "hole saw "+h.Saw.Both(t.units), 1, false, "for the "+h.Name)
			}
			once("drill-"+key(s.Spec.Lattice.Pilot.In(t.units)), "drill bit "+s.Spec.Lattice.Pilot.Both(t.units), 1, false, "for the lattice's pilot holes")
		}
		if b.Pipe > 0 {
			h := s.Pipe.Hole
			once("hole-saw-"+key(h.Saw.In(t.units)), "hole saw "+h.Saw.Both(t.units), 1, true, "for the "+h.Name)
			if s.Pipe.Clamp != "" {
				once("band-clamp-"+s.Pipe.Clamp, "band clamp, size "+s.Pipe.Clamp+", comes off when the resin has set",
					float64(min(b.Pipe, r.ClampsAtOnce)), true, fmt.Sprintf("%d pipe silos set at one time", min(b.Pipe, r.ClampsAtOnce)))
			}
		}
	}
}

// mm writes a mesh opening, which the trade gives in mm in either system.
func mm(l measure.Length) string {
	return fmt.Sprintf("%s mm (%.3f in)", trim(l.MM(), 3), l.Inches())
}
