package stock

import (
	"slices"

	"silowright/geometry/measure"
)

// Pipe is one size of one series. A length of zero is not known.
type Pipe struct {
	Size      string // nominal: "1 1/2", or the outside in mm: "110"
	Series    string
	Outside   measure.Length // average outside diameter
	Tolerance measure.Length // of the average outside, plus or minus
	Wall      measure.Length // least thickness
	Inside    measure.Length // average where a standard was seen to print it, else Outside − 2·Wall
	Metric    bool           // sized by its outside in mm

	OutsideOrigin   Origin
	ToleranceOrigin Origin
	WallOrigin      Origin
	InsideOrigin    Origin
}

// The series of pipe.
const (
	Schedule40 = "sch40"      // PVC pressure pipe, ASTM D1785
	Schedule80 = "sch80"      // the same, thicker
	SDR35      = "sdr35"      // PVC sewer pipe, ASTM D3034
	SDR26      = "sdr26"      // the same, thicker
	SN4        = "en1401-sn4" // PVC-U sewer pipe, EN 1401, 4 kN/m² stiffness
	SN8        = "en1401-sn8" // the same, 8 kN/m²
	PN10       = "pn10"       // PVC-U pressure pipe, DIN 8062, 10 bar
)

// Series lists the series of pipe, inch series first.
func Series() []string {
	return []string{Schedule40, Schedule80, SDR35, SDR26, SN4, SN8, PN10}
}

// Pipes lists every pipe of the tables, series by series, smallest first.
func Pipes() []Pipe { return slices.Clone(pipes) }

// pipes is made once, as it is asked for often; nothing changes it.
var pipes = allPipes()

func allPipes() []Pipe {
	var out []Pipe
	out = append(out, pressurePipes(Schedule40)...)
	out = append(out, pressurePipes(Schedule80)...)
	out = append(out, sewerPipes(SDR35)...)
	out = append(out, sewerPipes(SDR26)...)
	out = append(out, metricSewerPipes(SN4)...)
	out = append(out, metricSewerPipes(SN8)...)
	return append(out, metricPressurePipes()...)
}

// PipeOf returns the pipe of that nominal size and series.
func PipeOf(size, series string) (Pipe, bool) {
	size = NormalSize(size)
	for _, p := range pipes {
		if p.Size == size && p.Series == series {
			return p, true
		}
	}
	return Pipe{}, false
}

// PipeSizes lists the sizes of a series, smallest first; nil when there is no
// such series.
func PipeSizes(series string) []string {
	var out []string
	for _, p := range pipes {
		if p.Series == series {
			out = append(out, p.Size)
		}
	}
	return out
}
