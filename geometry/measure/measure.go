// Package measure holds the quantities a silo is built with: lengths, angles,
// areas, volumes, masses and stresses, each a type of its own so that none is
// taken for another. Lengths are millimetres inside; the shop's inches, feet
// and fractions are read by ParseLength and written by Length.Inch and its
// siblings.
package measure

import "math"

// Length is a distance in millimetres.
type Length float64

// The units a tape or a drawing is read in. 1 in is 25.4 mm exactly
// (international inch, 1959).
const (
	Millimetre Length = 1
	Inch       Length = 25.4
	Foot       Length = 12 * Inch
	Metre      Length = 1000
)

// MM returns l in millimetres.
func (l Length) MM() float64 { return float64(l) }

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Metres returns l in metres.
func (l Length) Metres() float64 { return float64(l / Metre) }

// Gravity is the standard acceleration of free fall, 9.80665 m/s² (3rd CGPM,
// 1901; ISO 80000-3). It differs by up to 0.3 % between equator and pole.
const Gravity = 9.80665

// Disc is the area of a disc l across.
func (l Length) Disc() Area { return Area(math.Pi/4) * Area(l) * Area(l) }

// Times returns the rectangle's area l × w.
func (l Length) Times(w Length) Area { return Area(l) * Area(w) }

// Finite reports whether l is neither NaN nor infinite.
func (l Length) Finite() bool { return finite(float64(l)) }

// Abs returns the magnitude of l.
func (l Length) Abs() Length { return Length(math.Abs(float64(l))) }

// Angle is a plane angle in radians, counter-clockwise positive.
type Angle float64

// Degree is one three-hundred-and-sixtieth of a full turn; FullTurn is 2π.
const (
	Degree   Angle = math.Pi / 180
	FullTurn Angle = 2 * math.Pi
)

// Degrees returns a in degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// Sin, Cos and Tan are the trigonometric functions of a.
func (a Angle) Sin() float64 { return math.Sin(float64(a)) }

// Cos is the cosine of a.
func (a Angle) Cos() float64 { return math.Cos(float64(a)) }

// Tan is the tangent of a.
func (a Angle) Tan() float64 { return math.Tan(float64(a)) }

// Area is a surface in square millimetres.
type Area float64

// MM2 returns a in square millimetres.
func (a Area) MM2() float64 { return float64(a) }

// SquareInches returns a in square inches.
func (a Area) SquareInches() float64 { return float64(a) / (25.4 * 25.4) }

// Times returns the prism's volume a × l.
func (a Area) Times(l Length) Volume { return Volume(a) * Volume(l) }

// Volume is a volume in cubic millimetres.
type Volume float64

// Millilitre, Litre and USFluidOunce in Volume's own unit. A US fluid ounce is
// 1/128 of a gallon of 231 cubic inches (NIST Handbook 44, appendix C).
const (
	Millilitre   Volume = 1000
	Litre        Volume = 1e6
	USFluidOunce Volume = 231 * 25.4 * 25.4 * 25.4 / 128
	USGallon     Volume = 231 * 25.4 * 25.4 * 25.4
)

// ML returns v in millilitres.
func (v Volume) ML() float64 { return float64(v / Millilitre) }

// Litres returns v in litres.
func (v Volume) Litres() float64 { return float64(v / Litre) }

// Gallons returns v in US gallons.
func (v Volume) Gallons() float64 { return float64(v / USGallon) }

// Mass is a mass in kilograms.
type Mass float64

// Pound is the international avoirdupois pound, 0.45359237 kg exactly.
const Pound Mass = 0.45359237

// Kg returns m in kilograms.
func (m Mass) Kg() float64 { return float64(m) }

// Milligrams returns m in milligrams.
func (m Mass) Milligrams() float64 { return float64(m) * 1e6 }

// Pounds returns m in avoirdupois pounds.
func (m Mass) Pounds() float64 { return float64(m / Pound) }

// Stress is a force per area (also an elastic modulus) in megapascals, N/mm².
type Stress float64

// PSI is one pound-force per square inch in Stress's own unit.
const PSI Stress = 0.00689475729

// MPa returns s in megapascals.
func (s Stress) MPa() float64 { return float64(s) }

// Density is a mass per volume in kilograms per cubic metre.
type Density float64

// Of returns the mass of the volume v at density d.
func (d Density) Of(v Volume) Mass { return Mass(float64(d) * float64(v) * 1e-9) }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
