package proof

import (
	"strings"
	"testing"
)

// agreed are the defaults of the job file as they were agreed on: common
// practice, no source, but those on seed that FAO Fisheries Technical Paper
// 471 and Pfeiffer and Rusch 2001 give. A job that leaves a key out is built by
// these: none may change by a slip.
const agreed = `
lattice.across = 19 in (482.6 mm); in a metric job 485 mm (19.0945 in)
lattice.bars = 2
lattice.bar_width = 1 1/2 in (38.1 mm); in a metric job 40 mm (1.5748 in)
lattice.pilot = 1/4 in (6.35 mm); in a metric job 6 mm (0.2362 in)
ring.width = 1 in (25.4 mm); in a metric job 25 mm (0.9843 in)
mesh.opening = 1/16 in (1.5875 mm); in a metric job 1.6 mm (0.063 in)
mesh.thickness = 1/32 in (0.7938 mm); in a metric job 0.8 mm (0.0315 in)
mesh.trim = 1/2 in (12.7 mm); in a metric job 12 mm (0.4724 in)
mesh.open_fraction = 0.45
mesh.max_overlap = 3/8 in (9.525 mm); in a metric job 10 mm (0.3937 in)
handle.below_rim = 2 in (50.8 mm); in a metric job 50 mm (1.9685 in)
handle.height = 2 in (50.8 mm); in a metric job 50 mm (1.9685 in)
handle.length = 4 1/2 in (114.3 mm); in a metric job 115 mm (4.5276 in)
handle.round = 17 7/8 in (454.025 mm); in a metric job 452.5 mm (17.815 in)
outlet.below_rim = 6 in (152.4 mm); in a metric job 150 mm (5.9055 in)
outlet.pipe = 2; in a metric job 63
outlet.series = sch40; in a metric job pn10
outlet.saw = 2 1/2 in (63.5 mm); in a metric job 65 mm (2.5591 in)
outlet.nipple = 2 9/16 in (65.0875 mm); in a metric job 82 mm (3.2283 in)
inlet.above_ground = 4 in (101.6 mm); in a metric job 100 mm (3.937 in)
inlet.pipe = 1 1/2; in a metric job 50
inlet.series = sch40; in a metric job pn10
inlet.saw = 2 in (50.8 mm); in a metric job 52 mm (2.0472 in)
inlet.nipple = 2 3/8 in (60.325 mm); in a metric job 68 mm (2.6772 in)
inlet.stub = 6 in (152.4 mm); in a metric job 150 mm (5.9055 in)
drain.above_ground = 4 in (101.6 mm); in a metric job 100 mm (3.937 in)
drain.saw = 2 in (50.8 mm); in a metric job 52 mm (2.0472 in)
drain.stopper = 11
drain.round = 35 3/4 in (908.05 mm); in a metric job 905 mm (35.6299 in)
screws.size = 6; in a metric job ST3.5
screws.length = 3/4 in (19.05 mm); in a metric job 19 mm (0.748 in)
screws.spacing = 3 in (76.2 mm); in a metric job 75 mm (2.9528 in)
sealant.bead = 1/4 in (6.35 mm); in a metric job 6 mm (0.2362 in)
sealant.cartridge = 298.7 mL; in a metric job 300 mL
sealant.waste = 0.15
pipe_silo.pipe = 8; in a metric job 200
pipe_silo.series = sdr35; in a metric job en1401-sn4
pipe_silo.length = 14 in (355.6 mm); in a metric job 350 mm (13.7795 in)
pipe_silo.screen = 0.273 mm (0.0107 in)
pipe_silo.screen_thickness = 0.3 mm (0.0118 in)
pipe_silo.screen_open = 0.42
pipe_silo.drape = 3 in (76.2 mm); in a metric job 75 mm (2.9528 in)
pipe_silo.outlet_above_screen = 9 in (228.6 mm); in a metric job 230 mm (9.0551 in)
pipe_silo.saw = 2 1/2 in (63.5 mm); in a metric job 65 mm (2.5591 in)
pipe_silo.pipe_out = 1 1/2; in a metric job 50
pipe_silo.pipe_out_series = sch40; in a metric job pn10
pipe_silo.pipe_out_length = 4 in (101.6 mm); in a metric job 100 mm (3.937 in)
pipe_silo.bead = 1/4 in (6.35 mm); in a metric job 6 mm (0.2362 in)
saw.kerf = 1/16 in (1.5875 mm); in a metric job 1.5 mm (0.0591 in)
saw.oversize = 1/32 in (0.7938 mm); in a metric job 0.8 mm (0.0315 in)
load.seed_kg = 5 kg
load.time = 12 h
bench.trim = 1/4 in (6.35 mm); in a metric job 5 mm (0.1969 in)
bench.hold = 4 in (101.6 mm); in a metric job 100 mm (3.937 in)
bench.keep = 12 in (304.8 mm); in a metric job 300 mm (11.811 in)
rates.hose_per_inlet = 1500 mm (59.0551 in)
rates.hose_clamps = 2
rates.cement_joint = 6 mL
rates.primer_joint = 4 mL
rates.acetone_metre = 15 mL
rates.blade_life = 25000 mm (984.252 in)
rates.sandpaper_life = 15000 mm (590.5512 in)
rates.points_per_disc = 150
rates.holes_per_pilot_bit = 100
rates.marker_silos = 10
rates.tape_joints = 20
work.clean = 30 min
work.mark = 15 min
work.jigsaw_metre = 4 min
work.smooth_metre = 1.5 min
work.bore = 0.5 min
work.hole = 6 min
work.mesh_disc = 15 min
work.ring = 10 min
work.screw = 2 min
work.bead_metre = 4 min
work.pipe_cut = 4 min
work.socket = 3 min
work.grommet = 4 min
work.stopper = 1 min
work.seat = 5 min
work.leak_test = 15 min
work.rinse = 8 min
work.screen = 15 min
work.trim = 8 min
work.pipe_rinse = 3 min
work.set_up = 180 min
work.pipe_set_up = 45 min
work.learning = 0.9
work.crew = 1
work.hours_per_day = 8 h
work.clamps = 4
work.sealant_cure = 24 h
work.resin_cure = 12 h
work.full_cure = 168 h
work.leak_stand = 1 h
work.soak = 24 h
water.salinity = 30 g/kg
water.temperature = 15 °C
pump.efficiency = 65 %
pump.motor_efficiency = 85 %
pump.hours_per_day = 24 h
manifold.least_evenness = 90 %
manifold.most_speed = 1.5 m/s
lateral.valve_open = 100 %
lateral.hose = 36 in (914.4 mm); in a metric job 914.4 mm (36 in)
bed.density = 1500 kg/m³
bed.voidage = 50 %
bed.sphericity = 0.8
seed.arrival_week = 1
seed.weeks = 26
seed.sieve_ratio = 0.7
seed.size_spread = 20 %
seed.growth_spread = 30 %
seed.grade_at = 1.7
seed.mesh_margin = 20 %
seed.leave_on = 7 mm (0.2756 in)
seed.growth_length = 0.75 mm (0.0295 in)
seed.growth_weight = 5 %/day
seed.survival = 97 %
seed.bulk = 0.8 kg/L
seed.clearance = 0.5 L/h/g
seed.bed_depth = 50 mm (1.9685 in)
seed.load = 30 kg/m²
seed.water = 10 L/min/kg
seed.pipe_flow = 20 L/min
seed.drum_flow = 120 L/min
seed.weights of one clam = 0.3 mm: 0.006 mg, 0.5 mm: 0.027 mg, 1 mm: 0.21 mg, 2 mm: 1.8 mg, 5 mm: 27 mg, 10 mm: 210 mg, 20 mm: 1700 mg
seed.weights of one oyster = 0.3 mm: 0.009 mg, 0.5 mm: 0.04 mg, 1 mm: 0.3 mg, 2 mm: 2.2 mg, 5 mm: 27 mg, 10 mm: 190 mg, 20 mm: 1300 mg
seed.weights of one scallop = 0.3 mm: 0.006 mg, 0.5 mm: 0.027 mg, 1 mm: 0.21 mg, 2 mm: 1.6 mg, 5 mm: 20 mg, 10 mm: 130 mg, 20 mm: 900 mg
seed.weights of one mussel = 0.3 mm: 0.004 mg, 0.5 mm: 0.018 mg, 1 mm: 0.13 mg, 2 mm: 1 mg, 5 mm: 14 mg, 10 mm: 100 mg, 20 mm: 700 mg
`

// Every default is the one agreed on, and each is in the ledger.
func TestDefaults(t *testing.T) {
	want := map[string]string{}
	for line := range strings.Lines(strings.TrimSpace(agreed)) {
		key, value, _ := strings.Cut(strings.TrimSpace(line), " = ")
		want[key] = value
	}
	got := map[string]bool{}
	for _, r := range defaults() {
		key, _, _ := strings.Cut(r.What, ":")
		got[key] = true
		if r.Value != want[key] {
			t.Errorf("%s is %q, agreed on was %q", key, r.Value, want[key])
		}
	}
	for key := range want {
		if !got[key] {
			t.Errorf("%s is not in the ledger", key)
		}
	}
}
