package job

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"silowright/nursery"
	"silowright/nursery/seed"
)

const watered = `
[water]
salinity = 28
temperature = "59 °F"
flow = "9 gpm"
below_ground = "4 ft"
mesh_fouled = 30

[pump]
curve = [{flow = "0 gpm", head = "42 ft"}, {flow = "150 gpm", head = "35 ft"}, {flow = "15 L/s", head = "6 m"}]
efficiency = "60 %"
kwh_price = "0.185"

[main]
pipe = 3
length = "60 ft"

[manifold]
pipe = "3"
series = "sch40"
feed = "centre"

[failure]
check_valve = true

[seed]
species = "oyster"
count = 400000
size = 1.2
growth = "weight"
growth_weight = 6
pipe_meshes = [0.3, "0.6 mm"]
drum_meshes = [1.6]
weights = [{size = 1, each = 0.3}, {size = 8, each = "110 mg"}]
week_table = [{growth = 5, survival = 90}]
drum_flow = "30 gpm"
`

func TestFarm(t *testing.T) {
	f, err := Parse("job.toml", []byte(strings.Replace(least, "drum_silos = 3", `drum_silos = "from seed plan"`, 1)+watered))
	if err != nil {
		t.Fatal(err)
	}
	q := f.Farm
	near := func(name string, got, want, tol float64) {
		t.Helper()
		if math.Abs(got-want) > tol {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	near("salinity", q.Supply.Salinity, 28, 0)
	near("temperature", float64(q.Supply.Temperature), 15, 1e-9)
	near("flow", q.Supply.Each.GPM(), 9, 1e-9)
	near("below ground", q.Supply.Below.MM(), 1219.2, 1e-9)
	near("fouled", q.Supply.MeshFouled, 0.3, 1e-12)
	near("head", q.Pump.Points[1].Head.MM(), 35*304.8, 1e-9)
	near("15 L/s", q.Pump.Points[2].Flow.LMin(), 900, 1e-9)
	if f.Energy == nil || f.Energy.Cmp(big.NewRat(37, 200)) != 0 {
		t.Errorf("a kilowatt hour at %v", f.Energy)
	}
	near("efficiency", q.Pump.Efficiency, 0.6, 1e-12)
	if q.Main.Pipe.Size != "3" || q.Manifold.Feed != nursery.FedAtCentre || !q.Failure.CheckValve || !f.FromSeed.Drum || f.FromSeed.Pipe {
		t.Errorf("%+v, %+v", q, f.FromSeed)
	}
	p := q.Plan
	if p.Species != seed.Oyster || p.Count != 400000 || p.Growth != seed.ByWeight || len(p.Meshes) != 3 || p.Meshes[1].In != seed.Pipe || p.Meshes[2].In != seed.Drum {
		t.Errorf("%+v", p)
	}
	near("seed's size", p.Size.Length().MM(), 1.2, 1e-12)
	near("110 mg", float64(p.Weights[1].Each), 110e-6, 1e-15)
	near("week", p.WeekTable[0].Weight, 0.05, 1e-12)
	near("drum flow", p.DrumHouse.Most.GPM(), 30, 1e-9)
}

// Bare flows are in the job's own unit.
func TestBareFlow(t *testing.T) {
	f, err := Parse("job.toml", []byte(least+"[water]\nflow = 9\n"))
	if err != nil || math.Abs(f.Farm.Supply.Each.GPM()-9) > 1e-9 {
		t.Errorf("%v, %v", f, err)
	}
	f, err = Parse("job.toml", []byte(strings.Replace(strings.Replace(least, `"in"`, `"mm"`, 1), "", "", 1)))
	if err == nil { // inches read as millimetres cannot be a drum
		t.Errorf("%+v", f)
	}
}

// A percentage under one is taken where it cannot be a share of one: written
// with its unit, or nought.
func TestSmallPercentage(t *testing.T) {
	f, err := Parse("job.toml", []byte(least+"[water]\nmesh_fouled = \"0.3 %\"\nscreen_fouled = 0\n[seed]\ncount = 5\nsize = 1\nsize_spread = 1\n"))
	if err != nil || math.Abs(f.Farm.Supply.MeshFouled-0.003) > 1e-12 || f.Farm.Supply.ScreenFouled != 0 || math.Abs(f.Farm.Plan.Spread-0.01) > 1e-12 {
		t.Errorf("%v, %+v", err, f)
	}
}

func TestWrongFarm(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"[water]\nsalt = 3", `unknown key "water.salt"; hint: `},
		{"[water]\nsalinity = 50", `water.salinity: 50 is out of range, allowed: 0 to 42 g/kg`},
		{"[water]\nsalinity = \"much\"", `water.salinity: "much" is not a number, allowed: 0 to 42 g/kg`},
		{"[water]\ntemperature = \"200 °F\"", `is out of range, allowed: 0 to 40 °C`},
		{"[water]\nflow = \"9 cups\"", `water.flow: "9 cups" is not a flow`},
		{"[water]\nflow = -1", `water.flow: -1 is out of range`},
		{"[water]\nflow = nan", `water.flow: NaN is not a flow`},
		{"[water]\nflow = \"1e999 gpm\"", `water.flow: "1e999 gpm" is not a flow`},
		{"[water]\noutlet_hose = \"3 ft\"", `water.outlet_hose_bore: 0 mm, not a hose's`},
		{"[pump]\ncurve = 3", `pump.curve: 3 is not a list of points`},
		{"[pump]\ncurve = [3]", `pump.curve: 3 is not a point`},
		{"[pump]\ncurve = [{flow = 3}]", `pump.curve: is missing, allowed: flow and head`},
		{"[pump]\ncurve = [{flow = 3, head = 40}]", `pump.curve.head: 40 has no unit`},
		{"[pump]\ncurve = [{flow = 3, head = \"40 ft\", x = 1}]", `unknown key "pump.curve.x"`},
		{"[pump]\npower = \"5 horses\"", `pump.power: "5 horses" is not a power`},
		{"[pump]\nkwh_price = \"cheap\"", `pump.kwh_price: "cheap" is not a price, allowed: 0 to 1000000 USD`},
		{"[pump]\nkwh_price = -1", `pump.kwh_price: -1 is not a price`},
		{"[pump]\npower = \"5 hp\"", `water.below_ground: not given, needed with a pump`},
		{"[manifold]\npipe = \"17\"", `manifold.pipe: "17" is not a pipe size of the tables`},
		{"[manifold]\nfeed = \"both\"", `manifold.feed: "both" is not known here, allowed: end, centre`},
		{"[failure]\ncheck_valve = \"yes\"", `failure.check_valve: "yes" is not yes or no`},
		{"[bed]\nsize = \"0.004 mm\"", `bed.size: 0.004 mm (0.00016 in), not a seed's`},
		{"[seed]\nsize = 1", `seed.count: is missing`},
		{"[seed]\ncount = 5\nsize = 1\nspecies = \"whale\"", `seed.species: "whale" is not known here, allowed: clam`},
		{"[seed]\ncount = 1.5\nsize = 1", `seed.count: 1.5 is not a whole number`},
		{"[seed]\ncount = 5\nsize = \"1 ft\"", `seed.size: "1 ft" is out of range`},
		{"[seed]\ncount = 5\nsize = 1\npipe_meshes = 3", `seed.pipe_meshes: 3 is not a list`},
		{"[seed]\ncount = 5\nsize = 1\nweights = [{size = 1}]", `seed.weights.each: is missing`},
		{"[seed]\ncount = 5\nsize = 1\nweights = [{size = 1, each = \"x\"}]", `seed.weights.each: "x" is not a number`},
		{"[water]\nmesh_fouled = 0.3", `water.mesh_fouled: 0.3 may be a share of one, and this is in %, allowed: 0 to 99 %; hint: write 30 for 30 %, or "0.3 %"`},
		{"[water]\nscreen_fouled = \"0.07\"", `water.screen_fouled: "0.07" may be a share of one, and this is in %, allowed: 0 to 99 %; hint: write 7 for 7 %, or "0.07 %"`},
		{"[pump]\nefficiency = 0.62", `pump.efficiency: 0.62 may be a share of one, and this is in %, allowed: 1 to 100 %; hint: write 62 for 62 %`},
		{"[seed]\ncount = 5\nsize = 1\nmesh_margin = 0.2", `seed.mesh_margin: 0.2 may be a share of one, and this is in %`},
		{"[seed]\ncount = 5\nsize = 1\nweek_table = [{growth = 0.5, survival = 0.95}]", `seed.week_table.survival: 0.95 may be a share of one, and this is in %, allowed: 0 to 100 %; hint: write 95 for 95 %, or "0.95 %"`},
		{"[seed]\ncount = 5\nsize = 1\ngrowth = \"weight\"\ngrowth_weight = 0.05", `seed.growth_weight: 0.05 may be a share of one, and this is in %/day, allowed: 0 to 30 %/day; hint: write 5 for 5 %/day, or "0.05 %/day"`},
		{"[mesh]\nopen_fraction = \"42 %\"", `mesh.open_fraction: "42 %" is not a number, allowed: 0.05 to 0.95; hint: write a share as a fraction of one: 0.15 for 15 %`},
		{"[seed]\ncount = 5\nsize = 1\nsurvival = 0", `seed.survival: 0 is out of range, allowed: 1 to 100 %`},
	} {
		_, err := Parse("job.toml", []byte(least+c.text+"\n"))
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%q: %v\nwant %s", c.text, err, c.want)
		}
	}
	text := strings.Replace(least, "drum_silos = 3", `drum_silos = "from seed plan"`, 1)
	if _, err := Parse("job.toml", []byte(text)); err == nil || !strings.Contains(err.Error(), `job.toml:2: drum_silos: "from seed plan" has no seed plan to go by; hint: `) {
		t.Errorf("%v", err)
	}
}
