package stock

import (
	"strings"

	"silowright/geometry/measure"
)

func pressureTable() Table {
	t := newTable("pressure-pipe", "PVC pressure pipe, Schedule 40 and 80",
		"size, in", "outside, in (mm)", "±", "Sch 40 least wall", "Sch 40 average inside", "Sch 80 least wall", "Sch 80 average inside")
	for _, size := range PipeSizes(Schedule40) {
		a, _ := PipeOf(size, Schedule40)
		b, _ := PipeOf(size, Schedule80)
		t.addMixed([]part{{"outside", a.OutsideOrigin}, {"tolerance", a.ToleranceOrigin}, {"wall", a.WallOrigin}, {"inside", a.InsideOrigin}},
			size, inchMM(a.Outside), inchMM(a.Tolerance), inchMM(a.Wall), inchMM(a.Inside), inchMM(b.Wall), inchMM(b.Inside))
	}
	return t
}

func outOfRoundTable() Table {
	t := newTable("out-of-round", "Schedule 40 pressure pipe: how far from round it may be", "size, in", "least, in (mm)", "most, in (mm)")
	for _, r := range OutOfRounds() {
		t.add(r.Origin, r.Sizes, inchMM(r.Least), inchMM(r.Most))
	}
	return t
}

func sewerTable() Table {
	t := newTable("sewer-pipe", "PVC sewer pipe, inch sizes", "size, in", "series", "outside, in (mm)", "±", "least wall", "inside")
	for _, p := range append(sewerPipes(SDR35), sewerPipes(SDR26)...) {
		t.addMixed([]part{{"outside", p.OutsideOrigin}, {"tolerance", p.ToleranceOrigin}, {"wall", p.WallOrigin}, {"inside", p.InsideOrigin}},
			p.Size, p.Series, inchMM(p.Outside), inchMM(p.Tolerance), inchMM(p.Wall), inchMM(p.Inside))
	}
	return t
}

func metricSewerTable() Table {
	t := newTable("metric-sewer-pipe", "PVC-U sewer pipe, metric sizes", "size, mm", "series", "outside, mm (in)", "least wall", "inside")
	for _, p := range append(metricSewerPipes(SN4), metricSewerPipes(SN8)...) {
		t.addMixed([]part{{"outside", p.OutsideOrigin}, {"wall", p.WallOrigin}, {"inside", p.InsideOrigin}},
			p.Size, p.Series, mmInch(p.Outside), mmInch(p.Wall), mmInch(p.Inside))
	}
	return t
}

// metricPressureTable also lists the diameters whose wall is not known: the
// outside alone decides a saw.
func metricPressureTable() Table {
	t := newTable("metric-pressure-pipe", "PVC-U pressure pipe PN 10, metric sizes", "size, mm", "outside, mm (in)", "least wall", "inside")
	outsides, o := MetricOutsides()
	for _, d := range outsides {
		size := measure.Number(d.MM(), 0)
		p, ok := PipeOf(size, PN10)
		if !ok {
			t.add(o, size, mmInch(d), unknown, unknown)
			continue
		}
		t.addMixed([]part{{"outside", p.OutsideOrigin}, {"wall", p.WallOrigin}, {"inside", p.InsideOrigin}},
			size, mmInch(p.Outside), mmInch(p.Wall), mmInch(p.Inside))
	}
	return t
}

func socketTable() Table {
	t := newTable("sockets", "PVC sockets for solvent cement, Schedule 40 and 4 in sewer", "size, in", "for", "entrance, in (mm)", "bottom", "±", "least depth")
	for _, s := range Sockets() {
		t.add(s.Origin, s.Size, "pressure pipe", inchMM(s.Entrance), inchMM(s.Bottom), inchMM(s.Tolerance), inchMM(s.Depth))
	}
	if s, ok := SewerSocketOf("4"); ok {
		t.add(s.Origin, s.Size, "sewer pipe", inchMM(s.Entrance), inchMM(s.Bottom), inchMM(s.Tolerance), inchMM(s.Depth))
	}
	return t
}

func couplingTable() Table {
	t := newTable("couplings", "Schedule 40 couplings: the least they can be; measure yours", "size, in", "outside, in (mm)", "length", "socket depth")
	for _, c := range Couplings() {
		t.add(c.Origin, c.Size, inchMM(c.Outside), inchMM(c.Length), inchMM(c.Depth))
	}
	return t
}

// stockLengthTable puts series sold in the same lengths in one row.
func stockLengthTable() Table {
	t := newTable("stock-lengths", "Lengths pipe is sold in; sewer pipe: without the bell", "series", "length", "in (mm)")
	for _, group := range [][]string{{Schedule40, Schedule80}, {SDR35, SDR26}, {SN4, SN8}, {PN10}} {
		for _, l := range StockLengths(group[0]) {
			t.add(l.Origin, strings.Join(group, ", "), l.Label, shopInch(l.Length))
		}
	}
	return t
}
