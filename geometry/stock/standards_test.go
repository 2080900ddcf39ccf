package stock

import (
	"math"
	"slices"
	"testing"

	"silowright/geometry/measure"
)

// inch holds got against a value that a standard prints in inches, to half
// the last printed place.
func inch(t *testing.T, what string, got measure.Length, want, tol float64) {
	t.Helper()
	if math.Abs(got.Inches()-want) > tol+1e-9 {
		t.Errorf("%s = %.4f in, want %.4f", what, got.Inches(), want)
	}
}

func millimetre(t *testing.T, what string, got measure.Length, want float64) {
	t.Helper()
	if math.Abs(got.MM()-want) > 1e-9 {
		t.Errorf("%s = %v mm, want %v", what, got.MM(), want)
	}
}

func pipe(t *testing.T, size, series string) Pipe {
	t.Helper()
	p, ok := PipeOf(size, series)
	if !ok {
		t.Fatalf("no pipe %s %s", size, series)
	}
	return p
}

// Source: ASTM D1785, tables of outside diameters, wall thicknesses and
// average insides.
func TestPressurePipe(t *testing.T) {
	for _, w := range []struct {
		size, series               string
		outside, tol, wall, inside float64
	}{
		{"1/2", "sch40", 0.840, .004, .109, .608},
		{"1", "sch40", 1.315, .005, .133, 1.033},
		{"1 1/2", "sch40", 1.900, .006, .145, 1.592},
		{"1-1/2", "sch80", 1.900, .006, .200, 1.476},
		{"2", "sch40", 2.375, .006, .154, 2.049},
		{"4", "sch40", 4.500, .009, .237, 3.998},
		{"8", "sch80", 8.625, .015, .500, 7.565},
	} {
		p := pipe(t, w.size, w.series)
		inch(t, w.size+" outside", p.Outside, w.outside, 0)
		inch(t, w.size+" tolerance", p.Tolerance, w.tol, 0)
		inch(t, w.size+" wall", p.Wall, w.wall, 0)
		inch(t, w.size+" inside", p.Inside, w.inside, 0)
	}
}

// Source: ASTM D3034 for outsides; its .180 and .360 walls from memory, the others by
// the definition of the dimension ratio, outside / least wall (ASTM F412).
func TestSewerPipe(t *testing.T) {
	for _, w := range []struct {
		size                    string
		outside, wall35, wall26 float64
	}{
		{"4", 4.215, .120, .162}, {"6", 6.275, .180, .241}, {"8", 8.400, .240, .323}, {"10", 10.500, .300, .404}, {"12", 12.500, .360, .481},
	} {
		a, b := pipe(t, w.size, "sdr35"), pipe(t, w.size, "sdr26")
		inch(t, w.size+" outside", a.Outside, w.outside, 0)
		inch(t, w.size+" SDR 35 wall", a.Wall, w.wall35, 0)
		inch(t, w.size+" SDR 26 wall", b.Wall, w.wall26, 0)
	}
	for _, p := range Pipes() {
		ratio := map[string]measure.Length{"sdr35": 35, "sdr26": 26}[p.Series]
		if ratio == 0 {
			continue
		}
		off := p.Wall.Inches() - (p.Outside / ratio).Inches()
		derived := math.Abs(off) <= .0005+1e-9
		if derived != (p.WallOrigin.Standing == Derived) || off < -.0005 || off > .003 {
			t.Errorf("%s %s: wall %.3f in is %+.4f from outside / ratio, yet %q", p.Size, p.Series, p.Wall.Inches(), off, p.WallOrigin.Standing)
		}
	}
}

