package sheets

import (
	"strconv"
	"strings"
)

func setBill(f *flow, p *Pack) {
	b := p.Bill
	f.para("For " + count(p.DrumSilos, "drum silo", "drum silos") + " and " + count(p.PipeSilos, "pipe silo", "pipe silos") +
		", rounded up to what is sold.")
	if b.Invented {
		f.box(true, boxed{words: "The prices below are invented for this example. Do not buy by them.", bold: true, size: medium, mark: careMark})
	}
	if len(b.Missing) > 0 {
		f.box(true,
			boxed{words: "The total is incomplete: " + count(len(b.Missing), "item has", "items have") + " no price.", bold: true, size: medium, mark: careMark},
			boxed{words: "Without a price, and not in any sum below: " + strings.Join(b.Missing, "; ") + "."})
	}
	if len(b.Rows) == 0 {
		f.para("No bill was worked out for this pack.")
		return
	}
	unit := ""
	if b.Currency != "" {
		unit = ", " + b.Currency
	}
	t := table{cols: []column{{head: "Got", share: 11}, {head: "Item", share: 58, bold: true}, {head: "Needed", share: 34},
		{head: "Sold in", share: 24}, {head: "Packs", share: 14, right: true}, {head: "Each" + unit, share: 23, right: true}, {head: "Sum" + unit, share: 22, right: true}}}
	for i, r := range b.Rows {
		if i == 0 || r.Category != b.Rows[i-1].Category {
			t.band(upper(r.Category))
		}
		price, sum := b.bare(r.Price), b.bare(r.Total)
		if sum == "" {
			price, sum = "–", "no price"
		}
		t.add(p.tick(r.Item), say(r.Item, r.From, p.onHand(r.Item)), say(r.Need, r.Have), say(r.Pack), say(r.Packs), say(price), say(sum))
	}
	f.table(t)
	from := "Prices: none given."
	if b.PriceFile != "" {
		from = "Prices read from " + b.PriceFile + "."
	}
	added := " Sums are exact; nothing is added for tax, freight or work."
	if p.Cost != nil {
		added = " Sums are exact; shipping, tax and work are added on the page What it costs."
	}
	f.para(from + " Currency " + strings.TrimSpace(b.Currency+".") + added)
	f.totals(b)
}

// bare is an amount without the currency that heads its column.
func (b Bill) bare(amount string) string {
	if b.Currency == "" {
		return amount
	}
	return strings.TrimPrefix(amount, b.Currency+" ")
}

func (f *flow) totals(b Bill) {
	t := table{cols: []column{{head: "Category", share: 130, bold: true}, {head: "Sum", share: 54, right: true}}}
	for _, c := range b.Categories {
		t.add(say(c.Name), say(c.Sum))
	}
	total := "All goods"
	if len(b.Missing) > 0 {
		total = "All goods, incomplete: without " + count(len(b.Missing), "item", "items")
	}
	t.add(strong(total), strong(b.Total))
	for _, c := range b.PerSilo {
		t.add(say(c.Name), say(c.Sum))
	}
	f.whole("Sums", t)
}

func setCuts(f *flow, p *Pack) {
	if len(p.Cuts) == 0 {
		f.para("No cut list was worked out for this pack.")
		return
	}
	f.para("Cut square, take the burr off inside and out, and write the piece's name on it. Tick when all of a row are cut.")
	t := table{cols: []column{{head: "Cut", share: 12}, {head: "Count", share: 16, right: true}, {head: "Piece", share: 48, bold: true},
		{head: "From", share: 68}, {head: "Length, and width", share: 40}}}
	for _, c := range p.Cuts {
		piece := strong(c.Piece)
		if c.Drum != "" {
			piece.paras = append(piece.paras, "drum kind "+c.Drum)
		}
		across := ""
		if c.Width > 0 {
			across = "by " + c.Width.Both(f.units)
		}
		t.add(cell{mark: tickBox, paras: []string{""}}, say(strconv.Itoa(c.Count)), piece, say(c.Stock, c.Note),
			say(c.Length.Both(f.units), across))
	}
	f.table(t)
}
