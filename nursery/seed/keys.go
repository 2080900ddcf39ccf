package seed

import (
	"silowright/geometry"
	"silowright/geometry/measure"
)

// Key is one number of the job file's section [seed].
type Key struct {
	Name string
	// Means is one line for the job file's comment.
	Means string
	// Unit of Low, High, Default, Get and Set: "mm" (a length, which the file
	// may write in its own units), "L/min", "L/day", "kg/m²", "L/min/kg",
	// "kg/L", "L/h/g", "%", "%/day", or "" for a count or a ratio.
	Unit      string
	Low, High float64
	// Default is meaningless where Required.
	Default  float64
	Required bool
	// Whole says that only whole numbers are taken.
	Whole bool
	// Basis of the default.
	Basis geometry.Basis
	get   func(*Plan) float64
	set   func(*Plan, float64)
}

// Get returns the key's value in p, in the key's unit.
func (k Key) Get(p *Plan) float64 { return k.get(p) }

// Set writes the key's value to p, in the key's unit; the range is held by
// Plan.Check.
func (k Key) Set(p *Plan, v float64) { k.set(p, v) }

// of makes the two accessors of a field whose key's unit is scale of the
// field's own.
func of[T ~float64](field func(*Plan) *T, scale float64) (func(*Plan) float64, func(*Plan, float64)) {
	return func(p *Plan) float64 { return float64(*field(p)) / scale },
		func(p *Plan, v float64) { *field(p) = T(v * scale) }
}

// whole makes the two accessors of a count.
func whole(field func(*Plan) *int) (func(*Plan) float64, func(*Plan, float64)) {
	return func(p *Plan) float64 { return float64(*field(p)) },
		func(p *Plan, v float64) {
			if v >= -1e15 && v <= 1e15 {
				*field(p) = int(v)
			}
		}
}

// key fills a key from its accessors.
func key(k Key, get func(*Plan) float64, set func(*Plan, float64)) Key {
	k.get, k.set = get, set
	return k
}

// Keys lists the numbers of the section [seed] in the order of the file. The
// section's words stand in Words, its lists in Lists. Ranges are common
// practice, no source: they keep out slips of the pen.
func Keys() []Key {
	const lpm, day = float64(measure.LitrePerMinute), float64(litrePerDay)
	own, fao := practice(), published(srcFAO+", §6.6.2")
	num := func(name, means, unit string, low, high, def float64, b geometry.Basis) Key {
		return Key{Name: name, Means: means, Unit: unit, Low: low, High: high, Default: def, Basis: b}
	}
	count := func(name, means string, low, high, def float64, b geometry.Basis) Key {
		k := num(name, means, "", low, high, def, b)
		k.Whole = true
		return k
	}
	need := func(k Key) Key { k.Required = true; return k }
	out := lotKeys(num, count, need)
	add := func(k Key, get func(*Plan) float64, set func(*Plan, float64)) { out = append(out, key(k, get, set)) }
	get, set := of(func(p *Plan) *measure.Length { return &p.BedDepth }, 1)
	add(num("bed_depth", "deepest bed of seed on the mesh; deeper, and the lot is split", "mm", 0.5, 500, 50, own), get, set)
	get, set = of(func(p *Plan) *Load { return &p.Load }, 1)
	add(num("load", "most live seed on the mesh", "kg/m²", 0.05, 500, 30, published(srcPR01+", the densest bed told, for clams of 4 to 6 mm")), get, set)
	get, set = of(func(p *Plan) *WaterPerMass { return &p.Water }, 1)
	add(num("water", "water a kilogram of live seed is given", "L/min/kg", 0.1, 200, 10, fao), get, set)
	get, set = of(func(p *Plan) *measure.Flow { return &p.WaterEach }, day)
	add(num("water_each", "least water for one seed whatever its weight; 0: not used", "L/day", 0, 1000, 0, own), get, set)
	get, set = of(func(p *Plan) *measure.Flow { return &p.PipeHouse.Most }, lpm)
	add(num("pipe_flow", "most water one pipe silo takes", "L/min", 0.1, 2000, 20, own), get, set)
	get, set = of(func(p *Plan) *measure.Flow { return &p.DrumHouse.Most }, lpm)
	add(num("drum_flow", "most water one drum silo takes", "L/min", 1, 20000, 120, own), get, set)
	get, set = whole(func(p *Plan) *int { return &p.PipeSilosAtHand })
	add(count("pipe_silos_at_hand", "pipe silos there are; 0: as many as needed", 0, 100000, 0, own), get, set)
	return out
}

type numKey func(name, means, unit string, low, high, def float64, b geometry.Basis) Key
type countKey func(name, means string, low, high, def float64, b geometry.Basis) Key

