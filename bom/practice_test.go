package bom

import (
	"fmt"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// The trade's own arithmetic: a quantity, a pack, how many packs.
func TestPacks(t *testing.T) {
	const foot = measure.Foot
	sealed := func(side, run measure.Length, waste float64) geometry.Silo {
		s := handSilo()
		s.Spec.Outlet.Joint, s.Outlet.Joint = geometry.JointGrommet, geometry.JointGrommet
		s.Spec.Inlet.Joint, s.Inlet.Joint = geometry.JointGrommet, geometry.JointGrommet
		s.Sealant = bead(side, run, waste)
		return s
	}
	nipples := func(length, kerf measure.Length) geometry.Silo {
		s := handSilo()
		s.Spec.Outlet.Nipple, s.Spec.Saw.Kerf = length, kerf
		return s
	}
	meshed := func(across measure.Length) geometry.Silo {
		s := handSilo()
		s.Disc.Across = across
		return s
	}
	for _, c := range []struct {
		reason string
		silo   geometry.Silo
		drums  int // pipe silos where the item is theirs
		item   string
		pack   string
		packs  int64
		left   float64 // at least, in the need's unit
	}{
		// A US cartridge of 10.1 fl oz is 18.23 in³ (NIST Handbook 44: 231 in³ a
		// gallon); a bead 1/4 × 1/4 in is 1/16 in² thick: 24.3 ft.
		{"24.3 ft of a 1/4 × 1/4 in bead come from 10.1 fl oz", sealed(in/4, 24.3*foot, 0), 1, "sealant", "10.1,fl oz", 1, 0},
		{"24.4 ft do not", sealed(in/4, 24.4*foot, 0), 1, "sealant", "10.1,fl oz", 2, 0},
		// Millilitres a metre = the bead's section in mm² (sealant trade tables).
		{"8.3 m of a 6 × 6 mm bead come from 300 mL", sealed(6, 8300, 0), 1, "sealant", "300,mL", 1, 0},
		{"8.4 m do not", sealed(6, 8400, 0), 1, "sealant", "300,mL", 2, 0},
		{"with 15 % waste 7.2 m do", sealed(6, 7200, 0.15), 1, "sealant", "300,mL", 1, 0},
		{"and 7.3 m do not", sealed(6, 7300, 0.15), 1, "sealant", "300,mL", 2, 0},
		{"29 fl oz hold as much as 2.87 of 10.1", sealed(in/4, 69.7*foot, 0), 1, "sealant", "29,fl oz", 1, 0},

		// 46 × (2 1/2 + 1/16) = 117 7/8 in; 47 are 120 7/16, though 48 × 2 1/2 is
		// 120. By hand.
		{"46 nipples of 2 1/2 in from 10 ft with a kerf of 1/16", nipples(2.5*in, in/16), 46, "pipe-sch40-2", "10,ft", 1, 2 * 25.4},
		{"a 47th does not come from it", nipples(2.5*in, in/16), 47, "pipe-sch40-2", "10,ft", 2, 9 * 304.8},
		{"60 of 2 in without a kerf are 10 ft to the hair", nipples(2*in, 0), 60, "pipe-sch40-2", "10,ft", 1, 0},
		{"61 are not", nipples(2*in, 0), 61, "pipe-sch40-2", "10,ft", 2, 9 * 304.8},
		{"30 of a third of a foot are 10 ft, whatever binary makes of it", nipples(foot/3, 0), 30, "pipe-sch40-2", "10,ft", 1, 0},
		{"one of 0.1 m thirty times is 3 m", nipples(100, 0), 30, "pipe-sch40-2", "3,m", 1, 0},

		// 8 × (14 + 1/16) = 112 1/2 in: 8 from a stick, and 17 are 239 1/16 in, which
		// would be two sticks only if they could be joined. By hand.
		{"16 pipe silos of 14 in are two sticks of 10 ft", handSilo(), 16, "pipe-sdr35-8", "10,ft", 2, 15},
		{"17 are three", handSilo(), 17, "pipe-sdr35-8", "10,ft", 3, 120 * 25.4},
		{"hose is not joined either: 10 of 1.5 m from 50 ft", handSilo(), 20, "hose-1-1/2", "50,ft", 2, 480},
		{"21 are three coils", handSilo(), 21, "hose-1-1/2", "50,ft", 3, 14000},

		{"2 couplings × 20 outlets, sold by five", handSilo(), 20, "coupling-2", "5,each", 8, 0},
		{"2 × 21 are nine fives", handSilo(), 21, "coupling-2", "5,each", 9, 3},
		{"20 screws × 20 rings are four boxes of a hundred", handSilo(), 20, "screw-8-5/8-in", "100,each", 4, 0},
		{"20 × 21 are five", handSilo(), 21, "screw-8-5/8-in", "100,each", 5, 80},
		{"20 discs 2 ft across, as squares, are 80 ft²", meshed(2 * foot), 20, "mesh-1.6-mm", "80,sq ft", 1, 0},
		{"25 a metre across are 25 m²", meshed(1000), 25, "mesh-1.6-mm", "5,m2", 5, 0},
		{"6 mL a joint: 6 sockets on one silo are 36 mL", handSilo(), 13, "cement", "473,mL", 1, 5},
		{"14 silos are 504 mL", handSilo(), 14, "cement", "473,mL", 2, 442},
	} {
		b := Batch{c.silo, c.drums, 0}
		if c.item == "pipe-sdr35-8" {
			b.Drum, b.Pipe = 0, c.drums
		}
		bill, err := price(Takeoff([]Batch{b}, DefaultRates(), measure.UnitInch),
			list(t, fmt.Sprintf("%s,,%s,1.00,,\n", c.item, c.pack)), "USD", b.Drum, b.Pipe)
		if err != nil {
			t.Errorf("%s: %v", c.reason, err)
			continue
		}
		l := lineNamed(t, bill, c.item)
		if boughtOf(l) != c.packs || l.Left < c.left-1e-6 {
			t.Errorf("%s: %d packs with %.3f left, want %d and %.3f; %s", c.reason, boughtOf(l), l.Left, c.packs, c.left, l.Why)
		}
	}
}

// A bill by hand, to the cent: 18 × 20 + 8 × 9.35 + 2 × 21.45 and so on.
func TestBillByHand(t *testing.T) {
	needs := []Need{
		{Item: "drum", Category: Drums, Kind: Each, Drum: 20},
		{Item: "pipe-sch40-2", Category: Pipe, Kind: Length, Drum: 4000},
		{Item: "pipe-sch40-1-1/2", Category: Pipe, Kind: Length, Drum: 2000, Pipe: 1000},
		{Item: "acetone", Category: Fasteners, Kind: Volume, Drum: 500, Pipe: 200},
		{Item: "hole-saw-2-in", Category: Tools, Kind: Each, Drum: 20. / 28, Pipe: 8. / 28},
	}
	prices := list(t, "drum,,1,each,18.00,,\npipe-sch40-2,,10,ft,21.45,,\nPIPE-SCH40-1-1/2,,10,ft,16.20,,\nacetone,,946,mL,12.75,,\nhole-saw-2-in,,1,each,19.85,,\nmarker,,2,each,4.30,,\n")
	b, err := price(needs, prices, "USD", 20, 8)
	if err != nil {
		t.Fatal(err)
	}
	// 360.00 + 2 × 21.45 + 16.20 + 12.75 + 19.85 = 451.70. Pipe silos:
	// 16.20/3 = 5.40; 12.75 × 2/7 = 3.64; 19.85 × 8/28 = 5.67: 14.71, each 1.84.
	// Drum silos: 436.99, each 21.85.
	for _, c := range []struct{ what, got, want string }{
		{"total", b.Total.String(), "USD 451.70"},
		{"drum silos", b.Drums.Plain(), "436.99"}, {"pipe silos", b.Pipes.Plain(), "14.71"},
		{"each drum silo", b.PerDrum.Plain(), "21.85"}, {"each pipe silo", b.PerPipe.Plain(), "1.84"},
		{"pipe", b.Categories[1].Text(), "59.10"},
		{"pipe's share of acetone", b.Lines[3].Pipes.Plain(), "3.64"},
		{"in words", b.Incomplete(b.Total), "USD 451.70"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %s, want %s", c.what, c.got, c.want)
		}
	}
	if !b.Complete() || len(b.Categories) != 4 {
		t.Errorf("%v, %v", b.Missing, b.Categories)
	}
	if l := b.Lines[1]; boughtOf(l) != 2 || l.Left != 2*3048-4000 {
		t.Errorf("sticks: %+v", l)
	}
}

// A missing price is never zero.
func TestMissingPrices(t *testing.T) {
	needs := []Need{
		{Item: "drum", Category: Drums, Kind: Each, Drum: 2},
		{Item: "coupling-2", Category: Fittings, Kind: Each, Drum: 4},
		{Item: "stopper-11", Category: Fittings, Kind: Each, Drum: 2},
	}
	b, err := price(needs, list(t, "stopper-11,,1,each,5,,\ndrum,,1,each,,,\n"), "USD", 2, 0)
	if err != nil {
		t.Fatal(err)
	}
	if b.Complete() || strings.Join(b.Missing, " ") != "drum coupling-2" {
		t.Errorf("without a price: %v", b.Missing)
	}
	if b.Incomplete(b.Total) != "incomplete: 2 items without a price, the others USD 10.00" {
		t.Errorf("total: %s", b.Incomplete(b.Total))
	}
	if b.Categories[0].Text() != "no price" || b.Categories[1].Text() != "incomplete: 10.00" {
		t.Errorf("categories: %v", b.Categories)
	}
	if l := b.Lines[0]; len(l.Buys) != 0 || l.Amount != nil || l.Drums != nil {
		t.Errorf("no price, yet %+v", l)
	}
	free, err := price(needs[:1], list(t, "drum,,1,each,0,,\n"), "USD", 2, 0)
	if err != nil || !free.Complete() || free.Incomplete(free.Total) != "USD 0.00" {
		t.Errorf("a drum got for nothing has a price of nothing: %v, %v", free.Incomplete(free.Total), err)
	}
	one, err := price(needs[:1], list(t, ""), "USD", 2, 0)
	if err != nil || one.Incomplete(one.Total) != "incomplete: 1 item without a price, the others USD 0.00" {
		t.Errorf("%v, %v", one.Incomplete(one.Total), err)
	}
}