// Source: EN 1401-1, sizes and least walls; DIN 8062, series PN 10.
func TestMetricPipe(t *testing.T) {
	for _, w := range []struct {
		size, series          string
		outside, wall, inside float64
	}{
		{"110", "en1401-sn4", 110, 3.2, 103.6}, {"125", "en1401-sn8", 125, 3.7, 117.6}, {"160", "en1401-sn4", 160, 4.0, 152},
		{"160 mm", "en1401-sn8", 160, 4.7, 150.6}, {"200", "en1401-sn8", 200, 5.9, 188.2}, {"250", "en1401-sn4", 250, 6.2, 237.6},
		{"50", "pn10", 50, 2.4, 45.2}, {"63", "pn10", 63, 3.0, 57}, {"90", "pn10", 90, 4.3, 81.4},
	} {
		p := pipe(t, w.size, w.series)
		millimetre(t, w.size+" outside", p.Outside, w.outside)
		millimetre(t, w.size+" wall", p.Wall, w.wall)
		millimetre(t, w.size+" inside", p.Inside, w.inside)
		if !p.Metric {
			t.Errorf("%s %s is not marked metric", w.size, w.series)
		}
		if _, ok := SocketOf(w.size); ok {
			t.Errorf("%s: metric pipe has an inch socket", w.size)
		}
		if _, ok := CouplingOf(w.size); ok {
			t.Errorf("%s: metric pipe has an inch coupling", w.size)
		}
	}
}

// Source: ASTM D2466, socket dimensions; ASTM F789 for the sewer socket.
func TestSockets(t *testing.T) {
	for _, w := range []struct {
		size                         string
		entrance, bottom, tol, depth float64
	}{
		{"1/2", .848, .836, .004, .688}, {"1 1/2", 1.912, 1.894, .006, 1.094}, {"2", 2.387, 2.369, .006, 1.156}, {"8", 8.655, 8.610, .015, 4},
	} {
		s, ok := SocketOf(w.size)
		if !ok {
			t.Fatalf("no socket %s", w.size)
		}
		inch(t, w.size+" entrance", s.Entrance, w.entrance, 0)
		inch(t, w.size+" bottom", s.Bottom, w.bottom, 0)
		inch(t, w.size+" tolerance", s.Tolerance, w.tol, 0)
		inch(t, w.size+" depth", s.Depth, w.depth, 0)
	}
	s, ok := SewerSocketOf("4")
	if !ok {
		t.Fatal("no sewer socket")
	}
	p := pipe(t, "4", "sdr35")
	if !(s.Bottom < p.Outside && p.Outside < s.Entrance) {
		t.Errorf("sewer socket %v to %v does not grip %v", s.Bottom, s.Entrance, p.Outside)
	}
}

// Source: worked by hand from ASTM D2466 and D1785, to the hundredth.
func TestCouplings(t *testing.T) {
	for _, w := range []struct {
		size            string
		outside, length float64
	}{
		{"1", 1.58, 1.75}, {"1 1/4", 1.94, 1.88}, {"1 1/2", 2.18, 2.19}, {"2", 2.68, 2.31}, {"3", 3.92, 3.75}, {"4", 4.97, 4.00},
	} {
		c, ok := CouplingOf(w.size)
		if !ok {
			t.Fatalf("no coupling %s", w.size)
		}
		inch(t, w.size+" outside", c.Outside, w.outside, .005)
		inch(t, w.size+" length", c.Length, w.length, .005)
		if c.Origin.Standing != Derived {
			t.Errorf("%s: standing %q", w.size, c.Origin.Standing)
		}
	}
	if got, want := len(Couplings()), len(Sockets()); got != want {
		t.Errorf("%d couplings for %d sockets", got, want)
	}
}

// Source: SAE J1508 ranges, from memory, as a chart prints them.
func TestClamps(t *testing.T) {
	want := []struct {
		size      string
		low, high float64
	}{
		{"64", 2 + 9./16, 4.5}, {"72", 3 + 1./16, 5}, {"96", 4 + 9./16, 6.5}, {"104", 5 + 1./16, 7},
		{"128", 6 + 9./16, 8.5}, {"152", 8 + 1./16, 10}, {"188", 10 + 5./16, 12.25},
	}
	got := Clamps()
	if len(got) != len(want) {
		t.Fatalf("%d clamps, want %d", len(got), len(want))
	}
	for i, w := range want {
		if got[i].Size != w.size {
			t.Errorf("clamp %d is %s, want %s", i, got[i].Size, w.size)
		}
		inch(t, w.size+" smallest", got[i].Min, w.low, 0)
		inch(t, w.size+" largest", got[i].Max, w.high, 0)
	}
	for _, w := range []struct {
		diameter float64
		size     string
		ok       bool
	}{
		{4.215, "72", true}, {8.4, "152", true}, {6.275, "104", true}, {2.5, "", false}, {12.5, "", false}, {math.NaN(), "", false},
	} {
		c, ok := ClampFor(in(w.diameter))
		if c.Size != w.size || ok != w.ok {
			t.Errorf("clamp for %v in = %q, %v; want %q, %v", w.diameter, c.Size, ok, w.size, w.ok)
		}
	}
}

