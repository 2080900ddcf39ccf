package views

import (
	"silowright/geometry"
	"silowright/render"
)

// drawBase draws the base, standing on its head with its mouth up, from the side
// that carries the datum and from above, and its wall laid flat.
func drawBase(s geometry.Silo, size Size) render.Drawing {
	d := begin(s, size, "Base", "drum silo, turned over")
	m := d.baseMap(s)
	return d.sideAndFlat(s, baseProfile(s), m, sideWords{
		name: "From the datum's side and from above, mouth up", above: baseAbove(s), edge: "mouth", standing: "mouth, inside Ø",
		below: s.Stations.BaseHoop.Outside - 2*s.Spec.Drum.Wall, hidden: []length{s.Stations.HeadPanel},
	}, "Wall laid flat, outside towards you, mouth up; to the right of the datum")
}

func (d *sheet) baseMap(s geometry.Silo) wallMap {
	st := s.Stations
	m := wallMap{radius: s.Spec.Drum.Outside / 2, tall: st.BaseHeight, edge: "mouth",
		key: "From above: D datum, I inlet, W drain."}
	m.cuts = append(m.cuts, holeCut(d, s.Inlet, ""), holeCut(d, s.Drain, ", stopper "+keep("No. "+s.Drain.Stopper.Number)))
	h := func(y length, name string) { m.heights = append(m.heights, level{y: y, words: name + " " + d.both(y)}) }
	m.heights = append(m.heights, level{words: "ground 0"})
	h(st.HeadPanel, "head's face")
	if (s.Inlet.Height - s.Drain.Height).Abs() < 0.05 {
		h(s.Inlet.Height, "inlet, drain")
	} else {
		h(s.Inlet.Height, "inlet")
		h(s.Drain.Height, "drain")
	}
	h(st.BaseHoop.From, "hoop")
	h(st.BaseHeight, "mouth")
	m.bands = append(m.bands, band{st.BaseHoop.From, st.BaseHoop.To, render.Thin, "hoop"},
		band{0, st.HeadPanel, render.Hidden, ""})
	return m
}
