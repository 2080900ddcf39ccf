package stock

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"silowright/geometry/measure"
)

// The standards' rows as printed, inches, transcribed apart from the tables.
const (
	// size | outside | ± | wall and average inside of Schedule 40 | of Schedule 80
	printedD1785 = `1/2 | 0.840 | .004 | .109 | .608 | .147 | .528
3/4 | 1.050 | .004 | .113 | .810 | .154 | .724
1 | 1.315 | .005 | .133 | 1.033 | .179 | .935
1 1/4 | 1.660 | .005 | .140 | 1.364 | .191 | 1.256
1 1/2 | 1.900 | .006 | .145 | 1.592 | .200 | 1.476
2 | 2.375 | .006 | .154 | 2.049 | .218 | 1.913
2 1/2 | 2.875 | .007 | .203 | 2.445 | .276 | 2.289
3 | 3.500 | .008 | .216 | 3.042 | .300 | 2.864
4 | 4.500 | .009 | .237 | 3.998 | .337 | 3.786
6 | 6.625 | .011 | .280 | 6.031 | .432 | 5.709
8 | 8.625 | .015 | .322 | 7.943 | .500 | 7.565`

	// size | entrance | bottom | ± | least depth
	printedD2466 = `1/2 | .848 | .836 | .004 | .688
3/4 | 1.058 | 1.046 | .004 | .719
1 | 1.325 | 1.310 | .005 | .875
1 1/4 | 1.670 | 1.655 | .005 | .938
1 1/2 | 1.912 | 1.894 | .006 | 1.094
2 | 2.387 | 2.369 | .006 | 1.156
2 1/2 | 2.889 | 2.868 | .007 | 1.750
3 | 3.516 | 3.492 | .008 | 1.875
4 | 4.518 | 4.491 | .009 | 2.000
6 | 6.647 | 6.614 | .011 | 3.000
8 | 8.655 | 8.610 | .015 | 4.000`

	// size | outside | ± (from memory) | SDR 35 wall | SDR 26 wall
	printedD3034 = `4 | 4.215 | .009 | .120 | .162
6 | 6.275 | .011 | .180 | .241
8 | 8.400 | .012 | .240 | .323
10 | 10.500 | .015 | .300 | .404
12 | 12.500 | .018 | .360 | .481`

	// No. | top | bottom, mm
	printedStoppers = `6 | 32 | 26
7 | 37 | 30
8 | 41 | 33
9 | 45 | 37
10 | 50 | 42
11 | 56 | 48
12 | 64 | 54
13 | 68 | 58
14 | 90 | 75`
)

// printed calls f with the cells of each row.
func printed(t *testing.T, rows string, f func(size string, cells []float64)) {
	t.Helper()
	for row := range strings.Lines(rows) {
		cells := strings.Split(strings.TrimSpace(row), " | ")
		var xs []float64
		for _, c := range cells[1:] {
			x, err := strconv.ParseFloat(c, 64)
			if err != nil {
				t.Fatal(err)
			}
			xs = append(xs, x)
		}
		f(cells[0], xs)
	}
}

// Source: ASTM D1785, every row.
func TestD1785AsPrinted(t *testing.T) {
	n := 0
	printed(t, printedD1785, func(size string, c []float64) {
		n++
		a, b := pipe(t, size, Schedule40), pipe(t, size, Schedule80)
		for i, got := range []measure.Length{a.Outside, a.Tolerance, a.Wall, a.Inside, b.Wall, b.Inside} {
			inch(t, size, got, c[i], 0)
		}
	})
	if n != len(pressureRows) {
		t.Errorf("%d rows printed, %d in the table", n, len(pressureRows))
	}
	// Out of round, .016 to .030 for 1/2 to 4, .070 for 6, .090 for 8.
	for i, w := range [][2]float64{{.016, .030}, {.070, .070}, {.090, .090}} {
		r := OutOfRounds()[i]
		inch(t, r.Sizes+" out of round, least", r.Least, w[0], 0)
		inch(t, r.Sizes+" out of round, most", r.Most, w[1], 0)
	}
}

