package stock

import "silowright/geometry/measure"

// sewerRow is one line of ASTM D3034, inches as printed. Tolerances are from
// memory.
type sewerRow struct {
	size         string
	outside, tol float64
	seen         Standing // of the outside
	wall35       float64
	wall35Seen   Standing
	wall26       float64
}

// A wall is outside / ratio, worked out to the thousandth. Only the 6 and
// 12 in walls of SDR 35 are thicker than that (.179 and .357): the standard,
// from memory, rounds them up.
var sewerRows = [...]sewerRow{
	{"4", 4.215, .009, Two, .120, Derived, .162},
	{"6", 6.275, .011, One, .180, Memory, .241},
	{"8", 8.400, .012, One, .240, Derived, .323},
	{"10", 10.500, .015, One, .300, Derived, .404},
	{"12", 12.500, .018, One, .360, Memory, .481},
}

// sewerPipes lists the pipe of SDR35 or SDR26.
func sewerPipes(series string) []Pipe {
	var out []Pipe
	for _, r := range sewerRows {
		wall, seen := in(r.wall35), r.wall35Seen
		if series == SDR26 {
			wall, seen = in(r.wall26), Derived
		}
		source := srcD3034 + ", outside / ratio"
		if seen == Memory {
			source = srcD3034
		}
		out = append(out, Pipe{Size: r.size, Series: series, Outside: in(r.outside), Tolerance: in(r.tol),
			Wall: wall, Inside: in(r.outside) - 2*wall,
			OutsideOrigin:   Origin{srcD3034, r.seen},
			ToleranceOrigin: Origin{srcD3034, Memory},
			WallOrigin:      Origin{source, seen},
			InsideOrigin:    Origin{srcD3034 + ", outside − 2 × least wall", Derived}})
	}
	return out
}

// metricSewerRow is one line of EN 1401, millimetres as printed.
type metricSewerRow struct {
	size                   string
	outside, wall4, wall8  measure.Length
	outsideSeen, wall4Seen Standing
}

var metricSewerRows = [...]metricSewerRow{
	{"110", 110, 3.2, 3.2, Two, Two},
	{"125", 125, 3.2, 3.7, One, One},
	{"160", 160, 4.0, 4.7, Two, Two},
	{"200", 200, 4.9, 5.9, Two, Two},
	{"250", 250, 6.2, 7.3, Two, Two},
}

// metricSewerPipes lists the pipe of SN4 or SN8.
func metricSewerPipes(series string) []Pipe {
	var out []Pipe
	for _, r := range metricSewerRows {
		p := Pipe{Size: r.size, Series: series, Outside: r.outside, Wall: r.wall4, Metric: true,
			OutsideOrigin: Origin{srcEN1401, r.outsideSeen},
			WallOrigin:    Origin{srcEN1401, r.wall4Seen},
			InsideOrigin:  Origin{srcEN1401 + ", outside − 2 × least wall", Derived}}
		if series == SN8 {
			p.Wall, p.WallOrigin.Standing = r.wall8, One
		}
		p.Inside = p.Outside - 2*p.Wall
		out = append(out, p)
	}
	return out
}
