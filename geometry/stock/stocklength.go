package stock

import "silowright/geometry/measure"

// StockLength is a length pipe is sold in.
type StockLength struct {
	Length measure.Length
	Label  string // as it is sold: "10 ft", "3 m"
	Origin Origin
}

// StockLengths lists the lengths a series is sold in, shortest first; nil for
// no such series. Those of sewer pipe are laying lengths: the bell comes on
// top.
func StockLengths(series string) []StockLength {
	feet := func(label string, n measure.Length, s Standing) StockLength {
		o := Origin{"pipe trade catalogues", s}
		if s == Memory {
			o.Source = srcPractice
		}
		return StockLength{n * measure.Foot, label, o}
	}
	metres := func(label string, n measure.Length, o Origin) StockLength {
		return StockLength{n * measure.Metre, label, o}
	}
	en, usual := Origin{"catalogues of " + srcEN1401 + " pipe", One}, Origin{srcPractice, Memory}
	switch series {
	case Schedule40, Schedule80:
		return []StockLength{feet("10 ft", 10, Two), feet("20 ft", 20, Two)}
	case SDR35, SDR26:
		return []StockLength{feet("10 ft", 10, Memory), feet("13 ft", 13, One), feet("14 ft", 14, Two), feet("20 ft", 20, Two)}
	case SN4, SN8:
		return []StockLength{metres("0.5 m", .5, en), metres("1 m", 1, en), metres("2 m", 2, en), metres("3 m", 3, en), metres("6 m", 6, en)}
	case PN10:
		return []StockLength{metres("3 m", 3, usual), metres("6 m", 6, usual)}
	}
	return nil
}

// Sheet is a standard sheet of plywood.
type Sheet struct {
	Label         string // as it is sold: "4 × 8 ft"
	Width, Length measure.Length
	Origin        Origin
}

// Sheets lists the standard sheets.
func Sheets() []Sheet {
	o := Origin{srcPractice, Memory}
	return []Sheet{
		{"4 × 8 ft", 4 * measure.Foot, 8 * measure.Foot, o},
		{"1220 × 2440 mm", 1220, 2440, o},
		{"1250 × 2500 mm", 1250, 2500, o},
	}
}
