package work

import (
	"silowright/bom"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// cementCure is how long the slowest of the cemented pipes cures until it may
// carry water: the job's hours, or the pipe maker's table at 60 °F and warmer.
// The table is by nominal inch size; a pipe of another series is looked up by
// its outside diameter, and one larger than the table as its largest row. Cold
// or damp weather takes longer: give the hours.
func (r Rates) cementCure(pipes []measure.Length) Minutes {
	if len(pipes) == 0 {
		return 0
	}
	if r.CementCure > 0 {
		return r.CementCure
	}
	longest := Minutes(0)
	for _, outside := range pipes {
		longest = max(longest, tabledCure(outside))
	}
	return longest
}

func tabledCure(outside measure.Length) Minutes {
	cure := Minutes(0)
	warm := 0
	for _, row := range stock.CementTimes() {
		if warm == 0 {
			warm = row.WarmF
		}
		if row.WarmF != warm {
			continue // the colder rows
		}
		cure = Minutes(row.Cure.Minutes())
		if p, ok := stock.PipeOf(row.To, "sch40"); ok && outside <= p.Outside+0.5 {
			return cure
		}
	}
	return cure
}

// set is how long the joints of a part take to set.
type set struct {
	cement  Minutes // until cemented joints carry water
	sealant Minutes // until sealed couplings do
	full    Minutes // the sealant's full cure
}

// joints is the longest set of the holes' joints in the batches built. further
// are pipes cemented besides, such as an adapter's.
func (r Rates) joints(batches []bom.Batch, count func(bom.Batch) int, holes func(geometry.Silo) []geometry.Hole, further func(geometry.Silo) measure.Length) set {
	var out set
	var cemented []measure.Length
	for _, b := range batches {
		if count(b) <= 0 {
			continue
		}
		cemented = append(cemented, further(b.Silo))
		for _, h := range holes(b.Silo) {
			m := h.Makeup()
			if m.Sockets > 0 {
				cemented = append(cemented, h.PipeOutside)
			}
			if m.Faces > 0 {
				out.sealant, out.full = r.SealantCure, r.FullCure
			}
		}
	}
	out.cement = r.cementCure(cemented)
	return out
}
