package sheets

import (
	"math"
	"strconv"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/charts"
)

// wetPower is the caution where a pump is connected.
var wetPower = []caution{
	cautionPower,
	{"Have the pump's supply, its protection and its earthing put in and tested by a licensed electrician; pump, cable and plugs made for salt water. Switch off and unplug before hands go into pump, strainer or water.",
		"common practice, no source"},
	{"Taking, discharging and treating sea water may need a permit. Local codes hold over anything printed here.",
		"common practice, no source"},
}

// The most silos that each get a bar and a row of the table.
const mostSilos = 60

func setWater(f *flow, p *Pack) {
	w := p.Water
	if w == nil {
		f.para("No flow of water was worked out for this pack.")
		return
	}
	var from sources
	f.saying(&from, w.Says...)
	f.levelAndFlow(w.Section, w.NoSection)
	f.flowBars(w.Flows)
	if len(w.Losses) > 0 {
		f.whole("What the water loses on its way up", lossTable(w.Losses))
	}
	if len(w.Seat) > 0 {
		f.whole("Does the body stay on its seat?", amounts("Lift and weight", w.Seat))
	}
	f.saying(&from, w.SeatSays)
	f.pumpChart(w.Pump, w.NoPump)
	f.headedLines("Power and suction", "What the pump asks", w.Lines)
	if len(w.Pipes) > 0 {
		f.whole("Pipes", pipeTable(w.Pipes))
	}
	f.flowTable(w.Flows)
	if len(w.Failure) > 0 {
		f.heading("When the power fails")
		f.items(w.Failure...)
	}
	if w.Pump != nil || len(w.Lines) > 0 {
		f.headingOver("Before the pump is connected", min(f.boxTall(cautionBox(wetPower)), boxKept))
		f.cautions(wetPower)
		f.para(deferring)
	}
	f.bases(from, w.Basis)
}

// whole sets a table under its heading on one page where a page can hold both.
func (f *flow) whole(words string, t table) {
	room := f.tableStart(t)
	if tall := f.tallOf(t); tall <= f.bottom()-topY-20 {
		room = tall
	}
	f.headingOver(words, room)
	f.table(t)
}

// amounts is a table of named amounts.
func amounts(head string, list []Amount) table {
	t := table{cols: []column{{head: head, share: 104, bold: true}, {head: "", share: 80, right: true}}}
	for _, l := range list {
		t.add(say(upper(l.Name)), say(l.Sum))
	}
	return t
}

// headedLines sets amounts under a heading, none when there are none.
func (f *flow) headedLines(words, head string, list []Amount) {
	if len(list) > 0 {
		f.whole(words, amounts(head, list))
	}
}

func lossTable(list []Loss) table {
	t := table{cols: []column{{head: "Part of the silo", share: 62, bold: true}, {head: "Head lost, mesh clean", share: 40, right: true},
		{head: "Head lost, mesh fouled", share: 40, right: true}, {head: "", share: 42}}}
	for _, l := range list {
		set := say
		if l.Total {
			set = strong
		}
		t.add(say(upper(l.Name)), set(l.Clean), set(orElse(l.Fouled, l.Clean)), say(l.Note))
	}
	return t
}

func pipeTable(list []PipeRow) table {
	t := table{cols: []column{{head: "Run", share: 29, bold: true}, {head: "Pipe", share: 25}, {head: "Flow", share: 37}, {head: "Speed", share: 37},
		{head: "Head lost", share: 30}, {head: "Use at least", share: 26}}}
	for _, r := range list {
		speed := say(r.Speed)
		if r.Level != geometry.OK {
			speed = strong(r.Speed)
			speed.mark = levelMark(r.Level)
		}
		t.add(say(upper(r.Run)), say(r.Pipe), say(r.Flow), speed, say(r.Loss), strong(orElse(r.Advised, "as it is")))
	}
	return t
}

// pumpTall is the height of the chart of the pump.
const pumpTall length = 78

// pumpChart draws both curves and where they meet.
func (f *flow) pumpChart(c *PumpChart, none string) {
	if c == nil {
		f.heading("Pump and pipes")
		f.para(orElse(none, "No pump or manifold is described in the job: what each silo gets is not worked out."))
		return
	}
	head, up := measure.Foot, charts.Axis{Says: "Head, ft", Second: "m", Factor: float64(measure.Foot / measure.Metre)}
	if f.units == measure.UnitMM {
		head, up = measure.Metre, charts.Axis{Says: "Head, m", Second: "ft", Factor: float64(measure.Metre / measure.Foot)}
	}
	xy := func(p HeadAt) charts.XY { return charts.XY{X: inFlow(p.Flow, f.units), Y: float64(p.Head / head)} }
	all := func(in []HeadAt) (out []charts.XY) {
		for _, p := range in {
			out = append(out, xy(p))
		}
		return out
	}
	pump, system := all(c.Pump), all(c.System)
	d := charts.Curves{Width: f.wide(), Height: pumpTall, Across: flowAxis(f.units), Up: up,
		Lines: []charts.Curve{{Name: "pump", Layer: render.Outline, Points: pump}, {Name: "system", Layer: render.Water, Points: system}},
		Spots: []charts.Spot{{At: xy(c.Duty), Says: fit(f.safe(c.DutySays), small, f.wide()*0.6), Drop: true}}}
	for _, p := range pump { // the pump's head is the top of the chart
		if p.Y <= 1e6 {
			d.Top = math.Max(d.Top, p.Y)
		}
	}
	f.headingOver("Pump and system", pumpTall+2)
	f.place(d.Draw(), marginL, f.y, 1)
	f.y += pumpTall + 2
	if c.DutySays != "" {
		f.para("The pump runs where the curves meet: " + sentence(c.DutySays))
	}
	if c.Estimated != "" {
		f.box(false, boxed{words: sentence(c.Estimated), bold: true, mark: careMark})
	}
}

