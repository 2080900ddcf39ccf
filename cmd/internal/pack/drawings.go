package pack

import (
	"fmt"

	"silowright/cmd/internal/plan"
	"silowright/geometry"
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

// drawingPage is one shop drawing on its sheet.
type drawingPage struct {
	page  render.Drawing
	title string
}

// drawingPages draws every view of every kind, those of pipe silos only where
// some are built.
func drawingPages(p *plan.Plan, paper sheets.Paper) []drawingPage {
	type due struct {
		silo geometry.Silo
		view views.View
	}
	var dues []due
	for i, s := range p.Silos {
		for _, v := range views.All() {
			if !v.Pipe || p.Cost.Batches[i].Pipe > 0 {
				dues = append(dues, due{s, v})
			}
		}
	}
	var out []drawingPage
	for i, d := range dues {
		drawing := d.view.Draw(d.silo, views.Size{
			Width: paper.Width - bindMargin - edgeMargin, Height: paper.Height - 2*edgeMargin,
			Sheet: fmt.Sprintf("%d of %d", i+1, len(dues)), Job: p.Job.Name, Revision: revision,
			FirstAngle: p.Job.Projection == geometry.FirstAngle,
		})
		sheet := render.Drawing{Title: drawing.Title, Description: drawing.Description, Width: paper.Width, Height: paper.Height}
		sheet.Place(drawing, path.Pt(bindMargin, edgeMargin), 1)
		title := d.view.Title
		if len(p.Silos) > 1 {
			title += ", drum kind " + d.silo.Spec.Drum.Label
		}
		out = append(out, drawingPage{sheet, title})
	}
	return out
}

// stepPictures are the small pictures of the build steps, drawn from the first
// kind.
func stepPictures(p *plan.Plan) map[string]render.Drawing {
	out := map[string]render.Drawing{}
	for _, s := range views.Steps(p.Silos[0]) {
		out[s.ID] = s.Picture
	}
	return out
}
