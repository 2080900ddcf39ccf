package sheets

import (
	"slices"

	"silowright/geometry"
)

func setBasis(f *flow, p *Pack) {
	if len(p.Defaulted) > 0 {
		f.heading("What the job file left open")
		f.para("These values were taken instead: default, common practice, no source. Check each against the parts on your bench.")
		t := table{cols: []column{{head: "Seen", share: 14}, {head: "Key", share: 70, bold: true}, {head: "Value taken", share: 100}}}
		for _, d := range p.Defaulted {
			t.add(cell{mark: tickBox, paras: []string{""}}, say(d.Key), say(d.Value))
		}
		f.table(t)
	}
	f.headed("What the checks rest on", basisTable(p))
	f.heading("Where the tables come from")
	f.para("S2: seen in two independent sources. S1: seen in one. D: worked out from seen values. M: from memory, not seen: measure yours. What you measure and write in the job file wins over any table.")
	t := table{cols: []column{{head: "Values", share: 66, bold: true}, {head: "Standing", share: 24}, {head: "Source", share: 94}}}
	for _, r := range tableSources {
		t.add(say(r[0]), say(r[1]), say(r[2]))
	}
	f.table(t)
	f.heading("What is not worked out here")
	f.items(limits...)
	f.heading("Sources of the cautions")
	f.items(cautionSources()...)
	f.para(deferring)
}

// basisTable counts the checks by what they rest on, in order of appearance.
func basisTable(p *Pack) table {
	type group struct {
		basis geometry.Basis
		ids   []string
	}
	var groups []group
	for _, x := range p.Findings {
		i := slices.IndexFunc(groups, func(g group) bool { return g.basis == x.Basis })
		if i < 0 {
			i = len(groups)
			groups = append(groups, group{basis: x.Basis})
		}
		if !slices.Contains(groups[i].ids, x.ID) {
			groups[i].ids = append(groups[i].ids, x.ID)
		}
	}
	t := table{cols: []column{{head: "Basis", share: 74, bold: true}, {head: "Checks", share: 110}}}
	for _, g := range groups {
		words := ""
		for i, id := range g.ids {
			if i > 0 {
				words += ", "
			}
			words += id
		}
		t.add(say(g.basis.String()), say(words))
	}
	return t
}

var tableSources = [][3]string{
	{"Pressure pipe, inch sizes: outside, wall", "S2", "ASTM D1785"},
	{"Pressure pipe, inch sizes: average inside", "S1", "makers' tables; the usual outside − 2 × wall is too large"},
	{"Solvent-cement sockets, inch sizes", "S1", "ASTM D2466"},
	{"Couplings: outside and length", "D", "not in the standard: least values from ASTM D2466 and D1785; measure yours"},
	{"Sewer pipe, inch sizes", "S1, 4 in S2", "ASTM D3034; tolerances M"},
	{"Sewer pipe, metric", "S1; SN4 S2 but 125", "EN 1401"},
	{"Pressure pipe, metric", "S1", "DIN 8062"},
	{"Tapered rubber stoppers", "S1; 6, 8, 10 S2", "published size tables; length M"},
	{"Hole saw series", "S1; 2 3/4 in and up M", "published series; the oversize is the job's"},
	{"Hole for a rubber pipe-to-tank grommet", "M", "the grommet's own label holds"},
	{"Band clamps", "M", "range rule of SAE J1508"},
	{"Screws", "S1, S2; lengths M", "type AB thread tables; pilot 75 to 90 % of the thread: general plastics guidance, not HDPE"},
	{"Sealant set and cure, cement set and cure", "S1", "makers' manuals; the label of yours holds"},
	{"HDPE density and long-time stiffness", "S2; S1", "PE pipe handbook, chapter 3; a drum's resin may differ"},
	{"Mesh open share", "S2", "square weave: (opening / (opening + strand))²"},
	{"Drum measures", "yours", "the job file; no drum is taken from a table"},
	{"Lifting limit", "S1", "NIOSH lifting equation, Pub. 94-110, revised 2021"},
	{"Hand hold sizes", "M", "NIOSH Pub. 94-110, coupling notes"},
}

var limits = []string{
	"Drums are taken as round, the wall as even. A dented or oval drum needs its own trial of the seat.",
	"The mouth's inside over the hoop is reckoned from the hoop's outside and the wall; try one base and one body before sawing the rest.",
	"Strength: only the lattice's sag and stress and the pull at the handles under a still load, with the stiffness of pipe-grade HDPE. Not shocks, sun, frost, age or notches.",
	"Holes, sockets and stoppers by their stated sizes and tolerances; not the fit of a worn or bent saw.",
	"Nothing here says that a material is fit for food or for animals: ask the maker.",
	"No price, freight, tax or work beyond what the price list states.",
	"No plan of pipes, pumps or wiring to the silo: local codes and licensed trades.",
}

// cautionSources lists each source the cautions name, once.
func cautionSources() []string {
	var out []string
	for _, list := range [][]caution{usedDrum, {cautionSaw, cautionKickback, cautionCut, cautionEdge, cautionPoints,
		cautionSealant, cautionCement, cautionResin, cautionLift, cautionSeed, cautionPower}} {
		for _, c := range list {
			if !slices.Contains(out, c.source) {
				out = append(out, c.source)
			}
		}
	}
	return out
}
