package sheets

import (
	"fmt"

	"silowright/geometry"
)

// datumSentence is the one convention all places on a part are given by.
const datumSentence = "Datum: one upright line down the drum, drawn before the first cut and kept on every part. " +
	"Distances round the wall run from it to the right as one faces the wall, along the outside. " +
	"Heights run up from the face the part stands on in use (the body on its foot, the base on its head, the pipe silo on its screen), or down from the rim where it says so."

// usedDrum is the caution that comes before any cut.
var usedDrum = []caution{
	{"Use only drums that held non-toxic, water-based goods. Never use one without its label, or one that held anything that burns or poisons. The recycling code 2 does not by itself mean food grade.",
		"common practice, no source"},
	{"An \"empty\" drum keeps residue in its seams. A teaspoon of something flammable can explode, and sawing is enough to set it off; cutting and grinding count as hot work.",
		"HSE FOD 8-2010; HSA (Ireland) safety alert, 2017"},
	{"Clean it until nothing flammable remains before any saw, drill or flame comes near it. Filling it with water is not a safe way to clear it of vapour.",
		"California Code of Regulations, title 8, §5166; HSE FOD 8-2010"},
}

// deferring is printed wherever a caution stands on a law or a trade.
const deferring = "Where local codes, the maker's data sheet or a licensed electrician, plumber or safety officer say otherwise, they hold."

func setFindings(f *flow, p *Pack) {
	var by [3][]geometry.Finding
	for _, x := range p.Findings {
		if x.Level >= geometry.OK && x.Level <= geometry.Stop {
			by[x.Level] = append(by[x.Level], x)
		}
	}
	stops, cautions, oks := by[geometry.Stop], by[geometry.Caution], by[geometry.OK]
	if len(stops) > 0 {
		f.box(true, stopBox(f, stops)...)
	} else {
		f.box(false, boxed{words: "No stop among " + count(len(p.Findings), "check", "checks") + ".", size: medium, bold: true, mark: okMark})
	}
	f.para(fmt.Sprintf("%s, %s, %d ok. Every check is in the table below with what was measured, what it is held against and what that limit rests on.",
		count(len(stops), "stop", "stops"), count(len(cautions), "caution", "cautions"), len(oks)))
	if len(cautions) > 0 {
		list := noteBox(f, cautions)
		f.headingOver("Cautions of this job", min(f.boxTall(list), boxKept))
		f.box(false, list...)
	}
	f.headingOver("Before anything is cut: used drums", min(f.boxTall(cautionBox(usedDrum)), boxKept))
	f.cautions(usedDrum)
	f.para(deferring)
	f.heading("How places are given")
	f.para(datumSentence)
	f.headed("All checks", checkTable(f, p))
}

func stopBox(f *flow, stops []geometry.Finding) []boxed {
	out := []boxed{{words: count(len(stops), "stop", "stops") + ": cut nothing until settled", size: large, bold: true, mark: stopMark}}
	return append(out, noteBox(f, stops)...)
}

func noteBox(f *flow, list []geometry.Finding) []boxed {
	var out []boxed
	for _, x := range list {
		out = append(out,
			boxed{words: levelWord(x.Level) + " · " + where(x), bold: true, mark: levelMark(x.Level)},
			boxed{words: sentence(x.Says)},
			boxed{words: heldAgainst(f, x) + " To change: " + x.Key + ". Basis: " + x.Basis.String() + "."})
	}
	return out
}

func where(x geometry.Finding) string {
	if x.Drum == "" {
		return x.ID
	}
	return x.ID + " · drum kind " + x.Drum
}

func heldAgainst(f *flow, x geometry.Finding) string {
	measured, limit := x.Texts(f.units)
	if limit != "" {
		limit = ", limit " + limit
	}
	return "Measured " + measured + limit + "."
}

func checkTable(f *flow, p *Pack) table {
	t := table{cols: []column{{head: "Check", share: 42}, {head: "Level", share: 25},
		{head: "Measured, and limit", share: 43}, {head: "What it says, and its basis", share: 74}}}
	for _, x := range p.Findings {
		measured, limit := x.Texts(f.units)
		held := []string{measured}
		if limit != "" {
			held = append(held, "limit "+limit)
		}
		id := strong(x.ID)
		if x.Drum != "" && len(p.Silos) > 1 {
			id = strong(x.ID, "drum kind "+x.Drum)
		}
		t.add(id, cell{paras: []string{levelWord(x.Level)}, mark: levelMark(x.Level), bold: x.Level != geometry.OK},
			say(held...), say(sentence(x.Says), "Basis: "+x.Basis.String()))
	}
	return t
}
