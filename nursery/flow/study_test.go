package flow

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"silowright/geometry/measure"
	"silowright/nursery/sea"
)

// invented is a drum silo of invented sizes, near to what a drum of 55 gal
// gives.
func invented() Silo {
	return Silo{
		Inlet:    Pipe{Bore: 40.4, Length: 230, Roughness: PlasticRoughness, K: 0.5},
		BaseBore: 573, Plenum: 180,
		FootInside: 527, FootOutside: 536.6, FootHeight: 57.2, Bore: 573, Outside: 582.5, Rim: 520,
		LatticeOpen: 0.72, Mesh: Screen{Opening: 1.6, Open: 0.45, Fouled: 0.5}, MeshTop: 5.6, BedAcross: 517,
		Seed:   Bed{Mass: 5, Size: 2, Density: 1500, Voidage: 0.5, Sphericity: 0.8},
		Outlet: Outlet{Bore: 52, Length: 70, Roughness: PlasticRoughness, Entrance: 0.5}, Invert: 342,
		Slot: Slot{Length: 114.3, Height: 50.8, Corner: 25.4}, Slots: 2, Sill: 418.4,
		SeatAcross: 573, SeatHeight: 45, Body: 11, Solid: 6e5,
	}
}

// hung is the invented silo with a pipe silo hung in it.
func hung() Silo {
	s := invented()
	s.Seed.Mass = 0
	s.Pipe = &PipeSilo{Inside: 200, Screen: Screen{Opening: 0.273, Open: 0.42, Fouled: 0.3}, Bottom: 140, Invert: 348, Rim: 495,
		Seed: Bed{Mass: 0.5, Size: 0.8, Density: 1500, Voidage: 0.5, Sphericity: 0.8},
		Out:  Outlet{Bore: 40.4, Length: 100, Roughness: PlasticRoughness, Entrance: 0.8}}
	return s
}

