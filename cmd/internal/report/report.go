// Package report writes report.json: a job worked out, for other programs. The
// README documents its fields; a field is added, never given another meaning.
package report

import (
	"silowright/cmd/internal/plan"
	"silowright/geometry"
)

// madeBy marks a directory as one this program wrote.
const madeBy = "silowright"

// Report is the whole file.
type Report struct {
	MadeBy    string             `json:"made_by"`
	Format    int                `json:"format"` // 2
	Job       string             `json:"job"`
	Units     string             `json:"units"` // of the job; the report's own are in its names
	DrumSilos int                `json:"drum_silos"`
	PipeSilos int                `json:"pipe_silos"`
	Defaults  []geometry.Default `json:"defaults"`
	Kinds     []Kind             `json:"kinds"`
	Templates []Template         `json:"templates"`
	Findings  []geometry.Finding `json:"findings"`
	Cuts      []Cut              `json:"cuts"`
	Costs     Costs              `json:"costs"`
	Water     *Water             `json:"water,omitempty"`
	Seed      *Seed              `json:"seed,omitempty"`
}

// Cut is one kind of piece to cut.
type Cut struct {
	From   string  `json:"from"`
	Piece  string  `json:"piece"`
	Drum   string  `json:"drum"`
	Count  int     `json:"count"`
	Length float64 `json:"length_mm"`
	Width  float64 `json:"width_mm,omitempty"`
	Note   string  `json:"note"`
}

// Of makes the report of a plan, what it costs, and the templates written as
// files.
func Of(p *plan.Plan, costs Costs, written []geometry.Template) Report {
	r := Report{MadeBy: madeBy, Format: 2, Job: p.Job.Name, Units: p.Job.Units.String(),
		DrumSilos: p.Job.DrumSilos, PipeSilos: p.Job.PipeSilos, Defaults: p.Job.Defaulted,
		Findings: p.Findings, Costs: costs, Water: WaterOf(p), Seed: SeedOf(p)}
	if r.Defaults == nil {
		r.Defaults = []geometry.Default{}
	}
	for _, s := range p.Silos {
		r.Kinds = append(r.Kinds, kindOf(s))
	}
	for _, t := range written {
		r.Templates = append(r.Templates, templateOf(t))
	}
	for _, c := range p.Cuts {
		r.Cuts = append(r.Cuts, Cut{c.From, c.Piece, c.Drum, c.Count, c.Length.MM(), c.Width.MM(), c.Note})
	}
	return r
}
