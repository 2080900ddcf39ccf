package pack

import (
	"fmt"
	"strconv"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/cmd/internal/report"
	"silowright/render/sheets"
)

// sheetsPack hands a plan to the document pages, amounts written out.
func sheetsPack(p *plan.Plan, costs report.Costs, tilings []laid) sheets.Pack {
	out := sheets.Pack{
		Name: p.Job.Name, Units: p.Job.Units, Revision: "revision " + revision,
		DrumSilos: p.Job.DrumSilos, PipeSilos: p.Job.PipeSilos,
		Silos: p.Silos, Findings: p.Findings, Defaulted: p.Job.Defaulted,
		Bill: billPages(p), Pictures: stepPictures(p), FirstSerial: 1,
		Cost: costPage(p, costs), Orders: orderPages(p), Work: workPage(p, costs), Have: onHand(p),
		Water: waterPage(p), Seed: seedPage(p),
	}
	out.Bars, out.Rolls, out.Plates = cuttingPages(p)
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
	b := p.Cost.Bill
	out := sheets.Bill{Currency: string(p.Currency), Total: b.Goods.String(), Missing: b.Missing,
		Invented: p.Invented, PriceFile: p.Prices.Name}
	for _, l := range b.Lines {
		out.Rows = append(out.Rows, billRows(p, l)...)
	}
	for _, c := range b.Categories {
		out.Categories = append(out.Categories, sheets.Amount{Name: c.Category, Sum: c.InCurrency()})
	}
	return out
}

// billRows are the rows of one item, one a kind of pack.
func billRows(p *plan.Plan, l bom.Line) []sheets.BillRow {
	r := sheets.BillRow{Category: l.Category, Item: l.Description, Need: l.Text(l.Total(), p.Job.Units)}
	if l.Rack > 0 {
		r.Have = l.Text(l.Rack, p.Job.Units) + " on the rack"
	}
	var out []sheets.BillRow
	for _, b := range l.Buys {
		r.Pack, r.Packs = packSays(b.Offer), strconv.FormatInt(b.Packs, 10)
		r.Price, r.Total = b.Price.String(), b.Amount.String()
		r.From = b.Offer.Supplier
		if b.Offer.Quoted != "" {
			r.From += ", quoted " + b.Offer.Quoted
		}
		out = append(out, r)
		r.Need, r.Have = "", ""
	}
	if len(out) == 0 {
		if l.Amount != nil {
			r.Total = l.Amount.String()
		}
		out = append(out, r)
	}
	return out
}
