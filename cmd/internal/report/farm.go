package report

import (
	"fmt"
	"strings"

	"silowright/bom/money"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/seed"
)

// Water is what the pump gives and how the water stands. Flows are in L/min,
// lengths and heads in mm, speeds in mm/s, masses in kg, powers in W.
type Water struct {
	Given    nursery.Given      `json:"given"`
	Salinity float64            `json:"salinity_g_kg"`
	Celsius  float64            `json:"temperature_c"`
	Density  float64            `json:"density_kg_m3"`
	FlowFrom string             `json:"flow_from"`
	Total    float64            `json:"total_l_min"`
	Mean     float64            `json:"mean_l_min"`
	Evenness float64            `json:"evenness"`
	Silos    []SiloWater        `json:"silos"`
	Kinds    []KindWater        `json:"kinds"`
	Pump     *Pump              `json:"pump,omitempty"`
	Asks     *Asks              `json:"asks_of_a_pump,omitempty"`
	Failure  []string           `json:"power_failure,omitempty"`
	Findings []geometry.Finding `json:"findings"`
}

// SiloWater is what one silo gets.
type SiloWater struct {
	Place     int     `json:"place"`
	Drum      string  `json:"drum"`
	PipeSilo  bool    `json:"pipe_silo"`
	Flow      float64 `json:"flow_l_min"`
	Level     float64 `json:"level_over_invert_mm"`
	ToSill    float64 `json:"freeboard_to_sill_mm"`
	ToRim     float64 `json:"freeboard_to_rim_mm"`
	Upwelling float64 `json:"upwelling_mm_s"`
	Bed       string  `json:"seed"`
	Head      float64 `json:"head_asked_mm"`
	Valve     float64 `json:"valve_k,omitempty"`
}

// KindWater is one kind of silo at the least and the most flow of its silos.
type KindWater struct {
	Drum     string       `json:"drum"`
	PipeSilo bool         `json:"pipe_silo"`
	Count    int          `json:"count"`
	Least    Losses       `json:"least"`
	Most     Losses       `json:"most"`
	Spills   []Spill      `json:"spills"`
	Curve    []LevelPoint `json:"level_by_flow"`
}

// Losses are the heads lost through a silo, and the balance on its seat.
type Losses struct {
	Flow      float64 `json:"flow_l_min"`
	Inlet     float64 `json:"inlet_mm"`
	Plenum    float64 `json:"plenum_mm"`
	Lattice   float64 `json:"lattice_mm"`
	MeshClean float64 `json:"mesh_clean_mm"`
	Mesh      float64 `json:"mesh_fouled_mm"`
	Seed      float64 `json:"seed_mm"`
	Head      float64 `json:"head_fouled_mm"`
	Lift      float64 `json:"lift_kg"`
	Weight    float64 `json:"weight_kg"`
}

// Spill is what leaves a silo from a flow up.
type Spill struct {
	What string  `json:"what"`
	From float64 `json:"from_l_min"`
}

// LevelPoint is a level at a flow.
type LevelPoint struct {
	Flow  float64 `json:"flow_l_min"`
	Level float64 `json:"level_mm"`
}

// Pump is the pump at work.
type Pump struct {
	Flow      float64      `json:"flow_l_min"`
	Head      float64      `json:"head_mm"`
	Input     float64      `json:"input_w"`
	KWhAYear  float64      `json:"kwh_a_year"`
	Energy    *money.Money `json:"energy_a_year"`
	Estimated bool         `json:"estimated"`
	Available float64      `json:"npsh_available_mm"`
	Required  *float64     `json:"npsh_required_mm"`
	MostEven  float64      `json:"most_even_l_min"`
}

// Asks is what a pump must give.
type Asks struct {
	Flow float64 `json:"flow_l_min"`
	Head float64 `json:"head_mm"`
}