// Source: PE pipe handbook, chapter 3, table B.1.1, psi; NIST SP 811 for MPa.
func TestPlastics(t *testing.T) {
	for _, w := range []struct {
		time string
		mpa  float64
	}{{"0.5 h", 537.8}, {"12 h", 413.7}, {"100 h", 358.5}, {"1 year", 262.0}, {"50 years", 193.1}} {
		m, o, ok := CreepModulus(w.time)
		if !ok || math.Abs(m.MPa()-w.mpa) > .05 || o.Source == "" {
			t.Errorf("modulus after %s = %v MPa (%v), want %v", w.time, m.MPa(), ok, w.mpa)
		}
	}
	if _, _, ok := CreepModulus("2 weeks"); ok {
		t.Error("a modulus for a time that is not in the table")
	}
	last := PEShortModulus
	for _, at := range CreepTimes() {
		m, _, _ := CreepModulus(at)
		if m >= last {
			t.Errorf("modulus does not fall with time at %s", at)
		}
		last = m
	}
	if math.Abs(PEDesignStress.MPa()-5.5) > .05 {
		t.Errorf("design stress %v MPa, want 5.5", PEDesignStress.MPa())
	}
	if math.Abs(PEShortModulus.MPa()-758.42) > .005 {
		t.Errorf("short-term modulus %v MPa, want 110,000 psi, 758.42", PEShortModulus.MPa())
	}
	if peDensityMin != 941 || peDensityMax != 965 || math.Abs(float64(PEDensity)-953) > 1e-9 {
		t.Errorf("density %v of %v to %v kg/m³, want 953, the middle of 941 to 965", PEDensity, peDensityMin, peDensityMax)
	}
	// 0.953 and 1.4 g/cm³ in pounds to the cubic foot: 62.428 lb/ft³ is 1 g/cm³
	// (NIST SP 811).
	for _, want := range []string{"0.953 g/cm³ (59.5 lb/ft³)", "1.4 g/cm³ (87.4 lb/ft³)"} {
		if !slices.ContainsFunc(plasticsTable().Rows, func(r []string) bool { return r[1] == want }) {
			t.Errorf("no density %s", want)
		}
	}
	// BS EN 1401-1:2009; the density is from memory.
	if PVCModulus.MPa() != 3000 || PVCLongModulus.MPa() != 1500 || PVCDensity != 1400 {
		t.Errorf("PVC-U %v and %v MPa, %v kg/m³", PVCModulus, PVCLongModulus, PVCDensity)
	}
}

// Source: mesh opening charts for the strand in µm and the open area in %;
// the insect screens' by the same arithmetic.
func TestMeshes(t *testing.T) {
	want := map[string]struct{ strand, open float64 }{
		"100": {100, 37}, "80": {100, 47}, "60": {150, 42}, "40": {200, 47}, "30": {300, 42}, "24": {250, 58},
		"18": {350, 57}, "16": {400, 56}, "12": {551, 55}, "18 × 16": {279, 66}, "18 × 14": {279, 68}, "20 × 20": {279, 61},
	}
	if len(Meshes()) != len(want) {
		t.Errorf("%d meshes, want %d", len(Meshes()), len(want))
	}
	for _, m := range Meshes() {
		w, ok := want[m.Name]
		if !ok {
			t.Errorf("mesh %s has no check", m.Name)
			continue
		}
		if math.Abs(m.Strand.MM()*1000-w.strand) > 1 || math.Abs(100*m.Open-w.open) > .6 {
			t.Errorf("%s: strand %.0f µm, open %.1f %%, want %v and %v", m.Name, m.Strand.MM()*1000, 100*m.Open, w.strand, w.open)
		}
	}
}

