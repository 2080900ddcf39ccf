package stock

import "silowright/geometry/measure"

// HoleSaw is one nominal size of hole saw. The hole comes out a little larger.
type HoleSaw struct {
	Diameter    measure.Length // nominal, by its inch label
	Label       string         // inches: "2 1/2"
	MetricLabel string         // mm as sold: "64"
	Origin      Origin
}

// Name writes the saw for a reader who works in u, as it is labelled:
// "2 1/2 in (64 mm)".
func (s HoleSaw) Name(u measure.Unit) string {
	if u == measure.UnitMM {
		return s.MetricLabel + " mm (" + s.Label + " in)"
	}
	return s.Label + " in (" + s.MetricLabel + " mm)"
}

// holeSawsSeen and holeSawsRemembered are sixteenths of an inch with the mm
// they are sold as.
var (
	holeSawsSeen = [...]struct {
		sixteenths int
		mm         string
	}{
		{9, "14"}, {10, "16"}, {11, "17"}, {12, "19"}, {13, "21"}, {14, "22"}, {16, "25"}, {17, "27"}, {18, "29"}, {19, "30"},
		{20, "32"}, {21, "33"}, {22, "35"}, {23, "37"}, {24, "38"}, {25, "40"}, {26, "41"}, {27, "43"}, {28, "44"}, {29, "46"},
		{30, "48"}, {32, "51"}, {33, "52"}, {34, "54"}, {36, "57"}, {37, "59"}, {38, "60"}, {40, "64"}, {41, "65"}, {42, "67"},
	}
	holeSawsRemembered = [...]struct {
		sixteenths int
		mm         string
	}{
		{44, "70"}, {48, "76"}, {52, "83"}, {56, "89"}, {64, "102"}, {72, "114"}, {80, "127"}, {96, "152"},
	}
)

// HoleSaws lists the nominal series, smallest first.
func HoleSaws() []HoleSaw {
	var out []HoleSaw
	add := func(sixteenths int, mm string, o Origin) {
		d := in(float64(sixteenths) / 16)
		out = append(out, HoleSaw{d, d.Inch(16), mm, o})
	}
	for _, r := range holeSawsSeen {
		add(r.sixteenths, r.mm, Origin{"hole saw size charts", One})
	}
	for _, r := range holeSawsRemembered {
		add(r.sixteenths, r.mm, Origin{srcPractice, Memory})
	}
	return out
}

// PilotBit is the drill in a hole saw's middle, and PilotBitPast how far it
// stands out past the teeth.
func PilotBit() (diameter, past measure.Length, o Origin) {
	return in(1. / 4), in(1. / 16), Origin{"hole saw size charts", One}
}
