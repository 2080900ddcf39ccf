package sea

import "silowright/geometry/stock"

// BuiltIn lists the numbers of this package, each with its source, its
// standing and the test that holds it.
func BuiltIn() []stock.Figure {
	const test = "TestPublished"
	eos := stock.Seen("UNESCO Technical Papers in Marine Science 44, algorithm 2 (EOS-80)")
	eos.Standing = stock.Memory // its check values were seen, its coefficients were not
	thick := stock.Seen("Sharqawy, Lienhard and Zubair 2010, equations 22 and 23")
	boil := stock.Recalled("Hyland and Wexler 1983")
	salt := stock.Recalled("Sharqawy, Lienhard and Zubair 2010, after Raoult's law")
	n := stock.Numbers
	return []stock.Figure{
		{Of: "eosPure", What: "density of fresh water by powers of °C, kg/m³", Value: n(eosPure[:]...), Origin: eos, Test: test},
		{Of: "eosSalt", What: "density: by salinity and powers of °C", Value: n(eosSalt[:]...), Origin: eos, Test: test},
		{Of: "eosRoot", What: "density: by salinity to the power 3/2 and powers of °C", Value: n(eosRoot[:]...), Origin: eos, Test: test},
		{Of: "eosSquare", What: "density: by salinity squared", Value: n(eosSquare), Origin: eos, Test: test},
		{Of: "thickLeast thickSquare thickShift thickOff", What: "viscosity of fresh water, Pa·s: a + 1/(b·(°C + c)² − d)",
			Value: n(thickLeast, thickSquare, thickShift, thickOff), Origin: thick, Test: "TestSharqawyAsPrinted"},
		{Of: "thickSalt thickSquared", What: "viscosity: by salinity and by its square, powers of °C",
			Value: n(append(thickSalt[:len(thickSalt):len(thickSalt)], thickSquared[:]...)...), Origin: thick, Test: "TestSharqawyAsPrinted"},
		{Of: "boilInverse boilPoly boilLog", What: "vapour pressure of fresh water, ln Pa: by 1/K, powers of K, ln K",
			Value: n(boilInverse) + "; " + n(boilPoly[:]...) + "; " + n(boilLog), Origin: boil, Test: test},
		{Of: "boilSalt", What: "vapour pressure: lowered by salt", Value: n(boilSalt), Origin: salt, Test: test},
		{Of: "iceKelvin", What: "0 °C in kelvin", Value: n(iceKelvin), Origin: stock.Seen("definition of the Celsius scale, as LibreOffice converts it"), Test: "TestKelvinByLibreOffice"},
		{Of: "Gravity", What: "standard gravity, m/s²", Value: n(Gravity), Origin: stock.Seen("3rd CGPM, 1901, as the gonum library has it"), Test: "TestGravityOfGonum"},
		{Of: "LeastSalinity MostSalinity Coldest Warmest", What: "range of the relations on sea water: g/kg, °C",
			Value:  n(LeastSalinity, MostSalinity) + "; " + n(float64(Coldest), float64(Warmest)),
			Origin: stock.Recalled("UNESCO Technical Papers in Marine Science 44, and Sharqawy, Lienhard and Zubair 2010"), Test: "TestRefused"},
	}
}
