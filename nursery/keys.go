package nursery

import (
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/nursery/manifold"
	"silowright/nursery/sea"
)

const metre = measure.Metre

// Keys lists the keys of the sections [water], [pump], [suction], [main],
// [manifold], [lateral], [bed] and [failure] in the order of the file. Ranges
// keep out slips of the pen (common practice, no source), but those of salinity
// and temperature, which are the relations' own. Key.Set and Farm.Check hold
// them.
func Keys() []Key {
	t := &table{basis: geometry.Basis{Kind: geometry.CommonPractice}}
	waterKeys(t)
	pumpKeys(t)
	pipeKeys(t)
	seedKeys(t)
	return t.keys
}

func waterKeys(t *table) {
	lpm := float64(measure.LitrePerMinute)
	t.section = "water"
	number(t, KindNumber, "salinity", "g/kg", 1, sea.LeastSalinity, sea.MostSalinity, "30", "salt in the water, grams in a kilogram; fresh water 0, open sea 35", func(f *Farm) *float64 { return &f.Supply.Salinity })
	number(t, KindNumber, "temperature", "°C", 1, float64(sea.Coldest), float64(sea.Warmest), "15", "the water's", func(f *Farm) *measure.Temperature { return &f.Supply.Temperature })
	number(t, KindFlow, "flow", "L/min", lpm, 0, 3000, "0", "water each drum silo is to have; 0: what the manifold gives, and without a pump what the seed asks", func(f *Farm) *measure.Flow { return &f.Supply.Each })
	t.add(Key{Name: "below_ground", Means: "surface of the water pumped from, at its lowest, under the ground the silos stand on; under 0 when it stands higher", Kind: KindLength, Unit: "mm", Low: -100_000, High: 100_000},
		func(f *Farm) Value { return Value{Number: f.Supply.Below.MM(), Yes: f.Supply.BelowKnown} },
		func(f *Farm, v Value) { f.Supply.Below, f.Supply.BelowKnown = measure.Length(v.Number), true })
	t.length("outlet_hose", 0, 100*metre, "0 mm", "length of the hose on each outlet; 0: a free discharge", func(f *Farm) *measure.Length { return &f.Supply.Hose.Length })
	t.length("outlet_hose_bore", 0, 500, "0 mm", "its bore", func(f *Farm) *measure.Length { return &f.Supply.Hose.Bore })
	t.length("outlet_hose_drop", -5*metre, 5*metre, "0 mm", "outlet's invert down to the hose's end, or to the water that end is under", func(f *Farm) *measure.Length { return &f.Supply.Hose.Drop })
	t.count("outlet_hose_bends", 20, "elbows on it", func(f *Farm) *int { return &f.Supply.HoseBends })
	t.percent("mesh_fouled", 0, 99, "0 %", "open area of the drum silo's mesh lost to fouling", func(f *Farm) *float64 { return &f.Supply.MeshFouled })
	t.percent("screen_fouled", 0, 99, "0 %", "open area of the pipe silo's screen lost to fouling", func(f *Farm) *float64 { return &f.Supply.ScreenFouled })
}

func pumpKeys(t *table) {
	lpm := float64(measure.LitrePerMinute)
	t.section = "pump"
	t.points("curve", "flow and head off the maker's curve, flow rising; without it shut_off with duty_flow and duty_head, or power for a guess", func(f *Farm) *[]manifold.Point { return &f.Pump.Points })
	t.length("shut_off", 0, 500*metre, "0 mm", "head at no flow, the most its plate tells", func(f *Farm) *measure.Length { return &f.Pump.ShutOff })
	number(t, KindFlow, "duty_flow", "L/min", lpm, 0, mostLMin, "0", "flow at its duty point", func(f *Farm) *measure.Flow { return &f.Pump.Duty.Flow })
	t.length("duty_head", 0, 500*metre, "0 mm", "head at its duty point", func(f *Farm) *measure.Length { return &f.Pump.Duty.Head })
	number(t, KindPower, "power", "W", 1, 0, 1e6, "0", "the motor's output off its plate, for a guess when there is no curve", func(f *Farm) *measure.Power { return &f.Pump.Power })
	t.percent("efficiency", 1, 100, "65 %", "the pump's", func(f *Farm) *float64 { return &f.Pump.Efficiency })
	t.percent("motor_efficiency", 1, 100, "85 %", "the motor's with its drive", func(f *Farm) *float64 { return &f.Pump.Motor })
	t.points("npsh", "flow and the net positive suction head it requires, off the maker's curve", func(f *Farm) *[]manifold.Point { return &f.Pump.NPSH })
	number(t, KindNumber, "hours_per_day", "h", 1, 0, 24, "24", "hours it runs a day", func(f *Farm) *float64 { return &f.Pump.HoursADay })

	t.section = "suction"
	t.length("lift", -100*metre, 10*metre, "0 mm", "pump's centre over the water at its lowest; under 0 when flooded", func(f *Farm) *measure.Length { return &f.Suction.Lift })
	t.length("length", 0, 500*metre, "0 mm", "length of the suction pipe; 0: none, as for a pump that hangs in the water", func(f *Farm) *measure.Length { return &f.Suction.Length })
	t.pipe("nominal size of the suction pipe", func(f *Farm) *geometry.PipeRef { return &f.Suction.Pipe })
	t.count("bends", 50, "elbows on it", func(f *Farm) *int { return &f.Suction.Bends })
	word(t, "foot_valve", "foot valve with its strainer", func(f *Farm) *FootValve { return &f.Suction.FootValve }, NoFootValve, HingedFootValve, PoppetFootValve)
	number(t, KindNumber, "strainer_k", "", 1, 0, 1000, "0", "loss of a strainer without foot valve, in velocity heads, off its maker's sheet", func(f *Farm) *float64 { return &f.Suction.StrainerK })
}

