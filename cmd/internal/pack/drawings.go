package pack

import (
	"fmt"

	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/sheets"
	"silowright/render/views"
)

// drawingsPart is the part of the PDF that is the shop drawings; it follows
// the section that says what is built.
const (
	drawingsPart  = "drawings"
	drawingsAfter = "build"
)

// The margins of a drawing's sheet: 20 mm on the left to bind it, 10 mm on the
// other sides (ISO 5457).
const (
	bindMargin measure.Length = 20
	edgeMargin measure.Length = 10
)

// datumNote stands under every drawing.
const datumNote = "Round the wall: from the datum line to the right, facing the wall. Heights: up from ground or foot, or down from the rim."

// drawingPage is one shop drawing on its sheet.
type drawingPage struct {
	page  render.Drawing
	title string
}

// drawingPages draws every view of every kind.
func drawingPages(p *plan.Plan, paper sheets.Paper, revision string) []drawingPage {
	all := views.All()
	var out []drawingPage
	for i, s := range p.Silos {
		for j, v := range all {
			page := paper
			if v.Wide {
				page.Width, page.Height = paper.Height, paper.Width
			}
			d := v.Draw(s, views.Size{
				Width: page.Width - bindMargin - edgeMargin, Height: page.Height - 2*edgeMargin,
				Sheet: fmt.Sprintf("%d of %d", i*len(all)+j+1, len(all)*len(p.Silos)),
				Job:   p.Job.Name, Revision: revision,
			})
			sheet := render.Drawing{Title: d.Title, Description: d.Description, Width: page.Width, Height: page.Height}
			sheet.Place(d, path.Pt(bindMargin, edgeMargin), 1)
			sheet.Words(path.Pt(bindMargin, edgeMargin/2-1), 2.5, render.Left, datumNote)
			title := d.Title
			if len(p.Silos) > 1 {
				title += ", drum kind " + s.Spec.Drum.Label
			}
			out = append(out, drawingPage{sheet, title})
		}
	}
	return out
}
