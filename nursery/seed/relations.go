package seed

import (
	"fmt"

	"silowright/geometry"
	"silowright/geometry/measure"
)

// The publications, each written one way everywhere.
const (
	srcFAO     = "FAO Fisheries Technical Paper 471 (2004), Hatchery culture of bivalves: a practical manual"
	srcMussel  = "Helgoland Marine Research, doi 10.1007/s10152-014-0419-y, table 3"
	srcSRAC    = "SRAC publication 4301, hard clam hatchery and nursery production"
	srcBB92    = "Bacher & Baud 1992, abstract"
	srcPR01    = "Pfeiffer & Rusch 2001, Journal of the World Aquaculture Society"
	srcFlorida = "University of Florida, shellfish aquaculture pages"
	srcHandle  = "hatchery handling notes on fresh graded oysters"
)

func published(source string) geometry.Basis {
	return geometry.Basis{Kind: geometry.Published, Source: source}
}

func practice() geometry.Basis { return geometry.Basis{Kind: geometry.CommonPractice} }

// RangeError says that a published relation was asked for a size its source
// doesn't cover, or that no relation is held for the kind. Nothing is reckoned
// past a source's range.
type RangeError struct {
	// What was asked: "weight", "clearance".
	What    string
	Species Species
	// Asked is the size asked for; From and To the range of the source, both
	// zero when no source is held for the kind. All three are shell lengths or
	// all three sieve openings, as the function says.
	Asked, From, To measure.Length
	Source          string
}

// Error writes one line with the range and a way out.
func (e *RangeError) Error() string {
	const hint = "; hint: give your own number"
	size := e.Asked.In(measure.UnitMM)
	switch {
	case e.Source == "":
		return fmt.Sprintf("%s of %s: %s, no published relation is held for it%s", e.What, e.Species, size, hint)
	case e.From == e.To:
		return fmt.Sprintf("%s of %s: %s, the source gives one point and is not extended, allowed: %s (%s)%s",
			e.What, e.Species, size, e.From.In(measure.UnitMM), e.Source, hint)
	}
	return fmt.Sprintf("%s of %s: %s, lies outside the source's range, allowed: %s to %s (%s)%s",
		e.What, e.Species, size, e.From.In(measure.UnitMM), e.To.In(measure.UnitMM), e.Source, hint)
}

// relation is a published relation of a measure of seed to its size.
type relation struct {
	from, to measure.Length
	source   string
	at       func(mm float64) float64
}

func (r relation) value(what string, s Species, size measure.Length) (float64, geometry.Basis, error) {
	if r.at == nil {
		return 0, geometry.Basis{}, &RangeError{What: what, Species: s, Asked: size}
	}
	// A size worked out from inches may miss the end of the range by rounding.
	const slack = 1e-9
	if !(float64(size) >= float64(r.from)*(1-slack) && float64(size) <= float64(r.to)*(1+slack)) {
		return 0, geometry.Basis{}, &RangeError{what, s, size, r.from, r.to, r.source}
	}
	return r.at(float64(size)), published(r.source), nil
}

// spatAtOneMM is the live weight of oyster spat of 1 mm shell length, and the
// share of it that clams and scallops of equal length weigh ("about 30 %
// lighter"). FAO Fisheries Technical Paper 471, §6.1.
const (
	spatAtOneMM measure.Mass = 0.3e-6

	lighterShare = 0.7
)

func weightRelation(s Species) relation {
	at := func(m measure.Mass) relation {
		return relation{1, 1, srcFAO + ", §6.1", func(float64) float64 { return m.Kg() }}
	}
	switch s {
	case Oyster:
		return at(spatAtOneMM)
	case Clam, Scallop:
		return at(lighterShare * spatAtOneMM)
	}
	return relation{}
}

// Weight returns the published live weight of one seed of shell length l, and
// its source. What is held is a single point, at 1 mm: one point is no cube
// law, so any other length is a *RangeError.
func Weight(s Species, l Shell) (measure.Mass, geometry.Basis, error) {
	m, b, err := weightRelation(s).value("weight", s, l.Length())
	return measure.Mass(m), b, err
}

// Oysters on a sieve of 7 mm weigh 0.15 to 0.25 g, fresh graded.
const (
	sieveAt    measure.Length = 7
	sieveLeast measure.Mass   = 0.15e-3
	sieveMost  measure.Mass   = 0.25e-3
)

// sieveRelation is the least weight of one seed on a sieve, and the greatest.
func sieveRelation(s Species) (relation, measure.Mass) {
	if s == Oyster {
		return relation{sieveAt, sieveAt, srcHandle, func(float64) float64 { return sieveLeast.Kg() }}, sieveMost
	}
	return relation{}, 0
}

// WeightOnSieve returns the published least and greatest live weight of one
// fresh graded seed held by the sieve v: oysters on 7 mm weigh 0.15 to 0.25 g.
// Any other sieve or kind is a *RangeError.
func WeightOnSieve(s Species, v Sieve) (least, most measure.Mass, b geometry.Basis, err error) {
	r, most := sieveRelation(s)
	m, b, err := r.value("weight on a sieve", s, v.Length())
	if err != nil {
		return 0, 0, b, err
	}
	return measure.Mass(m), most, b, nil
}

// The juvenile mussel's clearance, litres an hour for a shell in millimetres.
const (
	musselLeast, musselMost measure.Length = 1.5, 25
	musselFactor                           = 0.0004
)

func clearanceRelation(s Species) relation {
	if s == Mussel {
		return relation{musselLeast, musselMost, srcMussel, func(mm float64) float64 { return musselFactor * mm * mm }}
	}
	return relation{}
}

// Clearance returns the published volume of water that one seed of shell
// length l clears of food in a time. Held is the juvenile mussel from 1.5 to
// 25 mm, 0.0004·L^2.00 litres an hour with L in millimetres; else a
// *RangeError. It holds for the food, temperature and salinity of the source.
func Clearance(s Species, l Shell) (measure.Flow, geometry.Basis, error) {
	q, b, err := clearanceRelation(s).value("clearance", s, l.Length())
	return measure.Flow(q) * litrePerHour, b, err
}

// adultClearance is the published least and greatest clearance of one grown
// animal, the hard clam. It is no figure for seed and the plan never uses it.
var adultClearance = struct {
	species     Species
	least, most measure.Flow
	source      string
}{Clam, 7 * litrePerHour, 8 * litrePerHour, srcSRAC}
