package stock

import "silowright/geometry/measure"

// creepRows are the apparent moduli of PE pipe grades at 73 °F (23 °C), psi,
// by how long the load hangs.
var creepRows = [...]struct {
	time string
	psi  measure.Stress
}{
	{"0.5 h", 78000}, {"12 h", 60000}, {"100 h", 52000}, {"1 year", 38000}, {"50 years", 28000},
}

// CreepTimes lists the times CreepModulus knows, shortest first.
func CreepTimes() []string {
	var out []string
	for _, r := range creepRows {
		out = append(out, r.time)
	}
	return out
}

// CreepModulus returns the apparent modulus of polyethylene pipe grades at
// 73 °F (23 °C) under a load that hangs for time, one of CreepTimes. It is
// lower when warmer, and a drum's resin may differ from a pipe's.
func CreepModulus(time string) (measure.Stress, Origin, bool) {
	for _, r := range creepRows {
		if r.time == time {
			return r.psi * measure.PSI, Origin{srcPE, One}, true
		}
	}
	return 0, Origin{}, false
}

// The numbers of the plastics; the Origin functions below say where each is
// from.
const (
	// PEShortModulus is polyethylene's modulus for a moment's load, 73 °F.
	PEShortModulus = 110000 * measure.PSI
	// PEDesignStress is the design stress of PE3408/PE3608 pipe in water at
	// 73 °F (23 °C), for a lasting load. A drum's resin may differ.
	PEDesignStress = 800 * measure.PSI
	// PEDensity is the middle of the range of high-density polyethylene, 0.941
	// to 0.965 g/cm³.
	PEDensity = (peDensityMin + peDensityMax) / 2
	// PVCDensity is that of unplasticised PVC pipe.
	PVCDensity measure.Density = 1400
	// PVCModulus and PVCLongModulus are unplasticised PVC's moduli for a short
	// and a lasting load.
	PVCModulus     measure.Stress = 3000
	PVCLongModulus measure.Stress = 1500

	peDensityMin measure.Density = 941
	peDensityMax measure.Density = 965
)

// PEStressOrigin is where PEDesignStress and PEShortModulus are from.
func PEStressOrigin() Origin { return Origin{"PE pipe handbook", One} }

// PEDensityOrigin is where PEDensity is from.
func PEDensityOrigin() Origin {
	return Origin{"middle of 0.941 to 0.965 g/cm³, seen in two sources for HDPE", Derived}
}

// PVCDensityOrigin is where PVCDensity is from.
func PVCDensityOrigin() Origin { return Origin{srcPractice, Memory} }

// PVCModulusOrigin is where PVCModulus and PVCLongModulus are from.
func PVCModulusOrigin() Origin { return Origin{"BS EN 1401-1:2009", One} }
