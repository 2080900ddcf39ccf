package stock

import "silowright/geometry/measure"

// pressureRow is one line of ASTM D1785, inches as printed.
type pressureRow struct {
	size             string
	outside, tol     float64
	wall40, inside40 float64
	wall80, inside80 float64
}

// The insides are the averages the standard prints. They are smaller than
// outside − 2 × least wall, which many charts print instead (2 in: 2.067 for
// 2.049), because walls are made thicker than the least.
var pressureRows = [...]pressureRow{
	{"1/2", 0.840, .004, .109, .608, .147, .528},
	{"3/4", 1.050, .004, .113, .810, .154, .724},
	{"1", 1.315, .005, .133, 1.033, .179, .935},
	{"1 1/4", 1.660, .005, .140, 1.364, .191, 1.256},
	{"1 1/2", 1.900, .006, .145, 1.592, .200, 1.476},
	{"2", 2.375, .006, .154, 2.049, .218, 1.913},
	{"2 1/2", 2.875, .007, .203, 2.445, .276, 2.289},
	{"3", 3.500, .008, .216, 3.042, .300, 2.864},
	{"4", 4.500, .009, .237, 3.998, .337, 3.786},
	{"6", 6.625, .011, .280, 6.031, .432, 5.709},
	{"8", 8.625, .015, .322, 7.943, .500, 7.565},
}

// pressurePipes lists the pipe of Schedule40 or Schedule80.
func pressurePipes(series string) []Pipe {
	seen, once := Origin{srcD1785, Two}, Origin{srcD1785, One}
	var out []Pipe
	for _, r := range pressureRows {
		p := Pipe{Size: r.size, Series: series, Outside: in(r.outside), Tolerance: in(r.tol), Wall: in(r.wall40), Inside: in(r.inside40),
			OutsideOrigin: seen, ToleranceOrigin: seen, WallOrigin: seen, InsideOrigin: once}
		if series == Schedule80 {
			p.Wall, p.Inside = in(r.wall80), in(r.inside80)
		}
		out = append(out, p)
	}
	return out
}

// OutOfRound is how far Schedule 40 pipe of a range of sizes may be from
// round, largest less smallest diameter.
type OutOfRound struct {
	Sizes  string // "1/2 to 4", "6"
	Least  measure.Length
	Most   measure.Length
	Origin Origin
}

// OutOfRounds lists what ASTM D1785 allows Schedule 40 pipe; within a range
// it grows with the size.
func OutOfRounds() []OutOfRound {
	o := Origin{srcD1785, One}
	return []OutOfRound{
		{"1/2 to 4", in(.016), in(.030), o},
		{"6", in(.070), in(.070), o},
		{"8", in(.090), in(.090), o},
	}
}
