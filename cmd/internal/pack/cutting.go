package pack

import (
	"fmt"
	"strings"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/geometry/path"
	"silowright/render/sheets"
)

// cuttingPages hands the cutting plans to their pages.
func cuttingPages(p *plan.Plan) (bars []sheets.Bars, onRolls []sheets.Roll, plates []sheets.Sheet) {
	kept := 0
	for _, l := range p.Cost.Bill.Lines {
		if l.Cutting != nil {
			bars = append(bars, barsOf(l, &kept))
		}
		for _, lay := range l.Lays {
			if lay.Parts[0].Shape == bom.Plate {
				plates = append(plates, plateOf(p, l, lay))
				continue
			}
			for _, part := range lay.Parts {
				onRolls = append(onRolls, rollOf(p, l, lay, part))
			}
		}
	}
	return bars, onRolls, plates
}

// bought says what is bought for an item: "4 × 10 ft, USD 85.80".
func bought(l bom.Line) string {
	var out []string
	for _, b := range l.Buys {
		out = append(out, fmt.Sprintf("%d × %s, %s", b.Packs, packSays(b.Offer), b.Amount))
	}
	if len(out) == 0 {
		return "all of it from the rack"
	}
	return strings.Join(out, "; ")
}

// barsOf draws one item's sticks; kept counts the offcuts named so far.
func barsOf(l bom.Line, kept *int) sheets.Bars {
	out := sheets.Bars{Item: l.Description, Says: []string{bought(l) + ", " + l.Cutting.Says()}}
	for _, s := range l.Cutting.Sticks {
		bar := sheets.Bar{Count: s.Count, Length: s.Length, FromRack: s.Rack, Trim: l.Cutting.Trim, Kerf: l.Cutting.Kerf, Offcut: s.Offcut, Keep: s.Keep}
		for _, q := range s.Pieces {
			for range q.Count {
				bar.Cuts = append(bar.Cuts, sheets.BarCut{Name: q.Name, Length: q.Length})
			}
		}
		if s.Keep {
			bar.Offname = letter(*kept)
			*kept++
		}
		out.Sticks = append(out.Sticks, bar)
	}
	return out
}

// letter names the nth offcut: A to Z, then AA.
func letter(n int) string {
	if n < 26 {
		return string(rune('A' + n))
	}
	return letter(n/26-1) + letter(n%26)
}

// drawnMost is how many parts of a long layout are drawn.
const drawnMost = 400

func rollOf(p *plan.Plan, l bom.Line, lay bom.Lay, part bom.LaidPart) sheets.Roll {
	u := p.Job.Units
	out := sheets.Roll{Item: l.Description, Pattern: part.Layout.Pattern, Piece: part.Name, Width: lay.Width, Length: part.Length,
		Discs: part.Shape == bom.Disc, Across: part.Across, Count: part.Count, FromRack: lay.Rack}
	if !lay.Rack {
		out.Says = append(out.Says, bought(l))
	}
	if lay.Count > 1 {
		out.Says = append(out.Says, fmt.Sprintf("%d rolls or sheets are laid like this.", lay.Count))
	}
	if part.From > 0 {
		out.Says = append(out.Says, "It begins "+part.From.Both(u)+" from the cut end, after the parts above.")
	}
	claim := "no layout is shorter"
	if !part.Layout.Best {
		claim = "best found; no layout is shorter than " + part.Bound.Both(u)
	}
	out.Says = append(out.Says, fmt.Sprintf("%d laid in %s of roll; %s", part.Count, part.Length.Both(u), claim))
	for i, q := range part.Layout.Places() {
		if i == drawnMost {
			break
		}
		out.Places = append(out.Places, path.Point{X: q.X, Y: q.Y})
	}
	return out
}

func plateOf(p *plan.Plan, l bom.Line, lay bom.Lay) sheets.Sheet {
	out := sheets.Sheet{Item: l.Description, Says: []string{bought(l)}, Width: lay.Width, Height: lay.Length, Count: lay.Count}
	for _, q := range lay.Parts {
		out.Parts = append(out.Parts, sheets.Rect{X: q.Side, Y: q.From, W: q.Across, H: q.Across, Name: q.Name})
	}
	return out
}
