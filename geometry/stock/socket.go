package stock

import "silowright/geometry/measure"

// Socket is a tapered socket for solvent cement.
type Socket struct {
	Size      string
	Entrance  measure.Length // diameter at the mouth
	Bottom    measure.Length // diameter at the stop
	Tolerance measure.Length // of both diameters, plus or minus; zero: not known
	Depth     measure.Length // least
	Origin    Origin
}

// socketRows are the Schedule 40 sockets of ASTM D2466, inches as printed:
// entrance, bottom, tolerance, least depth.
var socketRows = [...]struct {
	size                         string
	entrance, bottom, tol, depth float64
}{
	{"1/2", .848, .836, .004, .688},
	{"3/4", 1.058, 1.046, .004, .719},
	{"1", 1.325, 1.310, .005, .875},
	{"1 1/4", 1.670, 1.655, .005, .938},
	{"1 1/2", 1.912, 1.894, .006, 1.094},
	{"2", 2.387, 2.369, .006, 1.156},
	{"2 1/2", 2.889, 2.868, .007, 1.750},
	{"3", 3.516, 3.492, .008, 1.875},
	{"4", 4.518, 4.491, .009, 2.000},
	{"6", 6.647, 6.614, .011, 3.000},
	{"8", 8.655, 8.610, .015, 4.000},
}

// Sockets lists the PVC Schedule 40 sockets of ASTM D2466, smallest first.
func Sockets() []Socket {
	var out []Socket
	for _, r := range socketRows {
		out = append(out, Socket{r.size, in(r.entrance), in(r.bottom), in(r.tol), in(r.depth), Origin{srcD2466, One}})
	}
	return out
}

// SocketOf returns the PVC Schedule 40 socket for pressure pipe of that size.
// It knows no metric sizes and no sewer sockets.
func SocketOf(size string) (Socket, bool) {
	size = NormalSize(size)
	for _, s := range Sockets() {
		if s.Size == size {
			return s, true
		}
	}
	return Socket{}, false
}

// SewerSocketOf returns the socket for inch sewer pipe of that size (ASTM
// F789); only 4 in was seen.
func SewerSocketOf(size string) (Socket, bool) {
	if NormalSize(size) != "4" {
		return Socket{}, false
	}
	return Socket{Size: "4", Entrance: in(4.235), Bottom: in(4.210), Depth: in(1.750), Origin: Origin{srcF789, One}}, true
}
