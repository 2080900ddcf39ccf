package pdf_test

import (
	"bytes"
	"fmt"

	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/pdf"
)

// A page as large as its drawing, at true size.
func ExampleBook_Page() {
	d := render.Drawing{Title: "square", Width: 120, Height: 120}
	d.Rect(render.Cut, path.Pt(10, 10), path.Pt(110, 110))
	b := pdf.New(pdf.Meta{Title: "invented"})
	if err := b.Page(d, "square", 0); err != nil {
		fmt.Println(err)
		return
	}
	var file bytes.Buffer
	if _, err := b.WriteTo(&file); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(file.String()[:5])
	// 120 mm are 340.16 points of 1/72 in
	fmt.Println(bytes.Contains(file.Bytes(), []byte("/MediaBox [0 0 340.16 340.16]")))
	// Output:
	// %PDF-
	// true
}
