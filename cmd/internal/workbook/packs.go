package workbook

import (
	"math"
	"strings"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
)

// unit is what the workbook counts a kind of quantity in, and how many of the
// kind's own unit it is.
type unit struct {
	name string
	per  float64
}

// millionths is an expression in the unit rounded to a millionth of the kind's
// own unit, as a need is held (see bom.Need.Total).
func (u unit) millionths(x string) string {
	if u.per == 1 {
		return "ROUND(" + x + ",6)"
	}
	return "ROUND((" + x + ")*" + plain(u.per) + ",6)/" + plain(u.per)
}

func unitOf(k bom.Kind, u measure.Unit) unit {
	inch := u != measure.UnitMM
	foot := measure.Foot.MM()
	switch {
	case k == bom.Length && inch:
		return unit{"ft", foot}
	case k == bom.Length:
		return unit{"m", 1e3}
	case k == bom.Area && inch:
		return unit{"ft²", foot * foot}
	case k == bom.Area:
		return unit{"m²", 1e6}
	case k == bom.Volume && inch:
		return unit{"fl oz", measure.USFluidOunce.ML()}
	case k == bom.Volume:
		return unit{"mL", 1}
	}
	return unit{"each", 1}
}

// packs is where a line's packs come from.
type packs struct {
	even bool   // the need goes with the counts
	live bool   // the packs follow from the need
	says string // for a reader
}

// hair is a part of a pack that is binary noise and no need for another.
const hair = 1e-9

const askAgain = ": run the program again for other counts"

// packsOf tells what a line's packs follow from. Those of one pack size at one
// price follow from the need; all else the program has to be asked for.
func (w *writing) packsOf(l bom.Line, even map[string]bool) packs {
	cut := len(l.Pieces) > 0 || len(l.Flats) > 0
	p := packs{even: even[l.Item] && !cut}
	switch {
	case l.Amount == nil:
		p.says = "no price in the list; fill in packs, price and supplier"
	case len(l.Pieces) > 0:
		p.says = "from the cutting plan" + askAgain
	case len(l.Flats) > 0:
		p.says = "from the layout" + askAgain
	case len(l.Buys) == 0:
		p.says = "the rack holds enough" + askAgain
	case l.Category == bom.Tools:
		p.says = "bought once and shared"
	case !p.even:
		p.says = "does not go in step with the silos" + askAgain
	case len(l.Buys) > 1 || w.offersOf(l) != 1 || l.Buys[0].Offer.From > 1:
		p.says = "the cheapest of several packs or prices" + askAgain
	case !w.agrees(l):
		p.says = "the program's own number" + askAgain
	default:
		p.live, p.says = true, "formula: the need less the rack, over what a pack holds"
	}
	return p
}

// offersOf is how many offers the line's supplier makes of its item.
func (w *writing) offersOf(l bom.Line) int {
	n := 0
	for _, o := range w.plan.Prices.Offers {
		if same(o.Item, l.Item) && same(o.Supplier, l.Supplier) {
			n++
		}
	}
	return n
}

// agrees reports whether the formula, in the same binary numbers, gives the
// packs that the program buys.
func (w *writing) agrees(l bom.Line) bool {
	u := unitOf(l.Kind, w.plan.Job.Units)
	b := l.Buys[0]
	if b.Offer.Kind != l.Kind || b.Offer.Width > 0 {
		return false
	}
	need := float64(w.plan.Job.DrumSilos)*(l.EachDrum/u.per) + float64(w.plan.Job.PipeSilos)*(l.EachPipe/u.per)
	need = math.Round(need*u.per*1e6) / 1e6 / u.per
	got := math.Ceil(max(0, (need-l.Rack/u.per)/(b.Offer.Holds/u.per)-hair))
	return got == float64(b.Packs)
}

// proportional tells, by item, whether a need is so much for each drum silo and
// so much for each pipe silo whatever the counts. It asks the takeoff for other
// counts; a sort of silo that is not built is not asked after.
func proportional(p *plan.Plan) map[string]bool {
	d, q := p.Job.DrumSilos, p.Job.PipeSilos
	var probes [][2]int
	for _, n := range []int{1, 2, 3, d + 1, q + 1, 2*d + 1, 2*q + 1, 1009} {
		if d > 0 {
			probes = append(probes, [2]int{n, q})
		}
		if q > 0 {
			probes = append(probes, [2]int{d, n})
		}
		if d > 0 && q > 0 {
			probes = append(probes, [2]int{n, n})
		}
	}
	out := map[string]bool{}
	for _, l := range p.Cost.Bill.Lines {
		out[l.Item] = l.Category != bom.Tools
	}
	for _, at := range probes {
		found := map[string]bom.Need{}
		for _, n := range bom.Takeoff(bom.Batches(p.Site.Silos, at[0], at[1]), p.Site.Rates, p.Site.Units, p.Site.Runs...) {
			found[n.Item] = n
		}
		for _, l := range p.Cost.Bill.Lines {
			n := found[l.Item] // nothing where nothing is used
			if !near(n.Drum, l.EachDrum*float64(at[0])) || !near(n.Pipe, l.EachPipe*float64(at[1])) {
				out[l.Item] = false
			}
		}
	}
	return out
}

func near(x, y float64) bool { return math.Abs(x-y) <= 1e-9*max(1, math.Abs(x), math.Abs(y)) }

// same compares names as price lists and jobs are matched: case and blanks do
// not count.
func same(a, b string) bool { return key(a) == key(b) }

func key(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