// WaterOf makes the report's part on water; nil when nothing is built.
func WaterOf(p *plan.Plan) *Water {
	s := p.Water
	if s == nil {
		return nil
	}
	w := &Water{Given: s.Given, Salinity: s.Water.Salinity, Celsius: float64(s.Water.Temperature), Density: float64(s.Water.Density), FlowFrom: string(s.From),
		Total: s.Total.LMin(), Mean: s.Mean.LMin(), Evenness: s.Evenness, Silos: []SiloWater{}, Kinds: []KindWater{}, Findings: s.Findings(p.Job.Units)}
	for i, o := range s.Silos {
		q := SiloWater{Place: o.Place, Drum: o.Drum, PipeSilo: o.Piped, Flow: o.Flow.LMin(), Level: o.Level.MM(), ToSill: o.ToSill.MM(), ToRim: o.ToRim.MM(),
			Upwelling: float64(o.Upwelling), Bed: o.Bed.String(), Head: o.Head.MM()}
		if s.Pumping != nil && i < len(s.Pumping.Settings.Settings) {
			q.Valve = s.Pumping.Settings.Settings[i].K
		}
		w.Silos = append(w.Silos, q)
	}
	for _, g := range s.Groups {
		k := KindWater{Drum: g.Drum, PipeSilo: g.Piped, Count: g.Count, Least: lossesOf(g.Least), Most: lossesOf(g.Most), Spills: []Spill{}, Curve: []LevelPoint{}}
		for _, x := range g.Spills {
			k.Spills = append(k.Spills, Spill{x.What, x.From.LMin()})
		}
		for _, x := range g.Levels(s.Water) {
			k.Curve = append(k.Curve, LevelPoint{x.Flow.LMin(), x.Level.MM()})
		}
		w.Kinds = append(w.Kinds, k)
	}
	if s.Pumping != nil {
		w.Pump = pumpOf(s.Pumping)
		w.Pump.Energy = p.Energy
	}
	if s.Asks != nil {
		w.Asks = &Asks{s.Asks.Total.LMin(), s.Asks.Head.MM()}
	}
	if s.Failure != nil {
		w.Failure = FailureSays(*s.Failure, p.Job.Units)
	}
	return w
}

func lossesOf(d flow.Study) Losses {
	c, f, s := d.Clean, d.Fouled, d.FouledSeat
	return Losses{Flow: d.Flow.LMin(), Inlet: f.Inlet.MM(), Plenum: f.Plenum.MM(), Lattice: f.Lattice.MM(), MeshClean: c.Mesh.MM(), Mesh: f.Mesh.MM(), Seed: f.Seed.MM(),
		Head: d.FouledHead.MM(), Lift: (s.Shoulder + s.Drop).Kg(), Weight: s.Weight.Kg()}
}

func pumpOf(p *nursery.Pumping) *Pump {
	at, n := p.Result.Pump, p.Result.NPSH
	out := &Pump{Flow: at.Flow.LMin(), Head: at.Head.MM(), Input: float64(at.Input), KWhAYear: p.KWhAYear, Estimated: at.Estimated, Available: n.Available.MM(), MostEven: p.MostEven.LMin()}
	if n.Known {
		r := n.Required.MM()
		out.Required = &r
	}
	return out
}

// FailureSays is what a power failure does, a sentence each: of the whole, then
// of each way that silos go, by the first silo that does.
func FailureSays(f manifold.Failure, u measure.Unit) []string {
	out := []string{f.Says()}
	type way struct {
		way    manifold.Way
		siphon bool
		dry    bool
	}
	seen := map[way]bool{}
	for _, s := range f.Silos {
		if k := (way{s.Way, s.Siphon, s.Bare}); !seen[k] {
			seen[k] = true
			out = append(out, s.Says(u))
		}
	}
	return out
}

// Seed is the seed plan week by week.
type Seed struct {
	Species string     `json:"species"`
	Drums   int        `json:"drum_silos"`
	Pipes   int        `json:"pipe_silos"`
	Peak    SeedPeak   `json:"peak"`
	Reached bool       `json:"reaches_size_to_leave"`
	Weeks   []SeedWeek `json:"weeks"`
	Ladder  []Rung     `json:"mesh_ladder"`
}

