package sheets

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// withWater adds invented water and seed to a pack.
func withWater(p Pack) Pack {
	u, gpm, lmin := p.Units, measure.GallonPerMinute, measure.LitrePerMinute
	lost := func(mm length) string { return mm.Both(u) }
	level := func(q float64) length { return length(6.2 * math.Pow(q/lmin.LMin(), 0.62)) }
	s := &LevelSection{Bore: 576, Wall: 4, Rim: 191, Slot: &SlotSeen{Sill: 90, Top: 134, Long: 120}, Outlet: 52.5, Nipple: 3.9, Stub: 60, Mesh: -420,
		Design: LevelAt{35 * lmin, level(35)}, Says: (35 * lmin).Both(u),
		Pipe: &PipeSeen{Outside: 159, Wall: 5, Gap: 60, Rim: 140, Screen: -330, Surface: level(35) - 14}}
	s.Design.Level = level(35)
	for q := 0.0; q <= 290; q += 4 {
		s.Curve = append(s.Curve, LevelAt{measure.Flow(q) * lmin, level(q)})
	}
	at := func(z float64) measure.Flow { return measure.Flow(math.Pow(z/6.2, 1/0.62)) * lmin }
	s.Marks = []LevelMark{{LevelAt{at(90), 90}, "water reaches the handle slots' sill and spills", at(90).Both(u)}, {LevelAt{at(191), 191}, "water reaches the rim", at(191).Both(u)}}
	flows := &SiloFlows{Mean: 34.2 * lmin, MeanSays: (34.2 * lmin).Both(u), Says: []string{"Silo 1 gets the most, 36.4 L/min; silo 20 the least, 31.7 L/min, 93 % of the mean: even enough",
		"With one silo shut the others get 1.6 L/min more at most, and none spills"}}
	for i := range 20 {
		q := measure.Flow(36.4-0.25*float64(i)) * lmin
		x := SiloFlow{Name: fmt.Sprint(i + 1), Flow: q, Says: q.Both(u), Level: level(q.LMin()).Both(u), Freeboard: (90 - level(q.LMin())).Both(u), Valve: "0.6 open"}
		if i == 19 {
			x.Worst, x.Note, x.Valve = geometry.Caution, "least: open its valve first", "open"
		}
		flows.Silos = append(flows.Silos, x)
	}
	pump := &PumpChart{Duty: HeadAt{181 * gpm, 14.1 * measure.Foot}, DutySays: "181 gpm (684 L/min) at 14.1 ft (4.3 m)", Estimated: "The pump's curve is estimated from its power and an efficiency: ask the maker for the measured one"}
	for q := 0.0; q <= 320; q += 8 {
		pump.Pump = append(pump.Pump, HeadAt{measure.Flow(q) * gpm, length(22.1-7.99*(q/181)*(q/181)) * measure.Foot})
		pump.System = append(pump.System, HeadAt{measure.Flow(q) * gpm, length(6+8.1*math.Pow(q/181, 1.85)) * measure.Foot})
	}
	p.Water = &Water{
		Says: []Said{
			{geometry.OK, "each drum silo gets 8.4 to 9.6 gpm (31.7 to 36.4 L/min); the mean is 9 gpm (34.2 L/min)", "manifold solved at once; Darcy-Weisbach with Swamee-Jain"},
			{geometry.OK, "at the design flow of 9.2 gpm (35 L/min) water stands 2 1/4 in (56.2 mm) above the outlet's invert, 3/8 in (9.8 mm) under the handle slots", "part-full outlet as a weir"},
			{geometry.Caution, "the handle slots spill first, from 11.9 gpm (45 L/min) on: never open one silo's valve while the others are shut", ""},
			{geometry.Stop, "with the mesh a third fouled the body lifts off its seat: weight it with 11 lb (5 kg) or strap it down", "pressure over the foot's area against the weight"}},
		Section: s, Flows: flows, Pump: pump,
		Losses: []Loss{{"inlet stub and fittings", lost(38), "", "two elbows", false}, {"plenum", lost(1.2), "", "", false}, {"lattice", lost(2), "", "", false},
			{"mesh", lost(4), lost(31), "a third of the openings shut", false}, {"seed", lost(22), "", "packed", false}, {"whole silo", lost(67.2), lost(94.2), "", true}},
		Seat:     []Amount{{"lift on the body, mesh clean", "41 lb (18.6 kg)"}, {"lift on the body, mesh fouled", "63 lb (28.6 kg)"}, {"weight of body and wet seed", "52 lb (23.6 kg)"}},
		SeatSays: Said{geometry.Stop, "fouled it lifts: weight or strap it", ""},
		Lines: []Amount{{"duty", pump.DutySays}, {"power at the shaft", "0.9 hp (0.7 kW)"}, {"energy, 24 h a day for 180 days", "4,100 kWh a year, USD 615.00"},
			{"NPSH available", "24 ft (7.3 m)"}, {"NPSH required", "9 ft (2.7 m)"}},
		Pipes: []PipeRow{{"suction", "NPS 3 Schedule 40", "181 gpm (685 L/min)", "7.9 ft/s (2.4 m/s), limit 5 ft/s", "2.1 ft (640 mm)", "NPS 4 Schedule 40", geometry.Caution},
			{"main, pump to feed", "NPS 3 Schedule 40", "181 gpm (685 L/min)", "7.9 ft/s (2.4 m/s)", "4.4 ft (1341 mm)", "NPS 4 Schedule 40", geometry.Caution}, {"hose to each silo", "1 in hose", "9 gpm (34.2 L/min)", "3.6 ft/s (1.1 m/s)", "0.8 ft (244 mm)", "", geometry.OK}},
		Failure: []string{"The pump stops and water runs back through it to the source until the foot valve closes", "Each silo drains down to its outlet's invert and no further: the seed stays wet", "How long the oxygen in the standing water lasts is not computed: no published basis was found"},
		Basis:   []BasisLine{{"density and viscosity of sea water", "EOS-80; Sharqawy et al. 2010"}, {"friction in pipes", "Swamee and Jain 1976"}}}
	um := func(x float64) length { return length(x) / 1000 }
	seed := &Seed{
		Says: []Said{{geometry.OK, "2,000,000 seed of 1.5 mm arrive in week 1 and leave at 15 mm in week 20", "the job"},
			{geometry.Caution, "the peak, week 19, needs 26 drum silos: the job has 20", "bed depth and load per silo"}},
		Ladder: &MeshLadder{Across: "sieve that holds the smallest seed", Rungs: []MeshRung{
			{"screen 250 µm, pipe silo", 0.28, 0.62, "0.28 to 0.62 mm", "", 0}, {"screen 500 µm, pipe silo", 0.55, 1.3, "0.55 to 1.3 mm", "this job's screen", 0},
			{"screen 1 mm, pipe silo", 1.1, 3.4, "1.1 to 3.4 mm", "", 0}, {"mesh 1/8 in, drum silo", 3.5, 0, "3.5 mm and up", "this job's mesh", 0}, {"mesh 1/4 in, drum silo", 7, 0, "7 mm and up", "", 0}},
			Marks: []SizeMark{{1.2, "arrives"}, {11, "leaves"}, {3.5, "pipe silo to drum silo"}}, Says: []string{"move from pipe silos to drum silos in week 6, when the smallest seed is held by a sieve of 3.5 mm"}},
		Counts: []CountRow{{"seed in a litre", "141,000", "133,000 to 149,000", "5 samples, 95 %"}, {"mass of one", "0.42 mg", "0.39 to 0.45 mg", ""}},
		Food:   []Amount{{"water cleared by the seed", "61 gpm (231 L/min)"}, {"water delivered", "181 gpm (685 L/min)"}, {"share cleared at the peak", "34 %"}},
		Basis:  []BasisLine{{"weight by length", "FAO Fisheries Technical Paper 471, §6.1"}, {"growth", "the grower's own"}}, FoodSays: Said{geometry.OK, "food lasts at all weeks", "common practice, no source"},
	}
	plan := &SeedPlan{DrumHave: 20, PipeHave: 12, Peak: []string{"the most drum silos, 26, and the most flow, 234 gpm (886 L/min), are needed in week 19"}}
	for n := 1; n <= 20; n++ {
		w := SeedWeek{Week: n, Size: um(1500 + 700*float64(n-1)).Both(u), Count: fmt.Sprint(2000000 - 40000*n), Mass: fmt.Sprintf("%d lb (%d kg)", 2*n*n, n*n), Mesh: "mesh 1/8 in", Governs: "bed depth"}
		if n < 6 {
			w.Pipe, w.Mesh = 2*n, "screen 500 µm"
		} else {
			w.Drum = n + 7
		}
		w.Flow = measure.Flow(9*(w.Drum+w.Pipe)) * gpm
		w.FlowSays = w.Flow.Both(u)
		w.Peak = n == 19
		if n == 6 {
			w.Does = "move to drum silos"
		}
		if n%5 == 0 {
			w.Does, w.Level = "grade", geometry.Caution
		}
		plan.Weeks = append(plan.Weeks, w)
	}
	plan.Weeks[19].Drum, plan.Weeks[19].Flow = 20, 180*gpm
	seed.Plan = plan
	p.Seed = seed
	return p
}

