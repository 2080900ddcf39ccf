package sheets

import (
	"strconv"
	"strings"

	"silowright/render"
	"silowright/render/charts"
)

// Cost is what the build costs. All amounts are written out already; the
// numbers are for places in drawings only.
type Cost struct {
	Currency  string      // ISO 4217 code that heads the columns; amounts may begin with it
	Suppliers []Order     // what each supplier is paid; Rows and Notes are not set here
	Bought    OrderSums   // of all suppliers
	Total     string      // of the whole build, with labour and contingency
	Points    []CostPoint // what one costs at 5, 10, 20, 50
	Counted   string      // what the points and the curve count, in the plural; "" is "silos"
	Curve     []CurvePoint
	Built     int     // the build's own count on the curve; 0 marks none
	Shares    []Share // where the money goes, largest first
	Lines     []Amount
	Stale     []string // prices quoted longer ago than the job allows, names that nothing uses, a sentence each
	Missing   []string // items without a price: every sum leaves them out
	Invented  bool     // the prices are made up and must not be bought by
}

// CostPoint is what builds of one size cost; "" stands where nothing is known.
type CostPoint struct {
	Silos    string // how many
	Total    string
	EachDrum string // each drum silo
	EachPipe string // each pipe silo
	Next     string // what one more would add
	Own      bool   // the build's own count
}

// CurvePoint is one place of the cost curve.
type CurvePoint struct {
	N    int     // silos built
	Each float64 // cost of each, in the currency's major unit
	Says string  // Each written out
}

// Share is one bar of where the money goes.
type Share struct {
	Name string
	Sum  string
	Part float64 // of the whole, 0 to 1
}

func setCost(f *flow, p *Pack) {
	c := p.Cost
	if c == nil {
		f.para("No costs were worked out for this pack.")
		return
	}
	if c.Total != "" {
		words := "The whole build: " + c.total() + ", for " +
			count(p.DrumSilos, "drum silo", "drum silos") + " and " + count(p.PipeSilos, "pipe silo", "pipe silos") + "."
		lines := render.Wrap(f.safe(words), medium, true, f.wide())
		for _, l := range lines[:min(len(lines), 3)] {
			f.put(marginL, f.y+medium, l, medium, true, render.Left)
			f.y += lead(medium)
		}
		f.y += 0.5
	}
	if w := c.warnings(f); len(w) > 0 {
		f.box(true, w...)
	}
	buys, points, lines := c.buyTable(f), c.pointTable(), c.lineTable()
	pitch := sharePitch
	money := f.questionTall() + sharesTall(c, pitch) + f.tallOf(lines)
	if f.y+2*f.questionTall()+f.tallOf(buys)+f.tallOf(points)+money+chartWell > f.bottom() {
		buys.tight, points.tight, lines.tight = true, true, true
		pitch = sharePitch * 0.9
		money = f.questionTall() + sharesTall(c, pitch) + f.tallOf(lines)
	}
	f.question("What do I buy?", f.tableStart(buys))
	f.table(buys)
	f.question("What does one cost?", f.tableStart(points))
	f.table(points)
	f.costChart(c, f.bottom()-f.y-money)
	f.question("Where does the money go?", min(money-f.questionTall(), f.bottom()-topY-f.questionTall()))
	f.shares(c, pitch)
	f.table(lines)
}

// total is what the build costs, with its currency: words such as "incomplete"
// bring their own.
func (c *Cost) total() string {
	if t := c.amount(c.Total); t != "" && t[0] >= '0' && t[0] <= '9' {
		return strings.TrimSpace(c.Currency + " " + t)
	}
	return c.Total
}

// amount is an amount without the currency that heads its column.
func (c *Cost) amount(s string) string { return Bill{Currency: c.Currency}.bare(s) }

// unit is the currency behind words, if there is one.
func (c *Cost) unit(before string) string {
	if c.Currency == "" {
		return ""
	}
	return before + c.Currency
}

// mostNamed is how many items a warning on the one page names.
const mostNamed = 8

// warnings are what a reader must know before believing the sums.
func (c *Cost) warnings(f *flow) []boxed {
	var out []boxed
	if c.Invented {
		out = append(out, boxed{words: "The prices below are invented for this example. Do not buy by them.", bold: true, mark: careMark})
	}
	if n := len(c.Missing); n > 0 {
		out = append(out, boxed{words: f.named("Every sum is incomplete: "+count(n, "item has", "items have")+" no price: ", c.Missing), bold: true, mark: careMark})
	}
	for i, w := range c.Stale {
		if i == 3 && len(c.Stale) > 4 {
			out = append(out, boxed{words: count(len(c.Stale)-3, "more notice is", "more notices are") + " listed by silowright cost.", mark: careMark})
			break
		}
		out = append(out, boxed{words: f.brief(sentence(w), 2), mark: careMark})
	}
	return out
}

