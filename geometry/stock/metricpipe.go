package stock

import "silowright/geometry/measure"

// metricPressureRows are the PN 10 sizes of DIN 8062 whose wall was seen,
// millimetres.
var metricPressureRows = [...]struct {
	size          string
	outside, wall measure.Length
}{
	{"25", 25, 1.5}, {"32", 32, 1.8}, {"40", 40, 1.9}, {"50", 50, 2.4}, {"63", 63, 3.0}, {"75", 75, 3.6}, {"90", 90, 4.3},
}

// metricPressurePipes lists the pipe of PN10.
func metricPressurePipes() []Pipe {
	seen := Origin{srcDIN8062, One}
	var out []Pipe
	for _, r := range metricPressureRows {
		out = append(out, Pipe{Size: r.size, Series: PN10, Outside: r.outside, Wall: r.wall, Inside: r.outside - 2*r.wall, Metric: true,
			OutsideOrigin: seen, WallOrigin: seen,
			InsideOrigin: Origin{srcDIN8062 + ", outside − 2 × least wall", Derived}})
	}
	return out
}

// MetricOutsides lists the outside diameters of metric pressure pipe (DIN
// 8062), with or without a wall in these tables, smallest first.
func MetricOutsides() ([]measure.Length, Origin) {
	return []measure.Length{20, 25, 32, 40, 50, 63, 75, 90, 110, 125, 140, 160, 180, 200, 225, 250}, Origin{srcDIN8062, One}
}
