package sheets

import (
	"slices"
	"strings"

	"silowright/geometry"
	"silowright/geometry/stock"
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
	f.para("What you measure and write in the job file wins over any table. A value from memory was not seen in print: measure yours. silowright tables --checks lists every number built in and the test that holds it.")
	f.table(sourceTable())
	f.heading("What is not worked out here")
	f.items(limits...)
	f.heading("Sources of the cautions")
	f.para(strings.Join(cautionSources(), "; ") + ".")
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

// sourceTable says for each table of stock parts where its rows are from.
func sourceTable() table {
	t := table{cols: []column{{head: "Table", share: 50, bold: true}, {head: "Source", share: 67}, {head: "Standing", share: 67}}}
	for _, s := range stock.Tables() {
		var source, standing []string
		for _, r := range s.Rows {
			if n := len(r); n >= 2 {
				source, standing = addParts(source, r[n-2]), addParts(standing, r[n-1])
			}
		}
		t.add(say(upper(s.Title)), say(strings.Join(source, "; ")), say(strings.Join(standing, "; ")))
	}
	return t
}

// addParts adds the parts of a saying that list does not hold yet.
func addParts(list []string, saying string) []string {
	for _, p := range strings.Split(saying, "; ") {
		if !slices.Contains(list, p) {
			list = append(list, p)
		}
	}
	return list
}

var limits = []string{
	"Drums are taken as round, the wall as even. A dented or oval drum needs its own trial of the seat.",
	"The mouth's inside over the hoop is reckoned from the hoop's outside and the wall; try one base and one body before sawing the rest.",
	"Strength: only the lattice's sag and stress and the pull at the handles under a still load, with the stiffness of pipe-grade HDPE. Not shocks, sun, frost, age or notches.",
	"Holes, sockets and stoppers by their stated sizes and tolerances; not the fit of a worn or bent saw.",
	"Nothing here says that a material is fit for food or for animals: ask the maker.",
	"Prices, freight and tax are those of the price list and the job file: a quotation past its date, a surcharge or a duty not written there is not in them.",
	"Hours of work are of a learning curve from the rates of the job file: your own first silo, timed, tells more.",
	"Water is reckoned as steady flow: no surge, hammer, waves or air in the pipes.",
	"No wiring, no foundations and no route for the pipes: local codes and licensed trades.",
}

// cautionSources lists each source the cautions name, once; cautions of common
// practice name none.
func cautionSources() []string {
	var out []string
	for _, c := range Cautions() {
		if source := c[1]; source != geometry.CommonPractice && !slices.Contains(out, source) {
			out = append(out, source)
		}
	}
	return out
}
