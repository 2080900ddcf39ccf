package measure

import "math"

// Flow is a volume a second, in cubic millimetres a second.
type Flow float64

// Units of flow in Flow's own unit. A US gallon is 231 cubic inches (NIST
// Handbook 44, appendix C).
const (
	LitrePerSecond    Flow = 1e6
	LitrePerMinute    Flow = 1e6 / 60.0
	GallonPerMinute   Flow = Flow(USGallon) / 60
	CubicMetrePerHour Flow = 1e9 / 3600.0
	CubicMetrePerSec  Flow = 1e9
)

// M3S returns f in cubic metres a second.
func (f Flow) M3S() float64 { return float64(f / CubicMetrePerSec) }

// LMin returns f in litres a minute.
func (f Flow) LMin() float64 { return float64(f / LitrePerMinute) }

// GPM returns f in US gallons a minute.
func (f Flow) GPM() float64 { return float64(f / GallonPerMinute) }

// Through returns the mean speed of f through the area a; 0 for no area.
func (f Flow) Through(a Area) Speed {
	if a == 0 {
		return 0
	}
	return Speed(float64(f) / float64(a))
}

// Speed is a length a second, in millimetres a second.
type Speed float64

// MetrePerSecond in Speed's own unit.
const MetrePerSecond Speed = 1000

// MS returns s in metres a second.
func (s Speed) MS() float64 { return float64(s / MetrePerSecond) }

// Pressure is a pressure of water in pascals. The trade speaks of a head, a
// Length of the water pumped.
type Pressure float64

// KPa returns p in kilopascals.
func (p Pressure) KPa() float64 { return float64(p) / 1000 }

// Viscosity is a dynamic viscosity in pascal seconds.
type Viscosity float64

// Temperature is a temperature in degrees Celsius.
type Temperature float64

// Fahrenheit returns t in degrees Fahrenheit.
func (t Temperature) Fahrenheit() float64 { return float64(t)*9/5 + 32 }

// FromFahrenheit is f degrees Fahrenheit in degrees Celsius.
func FromFahrenheit(f float64) Temperature { return Temperature((f - 32) / 1.8) }

// Power is a power in watts.
type Power float64

// Horsepower is 550 foot-pounds-force a second in watts.
const Horsepower Power = 745.6998715822702

// Both writes f in both units, the shop's own first, to three figures: "105
// gpm (397 L/min)".
func (f Flow) Both(u Unit) string { return f.pair().text(u, 0) }

func (f Flow) pair() pair { return pair{f.GPM(), "gpm", f.LMin(), "L/min"} }

// Both writes s in both units, the shop's own first, to three figures: in feet
// and metres a second, and under 0.3 m/s in inches and millimetres a second.
func (s Speed) Both(u Unit) string { return s.pair().text(u, 0) }

func (s Speed) pair() pair {
	if math.Abs(float64(s)) < 300 {
		return pair{float64(s) / 25.4, "in/s", float64(s), "mm/s"}
	}
	return pair{float64(s) / 304.8, "ft/s", s.MS(), "m/s"}
}

// Both writes p in both units, the shop's own first: "5.3 psi (36.5 kPa)".
func (p Pressure) Both(u Unit) string { return p.pair().text(u, 0) }

func (p Pressure) pair() pair { return pair{float64(p) * 1e-6 / float64(PSI), "psi", p.KPa(), "kPa"} }

// Both writes t in both units, the shop's own first: "59 °F (15 °C)".
func (t Temperature) Both(u Unit) string {
	if !bulk(float64(t)) {
		return outOfRange
	}
	return both(u, decimals(t.Fahrenheit(), 1)+" °F", decimals(float64(t), 1)+" °C")
}

// Both writes p in both units, the shop's own first: "2.01 hp (1500 W)".
func (p Power) Both(u Unit) string {
	return pair{float64(p / Horsepower), "hp", float64(p), "W"}.text(u, 0)
}

// Quantity returns f as a number of litres a minute.
func (f Flow) Quantity() Quantity { return Quantity{f.LMin(), "L/min"} }

// Quantity returns s as a number of millimetres a second.
func (s Speed) Quantity() Quantity { return Quantity{float64(s), "mm/s"} }

// Quantity returns p as a number of kilopascals.
func (p Pressure) Quantity() Quantity { return Quantity{p.KPa(), "kPa"} }

// BothLong writes l in feet and metres, the shop's own first, to three figures:
// "32.3 ft (9.83 m)". It is for heads and runs of pipe; nothing is cut by it.
func (l Length) BothLong(u Unit) string { return l.long(u, 0) }

// long is BothLong to so many figures more.
func (l Length) long(u Unit, more int) string {
	return pair{float64(l / Foot), "ft", l.Metres(), "m"}.text(u, more)
}