// The height of the chart of what each silo gets, lower where that keeps it
// on the page.
const (
	barsTall length = 46
	barsLow  length = 35
)

// flowBars draws what each silo gets.
func (f *flow) flowBars(w *SiloFlows) {
	if w == nil || len(w.Silos) == 0 {
		return
	}
	axis := flowAxis(f.units)
	tall := barsTall
	if room := f.bottom() - f.y - lead(medium) - 8 - length(len(w.Says)+1)*(lead(small)+1.2); room < tall && room >= barsLow-6 {
		tall = max(room, barsLow)
	}
	c := charts.Bars{Width: f.wide(), Height: tall, Across: "silo", Up: charts.Axis{Says: axis.Says, Second: axis.Second, Factor: axis.Factor},
		Line: inFlow(w.Mean, f.units)}
	if w.MeanSays != "" {
		c.LineSays = f.safe("mean " + w.MeanSays)
	}
	shown, least, most := w.shown(mostSilos)
	for _, i := range shown {
		s := w.Silos[i]
		c.Bars = append(c.Bars, charts.Bar{Name: fit(f.safe(s.Name), small, 24), Value: inFlow(s.Flow, f.units), Mark: i == least || i == most})
	}
	f.headingOver("What each silo gets", tall+2)
	f.place(c.Draw(), marginL, f.y, 1)
	f.y += tall + 2
	if n := len(w.Silos); len(shown) < n {
		f.para(strconv.Itoa(len(shown)) + " of " + strconv.Itoa(n) + " silos are drawn, evenly chosen, with the least and the most (dark).")
	}
	for _, s := range w.Says {
		f.para(sentence(s))
	}
}

// shown are the silos drawn when no more than so many can be: the first, the
// last, those between evenly, and the least and the most.
func (w *SiloFlows) shown(limit int) (out []int, least, most int) {
	n := len(w.Silos)
	least, most = 0, 0
	for i, s := range w.Silos {
		if s.Flow < w.Silos[least].Flow {
			least = i
		}
		if s.Flow > w.Silos[most].Flow {
			most = i
		}
	}
	step := max(1, (n+limit-1)/limit)
	for i := range w.Silos {
		if i%step == 0 || i == n-1 || i == least || i == most {
			out = append(out, i)
		}
	}
	return out, least, most
}

// flowTable sets a row a silo; of many silos the first, the last, the least,
// the most and those with something the matter.
func (f *flow) flowTable(w *SiloFlows) {
	if w == nil || len(w.Silos) == 0 {
		return
	}
	t := table{tight: true, cols: []column{{head: "Silo", share: 20, bold: true}, {head: "Flow", share: 43}, {head: "Above the invert", share: 36},
		{head: "Freeboard", share: 36}, {head: "Valve", share: 19}, {head: "", share: 30}}}
	rows, left := w.rows()
	valved, noted := false, false
	for _, i := range rows {
		valved, noted = valved || w.Silos[i].Valve != "", noted || w.Silos[i].Note != ""
	}
	switch { // the room of a column that would stand empty goes to the one beside it
	case !valved:
		t.cols[4] = column{share: t.cols[4].share + t.cols[5].share}
		t.cols = t.cols[:5]
	case !noted:
		t.cols[4].share += t.cols[5].share
		t.cols = t.cols[:5]
	}
	for _, i := range rows {
		s := w.Silos[i]
		name := strong(s.Name)
		if s.Worst != geometry.OK {
			name.mark = levelMark(s.Worst)
		}
		r := []cell{name, say(s.Says), say(s.Level), say(s.Freeboard)}
		if valved {
			r = append(r, say(s.Valve))
		}
		t.add(append(r, say(s.Note))...)
	}
	f.headed("Silo by silo", t)
	if left > 0 {
		f.para(count(left, "more silo has", "more silos have") + " nothing the matter and a flow between these, or more of the same.")
	}
}

// worstRows is how many silos with something the matter a long table names.
const worstRows = 12

// rows are the silos of the table, and how many are left out.
func (w *SiloFlows) rows() (out []int, left int) {
	n := len(w.Silos)
	if n <= mostSilos {
		out, _, _ = w.shown(n)
		return out, 0
	}
	_, least, most := w.shown(n)
	keep := map[int]bool{0: true, 1: true, 2: true, n - 1: true, n - 2: true, n - 3: true, least: true, most: true}
	for level, named := geometry.Stop, 0; level > geometry.OK; level-- {
		for i, s := range w.Silos {
			if s.Worst == level && named < worstRows && !keep[i] {
				keep[i], named = true, named+1
			}
		}
	}
	for i := range n {
		if keep[i] {
			out = append(out, i)
		}
	}
	return out, n - len(out)
}
