package path_test

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// An outline knows its area and its length exactly, round parts too.
func ExamplePath_Area() {
	in := measure.Inch
	disc := path.Circle(path.Pt(0, 0), 2*in)
	board := path.Rect(path.Box{Max: path.Pt(8*in, 6*in)})
	fmt.Printf("%.3f in², round %.3f in\n", disc.Area().SquareInches(), disc.Length().Inches()) // 4π, 4π
	fmt.Printf("%.0f in², round %.0f in\n", board.Area().SquareInches(), board.Length().Inches())
	// Output:
	// 12.566 in², round 12.566 in
	// 48 in², round 28 in
}

// A handle slot: two straight sides and a half circle at each end.
func ExamplePath_ArcTo() {
	var slot path.Path
	slot.MoveTo(path.Pt(0, 0))
	slot.LineTo(path.Pt(70, 0))
	slot.ArcTo(path.Pt(70, 20), measure.FullTurn/2)
	slot.LineTo(path.Pt(0, 40))
	slot.ArcTo(path.Pt(0, 20), measure.FullTurn/2)
	slot.ClosePath()
	b := slot.Bounds()
	fmt.Println(b.Max.X-b.Min.X, "by", b.Max.Y-b.Min.Y, "mm")
	// Output: 110 by 40 mm
}
