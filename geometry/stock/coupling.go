package stock

import "silowright/geometry/measure"

// Coupling is the least a Schedule 40 coupling can be. Its outside and length
// are in no standard; these bounds are the cautious default where none was
// measured.
type Coupling struct {
	Size    string
	Outside measure.Length // socket bottom + 2 × least pipe wall
	Length  measure.Length // 2 × least socket depth, the stop between them left out
	Depth   measure.Length // of each socket
	Origin  Origin
}

// Couplings lists the couplings whose socket and pipe are both in the tables,
// smallest first.
func Couplings() []Coupling {
	o := Origin{srcD2466 + " bottom + 2 × " + srcD1785 + " wall", Derived}
	var out []Coupling
	for _, s := range Sockets() {
		if p, ok := PipeOf(s.Size, Schedule40); ok {
			out = append(out, Coupling{s.Size, s.Bottom + 2*p.Wall, 2 * s.Depth, s.Depth, o})
		}
	}
	return out
}

// CouplingOf returns the least coupling for pressure pipe of that size. It
// knows no metric and no sewer couplings.
func CouplingOf(size string) (Coupling, bool) {
	size = NormalSize(size)
	for _, c := range Couplings() {
		if c.Size == size {
			return c, true
		}
	}
	return Coupling{}, false
}
