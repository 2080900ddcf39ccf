package job

import (
	"fmt"
	"strings"

	"silowright/geometry"
)

// jointMeans says what each joint is.
func jointMeans() string {
	var out []string
	for _, j := range geometry.PipeJoints() {
		out = append(out, fmt.Sprintf("%q (%s)", string(j), j.Makeup().Means))
	}
	last := len(out) - 1
	return strings.Join(out[:last], ", ") + " or " + out[last]
}

// sectionMeans says what each section is about.
var sectionMeans = map[string]string{
	"lattice":   "the pattern sawn in the body's foot",
	"ring":      "the retaining ring, cut from the drum below the uppermost hoop",
	"mesh":      "the mesh disc on the lattice",
	"handle":    "the two handle slots, opposite each other",
	"outlet":    "the outlet through the body's wall",
	"inlet":     "the inlet through the base's wall",
	"drain":     "the drain through the base's wall, closed by a rubber stopper",
	"screws":    "the screws through ring, mesh and wall",
	"sealant":   "the bead along the ring's edge",
	"pipe_silo": "the pipe silo for the smallest seed",
	"saw":       "how the saws cut",
	"load":      "what it is lifted and loaded with",
}

// means says what each key is.
var means = map[string]string{
	"lattice.across":    "diameter of the circle the bars cross in",
	"lattice.bars":      "bars crossing at the centre; twice as many openings",
	"lattice.bar_width": "width of each bar",
	"lattice.pilot":     "diameter of the corner holes the jigsaw turns in",
	"lattice.edge":      `outer edge of an opening: "arc" or "straight"`,

	"ring.width": "height of the strip",

	"mesh.opening":       "clear width of one opening",
	"mesh.thickness":     "thickness of the mesh",
	"mesh.trim":          "mesh past the ring's upper edge, cut off at the end",
	"mesh.open_fraction": "open share of the mesh, as a fraction of one",
	"mesh.max_overlap":   "widest pucker allowed between two snips",

	"handle.below_rim": "rim down to the slot's upper edge",
	"handle.height":    "height of the slot",
	"handle.length":    "length round the wall, over the rounded ends",
	"handle.round":     "datum to the first slot's middle, to the right along the wall",

	"outlet.below_rim": "rim down to the hole's centre",
	"outlet.pipe":      "nominal size of the pipe",
	"outlet.series":    "series of the pipe: wall and standard",
	"outlet.saw":       "nominal diameter of the hole saw",
	"outlet.joint":     jointMeans(),
	"outlet.nipple":    "pipe through the wall, or into the joint from outside",
	"outlet.round":     "datum to the hole's centre, to the right along the wall",

	"inlet.above_ground": "ground up to the hole's centre, the base turned over",
	"inlet.pipe":         "nominal size of the pipe",
	"inlet.series":       "series of the pipe",
	"inlet.saw":          "nominal diameter of the hole saw",
	"inlet.joint":        jointMeans(),
	"inlet.nipple":       "pipe through the wall into both couplings",
	"inlet.stub":         "pipe from the joint to the supply hose",
	"inlet.round":        "datum to the hole's centre, to the right along the wall",

	"drain.above_ground": "ground up to the hole's centre",
	"drain.saw":          "nominal diameter of the hole saw",
	"drain.stopper":      "number printed on the tapered stopper",
	"drain.round":        "datum to the hole's centre, to the right along the wall",

	"screws.size":    "size of the screw",
	"screws.length":  "length under the head",
	"screws.spacing": "largest distance between neighbours",

	"sealant.bead":      "side of the bead's square section",
	"sealant.cartridge": "what one cartridge holds",
	"sealant.waste":     "share lost, of the resin too, as a fraction of one",

	"pipe_silo.pipe":                "nominal size of the pipe it is made from",
	"pipe_silo.series":              "series of that pipe",
	"pipe_silo.length":              "its length",
	"pipe_silo.screen":              "clear width of one opening of the screen",
	"pipe_silo.screen_thickness":    "thickness of the screen",
	"pipe_silo.screen_open":         "open share of the screen, as a fraction of one",
	"pipe_silo.drape":               "screen past the pipe's edge on each side",
	"pipe_silo.outlet_above_screen": "screened end up to the side hole's centre",
	"pipe_silo.saw":                 "nominal diameter of the hole saw for the side hole",
	"pipe_silo.joint":               jointMeans(),
	"pipe_silo.pipe_out":            "nominal size of the pipe it hangs by",
	"pipe_silo.pipe_out_series":     "series of that pipe",
	"pipe_silo.pipe_out_length":     "length of that pipe",
	"pipe_silo.bead":                "leg of the resin bead round the screen",

	"saw.kerf":     "width of cut of the saw that parts the drum",
	"saw.oversize": "how much larger than nominal a drilled hole comes out",

	"load.seed_kg": "wet seed on the mesh, kilograms",
	"load.time":    "how long it hangs drained: 0.5 h, 12 h, 100 h, 1 year or 50 years",
}
