package sheets

import (
	"fmt"

	"silowright/geometry"
)

// travellerRows is how many silos of a sort get a numbered row; the rest are
// written on copies of a page with open rows.
const travellerRows = 240

// rowTall leaves room to write by hand.
const rowTall length = 11

func setTraveller(f *flow, p *Pack) {
	first := max(p.FirstSerial, 1)
	f.para("Keep this sheet with the parts. One row a silo, the serial number written on base and body. No silo leaves the shop with an empty field.")
	for _, s := range p.Silos {
		f.para(fmt.Sprintf("Drum kind %s: %s round the wall, %s high, wall %s. Off by more than 1/16 in (1.6 mm) round the wall: see step 1.",
			s.Spec.Drum.Label, s.Spec.Drum.Circumference().Both(f.units), s.Spec.Drum.Height.Both(f.units), s.Spec.Drum.Wall.Both(f.units)))
	}
	f.heading("Drum silos")
	f.serialTable(drumColumns, "D", first, p.DrumSilos, func(i int) string { return kindOf(p.Silos, i) })
	if p.PipeSilos > 0 {
		f.heading("Pipe silos")
		f.serialTable(pipeColumns, "P", first, p.PipeSilos, nil)
	}
}

var drumColumns = []column{{head: "Serial", share: 17, bold: true}, {head: "Drum kind", share: 22}, {head: "Held before", share: 24},
	{head: "Round the wall", share: 18}, {head: "Height", share: 16}, {head: "Wall", share: 14}, {head: "Leak test", share: 16}, {head: "Cure from", share: 18},
	{head: "Soaked", share: 18}, {head: "Signed", share: 21}}

var pipeColumns = []column{{head: "Serial", share: 17, bold: true}, {head: "Pipe, outside", share: 28}, {head: "Screen tight", share: 24},
	{head: "Resin set", share: 24}, {head: "Clamp off", share: 22}, {head: "Soaked", share: 22}, {head: "Hangs and drains", share: 23}, {head: "Signed", share: 24}}

// serialTable sets n numbered rows, of them at most travellerRows, then a
// page's worth of open rows for the rest.
func (f *flow) serialTable(cols []column, prefix string, first, n int, kind func(int) string) {
	t := table{cols: cols, tall: rowTall, grid: true, most: 2}
	for i := range min(n, travellerRows) {
		row := []cell{strong(fmt.Sprintf("%s-%03d", prefix, first+i))}
		if kind != nil {
			row = append(row, say(kind(i)))
		}
		t.add(row...)
	}
	f.table(t)
	if n <= travellerRows {
		return
	}
	f.turn()
	f.para(fmt.Sprintf("Numbers %s-%03d to %s-%03d: copy this page as often as needed and write the numbers in.",
		prefix, first+travellerRows, prefix, first+n-1))
	t.rows = nil
	for range int((f.bottom() - f.y - 14) / rowTall) {
		t.add(say(""))
	}
	f.table(t)
}

// kindOf is the label of the drum kind the i-th silo is built from, kinds
// taken in order.
func kindOf(silos []geometry.Silo, i int) string {
	for _, s := range silos {
		if i < s.Build {
			return s.Spec.Drum.Label
		}
		i -= s.Build
	}
	return ""
}
