package table

import (
	"math"
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/views"
)

// wall is one wall laid flat, for openings to be moved on. Lengths are in
// millimetres of the drum.
type wall struct {
	Label         string      `json:"label"`
	Part          string      `json:"part"`    // "body" or "base"
	Drawing       string      `json:"drawing"` // the member of the drawings that shows it
	Circumference float64     `json:"circumference_mm"`
	Height        float64     `json:"height_mm"`
	Parts         []wallPart  `json:"parts"`
	Bands         []wallBand  `json:"bands"`
	Clearances    []clearance `json:"clearances"`
	Frame         frame       `json:"frame"`
}

// wallPart is an opening. X is where its middle is, round from the datum to
// the right, Y up from the foot or the ground.
type wallPart struct {
	ID        string   `json:"id"`
	Name      string   `json:"name"`
	Kind      string   `json:"kind"` // "hole" or "slot"
	X         float64  `json:"x_mm"`
	Y         float64  `json:"y_mm"`
	W         float64  `json:"w_mm"`
	H         float64  `json:"h_mm"`
	Footprint float64  `json:"footprint_mm,omitempty"` // of what is fitted to it
	Keys      wallKeys `json:"keys"`
	// YFrom is what the key for y counts from: "rim" downwards, "ground"
	// upwards. YEdge is what the key names: the opening's "middle" or "top".
	YFrom string `json:"y_from"`
	YEdge string `json:"y_edge"`
	// XOffset is how much further round this opening is than its key says: the
	// second handle slot stands opposite the first.
	XOffset float64    `json:"x_offset_mm"`
	Limits  wallLimits `json:"limits"`
}

// wallKeys are the keys that move an opening.
type wallKeys struct {
	X string `json:"x"`
	Y string `json:"y"`
}

// wallLimits bound an opening's middle.
type wallLimits struct {
	XLow  float64 `json:"x_low_mm"`
	XHigh float64 `json:"x_high_mm"`
	YLow  float64 `json:"y_low_mm"`
	YHigh float64 `json:"y_high_mm"`
}

// wallBand is a level strip: a hoop, the ring's place.
type wallBand struct {
	ID   string  `json:"id"`
	From float64 `json:"from_mm"`
	To   float64 `json:"to_mm"`
}

// clearance is how far two things on a wall are apart, as a check found it.
type clearance struct {
	A     string  `json:"a"`
	B     string  `json:"b"`
	Gap   float64 `json:"mm"`
	Least float64 `json:"least_mm"`
	Level string  `json:"level"`
	ID    string  `json:"id"` // of the finding
	Both  string  `json:"both"`
}

// frame is where the wall's datum meets its foot in the drawing, from the
// drawing's upper left corner, and how many of its millimetres one of the wall
// takes. Lead is how much of the wall lies left of the datum.
type frame struct {
	X      float64 `json:"x_mm"`
	Y      float64 `json:"y_mm"`
	Scale  float64 `json:"scale"`
	Lead   float64 `json:"lead_mm"`
	Width  float64 `json:"width_mm"`
	Height float64 `json:"height_mm"`
}

func frameOf(f views.Frame, d render.Drawing) frame {
	return frame{f.Foot.X.MM(), (d.Height - f.Foot.Y).MM(), f.Scale, f.Lead.MM(), d.Width.MM(), d.Height.MM()}
}

func bodyWall(s geometry.Silo, f views.Frame, d render.Drawing) wall {
	c, rim := s.Spec.Drum.Circumference(), s.Stations.Rim
	w := wall{Label: s.Spec.Drum.Label, Part: "body", Drawing: "wall", Circumference: c.MM(), Height: rim.MM(), Frame: frameOf(f, d)}
	w.Parts = append(w.Parts, holePart(s.Outlet, c, rim, wallKeys{"outlet.round", "outlet.below_rim"}, "rim"))
	for i, sl := range s.Slots {
		p := wallPart{ID: "handle", Name: "handle slot 1", Kind: "slot", X: sl.Round.MM(), Y: (rim - sl.Middle()).MM(), W: sl.Length.MM(), H: sl.Height().MM(),
			Keys: wallKeys{"handle.round", "handle.below_rim"}, YFrom: "rim", YEdge: "top",
			Limits: wallLimits{0, c.MM(), (sl.Height() / 2).MM(), (rim - sl.Height()/2).MM()}}
		if i > 0 {
			p.ID, p.Name, p.XOffset = "handle-2", "handle slot 2", math.Mod((sl.Round-s.Slots[0].Round+c).MM(), c.MM())
		}
		w.Parts = append(w.Parts, p)
	}
	for _, h := range s.Stations.BodyHoops {
		w.Bands = append(w.Bands, wallBand{"hoop", h.From.MM(), h.To.MM()})
	}
	w.Bands = append(w.Bands, wallBand{"ring", s.Ring.Foot.MM(), (s.Ring.Foot + s.Spec.Ring.Width).MM()})
	w.Clearances = clearances(s, "outlet.rim", "outlet.ring", "outlet.hoop-", "handle.rim", "handle.hoop-", "handle.outlet", "handle.sill-outlet")
	return w
}

func baseWall(s geometry.Silo, f views.Frame, d render.Drawing) wall {
	c, mouth := s.Spec.Drum.Circumference(), s.Stations.BaseHeight
	w := wall{Label: s.Spec.Drum.Label, Part: "base", Drawing: "baseWall", Circumference: c.MM(), Height: mouth.MM(), Frame: frameOf(f, d)}
	w.Parts = append(w.Parts, holePart(s.Inlet, c, mouth, wallKeys{"inlet.round", "inlet.above_ground"}, "ground"),
		holePart(s.Drain, c, mouth, wallKeys{"drain.round", "drain.above_ground"}, "ground"))
	h := s.Stations.BaseHoop
	w.Bands = append(w.Bands, wallBand{"hoop", h.From.MM(), h.To.MM()}, wallBand{"head", 0, s.Stations.HeadPanel.MM()})
	w.Clearances = clearances(s, "inlet.hoop", "drain.hoop", "inlet.drain", "inlet.head", "inlet.foot", "drain.head", "drain.foot")
	return w
}

func holePart(h geometry.Hole, c, tall measure.Length, keys wallKeys, from string) wallPart {
	return wallPart{ID: h.Name, Name: h.Name, Kind: "hole", X: h.Round.MM(), Y: h.Height.MM(), W: h.Arc.MM(), H: h.Diameter.MM(), Footprint: h.Footprint.MM(),
		Keys: keys, YFrom: from, YEdge: "middle", Limits: wallLimits{0, c.MM(), (h.Diameter / 2).MM(), (tall - h.Diameter/2).MM()}}
}

// clearances are the findings about distances on a wall, by their ids; one
// that ends in a dash stands for all that begin so.
func clearances(s geometry.Silo, ids ...string) []clearance {
	out := []clearance{}
	for _, id := range ids {
		for _, f := range s.Findings {
			if f.ID != id && !(strings.HasSuffix(id, "-") && strings.HasPrefix(f.ID, id)) {
				continue
			}
			a, b, _ := strings.Cut(f.ID, ".")
			if b == "sill-outlet" {
				a, b = "handle sill", "outlet crown"
			}
			out = append(out, clearance{a, strings.ReplaceAll(b, "-", " "), f.Measured.Value, f.Limit.Value, f.Level.String(), f.ID,
				measure.Length(f.Measured.Value).Both(s.Spec.Units)})
		}
	}
	return out
}