// Source: ASTM D2466, every row; ASTM F789 for the sewer socket.
func TestD2466AsPrinted(t *testing.T) {
	n := 0
	printed(t, printedD2466, func(size string, c []float64) {
		n++
		s, ok := SocketOf(size)
		if !ok {
			t.Fatalf("no socket of %s", size)
		}
		for i, got := range []measure.Length{s.Entrance, s.Bottom, s.Tolerance, s.Depth} {
			inch(t, size, got, c[i], 0)
		}
	})
	if n != len(socketRows) {
		t.Errorf("%d rows printed, %d in the table", n, len(socketRows))
	}
	s, _ := SewerSocketOf("4")
	for i, got := range []measure.Length{s.Entrance, s.Bottom, s.Depth} {
		inch(t, "sewer socket", got, []float64{4.235, 4.210, 1.750}[i], 0)
	}
}

// Source: ASTM D3034, every row; tolerances and the walls .180 and .360 from
// memory.
func TestD3034AsPrinted(t *testing.T) {
	n := 0
	printed(t, printedD3034, func(size string, c []float64) {
		n++
		a, b := pipe(t, size, SDR35), pipe(t, size, SDR26)
		for i, got := range []measure.Length{a.Outside, a.Tolerance, a.Wall, b.Wall} {
			inch(t, size, got, c[i], 0)
		}
		inch(t, size+" inside", a.Inside, c[0]-2*c[2], 0)
		inch(t, size+" inside, SDR 26", b.Inside, c[0]-2*c[3], 0)
	})
	if n != len(sewerRows) {
		t.Errorf("%d rows printed, %d in the table", n, len(sewerRows))
	}
}

// Source: size charts of tapered rubber stoppers, every row; saws within the
// taper; 25 mm long up to No. 13 (from memory).
func TestStoppersAsPrinted(t *testing.T) {
	printed(t, printedStoppers, func(number string, c []float64) {
		s, ok := StopperOf(number)
		if !ok {
			t.Fatalf("no stopper %s", number)
		}
		millimetre(t, number+" top", s.Top, c[0])
		millimetre(t, number+" bottom", s.Bottom, c[1])
		if long := map[bool]float64{true: 0, false: 25}[number == "14"]; s.Length.MM() != long {
			t.Errorf("stopper %s is %v mm long", number, s.Length)
		}
	})
}

// What is sold: pipe trade catalogues and catalogues of EN 1401 pipe for
// lengths, else common practice, no source (from memory).
func TestStockAsSold(t *testing.T) {
	feet := func(x float64) float64 { return x * 304.8 }
	for series, want := range map[string][]float64{
		Schedule40: {feet(10), feet(20)}, Schedule80: {feet(10), feet(20)},
		SDR35: {feet(10), feet(13), feet(14), feet(20)}, SDR26: {feet(10), feet(13), feet(14), feet(20)},
		SN4: {500, 1000, 2000, 3000, 6000}, SN8: {500, 1000, 2000, 3000, 6000}, PN10: {3000, 6000},
	} {
		got := StockLengths(series)
		if len(got) != len(want) {
			t.Fatalf("%s is sold in %d lengths, want %d", series, len(got), len(want))
		}
		for i, mm := range want {
			millimetre(t, series+" "+got[i].Label, got[i].Length, mm)
		}
	}
	// Plywood: 4 × 8 ft (1219 × 2438), 1220 × 2440, 1250 × 2500 mm.
	for i, w := range [][2]float64{{1219.2, 2438.4}, {1220, 2440}, {1250, 2500}} {
		millimetre(t, "sheet's width", Sheets()[i].Width, w[0])
		millimetre(t, "sheet's length", Sheets()[i].Length, w[1])
	}
	lengths, _ := ScrewLengths()
	for i, w := range []float64{3. / 8, 1. / 2, 5. / 8, 3. / 4, 1, 1.25, 1.5} {
		inch(t, "screw", lengths[i], w, .0005)
	}
	for i, w := range []struct {
		label string
		ml    float64
	}{{"10.1 fl oz", 298.69}, {"300 mL", 300}, {"10.3 fl oz", 304.61}, {"310 mL", 310}, {"29 fl oz", 857.63}} {
		if c := Cartridges()[i]; c.Label != w.label || c.Volume.ML() < w.ml-.01 || c.Volume.ML() > w.ml+.01 {
			t.Errorf("cartridge %d is %s of %v mL, want %s of %v", i, c.Label, c.Volume.ML(), w.label, w.ml)
		}
	}
}