// named sets names behind words, the first few where two lines do not hold all.
func (f *flow) named(words string, names []string) string {
	for most := min(len(names), mostNamed); most > 0; most-- {
		all := words + strings.Join(names[:most], "; ")
		if most < len(names) {
			all += "; and " + strconv.Itoa(len(names)-most) + " more"
		}
		if all += "."; most == 1 || len(render.Wrap(f.safe(all), small, true, f.wide()-2*boxIn-markWide)) <= 2 {
			return f.brief(all, 2)
		}
	}
	return words
}

// brief cuts words to so many lines of a box.
func (f *flow) brief(words string, lines int) string {
	out := render.Wrap(f.safe(words), small, true, f.wide()-2*boxIn-markWide)
	if len(out) <= lines {
		return words
	}
	return fit(strings.Join(out[:lines], " ")+" "+out[lines], small, length(lines)*(f.wide()-2*boxIn-markWide)*0.9)
}

func (c *Cost) buyTable(f *flow) table {
	t := table{most: 2, cols: []column{{head: "Supplier", share: 76, bold: true}, {head: "Goods" + c.unit(", "), share: 27, right: true},
		{head: "Shipping" + c.unit(", "), share: 29, right: true}, {head: "Tax" + c.unit(", "), share: 25, right: true},
		{head: "Order" + c.unit(", "), share: 27, right: true}}}
	row := func(name string, s OrderSums, set func(...string) cell) {
		r := []cell{strong(name)}
		for _, v := range []string{s.Goods, s.Shipping, s.Tax, s.Total} {
			if v == "" {
				v = "–"
			}
			r = append(r, set(c.amount(v)))
		}
		r[4].bold = true
		t.add(r...)
	}
	xs := f.columns(t.cols)
	for _, s := range c.Suppliers {
		row(fit(f.safe(s.Supplier), small, (xs[1]-xs[0]-2*padX)*0.92), s.Sums, say)
	}
	if len(c.Suppliers) != 1 {
		row("All suppliers", c.Bought, strong)
	}
	return t
}

func (c *Cost) counted() string {
	if c.Counted == "" {
		return "silos"
	}
	return c.Counted
}

func (c *Cost) pointTable() table {
	t := table{most: 2, cols: []column{{head: upper(c.counted()), share: 60, bold: true}, {head: "Total" + c.unit(", "), share: 31, right: true},
		{head: "Drum silo" + c.unit(", "), share: 31, right: true}, {head: "Pipe silo" + c.unit(", "), share: 31, right: true},
		{head: "One more" + c.unit(", "), share: 31, right: true}}}
	for _, p := range c.Points {
		n := p.Silos
		if p.Own {
			n += ", this build"
		}
		r := []cell{say(n)}
		for _, v := range []string{p.Total, p.EachDrum, p.EachPipe, p.Next} {
			if v == "" {
				v = "–"
			}
			x := say(c.amount(v))
			x.bold = p.Own
			r = append(r, x)
		}
		t.add(r...)
	}
	return t
}

// lineTable sets the lines in two columns, read down the first.
func (c *Cost) lineTable() table {
	t := table{most: 2, cols: []column{{head: "Hours, rates and leftovers", share: 58}, {head: "", share: 34, right: true, bold: true},
		{head: "", share: 58}, {head: "", share: 34, right: true, bold: true}}}
	half := (len(c.Lines) + 1) / 2
	for i := range half {
		r := []cell{say(upper(c.Lines[i].Name)), say(c.Lines[i].Sum)}
		if i+half < len(c.Lines) {
			r = append(r, say(upper(c.Lines[i+half].Name)), say(c.Lines[i+half].Sum))
		}
		t.add(r...)
	}
	return t
}

// question is a heading with less air round it than a page of tables has.
func (f *flow) question(words string, h length) {
	f.need(f.questionTall() + h)
	f.y += medium
	f.put(marginL, f.y, words, medium, true, render.Left)
	f.y += 2.2
}

func (f *flow) questionTall() length { return medium + 2.2 }

// The least and the greatest height of the chart on the page, and the one
// below which the tables are set tight.
const (
	chartLow  length = 30
	chartWell length = 62
	chartHigh length = 75
)

// costChart draws the cost curve in the room given.
func (f *flow) costChart(c *Cost, room length) {
	if len(c.Curve) < 2 {
		return
	}
	s := charts.Steps{Width: f.wide(), Height: min(max(room-3, chartLow), chartHigh), Mark: c.Built, MarkSays: "this build",
		Across: "number of " + f.safe(c.counted()) + " built", Up: f.safe("Cost of each" + c.unit(", "))}
	for _, p := range c.Curve {
		s.Points = append(s.Points, charts.Point{N: p.N, Value: p.Each, Says: f.safe(c.amount(p.Says))})
	}
	f.need(s.Height + 3)
	f.place(s.Draw(), marginL, f.y, 1)
	f.y += s.Height + 3
}
