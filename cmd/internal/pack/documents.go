package pack

import (
	"fmt"
	"strconv"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/render/sheets"
)

// sheetsPack hands a plan to the document pages, amounts written out.
func sheetsPack(p *plan.Plan, tilings []laid) sheets.Pack {
	out := sheets.Pack{
		Name: p.Job.Name, Units: p.Job.Units, Revision: "revision " + revision,
		DrumSilos: p.Job.DrumSilos, PipeSilos: p.Job.PipeSilos,
		Silos: p.Silos, Findings: p.Findings, Defaulted: p.Job.Defaulted,
		Bill: billPages(p), Pictures: stepPictures(p), FirstSerial: 1,
	}
	for _, c := range p.Cuts {
		out.Cuts = append(out.Cuts, sheets.CutRow{Stock: c.From, Piece: c.Piece, Drum: c.Drum, Count: c.Count,
			Length: c.Length, Width: c.Width, Note: c.Note})
	}
	for _, l := range tilings {
		t := l.template
		row := sheets.TemplateRow{Title: t.Title, Drum: t.Drum, Count: t.Count, Width: t.Width, Height: t.Height,
			Sheets: len(l.tiling.Tiles)}
		switch {
		case t.Compass:
			row.Note = "draw it with a compass; the SVG file is at true size"
		case l.tiling.Empty > 0:
			row.Note = fmt.Sprintf("%d empty sheets left out", l.tiling.Empty)
		}
		out.Templates = append(out.Templates, row)
	}
	return out
}

func billPages(p *plan.Plan) sheets.Bill {
	b := p.Bill
	out := sheets.Bill{Currency: string(p.Currency), Total: b.Total.String(), Missing: b.Missing,
		Invented: p.Invented, PriceFile: p.Prices.Name}
	for _, l := range b.Lines {
		out.Rows = append(out.Rows, billRow(p, l))
	}
	for _, c := range b.Categories {
		out.Categories = append(out.Categories, sheets.Amount{Name: c.Category, Sum: c.InCurrency()})
	}
	if b.DrumSilos > 0 {
		out.PerSilo = append(out.PerSilo, sheets.Amount{Name: "each drum silo", Sum: b.PerDrum.String()})
	}
	if b.PipeSilos > 0 {
		out.PerSilo = append(out.PerSilo, sheets.Amount{Name: "each pipe silo", Sum: b.PerPipe.String()})
	}
	return out
}

func billRow(p *plan.Plan, l bom.Line) sheets.BillRow {
	r := sheets.BillRow{Category: l.Category, Item: l.Description, Need: l.Text(l.Total(), p.Job.Units)}
	o := l.Offer
	if o == nil {
		return r
	}
	r.Pack, r.Packs = o.Pack, strconv.FormatInt(l.Packs, 10)
	r.Price, r.Total = o.Price.String(), l.Amount.String()
	r.From = o.Supplier
	if o.Quoted != "" {
		r.From += ", quoted " + o.Quoted
	}
	return r
}