func pipeKeys(t *table) {
	t.section = "main"
	t.pipe("nominal size of the pipe from pump to manifold", func(f *Farm) *geometry.PipeRef { return &f.Main.Pipe })
	t.length("length", 0, 1000*metre, "0 mm", "its length", func(f *Farm) *measure.Length { return &f.Main.Length })
	t.count("bends", 100, "elbows on it", func(f *Farm) *int { return &f.Main.Bends })
	t.length("highest", -100*metre, 100*metre, "0 mm", "highest point of its course above the ground; 0: the manifold or the pump", func(f *Farm) *measure.Length { return &f.Main.Highest })

	t.section = "manifold"
	t.pipe("nominal size of the pipe along the silos", func(f *Farm) *geometry.PipeRef { return &f.Manifold.Pipe })
	t.length("spacing", 0, 100*metre, "0 mm", "tee to tee; 0: the widest drum and 150 mm", func(f *Farm) *measure.Length { return &f.Manifold.Spacing })
	t.length("first", 0, 500*metre, "0 mm", "end of the main to the first tee", func(f *Farm) *measure.Length { return &f.Manifold.First })
	t.length("height", -10*metre, 20*metre, "0 mm", "its middle above the ground the silos stand on", func(f *Farm) *measure.Length { return &f.Manifold.Height })
	word(t, "feed", "where the main comes in", func(f *Farm) *Feed { return &f.Manifold.Feed }, FedAtEnd, FedAtCentre)
	t.percent("least_evenness", 0, 100, "90 %", "the least flow over the mean that is wanted", func(f *Farm) *float64 { return &f.Limits.Evenness })
	number(t, KindNumber, "most_speed", "m/s", 1000, 0, 20, "1.5", "fastest water wanted in main, manifold and hoses; 0: no limit", func(f *Farm) *measure.Speed { return &f.Limits.Speed })

	t.section = "lateral"
	t.percent("valve_open", 1, 100, "100 %", "how far each silo's ball valve stands open, by its travel", func(f *Farm) *float64 { return &f.Lateral.ValveOpen })
	t.length("valve_bore", 0, 500, "0 mm", "bore of the valve; 0: the hose's", func(f *Farm) *measure.Length { return &f.Lateral.ValveBore })
	t.length("hose", 0, 100*metre, "3 ft", "length of the hose from tee to silo", func(f *Farm) *measure.Length { return &f.Lateral.Hose })
	t.length("hose_bore", 0, 500, "0 mm", "its bore; 0: that of the silo's inlet", func(f *Farm) *measure.Length { return &f.Lateral.HoseBore })
	t.length("barb_bore", 0, 500, "0 mm", "bore of the barb at each of its ends; 0: the hose's", func(f *Farm) *measure.Length { return &f.Lateral.BarbBore })
	t.length("hose_top", -10*metre, 20*metre, "0 mm", "its highest point above the ground; 0: the higher of its ends", func(f *Farm) *measure.Length { return &f.Lateral.HoseTop })
}

func seedKeys(t *table) {
	t.section = "bed"
	t.length("size", 0, 100, "0 mm", "diameter of a ball as large as one seed in the drum silos; 0: 1.2 openings of the mesh", func(f *Farm) *measure.Length { return &f.Bed.Size })
	number(t, KindNumber, "pipe_seed_kg", "kg", 1, 0, 500, "0", "wet seed in each pipe silo, kilograms", func(f *Farm) *measure.Mass { return &f.Bed.PipeMass })
	t.length("pipe_size", 0, 100, "0 mm", "diameter of a ball as large as one seed in the pipe silos; 0: 1.2 openings of the screen", func(f *Farm) *measure.Length { return &f.Bed.PipeSize })
	number(t, KindNumber, "density", "kg/m³", 1, 1050, 3000, "1500", "of shell and animal together: weigh a handful and see how much water it raises", func(f *Farm) *measure.Density { return &f.Bed.Density })
	t.percent("voidage", 20, 90, "50 %", "water between the seed as it lies: what a measure full of seed takes up", func(f *Farm) *float64 { return &f.Bed.Voidage })
	number(t, KindNumber, "sphericity", "", 1, 0.5, 1, "0.8", "surface of a ball as large as a seed over the seed's own; a flat shell is about 0.6", func(f *Farm) *float64 { return &f.Bed.Sphericity })

	t.section = "failure"
	t.yesNo("check_valve", "a check valve in the main that holds", func(f *Farm) *bool { return &f.Failure.CheckValve })
	t.yesNo("air_break", "a vent or vacuum breaker on the main's highest point", func(f *Farm) *bool { return &f.Failure.AirBreak })
	t.yesNo("hose_air_break", "one on the highest point of each hose", func(f *Farm) *bool { return &f.Failure.HoseAirBreak })
}