func seaWater(t testing.TB) sea.Water {
	t.Helper()
	w, err := sea.At(30, 15)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func study(t testing.TB, s Silo, q measure.Flow) Study {
	t.Helper()
	out, err := Solve(seaWater(t), s, q)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// A floating-upweller guide (Cornell Cooperative Extension) shares 1,050 gpm
// among 10 drum silos: 105 gpm = 397 L/min each, 25.8 mm/s in a bore taken as
// 22.5 in.
func TestUpwellingInDrum(t *testing.T) {
	s := invented()
	s.Bore, s.Outside = 22.5*measure.Inch, 23*measure.Inch
	q := 105 * measure.GallonPerMinute
	closeTo(t, "L/min", q.LMin(), 397, 2e-3)
	closeTo(t, "upwelling, mm/s", float64(study(t, s, q).Upwelling), 25.8, 2e-3)
}

// A straight thin silo on its own bore, worked by hand: 0.25 m² on its seat,
// body 11 kg, seed 5 kg of 1500 kg/m³. Still water lifts the seed's own volume,
// 5/1500 m³ of water, and nothing else, whatever the level. A head of 40 mm
// lost below lifts 0.040 × 0.25 m³ of water more: 10 L.
func TestSeatByHand(t *testing.T) {
	d := measure.Length(2 * math.Sqrt(0.25/math.Pi) * 1000)
	s := Silo{FootInside: d, FootOutside: d, Bore: d, Outside: d, SeatAcross: d, SeatHeight: 30, Invert: 340, Body: 11,
		Seed: Bed{Mass: 5, Size: 2, Density: 1500, Voidage: 0.5, Sphericity: 1}}
	w := water(1025, 1.2e-3)
	for _, level := range []measure.Length{0, 40, 150} {
		b := s.seat(w, level, 40, 0)
		closeTo(t, "shoulder, kg", b.Shoulder.Kg(), 5./1500*1025, 1e-9)
		closeTo(t, "drop, kg", b.Drop.Kg(), 10.25, 1e-9)
		closeTo(t, "rests, kg", b.Rests.Kg(), 16-5./1500*1025-10.25, 1e-9)
		closeTo(t, "pressure, Pa", float64(b.Pressure), 1025*gravity*(float64(340+level-30)+40)/1000, 1e-9)
		// (16 − 5/1500·1025) kg over 0.25 m² of 1025 kg/m³: 49.11 mm
		closeTo(t, "lifts at, mm", b.LiftsAt.MM(), 49.11, 1e-3)
		if b.Lifts() {
			t.Error("lifts")
		}
		if !s.seat(w, level, 60, 0).Lifts() { // 15.375 kg against 12.58
			t.Error("60 mm do not lift")
		}
	}
	if s.SeatAcross = 0; s.seat(w, 10, 10, 0) != (Seat{}) {
		t.Error("a foot that does not seat has a balance")
	}
}

// The shoulder: a bore 100 mm narrower over the lowest 50 mm of the seat's
// own width, all of it above the seat, is a ring that still water presses on:
// its lift is the ring's area times the depth of water at it, worked by hand
// from the pressure on the sloping ring by Archimedes: the volume of water that
// the ring keeps out, less what its slope carries.
func TestShoulder(t *testing.T) {
	// Step (no slope): inside 400 for the lowest 50 mm, then 500; seat at the
	// foot, 500 across. Pressure on the ring from below: 0.35 m + 0; the water on
	// the ledge above it stands 0.30 m. So 0.05 m over the ring's area lifts.
	s := Silo{FootInside: 400, FootOutside: 500, FootHeight: 0, Bore: 500, Outside: 500, SeatAcross: 500, Invert: 350}
	w := water(1000, 1e-3)
	// taper with height 0 has no narrow part: put the ledge in as solid
	ring := float64(Disc(500)-Disc(400)) * 50
	s.Solid = measure.Volume(ring)
	got := s.seat(w, 0, 0, 0).Shoulder.Kg()
	want := math.Pi / 4 * (0.25 - 0.16) * 0.05 * 1000
	closeTo(t, "ledge, kg", got, want, 1e-9)
	// The same silo with the narrow part as a cone of 50 mm: what it keeps out is
	// cylinder less frustum, π/12·50·(3·500² − 500² − 400² − 500·400).
	s.Solid, s.FootHeight, s.FootOutside = 0, 50, 400
	want = math.Pi / 12 * 0.05 * (3*0.25 - 0.25 - 0.16 - 0.2) * 1000
	closeTo(t, "cone, kg", s.seat(w, 0, 0, 0).Shoulder.Kg(), want, 1e-9)
}

// What comes in leaves: by outlet, slots and rim together, to 1e-9; heads add
// up; and the freeboard is that of the level.
func TestStudyBalance(t *testing.T) {
	for name, s := range map[string]Silo{"alone": invented(), "with pipe silo": hung()} {
		for lmin := 0.0; lmin <= 2500; lmin += 20 {
			q := measure.Flow(lmin) * measure.LitrePerMinute
			d := study(t, s, q)
			closeTo(t, name+": flow out", float64(d.ByOutlet+d.BySlots+d.OverRim), float64(q), 1e-9)
			closeTo(t, name+": clean head", float64(d.CleanHead-d.Clean.Total()), float64(d.CleanHead-d.Clean.Inlet-d.Clean.Plenum-d.Clean.Lattice-d.Clean.Mesh-d.Clean.Seed), 1e-9)
			if h, _ := (InWater{s, seaWater(t)}).Head(q); h != d.FouledHead {
				t.Errorf("%s at %g L/min: head %v, in the study %v", name, lmin, h, d.FouledHead)
			}
			if h := s.Level(seaWater(t), q); h != d.Level {
				t.Errorf("%s at %g L/min: level %v, in the study %v", name, lmin, h, d.Level)
			}
			if (d.BySlots > 0) != (d.ToSill < 0) || (d.OverRim > 0) != (d.ToRim < 0) {
				t.Errorf("%s at %g L/min: %+v", name, lmin, d)
			}
			// all that leaves by the outlet leaves at its own level there
			if p := d.Pipe; p != nil && q > 0 {
				if p.Flow != d.ByOutlet || p.Fouled < p.Clean || p.Level <= 0 {
					t.Errorf("%s at %g L/min: %+v", name, lmin, *p)
				}
				closeTo(t, "levels", float64(s.Pipe.Invert+p.Level+p.Fouled), float64(s.Invert+d.Level), 1e-9)
			} else if p == nil {
				if got, _ := s.Outlet.Level(seaWater(t), d.ByOutlet); math.Abs(float64(got-d.Level)) > 1e-6 {
					t.Errorf("at %g L/min: level %v, the outlet's %v", lmin, d.Level, got)
				}
			}
		}
	}
}

// The limits are what they say: just under them nothing spills, just over them
// it does.
func TestLimits(t *testing.T) {
	for name, s := range map[string]Silo{"alone": invented(), "with pipe silo": hung()} {
		d := study(t, s, 0)
		if !(d.BeforeSlots > 0 && d.BeforeRim > d.BeforeSlots && d.BeforeSlotsMost >= d.BeforeSlots) {
			t.Fatalf("%s: %+v", name, d)
		}
		for _, c := range []struct {
			limit measure.Flow
			over  func(Study) bool
		}{
			{d.BeforeSlots, func(d Study) bool { return d.BySlots > 0 }},
			{d.BeforeRim, func(d Study) bool { return d.OverRim > 0 }},
		} {
			if c.over(study(t, s, c.limit*0.9999)) || !c.over(study(t, s, c.limit*1.0001)) {
				t.Errorf("%s: limit %v is none", name, c.limit)
			}
		}
		if d.Pipe != nil {
			over := func(d Study) bool { return d.Pipe.ToRim < 0 }
			if q := d.Pipe.BeforeRim; over(study(t, s, q*0.9999)) || !over(study(t, s, q*1.0001)) {
				t.Errorf("pipe silo's rim: limit %v is none", q)
			}
		}
	}
	// no slots: the sill is the rim
	s := invented()
	s.Slots = 0
	if d := study(t, s, 100); d.BeforeSlots != d.BeforeRim || d.ToSill != d.ToRim {
		t.Errorf("without slots: %+v", d)
	}
}

// Head and level rise with the flow and the head's slope is its own, spilling
// or not; more fouling and more seed never need less.
func TestHeadMonotone(t *testing.T) {
	w := seaWater(t)
	for name, s := range map[string]Silo{"alone": invented(), "with pipe silo": hung()} {
		more := s
		more.Mesh.Fouled = 0.8
		more.Seed = Bed{Mass: 20, Size: 2, Density: 1500, Voidage: 0.5, Sphericity: 0.8}
		last, _ := s.Head(w, -1)
		for q := measure.Flow(1); q < MostFlow; q *= 1.02 {
			h, slope := s.Head(w, q)
			if !h.Finite() || h < last || math.IsNaN(slope) || slope < 0 {
				t.Fatalf("%s at %v: head %v after %v, slope %v", name, q, h, last, slope)
			}
			if m, _ := more.Head(w, q); m < h {
				t.Fatalf("%s at %v: fouled and laden %v, before %v", name, q, m, h)
			}
			last = h
			up, a := s.Head(w, q*1.00005)
			dn, b := s.Head(w, q*0.99995)
			if q > 1e4 && math.Abs(a/b-1) < 1e-3 { // not across a bend
				closeTo(t, name+": slope", slope, float64(up-dn)/float64(q*0.0001), 5e-3)
			}
		}
	}
}

// Blocked outlet: a hose whose end is held above the sill lets nothing by, all
// leaves by the slots, and the level is theirs.
func TestHeldHose(t *testing.T) {
	s := invented()
	s.Outlet.Hose = Hose{Bore: 50, Length: 2000, Roughness: HoseRoughness, Drop: -150}
	d := study(t, s, 60*measure.LitrePerMinute)
	if d.ByOutlet != 0 || d.BeforeSlots != 0 {
		t.Errorf("%+v", d)
	}
	closeTo(t, "slots", float64(d.BySlots), float64(d.Flow), 1e-9)
	if d.ToSill >= 0 || d.Level >= 150 {
		t.Errorf("level %v", d.Level)
	}
}

func TestRefusals(t *testing.T) {
	w := seaWater(t)
	for key, change := range map[string]func(*Silo){
		"base.bore":             func(s *Silo) { s.BaseBore = 0 },
		"base.plenum":           func(s *Silo) { s.Plenum = 0 },
		"foot.outside":          func(s *Silo) { s.FootOutside = 1 },
		"outlet.invert":         func(s *Silo) { s.Invert = 1 },
		"handle.corner":         func(s *Silo) { s.Slot.Corner = 30 },
		"handle.count":          func(s *Silo) { s.Slots = -1 },
		"lattice.open_fraction": func(s *Silo) { s.LatticeOpen = 0 },
		"body.mass":             func(s *Silo) { s.Body = measure.Mass(math.NaN()) },
		"body.solid":            func(s *Silo) { s.Solid = -1 },
		"inlet.bore":            func(s *Silo) { s.Inlet.Bore = 0; s.Mesh.Open = 0 },
		"seed.size":             func(s *Silo) { s.Seed.Size = 0 },
		"pipe_silo.inside":      func(s *Silo) { s.Pipe.Inside = 0 },
		"pipe_silo.screen.open": func(s *Silo) { s.Pipe.Screen.Open = 0 },
	} {
		s := hung()
		change(&s)
		if s.Seed.Mass == 0 && key == "seed.size" {
			s.Seed.Mass = 1
		}
		if _, err := Solve(w, s, 1e6); err == nil || !strings.HasPrefix(err.Error(), key) || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "; hint: ") {
			t.Errorf("%s: %v", key, err)
		}
	}
	for _, q := range []float64{-1, 1e12, math.NaN(), math.Inf(1)} {
		if _, err := Solve(w, invented(), measure.Flow(q)); err == nil || !strings.HasPrefix(err.Error(), "flow: ") {
			t.Errorf("flow %g: %v", q, err)
		}
	}
	if _, err := Solve(sea.Water{}, invented(), 1e6); err == nil || !strings.HasPrefix(err.Error(), "water: ") {
		t.Errorf("no water: %v", err)
	}
}

// finite walks a study's numbers.
func finiteStudy(d Study) bool {
	xs := []float64{float64(d.Level), float64(d.ToSill), float64(d.ToRim), float64(d.ByOutlet), float64(d.BySlots), float64(d.OverRim),
		float64(d.BeforeSlots), float64(d.BeforeSlotsMost), float64(d.BeforeRim), float64(d.CleanHead), float64(d.FouledHead),
		float64(d.CleanSeat.Rests), float64(d.FouledSeat.Rests), float64(d.Seed.Depth), float64(d.Seed.Sinks), float64(d.Seed.Drop), float64(d.SeedTop)}
	if p := d.Pipe; p != nil {
		xs = append(xs, float64(p.Level), float64(p.Fouled), float64(p.ToRim), float64(p.BeforeRim), float64(p.Seed.Depth), float64(p.SeedTop))
	}
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

func FuzzSolve(f *testing.F) {
	f.Add(uint64(1), 1e6)
	f.Add(uint64(2), 0.0)
	f.Fuzz(func(t *testing.T, seed uint64, q float64) {
		r := rand.New(rand.NewPCG(seed, 9))
		s := hung()
		by := func(l *measure.Length) { *l *= measure.Length(0.3 + 1.4*r.Float64()) }
		for _, l := range []*measure.Length{&s.Inlet.Bore, &s.Plenum, &s.Outlet.Bore, &s.Invert, &s.Sill, &s.Slot.Length, &s.SeatAcross, &s.SeatHeight,
			&s.Pipe.Inside, &s.Pipe.Invert, &s.Pipe.Rim, &s.Pipe.Out.Bore, &s.Pipe.Screen.Opening, &s.Mesh.Opening} {
			by(l)
		}
		s.Mesh.Fouled, s.Pipe.Screen.Fouled = 0.99*r.Float64(), 0.99*r.Float64()
		s.Seed = Bed{Mass: measure.Mass(50 * r.Float64()), Size: measure.Length(0.2 + 20*r.Float64()), Density: measure.Density(1050 + 1900*r.Float64()),
			Voidage: 0.2 + 0.7*r.Float64(), Sphericity: 0.5 + 0.5*r.Float64()}
		if r.IntN(2) == 0 {
			s.Pipe = nil
		}
		if r.IntN(3) == 0 {
			s.Outlet.Hose = Hose{Bore: 40, Length: 3000, Drop: measure.Length(1000*r.Float64() - 400), K: r.Float64()}
		}
		w := seaWater(t)
		d, err := Solve(w, s, measure.Flow(q))
		if err != nil {
			return
		}
		if !finiteStudy(d) {
			t.Errorf("%+v at %g: %+v", s, q, d)
		}
		if got := float64(d.ByOutlet + d.BySlots + d.OverRim); math.Abs(got-q) > 1e-6*(q+1) {
			t.Errorf("%+v at %g: %g leaves", s, q, got)
		}
	})
}

// The time of a silo's head beside that of the plain pipe loss.
func BenchmarkHead(b *testing.B) {
	w := seaWater(b)
	s := invented()
	b.Run("pipe", func(b *testing.B) {
		for i := range b.N {
			PipeLoss(w, s.Inlet, measure.Flow(1e6+i%1000))
		}
	})
	b.Run("silo", func(b *testing.B) {
		for i := range b.N {
			s.Head(w, measure.Flow(1e6+i%1000))
		}
	})
	b.Run("spilling", func(b *testing.B) {
		for i := range b.N {
			s.Head(w, measure.Flow(4e6+i%1000))
		}
	})
}
