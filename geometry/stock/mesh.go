package stock

import "silowright/geometry/measure"

// Mesh is a woven mesh or screen.
type Mesh struct {
	Name           string // "40", "18 × 16"
	Material       string
	Warp, Weft     int            // strands to the inch, both ways
	Opening        measure.Length // between strands, the narrower way
	OpeningLong    measure.Length // the other way; equal in a square weave
	Strand         measure.Length // diameter
	Open           float64        // open area over all area
	Origin         Origin         // of the opening
	StrandOrigin   Origin
	FractionOrigin Origin
}

// meshOpenings are square weaves of nylon or polyester: count, opening in mm.
var meshOpenings = [...]struct {
	count   int
	name    string
	opening measure.Length
}{
	{100, "100", .154}, {80, "80", .217}, {60, "60", .273}, {40, "40", .435}, {30, "30", .547},
	{24, "24", .808}, {18, "18", 1.061}, {16, "16", 1.188}, {12, "12", 1.566},
}

// Meshes lists woven meshes, finest first, then insect screens. Where the
// opening was seen the strand is what the count leaves (25.4 / count −
// opening); for insect screen the strand is remembered and the opening is what
// it leaves. The open fraction is that of the bare weave: a coating takes some.
func Meshes() []Mesh {
	derived := Origin{"25.4 mm / count − opening", Derived}
	fraction := Origin{"(opening / pitch)², square weave", Derived}
	var out []Mesh
	for _, r := range meshOpenings {
		pitch := measure.Inch / measure.Length(r.count)
		out = append(out, Mesh{r.name, "nylon or polyester", r.count, r.count, r.opening, r.opening, pitch - r.opening,
			float64(r.opening/pitch) * float64(r.opening/pitch), Origin{"mesh opening charts", One}, derived, fraction})
	}
	const strand = 0.011 * measure.Inch
	remembered := Origin{"25.4 mm / count − strand of 0.011 in; see ASTM D3656 for glass yarn", Memory}
	for _, r := range []struct {
		name       string
		warp, weft int
	}{{"20 × 20", 20, 20}, {"18 × 16", 18, 16}, {"18 × 14", 18, 14}} {
		a, b := measure.Inch/measure.Length(r.warp), measure.Inch/measure.Length(r.weft)
		out = append(out, Mesh{r.name, "insect screen", r.warp, r.weft, a - strand, b - strand, strand,
			float64((a-strand)/a) * float64((b-strand)/b), remembered, Origin{srcPractice, Memory}, remembered})
	}
	return out
}
