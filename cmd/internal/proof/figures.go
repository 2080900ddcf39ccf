package proof

import (
	"strings"

	"silowright/bom/money"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery"
	"silowright/nursery/flow"
	"silowright/nursery/manifold"
	"silowright/nursery/sea"
	"silowright/nursery/seed"
	"silowright/render"
	"silowright/render/sheets"
)

// figures are the numbers that the rooms list themselves.
func figures() []Row {
	var out []Row
	for _, room := range []struct {
		name, group string
		list        []stock.Figure
	}{
		{"geometry/stock", "Rules for parts", stock.BuiltIn()},
		{"geometry", "The silo's geometry and its checks", geometry.BuiltIn()},
		{"nursery/sea", "Sea water", sea.BuiltIn()},
		{"nursery/flow", "Water through a silo", flow.BuiltIn()},
		{"nursery/manifold", "Pump and manifold", manifold.BuiltIn()},
		{"nursery", "The farm and its checks", nursery.BuiltIn()},
		{"nursery/seed", "Seed and its checks", seed.BuiltIn()},
	} {
		for _, f := range room.list {
			r := Row{Group: room.group, What: f.What, Value: f.Value, Source: f.Source,
				Standing: shorter.Replace(string(f.Standing)), Test: "./" + room.name + " " + f.Test}
			for _, name := range strings.Fields(f.Of) {
				r.of = append(r.of, room.name+"."+name)
			}
			out = append(out, r)
		}
	}
	return out
}

