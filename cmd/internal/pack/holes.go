package pack

import (
	"strconv"

	"silowright/bom"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
	"silowright/geometry/measure"
)

// holesCSV is the hole schedule as a table: a row a hole or slot.
func holesCSV(p *plan.Plan) []byte {
	rows := [][]string{{"hole", "part", "drum", "count", "height_mm", "height_in", "below_rim_mm", "below_rim_in",
		"round_mm", "round_in", "saw", "hole_mm", "arc_round_wall_mm", "pipe", "joint", "clearance_mm", "worst_finding"}}
	both := func(l measure.Length) []string { return []string{l.Metric(), l.Inch(16)} }
	for i, s := range p.Silos {
		b := p.Cost.Batches[i]
		u, label := p.Job.Units, s.Spec.Drum.Label
		for _, h := range s.Holes() {
			n := b.Drum
			if h.Part == "pipe silo" {
				n = b.Pipe
			}
			row := append([]string{h.Name, h.Part, label, strconv.Itoa(n)}, both(h.Height)...)
			if h.Part == "base" {
				row = append(row, "", "")
			} else {
				row = append(row, both(h.BelowRim)...)
			}
			row = append(row, both(h.Round)...)
			row = append(row, h.Saw.In(u), h.Diameter.Metric(), h.Arc.Metric())
			if !h.Joint.Makeup().Piped {
				row = append(row, "", "stopper No. "+h.Stopper.Number, "")
			} else {
				row = append(row, h.Pipe.String(), string(h.Joint), measure.Number(h.Clearance.MM(), 1))
			}
			rows = append(rows, append(row, geometry.Worst(s.FindingsOf(h.Key())).String()))
		}
		for k, sl := range s.Slots {
			row := append([]string{"handle slot " + strconv.Itoa(k+1), "body", label, strconv.Itoa(b.Drum)}, both(s.Stations.Rim-sl.Middle())...)
			row = append(append(row, both(sl.Middle())...), both(sl.Round)...)
			row = append(row, "", sl.Height().Metric(), sl.Length.Metric(), "", "", "", geometry.Worst(s.FindingsOf("handle")).String())
			rows = append(rows, row)
		}
	}
	return bom.Table(rows)
}