// Source: manual of a PVC pipe maker. At 60 to 100 °F set and cure take 15 min
// and 1 h up to 1 1/4 in, 30 min and 2 h up to 3, 1 h and 6 h up to 8; at 40 to
// 60 °F 1 and 2 h, 2 and 4 h, 4 and 12 h.
func TestCementTimes(t *testing.T) {
	for i, w := range []struct {
		from, to   string
		cold, warm int
		set, cure  time.Duration
	}{
		{"1/2", "1 1/4", 60, 100, 15 * time.Minute, time.Hour}, {"1 1/2", "3", 60, 100, 30 * time.Minute, 2 * time.Hour}, {"4", "8", 60, 100, time.Hour, 6 * time.Hour},
		{"1/2", "1 1/4", 40, 60, time.Hour, 2 * time.Hour}, {"1 1/2", "3", 40, 60, 2 * time.Hour, 4 * time.Hour}, {"4", "8", 40, 60, 4 * time.Hour, 12 * time.Hour},
	} {
		if c := CementTimes()[i]; c.From != w.from || c.To != w.to || c.ColdF != w.cold || c.WarmF != w.warm || c.Set != w.set || c.Cure != w.cure {
			t.Errorf("row %d is %+v, want %+v", i, c, w)
		}
	}
	for i, celsius := range []string{"60 to 100 (16 to 38)", "60 to 100 (16 to 38)", "60 to 100 (16 to 38)", "40 to 60 (4 to 16)", "40 to 60 (4 to 16)", "40 to 60 (4 to 16)"} {
		if got := cementTable().Rows[i][1]; got != celsius {
			t.Errorf("row %d is for %s, want %s", i, got, celsius)
		}
	}
	if CementHumidFactor != 1.5 {
		t.Errorf("above 60 %% humidity %v times, want half as long again", CementHumidFactor)
	}
}

// Sources: ASME B18.6.4 type AB for major and head; ISO 1478 for the metric
// pitches (from memory); design guides for screws in plastics, pilot 75 to 90 %
// of the major diameter and 2 to 3 diameters engaged.
func TestScrewsAsPrinted(t *testing.T) {
	for size, w := range map[string][4]float64{"6": {.132, .139, .256, .270}, "8": {.159, .166, .306, .322}, "10": {.182, .189, .357, .373}} {
		s, _ := ScrewOf(size)
		for i, got := range []measure.Length{s.MajorMin, s.MajorMax, s.HeadMin, s.HeadMax} {
			inch(t, "#"+size, got, w[i], 0)
		}
	}
	for size, w := range map[string]float64{"ST3.5": 1.3, "ST4.2": 1.4} {
		s, _ := ScrewOf(size)
		millimetre(t, size+" pitch", s.Pitch, w)
	}
	if r := ScrewRule(); r.PilotMin != .75 || r.PilotMax != .90 || r.EngagementMin != 2 || r.EngagementMax != 3 {
		t.Errorf("%+v", r)
	}
}

// Sources: hole saw size charts for the pilot bit, 1/4 in and about 1/16 in past
// the teeth; NIOSH Pub. 94-110, coupling notes (from memory), for a cut-out
// that lifts well: 1.5 in high, 4.5 long, 2 clear behind, edge 0.25.
func TestRulesOfThumb(t *testing.T) {
	bit, past, _ := PilotBit()
	inch(t, "pilot bit", bit, .25, .0005)
	inch(t, "past the teeth", past, .0625, .0005)
	h := HandHoldRule()
	for i, got := range []measure.Length{h.Height, h.Length, h.Behind, h.Edge} {
		inch(t, "hand hold", got, []float64{1.5, 4.5, 2, .25}[i], .0005)
	}
}

