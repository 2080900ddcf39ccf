package pack

import (
	"bytes"
	"fmt"

	"silowright/bom/nest"
	"silowright/cmd/internal/output"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/svg"
)

// nestGap is left between patterns on a combined sheet, for the cutter.
const nestGap measure.Length = 8

// combinedSheets are SVG files of whole sheets of each material, with one of
// each pattern nested on them. A pattern larger than the sheet is left out;
// its own file still holds it.
func combinedSheets(laid []laid, sheet render.Paper) ([]output.File, error) {
	var files []output.File
	for _, m := range []geometry.Material{geometry.Plywood, geometry.Flexible, geometry.MeshRoll} {
		var parts []nest.Part
		var drawn []render.Drawing
		for _, l := range laid {
			p := nest.Part{Width: l.drawing.Width, Height: l.drawing.Height}
			if _, _, err := nest.Rows([]nest.Part{p}, sheet.Width, sheet.Height, nestGap); l.template.Sheet != m || err != nil {
				continue
			}
			parts = append(parts, p)
			drawn = append(drawn, panel(l))
		}
		places, n, err := nest.Rows(parts, sheet.Width, sheet.Height, nestGap)
		if err != nil {
			return nil, err
		}
		for k := range n {
			d := render.Drawing{Title: fmt.Sprintf("%s, sheet %d of %d", m, k+1, n),
				Description: "one of each pattern; cut lines in the group cut", Width: sheet.Width, Height: sheet.Height}
			for i, at := range places {
				if at.Sheet != k {
					continue
				}
				part := drawn[i]
				if at.Turned {
					part = part.QuarterTurn()
				}
				d.Place(part, path.Pt(at.X, at.Y), 1)
			}
			var buf bytes.Buffer
			if err := svg.Write(&buf, d); err != nil {
				return nil, err
			}
			files = append(files, output.File{Name: fmt.Sprintf("sheets/%s-%d.svg", m, k+1), Data: buf.Bytes()})
		}
	}
	return files, nil
}

// panel is a pattern with its own edge to cut along, but for the mesh disc,
// whose edge is its cut line.
func panel(l laid) render.Drawing {
	d := l.drawing
	if l.template.Sheet == geometry.MeshRoll {
		return d
	}
	out := render.Drawing{Title: d.Title, Width: d.Width, Height: d.Height}
	out.Place(d, path.Pt(0, 0), 1)
	out.Rect(render.Cut, path.Pt(0, 0), path.Pt(d.Width, d.Height))
	return out
}
