package pack

import (
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/geometry/path"
	"silowright/render"
	"silowright/render/pdf"
)

// Page is one page of the pack's PDF for showing on a screen.
type Page struct {
	Title   string
	Drawing render.Drawing
	// Whole is a template of which the page shows the part within Part under
	// Drawing, its lower left corner at At; nil on other pages.
	Whole *render.Drawing
	Part  path.Box
	At    path.Point
}

// Pages are the pages of the pack's PDF in its order.
func Pages(p *plan.Plan, o Options) ([]Page, error) {
	tilings, err := layTemplates(p, o)
	if err != nil {
		return nil, err
	}
	costs, err := report.CostsOf(p)
	if err != nil {
		return nil, err
	}
	only, err := o.chosen()
	if err != nil {
		return nil, err
	}
	r := &pageRow{}
	views := func() ([]drawingPage, error) { return drawingPages(p, o.Page), nil }
	err = setPages(r, p, o, content{costs, tilings, views}, only, &Made{})
	return r.pages, err
}

// pager takes the pages of a pack one after the other.
type pager interface {
	Page(d render.Drawing, bookmark string, level int) error
	Window(d render.Drawing, key string, whole render.Drawing, window path.Box, at path.Point, bookmark string, level int) error
}

var _ pager = (*pdf.Book)(nil)

// pageRow keeps the pages it is given.
type pageRow struct{ pages []Page }

func (r *pageRow) title(bookmark string) string {
	if bookmark == "" && len(r.pages) > 0 {
		return r.pages[len(r.pages)-1].Title
	}
	return bookmark
}

func (r *pageRow) Page(d render.Drawing, bookmark string, _ int) error {
	r.pages = append(r.pages, Page{Title: r.title(bookmark), Drawing: d})
	return render.Check(d)
}

func (r *pageRow) Window(d render.Drawing, _ string, whole render.Drawing, window path.Box, at path.Point, bookmark string, _ int) error {
	r.pages = append(r.pages, Page{r.title(bookmark), d, &whole, window, at})
	return render.Check(d)
}
