package sea

import (
	"fmt"
	"math"
	"strconv"

	"silowright/geometry/measure"
)

// The range in which every relation of this package holds: EOS-80 is fitted
// from S 0 to 42 and −2 to 40 °C, Sharqawy's viscosity from 0 °C and to
// 150 g/kg, so the water is liquid from 0 °C to 40 °C and 0 to 42 g/kg.
const (
	LeastSalinity = 0.0  // g/kg
	MostSalinity  = 42.0 // g/kg

	Coldest measure.Temperature = 0
	Warmest measure.Temperature = 40
)

// Gravity is the standard acceleration of free fall, m/s².
const Gravity = measure.Gravity

// Water is the water pumped, at the pressure of the air.
type Water struct {
	// Salinity is on the practical scale, a number within 0.5 % of grams of
	// salt in a kilogram of water.
	Salinity    float64
	Temperature measure.Temperature
	Density     measure.Density
	Viscosity   measure.Viscosity // dynamic
	Vapour      measure.Pressure  // absolute pressure at which it boils
}

// At returns the water of a salinity in g/kg and a temperature. It fails
// outside LeastSalinity to MostSalinity and Coldest to Warmest.
func At(salinity float64, t measure.Temperature) (Water, error) {
	if !(salinity >= LeastSalinity && salinity <= MostSalinity) {
		return Water{}, fmt.Errorf("salinity: %s g/kg, outside the range of the density relation (EOS-80), 0 to 42 g/kg; hint: open sea is about 35, fresh water 0", number(salinity))
	}
	if !(t >= Coldest && t <= Warmest) {
		return Water{}, fmt.Errorf("temperature: %s °C, outside the range of the water relations, 0 to 40 °C; hint: give the water's temperature in degrees Celsius", number(float64(t)))
	}
	c := float64(t)
	return Water{
		Salinity:    salinity,
		Temperature: t,
		Density:     measure.Density(density(salinity, c)),
		Viscosity:   measure.Viscosity(viscosity(salinity, c)),
		Vapour:      measure.Pressure(vapour(salinity, c)),
	}, nil
}

// Kinematic is the kinematic viscosity in m²/s.
func (w Water) Kinematic() float64 { return float64(w.Viscosity) / float64(w.Density) }

// Weight is the weight of a cubic metre of w in newtons, ρg.
func (w Water) Weight() float64 { return float64(w.Density) * Gravity }

// Pressure is the pressure under a column of w.
func (w Water) Pressure(head measure.Length) measure.Pressure {
	return measure.Pressure(w.Weight() * head.Metres())
}

// Head is the column of w that gives a pressure; 0 for water without density.
func (w Water) Head(p measure.Pressure) measure.Length {
	if w.Density <= 0 {
		return 0
	}
	return measure.Length(float64(p)/w.Weight()) * measure.Metre
}

// The coefficients, from the constant term up, of the relations below.
var (
	eosPure = [...]float64{999.842594, 6.793952e-2, -9.095290e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9}
	eosSalt = [...]float64{8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9}
	eosRoot = [...]float64{-5.72466e-3, 1.0227e-4, -1.6546e-6}

	thickSalt    = [...]float64{1.5409136040, 1.9981117208e-2, -9.5203865864e-5}
	thickSquared = [...]float64{7.9739318223, -7.5614568881e-2, 4.7237011074e-4}

	boilPoly = [...]float64{1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8}
)

const (
	eosSquare = 4.8314e-4

	thickShift  = 64.992620050
	thickLeast  = 4.2844324477e-5
	thickSquare = 0.15700386464
	thickOff    = 91.296496657

	iceKelvin   = 273.15 // 0 °C in kelvin
	boilInverse = -5.8002206e3
	boilLog     = 6.5459673
	boilSalt    = 0.57357
)

// density is the one-atmosphere International Equation of State of Seawater,
// 1980 (UNESCO Technical Papers in Marine Science 44, algorithm 2), in kg/m³,
// for practical salinity s and t in °C. The temperature is of the scale of
// 1968; one of 1990 is at most 0.01 K lower, 0.004 kg/m³.
func density(s, t float64) float64 {
	return poly(t, eosPure[:]...) + poly(t, eosSalt[:]...)*s + poly(t, eosRoot[:]...)*s*math.Sqrt(s) + eosSquare*s*s
}

// viscosity is the dynamic viscosity in Pa·s by Sharqawy, Lienhard and Zubair
// 2010, "Thermophysical properties of seawater", equations 22 and 23, for
// salinity s in g/kg and t in °C: 0 to 180 °C, 0 to 150 g/kg, within 1.5 %.
func viscosity(s, t float64) float64 {
	x := t + thickShift
	pure := thickLeast + 1/(thickSquare*x*x-thickOff)
	a, b := poly(t, thickSalt[:]...), poly(t, thickSquared[:]...)
	s /= 1000
	return pure * (1 + a*s + b*s*s)
}

// vapour is the absolute vapour pressure in Pa: over pure water by Hyland and
// Wexler 1983 (ASHRAE Transactions 89, liquid from 0 to 200 °C), lowered by
// the salt as Sharqawy et al. 2010 give after Raoult's law,
// p = p₀ / (1 + 0.57357·s/(1000 − s)). Coefficients from memory; tests hold
// them to the value of ITTC 7.5-02-01-03 at 15 °C.
func vapour(s, t float64) float64 {
	k := t + iceKelvin
	pure := math.Exp(boilInverse/k + poly(k, boilPoly[:]...) + boilLog*math.Log(k))
	return pure / (1 + boilSalt*s/(1000-s))
}

// poly is c[0] + c[1]x + c[2]x² + … .
func poly(x float64, c ...float64) float64 {
	var y float64
	for i := len(c) - 1; i >= 0; i-- {
		y = y*x + c[i]
	}
	return y
}

// number writes a value as it was given.
func number(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
