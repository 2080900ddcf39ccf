package render_test

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

// A template 300 mm square goes on four letter sheets, which overlap.
func ExampleOnPaper() {
	d := render.Drawing{Title: "disc", Width: 300, Height: 300}
	d.Circle(render.Cut, path.Pt(150, 150), 148)
	letter, err := render.PaperNamed("letter", measure.UnitInch)
	if err != nil {
		fmt.Println(err)
		return
	}
	t, err := render.OnPaper(d, letter, 6.35, 12.7, render.Stretch{})
	fmt.Println(t.Cols, "by", t.Rows, "sheets", err)
	// Output: 2 by 2 sheets <nil>
}

// A printer that prints the 100 mm square 99.4 mm wide is corrected.
func ExamplePrintedAs() {
	k, err := render.PrintedAs("99.4x100")
	fmt.Println(k, err)
	_, err = render.PrintedAs("60x100")
	fmt.Println(err != nil)
	// Output:
	// print at 100 %: drawn × 1.0060 across, × 1.0000 up for the printer measured <nil>
	// true
}
