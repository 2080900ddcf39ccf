package table

import (
	"bytes"
	"fmt"
	"strings"

	"silowright/cmd/internal/pack"
	"silowright/render"
	"silowright/render/svg"
	"silowright/render/views"
)

// The sizes that drawings for the screen are made at, in millimetres.
var (
	sectionSize = views.Size{Width: 190, Height: 170}
	wallSize    = views.Size{Width: 250, Height: 150}
	aboveSize   = views.Size{Width: 190, Height: 120}
	latticeSize = views.Size{Width: 176, Height: 244}
)

// drawn is what the page shows of a job.
type drawn struct {
	kinds []kindDrawings
	walls []wall
}

// kindDrawings are the drawings of one kind of drum silo, as SVG to set into a
// page: layers are classes, "layer-cut" and so on.
type kindDrawings struct {
	Label    string `json:"label"`
	Section  string `json:"section"`
	Wall     string `json:"wall"`
	BaseWall string `json:"baseWall"`
	Lattice  string `json:"lattice"`
	Above    string `json:"above"`
}

// draw makes the drawings of a solved job.
func draw(s *solved) (drawn, error) {
	var out drawn
	for _, silo := range s.silos {
		k := kindDrawings{Label: silo.Spec.Drum.Label}
		body, bodyFrame := views.BodyWall(silo, wallSize)
		base, baseFrame := views.BaseWall(silo, wallSize)
		lattice := latticeSize
		lattice.Job, lattice.Sheet = s.file.Job.Name, ""
		for _, d := range []struct {
			to      *string
			drawing render.Drawing
		}{{&k.Section, views.Section(silo, sectionSize)}, {&k.Wall, body}, {&k.BaseWall, base},
			{&k.Lattice, views.Lattice(silo, lattice)}, {&k.Above, views.Above(silo, aboveSize)}} {
			words, err := inline(d.drawing)
			if err != nil {
				return out, err
			}
			*d.to = words
		}
		out.kinds = append(out.kinds, k)
		out.walls = append(out.walls, bodyWall(silo, bodyFrame, body), baseWall(silo, baseFrame, base))
	}
	return out, nil
}

// inline writes a drawing as SVG that can stand in a page beside others: no
// prologue, and classes where the file has ids.
func inline(d render.Drawing) (string, error) {
	var b bytes.Buffer
	if err := svg.Write(&b, d); err != nil {
		return "", err
	}
	words := b.String()
	at := strings.Index(words, "<svg")
	if at < 0 {
		return "", fmt.Errorf("a drawing came out empty")
	}
	// words of the job are escaped, quotes too, so that these are the writer's own
	words = strings.Replace(words[at:], "<svg", `<svg role="img"`, 1)
	return strings.ReplaceAll(words, `<g id="`, `<g class="layer-`), nil
}

// pageSVG writes a page of the pack, with the part of the template it shows.
func pageSVG(p pack.Page) (string, error) {
	out, err := inline(p.Drawing)
	if err != nil || p.Whole == nil {
		return out, err
	}
	whole, err := inline(*p.Whole)
	if err != nil {
		return "", err
	}
	// the template's own elements, shown through a window
	inner := whole[strings.Index(whole, ">")+1:]
	w, h := p.Part.Max.X-p.Part.Min.X, p.Part.Max.Y-p.Part.Min.Y
	window := fmt.Sprintf(`<svg x="%.4f" y="%.4f" width="%.4f" height="%.4f" viewBox="%.4f %.4f %.4f %.4f" overflow="hidden">`,
		p.At.X.MM(), (p.Drawing.Height - p.At.Y - h).MM(), w.MM(), h.MM(),
		p.Part.Min.X.MM(), (p.Whole.Height - p.Part.Max.Y).MM(), w.MM(), h.MM())
	end := strings.LastIndex(out, "</svg>")
	return out[:end] + window + inner + out[end:], nil
}