// SeedPeak is the most that any week needs.
type SeedPeak struct {
	Drum     int     `json:"drum_silos"`
	DrumWeek int     `json:"drum_week"`
	Pipe     int     `json:"pipe_silos"`
	PipeWeek int     `json:"pipe_week"`
	Flow     float64 `json:"flow_l_min"`
	FlowWeek int     `json:"flow_week"`
}

// SeedWeek is one week.
type SeedWeek struct {
	Week    int     `json:"week"`
	Shell   float64 `json:"shell_mm"`
	Sieve   float64 `json:"smallest_sieve_mm"`
	Count   int     `json:"count"`
	Mass    float64 `json:"mass_kg"`
	Mesh    string  `json:"mesh"`
	Drum    int     `json:"drum_silos"`
	Pipe    int     `json:"pipe_silos"`
	Flow    float64 `json:"flow_l_min"`
	Governs string  `json:"governs"`
	Load    float64 `json:"load_kg_m2"`
	Depth   float64 `json:"depth_mm"`
	Grade   bool    `json:"grade"`
	Food    float64 `json:"share_of_water_cleared"`
}

// Rung is one mesh and the seed it serves.
type Rung struct {
	Mesh string  `json:"mesh"`
	In   string  `json:"in"`
	From float64 `json:"from_sieve_mm"`
	To   float64 `json:"to_sieve_mm"`
}

// SeedOf makes the report's part on seed; nil without a seed plan.
func SeedOf(p *plan.Plan) *Seed {
	if p.Water == nil || p.Water.Seed == nil {
		return nil
	}
	s := p.Water.Seed
	k := s.Need.Peak
	out := &Seed{Species: s.Plan.Species.String(), Drums: s.Drums, Pipes: s.Pipes, Reached: s.Need.Reached, Weeks: []SeedWeek{}, Ladder: []Rung{},
		Peak: SeedPeak{k.Drum, k.DrumWeek, k.Pipe, k.PipeWeek, k.Flow.LMin(), k.FlowWeek}}
	for _, w := range s.Need.Weeks {
		out.Weeks = append(out.Weeks, SeedWeek{Week: w.Week, Shell: w.Shell.Length().MM(), Sieve: w.Smallest.Length().MM(), Count: w.Count, Mass: w.Mass.Kg(), Mesh: w.Mesh.Name,
			Drum: w.Drum, Pipe: w.Pipe, Flow: w.Flow.LMin(), Governs: w.Governs.String(), Load: float64(w.PerSilo.Load), Depth: w.PerSilo.Depth.MM(), Grade: w.Grade, Food: w.Food.Share})
	}
	for _, r := range LadderOf(s.Plan, s.Need) {
		out.Ladder = append(out.Ladder, Rung{r.Mesh.Name, r.Mesh.In.String(), r.From.Length().MM(), r.To.Length().MM()})
	}
	return out
}

// LadderOf is the ladder of a plan's meshes from arrival to leaving; none when
// no mesh holds the seed as it comes.
func LadderOf(p seed.Plan, n seed.SiloNeed) []seed.Rung {
	if len(n.Weeks) == 0 {
		return nil
	}
	rungs, err := seed.Ladder(p.Meshes, n.Weeks[0].Smallest, p.LeaveOn, p.MeshMargin)
	if err != nil {
		return nil
	}
	return rungs
}

// SilosAtMost is what a season needs at most of a kind of silo, and when: "6 pipe
// silos, in week 4", or "no pipe silo".
func SilosAtMost(n int, kind string, week int) string {
	switch n {
	case 0:
		return "no " + kind + " silo"
	case 1:
		return fmt.Sprintf("1 %s silo, in week %d", kind, week)
	}
	return fmt.Sprintf("%d %s silos, in week %d", n, kind, week)
}

// WeekDoes is what is done in a week: "move to drum silos; grade".
func WeekDoes(w seed.Week) string {
	var out []string
	for _, x := range []struct {
		does bool
		what string
	}{{w.Moved, "move to drum silos"}, {w.NewMesh && !w.Moved, "coarser mesh"}, {w.Split, "split"}, {w.Grade, "grade"}, {w.Leaves, "leaves"}} {
		if x.does {
			out = append(out, x.what)
		}
	}
	return strings.Join(out, "; ")
}