// units are the units of measure, the currencies and the papers.
func units() []Row {
	n := stock.Numbers
	const group, nist = "Units, currencies and papers", "NIST Handbook 44, appendix C"
	unit := func(of, what, value, source, standing, test string) Row {
		r := Row{Group: group, What: what, Value: value, Source: source, Standing: standing, Test: test}
		for _, name := range strings.Fields(of) {
			r.of = append(r.of, "geometry/measure."+name)
		}
		return r
	}
	const byOffice, byUnits = "./geometry/measure TestUnitsByLibreOffice", "./geometry/measure TestUnitsOfUnits"
	out := []Row{
		unit("Inch", "inch", n(measure.Inch.MM())+" mm", "international inch, 1959, as LibreOffice converts it", run, byOffice),
		unit("Foot Metre Millimetre", "foot, metre", n(measure.Foot.MM(), measure.Metre.MM())+" mm", "LibreOffice's CONVERT", run, byOffice),
		unit("USGallon USFluidOunce", "US gallon of 231 in³, fluid ounce of 1/128 gallon", n(measure.USGallon.ML(), measure.USFluidOunce.ML())+" mL", nist+", as LibreOffice converts it", run, byOffice),
		unit("Litre Millilitre", "litre, millilitre", n(float64(measure.Litre), float64(measure.Millilitre))+" mm³", "LibreOffice's CONVERT", run, byOffice),
		unit("Pound", "pound; LibreOffice has its first six figures", n(measure.Pound.Kg())+" kg", nist, memory, byOffice),
		unit("PSI SquareInches", "pound-force on a square inch", n(measure.PSI.MPa())+" MPa", "from pound, inch and standard gravity", worked, byUnits),
		unit("Horsepower", "horsepower, 550 foot-pounds a second", n(float64(measure.Horsepower))+" W", "from foot, pound and standard gravity", worked, byUnits),
		unit("LitrePerSecond LitrePerMinute CubicMetrePerHour CubicMetrePerSec", "litre a second and a minute, cubic metre an hour and a second",
			n(float64(measure.LitrePerSecond), float64(measure.LitrePerMinute), float64(measure.CubicMetrePerHour), float64(measure.CubicMetrePerSec))+" mm³/s", "LibreOffice's CONVERT", run, byOffice),
		unit("GallonPerMinute", "gallon a minute", n(measure.GallonPerMinute.LMin())+" L/min", nist, worked, byUnits),
		unit("MetrePerSecond Degree FullTurn KPa", "metre a second, degree", n(float64(measure.MetrePerSecond))+" mm/s, "+n(float64(measure.Degree))+" rad", "definition", worked, byUnits),
		unit("Gravity", "standard gravity of lifts and stresses", n(measure.Gravity)+" m/s²", "3rd CGPM, 1901, as the gonum library has it", run, "./geometry/measure TestGravityOfGonum"),
		unit("Fahrenheit FromFahrenheit", "1 °C in °F", n(measure.Temperature(1).Fahrenheit()), "LibreOffice's CONVERT", run, byOffice),
		{Group: group, What: "foot, in loads and water for seed", Value: n(measure.Foot.Metres()) + " m",
			Source: "international inch, 1959", Standing: memory, Test: "./nursery/seed TestBoth", of: []string{"nursery/seed.Both"}},
		{Group: group, What: "square foot, in seed a square foot", Value: n(measure.Foot.Metres()) + " m",
			Source: "international inch, 1959", Standing: memory, Test: "./nursery/seed TestTables", of: []string{"nursery/seed.growthTable"}},
		{Group: group, What: "cubic foot, in densities", Value: n(measure.Foot.Metres()) + " m",
			Source: "international inch, 1959", Standing: memory, Test: "./geometry/stock TestPlastics", of: []string{"geometry/stock.lbPerFt3"}},
		{Group: group, What: "foot and square foot, in what is bought", Value: n(measure.Foot.Metres()) + " m",
			Source: "international inch, 1959", Standing: memory, Test: "./bom TestNeedText", of: []string{"bom.customaryUnit"}},
		{Group: group, What: "foot, in speeds", Value: n(measure.Foot.Metres()) + " m",
			Source: "international inch, 1959", Standing: memory, Test: "./geometry/measure TestSpeeds", of: []string{"geometry/measure.pair"}},
		{Group: group, What: "litre an hour and a day of one animal", Value: "1/60 L/min, 1/1440 L/min",
			Source: "definition", Standing: worked, Test: "./nursery/seed TestOystersInSummerAndWinter", of: []string{"nursery/seed.litrePerHour", "nursery/seed.litrePerDay"}},
		{Group: group, What: "fluid ounce, quart, pound, ounce of counted samples", Value: "by US gallon and pound",
			Source: nist, Standing: memory, Test: "./nursery/seed TestParseAmount", of: []string{"nursery/seed.amountUnits"}},
		{Group: group, What: "°C beside °F in the times of cement", Value: "(°F − 32)/1.8",
			Source: "definition", Standing: worked, Test: "./geometry/stock TestCementTimes", of: []string{"geometry/stock.cementTable"}},
		{Group: group, What: "digits after the point of a currency: USD, JPY, BHD and the others", Value: digits("USD", "JPY", "BHD"),
			Source: "ISO 4217, list one", Standing: memory, Test: "./bom/money TestCurrencies", of: []string{"bom/money.byDigits"}},
	}
	for _, p := range render.Papers() {
		source := "ISO 216:2007, ANSI/ASME Y14.1"
		standing := memory
		if strings.HasPrefix(p.Name, "ARCH") || p.Name == "legal" {
			source, standing = string(stock.Practice), practice
		}
		out = append(out, Row{Group: group, What: "paper " + p.Name, Value: stock.Lengths(p.Width, p.Height),
			Source: source, Standing: standing, Test: "./render TestPaperNamed", of: []string{"render.papers"}})
	}
	return out
}

// cautions are what the pages warn of, where a number is in it.
func cautions() []Row {
	var out []Row
	for _, c := range sheets.Cautions() {
		if !strings.ContainsAny(c[0], "0123456789") {
			continue
		}
		standing := seen
		switch {
		case strings.Contains(c[1], "common practice"):
			standing = practice
		case strings.Contains(c[1], "from memory"):
			standing = memory
		}
		what, _, _ := strings.Cut(c[0], ":")
		what, _, _ = strings.Cut(what, ". ")
		out = append(out, Row{Group: "Cautions", What: "caution: " + what, Value: c[0], Source: c[1], Standing: standing,
			Test: "./render/sheets TestCautionsSayTheirNumbers", of: []string{"render/sheets.Cautions"}})
	}
	return out
}

func digits(codes ...money.Currency) string {
	var xs []float64
	for _, c := range codes {
		xs = append(xs, float64(c.Digits()))
	}
	return stock.Numbers(xs...)
}
