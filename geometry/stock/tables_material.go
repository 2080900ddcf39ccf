package stock

import (
	"strconv"

	"silowright/geometry/measure"
)

func meshTable() Table {
	t := newTable("meshes", "Woven mesh and insect screen", "count, per in", "material", "opening, mm (in)", "strand", "open area")
	for _, m := range Meshes() {
		opening := fine(m.Opening)
		if m.OpeningLong != m.Opening {
			opening += " × " + fine(m.OpeningLong)
		}
		t.addMixed([]part{{"opening", m.Origin}, {"strand", m.StrandOrigin}, {"open area", m.FractionOrigin}},
			m.Name, m.Material, opening, fine(m.Strand), measure.Number(100*m.Open, 0)+" %")
	}
	return t
}

// fine writes a strand or an opening, both units to the thousandth.
func fine(l measure.Length) string { return measure.Number(l.MM(), 3) + " (" + thousandth(l) + ")" }

func cartridgeTable() Table {
	t := newTable("cartridges", "Cartridges of sealant and resin (US fluid ounces)", "sold as", "mL", "fl oz")
	for _, c := range Cartridges() {
		t.add(c.Origin, c.Label, measure.Number(c.Volume.ML(), 1), measure.Number(float64(c.Volume/measure.USFluidOunce), 2))
	}
	return t
}

func cementTable() Table {
	t := newTable("cement", "PVC cement: set (do not move) and cure (no water); half as long again above 60 % humidity; the can's own times win",
		"pipe, in", "at °F (°C)", "set", "cure")
	celsius := func(f int) string { return measure.Number(float64(measure.FromFahrenheit(float64(f))), 0) }
	for _, c := range CementTimes() {
		t.add(c.Origin, c.From+" to "+c.To,
			strconv.Itoa(c.ColdF)+" to "+strconv.Itoa(c.WarmF)+" ("+celsius(c.ColdF)+" to "+celsius(c.WarmF)+")",
			hours(c.Set), hours(c.Cure))
	}
	return t
}

func plasticsTable() Table {
	t := newTable("plastics", "Plastics at 73 °F (23 °C); polyethylene is of pipe grades: a drum's resin may differ", "property", "value")
	stress := func(s measure.Stress) string { return s.Both(measure.UnitInch) }
	metric := func(s measure.Stress) string {
		return measure.Number(s.MPa(), 0) + " MPa (" + measure.Number(float64(s/measure.PSI)/1000, 0) + "000 psi)"
	}
	density := func(d measure.Density) string {
		return measure.Number(float64(d)/1000, 3) + " g/cm³ (" + measure.Number(float64(d)*lbPerFt3, 1) + " lb/ft³)"
	}
	t.add(PEStressOrigin(), "polyethylene, modulus, short load", stress(PEShortModulus))
	for _, at := range CreepTimes() {
		m, o, _ := CreepModulus(at)
		t.add(o, "polyethylene, modulus, load hangs "+at, stress(m))
	}
	t.add(PEStressOrigin(), "polyethylene, design stress, lasting", stress(PEDesignStress))
	t.add(PEDensityOrigin(), "polyethylene, density", density(PEDensity))
	t.add(PVCModulusOrigin(), "PVC-U, modulus, short load", metric(PVCModulus))
	t.add(PVCModulusOrigin(), "PVC-U, modulus, lasting load", metric(PVCLongModulus))
	t.add(PVCDensityOrigin(), "PVC-U, density", density(PVCDensity))
	return t
}

// lbPerFt3 is one kg/m³ in pounds per cubic foot.
const lbPerFt3 = float64(1/measure.Pound) * (0.3048 * 0.3048 * 0.3048)
