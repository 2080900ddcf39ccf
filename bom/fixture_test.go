package bom

import (
	"strings"
	"testing"

	"silowright/bom/money"
	"silowright/geometry"
	"silowright/geometry/measure"
)

const in = measure.Inch

// handSilo is a silo filled in by hand with round numbers, so that a takeoff
// can be checked with a pencil. It is invented.
func handSilo() geometry.Silo {
	s := geometry.Silo{Build: 20}
	s.Spec.Units = measure.UnitInch
	s.Spec.Drum = geometry.Drum{Label: "blue", Count: 20, Outside: 22 * in, FootOutside: 20 * in, Wall: in / 4}
	s.Spec.Saw = geometry.SawSpec{Kerf: in / 16}
	s.Spec.Lattice.Pilot = in * 5 / 16
	s.Spec.Mesh.Opening = 1.6
	s.Spec.Outlet = geometry.OutletSpec{Pipe: geometry.PipeRef{Size: "2", Series: "sch40"}, Nipple: 2.5 * in, Joint: geometry.JointCouplings}
	s.Spec.Inlet = geometry.InletSpec{Pipe: geometry.PipeRef{Size: "1 1/2", Series: "sch40"}, Nipple: 2 * in, Stub: 6 * in, Joint: geometry.JointCouplings}
	s.Spec.Screws = geometry.ScrewSpec{Size: "8", Length: in * 5 / 8}
	s.Spec.Sealant = geometry.SealantSpec{Bead: in / 4}
	s.Spec.Pipe = geometry.PipeSiloSpec{Pipe: geometry.PipeRef{Size: "8", Series: "sdr35"}, Length: 14 * in, Screen: 0.3,
		PipeOut: geometry.PipeRef{Size: "1 1/2", Series: "sch40"}, PipeOutLength: 4 * in, Joint: geometry.JointGrommet, Bead: in / 4}

	s.Outlet = geometry.Hole{Name: "outlet", Part: "body", Saw: 2.5 * in, Pipe: s.Spec.Outlet.Pipe, Joint: geometry.JointCouplings,
		Fits: geometry.Fits{Coupling: geometry.CouplingFit{Outside: 3 * in}}}
	s.Inlet = geometry.Hole{Name: "inlet", Part: "base", Saw: 2 * in, Pipe: s.Spec.Inlet.Pipe, Joint: geometry.JointCouplings,
		Fits: geometry.Fits{Coupling: geometry.CouplingFit{Outside: 2.5 * in}}}
	s.Drain = geometry.Hole{Name: "drain", Part: "base", Saw: 2 * in, Joint: geometry.JointStopper, Fits: geometry.Fits{Stopper: geometry.StopperFit{Number: "11"}}}
	s.Disc.Across = 24 * in
	s.Disc.Snips = 30
	s.Ring = geometry.Ring{Screws: 20, Protrudes: in / 8, StripLength: 68 * in, Length: 60 * in, Surplus: 8 * in}
	s.Sealant = bead(in/4, 60*in, 0)
	s.Lattice.Travel = 100 * in
	s.Pipe = geometry.PipeSilo{ScreenSquare: 12 * in, Clamp: "152", Resin: bead(in/4, 24*in, 0),
		Hole: geometry.Hole{Name: "pipe silo outlet", Part: "pipe silo", Saw: 2.5 * in, Pipe: s.Spec.Pipe.PipeOut, Joint: geometry.JointGrommet}}
	return s
}

// bead is a square bead of a side and a length, with waste.
func bead(side, run measure.Length, waste float64) geometry.Bead {
	return geometry.Bead{Run: run, Volume: side.Times(side).Times(run) * measure.Volume(1+waste)}
}

func itemNamed(t testing.TB, needs []Need, item string) Need {
	t.Helper()
	for _, n := range needs {
		if n.Item == item {
			return n
		}
	}
	t.Fatalf("%s is not in the takeoff", item)
	return Need{}
}

func lineNamed(t testing.TB, b Bill, item string) Line {
	t.Helper()
	for _, l := range b.Lines {
		if l.Item == item {
			return l
		}
	}
	t.Fatalf("%s is not in the bill", item)
	return Line{}
}

const head = "item,description,pack,unit,price,supplier,quoted\n"

func list(t testing.TB, rows string) *PriceList {
	t.Helper()
	l, err := ReadPrices("prices.csv", strings.NewReader(head+rows), Listing{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func usd(t testing.TB, s string) money.Money {
	t.Helper()
	m, err := money.Parse(s, "USD")
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// price buys with nothing on the rack and no terms but the currency.
func price(needs []Need, list *PriceList, c money.Currency, drums, pipes int) (Bill, error) {
	return Buy(needs, list, nil, Terms{Currency: c}, drums, pipes)
}

// boughtOf is how many packs of a line are bought in all.
func boughtOf(l Line) int64 {
	n := int64(0)
	for _, b := range l.Buys {
		n += b.Packs
	}
	return n
}
