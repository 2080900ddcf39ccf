package svg_test

import (
	"bytes"
	"fmt"
	"strings"

	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/svg"
)

// A drawing is written at true size, in millimetres.
func ExampleWrite() {
	d := render.Drawing{Title: "square", Width: 120, Height: 80}
	d.Rect(render.Cut, path.Pt(10, 10), path.Pt(110, 70))
	var file bytes.Buffer
	if err := svg.Write(&file, d); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.Split(file.String(), "\n")[2])
	// Output: <svg width="120.0000mm" height="80.0000mm"
}
