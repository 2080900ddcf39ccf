package report

import (
	"silowright/geometry"
)

// Kind is one kind of drum silo, solved. Lengths are in mm, areas in mm²,
// volumes in mL, masses in kg, stresses in MPa.
type Kind struct {
	Label    string   `json:"label"`
	Count    int      `json:"count"`
	Stations Stations `json:"stations"`
	Lattice  Lattice  `json:"lattice"`
	Ring     Ring     `json:"ring"`
	MeshDisc MeshDisc `json:"mesh_disc"`
	Slots    []Slot   `json:"handle_slots"`
	Holes    []Hole   `json:"holes"`
	Seat     Seat     `json:"seat"`
	PipeSilo PipeSilo `json:"pipe_silo"`
	Weights  Weights  `json:"weights"`
	Sealant  Bead     `json:"sealant"`
}

// Stations are heights above the foot, but for the base's, above its ground.
type Stations struct {
	BaseCut    float64 `json:"base_cut_mm"`
	RingTop    float64 `json:"ring_top_mm"`
	RingBottom float64 `json:"ring_bottom_mm"`
	Rim        float64 `json:"rim_mm"`
	BaseHeight float64 `json:"base_height_mm"`
	HeadPanel  float64 `json:"head_above_ground_mm"`
}

// Lattice is the foot's pattern.
type Lattice struct {
	Openings     int     `json:"openings"`
	OpeningSharp float64 `json:"opening_sharp_mm2"`
	Opening      float64 `json:"opening_sawn_mm2"`
	OpenArea     float64 `json:"open_area_mm2"`
	OpenFraction float64 `json:"open_fraction"`
	Travel       float64 `json:"jigsaw_travel_mm"`
	BarLength    float64 `json:"bar_length_mm"`
	Ledge        float64 `json:"ledge_mm"`
}

// Ring is the retaining ring.
type Ring struct {
	Strip     float64 `json:"strip_mm"`
	Length    float64 `json:"length_mm"`
	Surplus   float64 `json:"surplus_mm"`
	Screws    int     `json:"screws"`
	Chord     float64 `json:"screw_chord_mm"`
	Stack     float64 `json:"stack_mm"`
	Protrudes float64 `json:"screw_sticks_out_mm"`
}

// MeshDisc is the mesh disc.
type MeshDisc struct {
	Across    float64 `json:"across_mm"`
	Bend      float64 `json:"bend_across_mm"`
	Snips     int     `json:"snips"`
	SnipDepth float64 `json:"snip_depth_mm"`
	Overlap   float64 `json:"overlap_mm"`
}

// Slot is a handle slot.
type Slot struct {
	Top    float64 `json:"top_below_rim_mm"`
	Sill   float64 `json:"sill_below_rim_mm"`
	Round  float64 `json:"round_from_datum_mm"`
	Length float64 `json:"length_mm"`
}

// Hole is a round hole.
type Hole struct {
	Name      string  `json:"name"`
	Part      string  `json:"part"`
	Height    float64 `json:"height_mm"`
	BelowRim  float64 `json:"below_rim_mm,omitempty"`
	Round     float64 `json:"round_from_datum_mm"`
	Saw       float64 `json:"saw_mm"`
	Diameter  float64 `json:"hole_mm"`
	Arc       float64 `json:"arc_mm"`
	Pipe      string  `json:"pipe,omitempty"`
	Outside   float64 `json:"pipe_outside_mm,omitempty"`
	Clearance float64 `json:"clearance_mm,omitempty"`
	Joint     string  `json:"joint"`
	Footprint float64 `json:"footprint_mm"`
}

// Seat is how the foot sits in the base.
type Seat struct {
	Nests  bool    `json:"nests"`
	Enters float64 `json:"enters_mm"`
	Touch  float64 `json:"touches_below_mouth_mm"`
	Plenum float64 `json:"plenum_mm"`
	Shift  float64 `json:"shift_for_tape_off_by_a_sixteenth_mm"`
}

// PipeSilo is the pipe silo.
type PipeSilo struct {
	Outside float64 `json:"outside_mm"`
	Wrap    float64 `json:"wrap_mm"`
	Square  float64 `json:"screen_square_mm"`
	Clamp   string  `json:"clamp"`
	Under   float64 `json:"screen_above_mesh_mm"`
	Resin   Bead    `json:"resin"`
}