// Source: EN 1401, mm, every row; DIN 8062 for the outsides and the walls of
// PN 10.
func TestMetricAsPrinted(t *testing.T) {
	for size, w := range map[string][3]float64{"110": {110, 3.2, 3.2}, "125": {125, 3.2, 3.7}, "160": {160, 4.0, 4.7}, "200": {200, 4.9, 5.9}, "250": {250, 6.2, 7.3}} {
		a, b := pipe(t, size, SN4), pipe(t, size, SN8)
		millimetre(t, size+" outside", a.Outside, w[0])
		millimetre(t, size+" SN 4 wall", a.Wall, w[1])
		millimetre(t, size+" SN 8 wall", b.Wall, w[2])
		millimetre(t, size+" SN 4 inside", a.Inside, w[0]-2*w[1])
	}
	for size, w := range map[string][2]float64{"25": {25, 1.5}, "32": {32, 1.8}, "40": {40, 1.9}, "50": {50, 2.4}, "63": {63, 3.0}, "75": {75, 3.6}, "90": {90, 4.3}} {
		p := pipe(t, size, PN10)
		millimetre(t, size+" outside", p.Outside, w[0])
		millimetre(t, size+" PN 10 wall", p.Wall, w[1])
	}
	outsides, _ := MetricOutsides()
	for i, mm := range []float64{20, 25, 32, 40, 50, 63, 75, 90, 110, 125, 140, 160, 180, 200, 225, 250} {
		millimetre(t, "outside", outsides[i], mm)
	}
}

// Sources: hole charts, inches; those of grommets from memory. Equal ends are
// one size quoted; none is quoted where both are 0.
func TestPipeHolesAsPrinted(t *testing.T) {
	for _, w := range []struct {
		size                        string
		grommet                     float64
		bulkhead, clearance         [2]float64
		bulkheadSeen, clearanceSeen Standing
	}{
		{"1/2", 1.25, [2]float64{}, [2]float64{1.125, 1.125}, "", One},
		{"3/4", 1.25, [2]float64{}, [2]float64{1.25, 1.25}, "", One},
		{"1", 1.75, [2]float64{1.75, 1.75}, [2]float64{1.5, 1.5}, Two, One},
		{"1 1/4", 2, [2]float64{}, [2]float64{1.875, 2}, "", One},
		{"1 1/2", 2.5, [2]float64{2.375, 2.375}, [2]float64{2, 2.125}, One, Two},
		{"2", 3, [2]float64{3, 3}, [2]float64{2.625, 2.75}, Two, One},
		{"3", 4, [2]float64{4, 4.5}, [2]float64{3.75, 4}, One, One},
		{"4", 5, [2]float64{}, [2]float64{4.75, 5}, "", One},
	} {
		g, _ := GrommetHole(w.size)
		inch(t, w.size+" grommet", g.Min, w.grommet, 0)
		inch(t, w.size+" grommet", g.Max, w.grommet, 0)
		b, quoted := BulkheadHole(w.size)
		inch(t, w.size+" bulkhead", b.Min, w.bulkhead[0], 0)
		inch(t, w.size+" bulkhead", b.Max, w.bulkhead[1], 0)
		c, _ := ClearanceHole(w.size)
		inch(t, w.size+" clearance", c.Min, w.clearance[0], 0)
		inch(t, w.size+" clearance", c.Max, w.clearance[1], 0)
		if g.Origin.Standing != Memory || quoted != (w.bulkheadSeen != "") || b.Origin.Standing != w.bulkheadSeen || c.Origin.Standing != w.clearanceSeen {
			t.Errorf("%s: %v, %v, %v", w.size, g.Origin, b.Origin, c.Origin)
		}
	}
}