// plain is a pack without pipe silo and slot, of many silos and weeks.
func plain(p Pack) Pack {
	s, w := p.Water.Section, p.Seed.Plan
	s.Pipe, s.Slot, s.Mesh, s.Marks = nil, nil, -70, s.Marks[1:]
	for n := 21; n <= 60; n++ {
		x := w.Weeks[n%20]
		x.Week, x.Peak = n, false
		w.Weeks = append(w.Weeks, x)
	}
	for n := 21; n <= 200; n++ {
		x := p.Water.Flows.Silos[n%19]
		x.Name = fmt.Sprint(n)
		p.Water.Flows.Silos = append(p.Water.Flows.Silos, x)
	}
	p.Water.Pump = nil
	return p
}

// growParts are the sections of water and seed.
var growParts = []string{"water", "seed"}

// The pages of the invented nursery, to be looked at: SHEETS_OUT names a
// directory they are written to.
func TestGrowPages(t *testing.T) {
	for name, c := range map[string]struct {
		u     measure.Unit
		paper Paper
		but   func(Pack) Pack
	}{"grow-letter": {measure.UnitInch, Letter, withWater}, "grow-A4": {measure.UnitMM, A4, withWater}, "grow-small": {measure.UnitInch, Paper{180, 200}, withWater},
		"grow-plain": {measure.UnitMM, A4, func(p Pack) Pack { return plain(withWater(p)) }}} {
		secs, err := Sections(c.but(packOf(t, c.u, 12, drum("blue", 20, 23))), c.paper, growParts...)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range secs {
			for i, d := range s.Pages {
				checkPage(t, fmt.Sprintf("%s, %s page %d", name, s.ID, i+1), d)
			}
		}
		if dir := os.Getenv("SHEETS_OUT"); dir != "" {
			if err := os.WriteFile(filepath.Join(dir, name+".pdf"), bookOf(t, secs), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// A column of the silos that nothing stands in is not there: no valves without
// a pump, no notes where nothing is the matter.
func TestEmptyColumnsOfSilosAreLeftOut(t *testing.T) {
	for _, c := range []struct{ valve, note string }{{"", ""}, {"half open", ""}, {"", "gets no water"}, {"half open", "gets no water"}} {
		f := newFlow(Letter, measure.UnitMM, "Trial", "Water")
		f.flowTable(&SiloFlows{Silos: []SiloFlow{{Name: "1", Says: "9 L/min", Level: "50 mm", Freeboard: "40 mm", Valve: c.valve, Note: c.note}}})
		words := wordsOf(f.pages...)
		if strings.Contains(words, "Valve") != (c.valve != "") {
			t.Errorf("valve %q: %s", c.valve, words)
		}
		if !strings.Contains(words, c.valve) || !strings.Contains(words, c.note) {
			t.Errorf("%q or %q is missing: %s", c.valve, c.note, words)
		}
	}
}

// What two drum kinds say alike stands once, however little else differs.
func TestSaidOnce(t *testing.T) {
	f := newFlow(Letter, measure.UnitMM, "Trial", "Water")
	var from sources
	f.saying(&from, Said{Words: "it spills", Level: geometry.Caution}, Said{Words: "it holds"}, Said{Words: "it spills", Level: geometry.Caution}, Said{Words: "it spills", Level: geometry.Stop})
	words := wordsOf(f.pages...)
	if strings.Count(words, "Caution: It spills.") != 1 || strings.Count(words, "STOP: It spills.") != 1 || strings.Count(words, "It holds.") != 1 {
		t.Error(words)
	}
}