// Source: size charts of tapered rubber stoppers (mm) and hole saws (inch and
// mm labels).
func TestStoppersAndSaws(t *testing.T) {
	s, ok := StopperOf("11")
	if !ok {
		t.Fatal("no stopper 11")
	}
	millimetre(t, "No. 11 top", s.Top, 56)
	millimetre(t, "No. 11 bottom", s.Bottom, 48)
	labels := map[string]string{"9/16": "14", "1 1/8": "29", "2": "51", "2 1/16": "52", "2 1/2": "64", "3 1/4": "83", "6": "152"}
	for _, h := range HoleSaws() {
		if mm, ok := labels[h.Label]; ok && h.MetricLabel != mm {
			t.Errorf("saw %s is labelled %s mm, want %s", h.Label, h.MetricLabel, mm)
		}
		delete(labels, h.Label)
	}
	if len(labels) > 0 {
		t.Errorf("saws missing: %v", labels)
	}
	if got := HoleSaws()[27].Name(measure.UnitInch); got != "2 1/2 in (64 mm)" {
		t.Errorf("name %q", got)
	}
	if got := HoleSaws()[27].Name(measure.UnitMM); got != "64 mm (2 1/2 in)" {
		t.Errorf("name %q", got)
	}
}

// Source: hole charts for bulkhead fittings and for pipe to pass; grommets from
// memory.
func TestPipeHoles(t *testing.T) {
	for _, w := range []struct {
		what      string
		of        func(string) (Hole, bool)
		size      string
		low, high float64
		ok        bool
	}{
		{"grommet", GrommetHole, "1-1/2", 2.5, 2.5, true},
		{"grommet", GrommetHole, "2", 3, 3, true},
		{"grommet", GrommetHole, "110", 0, 0, false},
		{"bulkhead", BulkheadHole, "3", 4, 4.5, true},
		{"bulkhead", BulkheadHole, "1/2", 0, 0, false},
		{"clearance", ClearanceHole, "1 1/2", 2, 2.125, true},
		{"clearance", ClearanceHole, "1 1/4", 1.875, 2, true},
		{"clearance", ClearanceHole, "6", 0, 0, false},
	} {
		h, ok := w.of(w.size)
		if ok != w.ok {
			t.Errorf("%s %s: found %v", w.what, w.size, ok)
		}
		inch(t, w.what+" "+w.size+" least", h.Min, w.low, 0)
		inch(t, w.what+" "+w.size+" most", h.Max, w.high, 0)
	}
}

// Source: NIST Handbook 44, 231 in³ to the US gallon: 10.1 fl oz is 18.23 in³
// or 298.7 mL.
func TestCartridge(t *testing.T) {
	for _, c := range Cartridges() {
		if c.Label == "10.1 fl oz" {
			if math.Abs(c.Volume.ML()-298.7) > .05 {
				t.Errorf("%v mL, want 298.7", c.Volume.ML())
			}
			return
		}
	}
	t.Error("no cartridge of 10.1 fl oz")
}

// Source: ASME B18.6.4 type AB, threads per inch.
func TestScrews(t *testing.T) {
	for size, tpi := range map[string]float64{"6": 20, "8": 18, "10": 16} {
		s, ok := ScrewOf(size)
		if !ok || math.Abs(25.4/s.Pitch.MM()-tpi) > 1e-9 {
			t.Errorf("#%s: pitch %v mm, want %v to the inch", size, s.Pitch.MM(), tpi)
		}
		if !(s.Pitch < s.MajorMin && s.MajorMin < s.MajorMax && s.MajorMax < s.HeadMin && s.HeadMin < s.HeadMax) {
			t.Errorf("#%s is no screw: %+v", size, s)
		}
	}
	if _, ok := ScrewOf("7"); ok {
		t.Error("a screw that is not in the table")
	}
	if got := len(ScrewSizes()); got != 5 {
		t.Errorf("%d screw sizes, want 5", got)
	}
}

// ASTM D1785 allows walls 12 % over the least (from memory), so the average
// inside it prints is outside − 2 × 1.06 × least wall. Every row is held to
// it, to .002 in: a slip in one printed column shows against the other two.
func TestPressurePipeColumnsAgree(t *testing.T) {
	for _, p := range append(pressurePipes(Schedule40), pressurePipes(Schedule80)...) {
		inch(t, p.Size+" "+p.Series+" average inside", p.Inside, (p.Outside - 2*1.06*p.Wall).Inches(), .002)
	}
}

// What a builder asks of the tables must cost nothing beside drawing a pack.
func BenchmarkPipeOf(b *testing.B) {
	for b.Loop() {
		if _, ok := PipeOf("90", PN10); !ok {
			b.Fatal("not found")
		}
	}
}
