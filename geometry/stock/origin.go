package stock

import "silowright/geometry/measure"

// Standing says how sure a row is.
type Standing string

// The standings, surest first.
const (
	Two     Standing = "seen in two independent sources"
	One     Standing = "seen in one source"
	Derived Standing = "worked out from seen values"
	Memory  Standing = "from memory: measure yours"
	// Practice is of what is not a part to be measured: a limit, a rate.
	Practice Standing = srcPractice
)

// Custom is the origin of what the trade does and nobody published.
func Custom() Origin { return Origin{srcPractice, Practice} }

// Seen is the origin of what was seen in one publication.
func Seen(source string) Origin { return Origin{source, One} }

// Recalled is the origin of what stands in a publication that nobody looked
// up again.
func Recalled(source string) Origin { return Origin{source, Memory} }

// Origin is where a row is from. Source names a publication, or says that
// there is none.
type Origin struct {
	Source   string
	Standing Standing
}

// The publications, each written one way everywhere.
const (
	srcD1785    = "ASTM D1785"
	srcD2466    = "ASTM D2466"
	srcD3034    = "ASTM D3034"
	srcF789     = "ASTM F789"
	srcEN1401   = "EN 1401"
	srcDIN8062  = "DIN 8062"
	srcJ1508    = "SAE J1508"
	srcPE       = "PE pipe handbook, chapter 3, table B.1.1"
	srcPractice = "common practice, no source"
)

// in is x inches; the tables below are mostly in inches, as printed.
func in(x float64) measure.Length { return measure.Length(x) * measure.Inch }

// ins is several lengths in inches.
func ins(xs ...float64) []measure.Length {
	out := make([]measure.Length, len(xs))
	for i, x := range xs {
		out[i] = in(x)
	}
	return out
}