// Bead is a run of sealant or resin.
type Bead struct {
	Run    float64 `json:"run_mm"`
	Volume float64 `json:"volume_ml"`
}

// Weights are masses and volumes.
type Weights struct {
	Body      float64 `json:"body_kg"`
	Base      float64 `json:"base_kg"`
	Ring      float64 `json:"ring_kg"`
	Pipe      float64 `json:"pipe_silo_kg"`
	Lift      float64 `json:"lift_kg"`
	BaseWater float64 `json:"base_ml"`
	Plenum    float64 `json:"plenum_ml"`
	SeedBay   float64 `json:"seed_bay_ml"`
	Sag       float64 `json:"lattice_sag_mm"`
	BarPull   float64 `json:"bar_stress_mpa"`
	Handle    float64 `json:"handle_stress_mpa"`
}

// Template is a full-scale pattern.
type Template struct {
	File      string  `json:"file"`
	Title     string  `json:"title"`
	Part      string  `json:"part"`
	Drum      string  `json:"drum"`
	Count     int     `json:"count"`
	Width     float64 `json:"width_mm"`
	Height    float64 `json:"height_mm"`
	OpenArea  float64 `json:"open_area_mm2"`
	CutLength float64 `json:"cut_length_mm"`
}

func kindOf(s geometry.Silo) Kind {
	st, l, r, m, t, p, w := s.Stations, s.Lattice, s.Ring, s.Disc, s.Seat, s.Pipe, s.Weights
	k := Kind{
		Label: s.Spec.Drum.Label, Count: s.Build,
		Stations: Stations{st.BaseCut.MM(), st.RingTop.MM(), st.RingBottom.MM(), st.Rim.MM(), st.BaseHeight.MM(), st.HeadPanel.MM()},
		Lattice:  Lattice{l.Openings, l.SharpArea.MM2(), l.Area.MM2(), l.OpenArea.MM2(), l.OpenFoot, l.Travel.MM(), l.BarLength.MM(), l.Ledge.MM()},
		Ring:     Ring{r.StripLength.MM(), r.Length.MM(), r.Surplus.MM(), r.Screws, r.Chord.MM(), r.Stack.MM(), r.Protrudes.MM()},
		MeshDisc: MeshDisc{m.Across.MM(), m.Bend.MM(), m.Snips, m.SnipDepth.MM(), m.Overlap.MM()},
		Seat:     Seat{t.Nests, t.Enters.MM(), t.TouchDepth.MM(), t.Plenum.MM(), t.ShiftCircUp.Abs().MM()},
		PipeSilo: PipeSilo{p.Outside.MM(), p.Wrap.MM(), p.ScreenSquare.MM(), p.Clamp, p.Under.MM(), beadOf(p.Resin)},
		Weights: Weights{w.Body.Kg(), w.Base.Kg(), w.Ring.Kg(), w.Pipe.Kg(), w.Lift.Kg(), w.BaseVolume.ML(),
			w.PlenumVolume.ML(), w.SeedBay.ML(), w.Sag.MM(), w.BarStress.MPa(), w.HandleStress.MPa()},
		Sealant: beadOf(s.Sealant),
	}
	for _, sl := range s.Slots {
		k.Slots = append(k.Slots, Slot{sl.Top.MM(), sl.Sill.MM(), sl.Round.MM(), sl.Length.MM()})
	}
	for _, h := range s.Holes() {
		k.Holes = append(k.Holes, holeOf(h))
	}
	return k
}

func holeOf(h geometry.Hole) Hole {
	out := Hole{Name: h.Name, Part: h.Part, Height: h.Height.MM(), BelowRim: h.BelowRim.MM(), Round: h.Round.MM(),
		Saw: h.Saw.MM(), Diameter: h.Diameter.MM(), Arc: h.Arc.MM(), Joint: string(h.Joint), Footprint: h.Footprint.MM()}
	if h.Joint.Makeup().Piped {
		out.Pipe, out.Outside, out.Clearance = h.Pipe.String(), h.PipeOutside.MM(), h.Clearance.MM()
	}
	return out
}

func beadOf(b geometry.Bead) Bead { return Bead{b.Run.MM(), b.Volume.ML()} }

func templateOf(t geometry.Template) Template {
	return Template{"templates/" + t.ID + ".svg", t.Title, t.Part, t.Drum, t.Count, t.Width.MM(), t.Height.MM(), t.OpenArea.MM2(), t.CutLength.MM()}
}
