// Package render makes drawings of a solved silo. A Drawing is a flat list of
// strokes, fills and words in millimetres; the packages pdf and svg below it
// write one to a file and know nothing of silos.
package render

import (
	"silowright/geometry/measure"
	"silowright/geometry/path"
)

type length = measure.Length

// Layer says what a line stands for; pen widths and dashes follow from it
// (ISO 128, line group 0.5: wide 0.5, narrow 0.25).
type Layer int

// The layers. Cut, Drill, Mark and Notes are those of templates; the names
// that Group returns for them are the ids of the groups in an SVG file.
const (
	Cut       Layer = iota // heavy, continuous
	Drill                  // corner holes and hole centres
	Mark                   // datum, level and match lines
	Notes                  // words
	Outline                // visible edges, wide
	Thin                   // narrow continuous: leaders, hatching, table rules
	Hidden                 // narrow dashed
	Centre                 // narrow dash-dot
	Dimension              // narrow continuous with arrowheads
	Water                  // water line and flow arrows
)

// Anchor says which point of a line of words stands at Text.At.
type Anchor int

// The anchors; all are on the base line.
const (
	Left Anchor = iota
	Middle
	Right
)

// Stroke is a line drawn along Path.
type Stroke struct {
	Layer Layer
	Path  path.Path
}

// Fill is an area painted grey: Shade 0 is white, 1 black.
type Fill struct {
	Path  path.Path
	Shade float64
}

// Text is one line of words. Size is the height of the capital letters (ISO
// 3098: 2.5, 3.5, 5, 7 mm).
type Text struct {
	Layer  Layer
	At     path.Point
	Size   length
	Anchor Anchor
	Turn   measure.Angle
	Bold   bool
	Words  string
}

// Drawing is a page, a figure or a template: lower left corner at the origin,
// x right, y up.
type Drawing struct {
	Title         string
	Description   string
	Width, Height length
	Fills         []Fill // painted first
	Strokes       []Stroke
	Texts         []Text
}
