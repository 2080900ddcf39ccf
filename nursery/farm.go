package nursery

import (
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/seed"
)

// Farm is all that a job says about its water and seed beside the silos
// themselves. Everything is optional: of what nobody described nothing is
// claimed, see Given. Elevations are above the level ground that the drum silos
// stand on.
type Farm struct {
	Supply   Supply
	Pump     Pump
	Suction  Suction
	Main     Main
	Manifold Manifold
	Lateral  Lateral
	Bed      Beds
	Failure  Failing
	Limits   Limits
	// Plan is the seed to be raised; nil for none. What of its silos and meshes
	// it leaves out is taken from the job's own silos.
	Plan *seed.Plan
}

// Supply is the water and how it meets the silos.
type Supply struct {
	Salinity    float64 // g/kg
	Temperature measure.Temperature
	// Each is the flow that each drum silo is to have; 0: what the manifold
	// gives, and without a pump what the seed on the mesh asks.
	Each measure.Flow
	// Below is how far the surface of the water pumped from lies under the
	// ground, at its lowest; negative when it stands higher. It counts only
	// when BelowKnown.
	Below      measure.Length
	BelowKnown bool
	// Hose takes the water on from each drum silo's outlet; without length the
	// outlets discharge freely.
	Hose                     flow.Hose
	HoseBends                int
	MeshFouled, ScreenFouled float64 // fractions of the open area lost
}

// Pump is the pump and its motor: a curve by points, or by shut-off head and a
// duty, or else power and efficiency for a guess.
type Pump struct {
	Points  []manifold.Point
	ShutOff measure.Length
	Duty    manifold.Point
	Power   measure.Power // the motor's output
	// Efficiency is the pump's and Motor the motor's with its drive, fractions.
	Efficiency, Motor float64
	NPSH              []manifold.Point // required, off the maker's curve
	HoursADay         float64
}

// Described reports whether anything tells the pump's head.
func (p Pump) Described() bool {
	return len(p.Points) > 0 || p.Duty.Flow != 0 || p.Power != 0
}

// Suction is the way from the water to the pump. Without length it is none, as
// for a pump that hangs in the water.
type Suction struct {
	Lift      measure.Length // the pump's centre over the water; negative when flooded
	Length    measure.Length
	Pipe      geometry.PipeRef
	Bends     int
	FootValve FootValve
	StrainerK float64 // of a strainer without foot valve, velocity heads in the pipe
}

// FootValve is the valve at the foot of the suction.
type FootValve string

// The foot valves, each with its strainer.
const (
	NoFootValve     FootValve = "none"
	HingedFootValve FootValve = "hinged"
	PoppetFootValve FootValve = "poppet"
)

// Main is the pipe from the pump to the manifold.
type Main struct {
	Pipe    geometry.PipeRef
	Length  measure.Length
	Bends   int
	Highest measure.Length // of its course, above the ground; 0: the manifold or the pump
}

// Manifold is the pipe along the silos. Without size it is taken to lose
// nothing, and nothing is said of it.
type Manifold struct {
	Pipe    geometry.PipeRef
	Spacing measure.Length // from tee to tee; 0: the widest drum and 150 mm
	First   measure.Length // from the main's end to the first tee, reckoned in the main's pipe
	Height  measure.Length // of its middle above the ground
	Feed    Feed
}

// Feed says where the main comes in.
type Feed string

// The feeds.
const (
	FedAtEnd    Feed = "end"
	FedAtCentre Feed = "centre"
)

// Lateral is the way from each tee to its silo.
type Lateral struct {
	ValveOpen float64 // fraction of a ball valve's travel
	ValveBore measure.Length
	Hose      measure.Length // length
	HoseBore  measure.Length // 0: that of the silo's inlet
	BarbBore  measure.Length // of the barb at each end of the hose; 0: the hose's
	HoseTop   measure.Length // its highest point above the ground; 0: the higher of its ends
}

// Beds is the seed that lies in the silos. The mass in a drum silo is the job's
// load.seed_kg.
type Beds struct {
	Size     measure.Length // diameter of a ball as large as one seed on the drum silo's mesh; 0: 1.2 openings of the mesh
	PipeMass measure.Mass   // in each pipe silo
	PipeSize measure.Length // on the pipe silo's screen; 0: 1.2 openings of the screen
	Density  measure.Density
	Voidage  float64
	// Sphericity is the surface of a ball as large over the seed's own.
	Sphericity float64
}

// Failing is what there is against a power failure.
type Failing struct {
	CheckValve   bool // a check valve in the main that holds
	AirBreak     bool // a vent or vacuum breaker on the main's highest point
	HoseAirBreak bool // one on the highest point of each hose
}

// Limits are what the farm's pipes are held to.
type Limits struct {
	Evenness float64 // least flow over mean
	Speed    measure.Speed
}

// Given says what the job described.
type Given struct {
	Flow     bool `json:"flow"`     // a design flow
	Pump     bool `json:"pump"`     // the pump's head
	Guess    bool `json:"guess"`    // by power and efficiency alone
	NPSH     bool `json:"npsh"`     // the NPSH it requires
	Source   bool `json:"source"`   // the level of the water pumped from
	Suction  bool `json:"suction"`  // a suction pipe
	Main     bool `json:"main"`     // the main's pipe
	Manifold bool `json:"manifold"` // the manifold's pipe
	Plan     bool `json:"seed"`     // seed to be raised
}

// Given says what of f was described.
func (f Farm) Given() Given {
	return Given{
		Flow: f.Supply.Each > 0, Pump: f.Pump.Described(),
		Guess: f.Pump.Described() && len(f.Pump.Points) == 0 && f.Pump.Duty.Flow == 0,
		NPSH:  len(f.Pump.NPSH) > 0, Source: f.Supply.BelowKnown, Suction: f.Suction.Length > 0,
		Main: f.Main.Pipe.Size != "", Manifold: f.Manifold.Pipe.Size != "", Plan: f.Plan != nil,
	}
}

// DefaultFarm is the farm of a job that says nothing: no pump, no pipes, no
// seed plan. Each value is common practice, no source.
func DefaultFarm() Farm {
	return Farm{
		Supply:   Supply{Salinity: 30, Temperature: 15},
		Pump:     Pump{Efficiency: 0.65, Motor: 0.85, HoursADay: 24},
		Suction:  Suction{FootValve: NoFootValve},
		Manifold: Manifold{Feed: FedAtEnd},
		Lateral:  Lateral{ValveOpen: 1, Hose: 3 * measure.Foot},
		Bed:      Beds{Density: 1500, Voidage: 0.5, Sphericity: 0.8},
		Limits:   Limits{Evenness: 0.9, Speed: 1.5 * measure.MetrePerSecond},
	}
}