// lotKeys lists the keys that tell of the seed itself.
func lotKeys(num numKey, count countKey, need func(Key) Key) (out []Key) {
	own := practice()
	add := func(k Key, get func(*Plan) float64, set func(*Plan, float64)) { out = append(out, key(k, get, set)) }
	get, set := whole(func(p *Plan) *int { return &p.Count })
	add(need(count("count", "seed that arrive", 1, 1e9, 0, own)), get, set)
	get, set = of(func(p *Plan) *Shell { return &p.Size }, 1)
	add(need(num("size", "their mean shell length", "mm", 0.2, 50, 0, own)), get, set)
	get, set = whole(func(p *Plan) *int { return &p.Arrival })
	add(count("arrival_week", "week of the season in which they come", 1, 52, 1, own), get, set)
	get, set = whole(func(p *Plan) *int { return &p.Weeks })
	add(count("weeks", "weeks reckoned at most", 1, 104, 26, own), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.SieveRatio }, 1)
	add(num("sieve_ratio", "sieve opening that just holds a seed, over its shell length: sieve and measure a few", "", 0.2, 1, 0.7, own), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.Spread }, 0.01)
	add(num("size_spread", "smallest and largest seed of a graded lot below and above its mean size", "%", 0, 80, 20, own), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.GrowthSpread }, 0.01)
	add(num("growth_spread", "slowest and fastest seed below and above the mean growth", "%", 0, 80, 30, own), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.GradeAt }, 1)
	add(num("grade_at", "largest seed over smallest at which a lot is graded", "", 1, 10, 1.7, own), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.MeshMargin }, 0.01)
	add(num("mesh_margin", "by how much the smallest seed is larger than the mesh opening", "%", 0, 200, 20, own), get, set)
	get, set = of(func(p *Plan) *Sieve { return &p.LeaveOn }, 1)
	add(num("leave_on", "mesh the mean seed is held by when it leaves", "mm", 0.5, 40, 7, published(srcFAO)), get, set)
	get, set = of(func(p *Plan) *measure.Length { return &p.GrowthLength }, 1)
	add(num("growth_length", "shell grown in a week, when growth = \"length\"", "mm", 0, 10, 0.75, published(srcPR01+", clams from 4.4 mm at 10 kg/m²")), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.GrowthWeight }, 0.01)
	add(num("growth_weight", "growth of the live weight when growth = \"weight\", compounded at every moment: 100 · ln(after ÷ before) over the days; at 5 it gains 42 % in a week", "%/day", 0, 30, 5, own), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.Survival }, 0.01)
	add(num("survival", "seed alive after a week", "%", 1, 100, 97, own), get, set)
	get, set = of(func(p *Plan) *measure.Density { return &p.Bulk }, 1000)
	add(num("bulk", "live mass of a litre of drained seed: count a sample by volume and by weight", "kg/L", 0.1, 2, 0.8, own), get, set)
	get, set = of(func(p *Plan) *float64 { return &p.ClearanceEach }, 1)
	add(num("clearance", "water a gram of live seed clears, where no published relation is held; 0: not reckoned", "L/h/g", 0, 20, 0.5, own), get, set)
	return out
}

// Word is one key of the section [seed] that takes one of a few words.
type Word struct {
	Name, Means string
	Allowed     []string
	Default     string
	get         func(*Plan) string
	set         func(*Plan, int)
}

// Get returns the word in p.
func (w Word) Get(p *Plan) string { return w.get(p) }

// Set writes the word to p and reports whether it is one of the allowed.
func (w Word) Set(p *Plan, word string) bool {
	for i, a := range w.Allowed {
		if a == word {
			w.set(p, i)
			return true
		}
	}
	return false
}

// Words lists the section's words in the order of the file. The species comes
// first: the weights' default goes by it.
func Words() []Word {
	return []Word{
		{"species", "kind of seed", speciesNames[:], Clam.String(),
			func(p *Plan) string { return p.Species.String() }, func(p *Plan, i int) { p.Species = Species(i) }},
		{"growth", "how growth is told: shell a week, or share of the weight a day", growthNames[:], ByLength.String(),
			func(p *Plan) string { return p.Growth.String() }, func(p *Plan, i int) { p.Growth = Growth(i) }},
		{"move", "seed goes to the drum silos as soon as their mesh holds it, or when the pipe silos are full", moveNames[:], MoveByMesh.String(),
			func(p *Plan) string { return p.Move.String() }, func(p *Plan, i int) { p.Move = Move(i) }},
	}
}

// The section's lists, which the job reader fills by hand.
const (
	KeyPipeMeshes = "pipe_meshes"
	KeyDrumMeshes = "drum_meshes"
	KeyWeights    = "weights"
	KeyWeekTable  = "week_table"
)

// List is one key of the section [seed] that holds several entries.
type List struct {
	Name, Means string
	// Fields are the keys of an entry and Units their units; an entry without
	// fields is a bare length, "mm".
	Fields, Units []string
	// Basis of the default: of the job's own meshes, of DefaultWeights, or of
	// no entries.
	Basis geometry.Basis
}

// Lists lists the section's lists in the order of the file. A week's growth is
// in mm a week or %/day as the word growth says.
func Lists() []List {
	job := geometry.Basis{Kind: geometry.JobSetting}
	return []List{
		{KeyPipeMeshes, "clear openings of the screens for pipe silos", nil, []string{"mm"}, job},
		{KeyDrumMeshes, "clear openings of the meshes for drum silos", nil, []string{"mm"}, job},
		{KeyWeights, "live weight of one seed by shell length, smallest first: weigh counted samples", []string{"size", "each"}, []string{"mm", "mg"}, practice()},
		{KeyWeekTable, "the first weeks one by one, before the rates above", []string{"growth", "survival"}, []string{"mm or %/day", "%"}, practice()},
	}
}
