package flow

import (
	"errors"
	"fmt"

	"silowright/geometry/measure"
)

// Silo is what one drum silo shows the water, in plain dimensions. Heights are
// above the underside of the body's foot.
type Silo struct {
	// The way in.
	Inlet    Pipe           // nipple and stub with their fittings; the exit into the plenum is added
	BaseBore measure.Length // inside diameter of the base
	Plenum   measure.Length // height, head to foot

	// The body.
	FootInside  measure.Length // inside diameter of the foot
	FootOutside measure.Length
	FootHeight  measure.Length // up to where the wall has its full diameter
	Bore        measure.Length // inside diameter of the plain wall
	Outside     measure.Length // outside diameter of the plain wall
	Rim         measure.Length

	// What the water wells up through.
	LatticeOpen float64        // openings over the foot's inside area
	Mesh        Screen         // lies on the lattice: open where the lattice is
	MeshTop     measure.Length // height of its upper face
	BedAcross   measure.Length // diameter the seed lies on: inside the retaining ring
	Seed        Bed

	// The ways out.
	Outlet Outlet
	Invert measure.Length // height of the outlet's
	Slot   Slot           // one handle slot
	Slots  int            // how many, all at one height
	Sill   measure.Length // height of their lowest point
	Pipe   *PipeSilo      // hung in it on the outlet; nil for none

	// The seat.
	SeatAcross measure.Length // diameter on which the body sits in the base; 0 when it does not seat
	SeatHeight measure.Length // height of that line, from the foot up
	Body       measure.Mass   // body, ring, mesh and fittings, without seed
	Solid      measure.Volume // of lattice, ring and mesh: what of the body stands in the water inside
}

// PipeSilo is a pipe silo hung in a drum silo by its short pipe, which goes
// into the drum silo's outlet: all that leaves by the outlet has come up
// through its screen. Heights are above the underside of the drum silo's foot.
type PipeSilo struct {
	Inside measure.Length // inside diameter
	Screen Screen
	Bottom measure.Length // height of the screen
	Seed   Bed
	Out    Outlet         // its short pipe
	Invert measure.Length // height of that pipe's
	Rim    measure.Length // height of its open end
}

// Check refuses a silo that cannot be reckoned with: sizes out of all range,
// not a bad design. The error names the part.
func (s Silo) Check() error {
	rows := []sizeRow{
		{"base.bore", s.BaseBore, 100, 2000, "inside diameter of the base"},
		{"base.plenum", s.Plenum, 1, 2000, "head to foot; lengthen the base when the foot goes down to the head"},
		{"foot.inside", s.FootInside, 100, 2000, "inside diameter of the foot"},
		{"foot.outside", s.FootOutside, s.FootInside, 2000, "no less than the inside"},
		{"foot.height", s.FootHeight, 0, 1000, "up to where the wall is full"},
		{"bore", s.Bore, 100, 2000, "inside diameter of the plain wall"},
		{"outside", s.Outside, s.Bore, 2100, "no less than the bore"},
		{"rim", s.Rim, s.FootHeight, 5000, "above the foot's underside"},
		{"mesh.top", s.MeshTop, 0, s.Rim, "above the foot's underside"},
		{"ring.inside", s.BedAcross, 50, s.Bore, "inside the retaining ring"},
		{"outlet.invert", s.Invert, s.MeshTop, s.Rim, "between mesh and rim"},
		{"seat.across", s.SeatAcross, 0, s.Outside, "0 when the foot does not seat"},
		{"seat.height", s.SeatHeight, 0, s.Rim, "from the foot's underside up"},
	}
	if s.Slots > 0 {
		rows = append(rows,
			sizeRow{"handle.sill", s.Sill, 0, s.Rim, "above the foot's underside"},
			sizeRow{"handle.height", s.Slot.Height, 1, s.Rim, "of the slot"},
			sizeRow{"handle.length", s.Slot.Length, 1, s.Bore * 3, "round the wall"},
			sizeRow{"handle.corner", s.Slot.Corner, 0, min(s.Slot.Height, s.Slot.Length) / 2, "at most half of either side"})
	}
	if err := checkSizes(rows); err != nil {
		return err
	}
	switch {
	case !within(s.LatticeOpen, 0.05, 0.98):
		return fmt.Errorf("lattice.open_fraction: %g, outside what is reckoned, 0.05 to 0.98; hint: openings over the foot's inside area", s.LatticeOpen)
	case s.Slots < 0 || s.Slots > 100:
		return fmt.Errorf("handle.count: %d, not a number of slots, 0 to 100; hint: a silo has two", s.Slots)
	case !within(s.Body.Kg(), 0, 1000):
		return fmt.Errorf("body.mass: %g kg, outside what is reckoned, 0 to 1000 kg; hint: weigh the body with its ring", s.Body.Kg())
	case !within(s.Solid.Litres(), 0, 100):
		return fmt.Errorf("body.solid: %g L, outside what is reckoned, 0 to 100 L; hint: volume of lattice, ring and mesh", s.Solid.Litres())
	}
	err := errors.Join(s.Inlet.Check("inlet"), s.Mesh.Check("mesh"), s.Seed.Check("seed"), s.Outlet.Check("outlet"))
	if err == nil && s.Pipe != nil {
		err = s.Pipe.check(s.Rim)
	}
	return first(err)
}

// check refuses a pipe silo that cannot be reckoned with, in a drum silo as
// high as rim.
func (p PipeSilo) check(rim measure.Length) error {
	if err := checkSizes([]sizeRow{
		{"pipe_silo.inside", p.Inside, 20, 1000, "inside diameter"},
		{"pipe_silo.bottom", p.Bottom, -1000, 5000, "height of the screen above the drum silo's foot"},
		{"pipe_silo.invert", p.Invert, p.Bottom, 5000, "above the screen"},
		{"pipe_silo.rim", p.Rim, p.Invert, rim + 5000, "above the short pipe's invert"},
	}); err != nil {
		return err
	}
	return first(errors.Join(p.Screen.Check("pipe_silo.screen"), p.Seed.Check("pipe_silo.seed"), p.Out.Check("pipe_silo.outlet")))
}

// sizeRow is a length with its bounds in millimetres.
type sizeRow struct {
	key      string
	value    measure.Length
	low, top measure.Length
	hint     string
}

// checkSizes reports the first length out of its bounds.
func checkSizes(rows []sizeRow) error {
	for _, r := range rows {
		if !within(r.value.MM(), r.low.MM(), r.top.MM()) {
			return fmt.Errorf("%s: %s mm, outside what is reckoned, %s to %s mm; hint: %s", r.key, r.value.Metric(), r.low.Metric(), r.top.Metric(), r.hint)
		}
	}
	return nil
}

// first is the first of joined errors, so that one message is one line.
func first(err error) error {
	if j, ok := err.(interface{ Unwrap() []error }); ok {
		return j.Unwrap()[0]
	}
	return err
}

// footArea is the inside area of the foot, meshArea what of it the lattice
// leaves open, bedArea what the seed lies on.
func (s Silo) footArea() measure.Area { return Disc(s.FootInside) }
func (s Silo) meshArea() measure.Area { return s.footArea() * measure.Area(s.LatticeOpen) }
func (s Silo) bedArea() measure.Area  { return Disc(s.BedAcross) }
