package render

import (
	"math"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// MeasuringSheet is the one page to fill in beside a drum: where the tape
// goes, with a blank for each measure the job file wants. Jobs in inches get a
// letter page, metric ones A4 (ISO 216). The drum drawn is of no particular
// make and not to scale.
func MeasuringSheet(u measure.Unit) Drawing {
	s := &sheet{unit: u.String(), width: 215.9, height: 279.4}
	if u == measure.UnitMM {
		s.width, s.height = 210, 297
	}
	s.head()
	s.drum(path.Pt(61, s.height-189))
	s.blanks(path.Pt(117, s.height-74))
	s.hoops(path.Pt(15, s.height-219))
	s.foot()
	return Drawing{Title: "Measuring sheet", Description: "where the tape goes on a drum, with blanks to fill in",
		Width: s.width, Height: s.height, Fills: s.fills, Strokes: s.strokes, Texts: s.texts}
}

// sheet gathers the page's marks.
type sheet struct {
	unit          string
	width, height length
	fills         []Fill
	strokes       []Stroke
	texts         []Text
}

const (
	small  length = 2.5 // letter heights of ISO 3098
	medium length = 3.5
	large  length = 5
	margin length = 15
)

func (s *sheet) say(x, y, size length, words string) {
	s.texts = append(s.texts, Text{Layer: Notes, At: path.Pt(x, y), Size: size, Words: words})
}

func (s *sheet) bold(x, y, size length, words string) {
	s.texts = append(s.texts, Text{Layer: Notes, At: path.Pt(x, y), Size: size, Bold: true, Words: words})
}

// run strokes straight from point to point.
func (s *sheet) run(l Layer, points ...path.Point) {
	p := path.Path{{Kind: path.Move, To: points[0]}}
	for _, q := range points[1:] {
		p = append(p, path.Segment{Kind: path.Line, To: q})
	}
	s.strokes = append(s.strokes, Stroke{l, p})
}

// ringRadius is that of the ring round a letter.
const ringRadius length = 3.2

// letter puts a letter in a ring centred on c. Lines are broken there: fills
// lie below them and could not cover them.
func (s *sheet) letter(c path.Point, word string) {
	start := path.Pt(c.X+ringRadius, c.Y)
	ring := path.Path{{Kind: path.Move, To: start},
		{Kind: path.Arc, To: start, Centre: c, Sweep: measure.FullTurn}, {Kind: path.Close, To: start}}
	s.strokes = append(s.strokes, Stroke{Thin, ring})
	s.texts = append(s.texts, Text{Layer: Notes, At: path.Pt(c.X, c.Y-1.25), Size: small, Anchor: Middle, Bold: true, Words: word})
}

// arrow fills a slender head with its tip at tip, pointing along (dx, dy), a
// unit step.
func (s *sheet) arrow(tip path.Point, dx, dy length) {
	const long, half = 2.6, 0.45
	back := path.Pt(tip.X-long*dx, tip.Y-long*dy)
	s.fills = append(s.fills, Fill{path.Path{{Kind: path.Move, To: tip},
		{Kind: path.Line, To: path.Pt(back.X-half*dy, back.Y+half*dx)},
		{Kind: path.Line, To: path.Pt(back.X+half*dy, back.Y-half*dx)},
		{Kind: path.Close, To: tip}}, 1})
}

// span draws a measure upright at x between two heights, its letter in the
// middle; short ones have their arrows outside.
func (s *sheet) span(x, low, high length, word string) {
	if high-low < 12 {
		s.run(Thin, path.Pt(x, low-6), path.Pt(x, high+9-ringRadius))
		s.arrow(path.Pt(x, low), 0, 1)
		s.arrow(path.Pt(x, high), 0, -1)
		s.letter(path.Pt(x, high+9), word)
		return
	}
	s.upright(x, low, high, (low+high)/2, word)
}

// upright draws an arrow both ways at x, its letter at the height mid.
func (s *sheet) upright(x, low, high, mid length, word string) {
	s.run(Thin, path.Pt(x, low), path.Pt(x, mid-ringRadius))
	s.run(Thin, path.Pt(x, mid+ringRadius), path.Pt(x, high))
	s.arrow(path.Pt(x, low), 0, -1)
	s.arrow(path.Pt(x, high), 0, 1)
	s.letter(path.Pt(x, mid), word)
}

// broken draws a level line from x1 to x2 that leaves a gap round x.
func (s *sheet) broken(y, x1, x2, x, gap length) {
	s.run(Thin, path.Pt(x1, y), path.Pt(x-gap, y))
	s.run(Thin, path.Pt(x+gap, y), path.Pt(x2, y))
}

// head is the title and what to know before touching a used drum.
func (s *sheet) head() {
	y := s.height - margin - large
	s.bold(margin, y, large, "Measuring sheet")
	s.say(margin+75, y, small, "one for each kind of drum; then copy it into job.toml")
	top := y - 5
	lines := []string{
		"A teaspoon of flammable residue in an \"empty\" drum can explode under a saw or grinder;",
		"seams hold residue (HSE FOD 8-2010; HSA Ireland alert, 2017).",
		"Use only drums that held non-toxic, water-based goods. Never use one without its label.",
		"Filling a drum with water does not make it safe. Resin code 2 does not by itself mean food grade.",
		"Clean until nothing flammable remains before any cutting or hot work (California Code of",
		"Regulations, title 8, section 5166). Local codes and licensed practice come first.",
	}
	s.bold(margin+3, top-5, small, "Before you touch a used drum")
	for i, words := range lines {
		s.say(margin+3, top-10-4.6*length(i), small, words)
	}
	low := top - 10 - 4.6*length(len(lines)-1) - 3
	s.run(Outline, path.Pt(margin, low), path.Pt(s.width-margin, low), path.Pt(s.width-margin, top), path.Pt(margin, top), path.Pt(margin, low))
}

// Half widths and heights of the drum drawn, from the middle of its foot.
const (
	picFoot, picWall, picHoop              length = 25, 27.5, 29.5
	picFootHigh, picTop, picRecess         length = 7, 108, 5
	picHoop1, picHoop2, picHoop3, picHoop4 length = 34, 39, 70, 75
)

// drum draws the drum on its foot, the middle of its foot at o.
func (s *sheet) drum(o path.Point) {
	at := func(x, y length) path.Point { return path.Pt(o.X+x, o.Y+y) }
	for _, side := range []length{-1, 1} {
		s.run(Outline, at(0, 0), at(side*picFoot, 0), at(side*picWall, picFootHigh), at(side*picWall, picHoop1),
			at(side*picHoop, picHoop1+1.2), at(side*picHoop, picHoop2-1.2), at(side*picWall, picHoop2), at(side*picWall, picHoop3),
			at(side*picHoop, picHoop3+1.2), at(side*picHoop, picHoop4-1.2), at(side*picWall, picHoop4), at(side*picWall, picTop), at(0, picTop))
	}
	for _, y := range []length{picHoop1, picHoop2, picHoop3, picHoop4} {
		s.broken(o.Y+y, o.X-picWall, o.X+picWall, o.X, ringRadius)
	}
	s.run(Thin, at(-picWall, picFootHigh), at(picWall, picFootHigh))
	s.run(Hidden, at(-picWall, picTop-picRecess), at(picWall, picTop-picRecess))
	s.run(Thin, at(-46, 0), at(51, 0)) // the ground
	s.tape(at(0, 55))
	s.letter(at(0, 48), "A")

	s.run(Thin, at(-picWall-1, picTop), at(-42, picTop))
	s.span(o.X-40, o.Y, o.Y+picTop, "B")

	// C: the wall's two faces, cut away at the upper edge of the picture
	s.run(Hidden, at(-picWall+2, picHoop4), at(-picWall+2, picTop-picRecess))
	s.run(Thin, at(-picWall-7, 91), at(-picWall+12-ringRadius, 91))
	s.arrow(at(-picWall, 91), 1, 0)
	s.arrow(at(-picWall+2, 91), -1, 0)
	s.letter(at(-picWall+12, 91), "C")

	// D: the circle it stands on
	for _, x := range []length{-picFoot, picFoot} {
		s.run(Thin, at(x, -1), at(x, -10))
	}
	s.broken(o.Y-8.5, o.X-picFoot, o.X+picFoot, o.X, ringRadius)
	s.arrow(at(-picFoot, -8.5), -1, 0)
	s.arrow(at(picFoot, -8.5), 1, 0)
	s.letter(at(0, -8.5), "D")

	// E: where the wall is full; F: the head below the chime
	s.run(Thin, at(-picWall-1, picFootHigh), at(-34, picFootHigh))
	s.span(o.X-33, o.Y, o.Y+picFootHigh, "E")
	s.span(o.X+14, o.Y+picTop-picRecess, o.Y+picTop, "F")

	// G to L: both edges of both hoops above the ground, and round each
	for i, h := range []struct {
		x, y length
		word string
	}{{33, picHoop1, "G"}, {38.5, picHoop2, "H"}, {44, picHoop3, "J"}, {49.5, picHoop4, "K"}} {
		s.run(Thin, at(picWall+1, h.y), at(h.x+1.5, h.y))
		s.upright(o.X+h.x, o.Y, o.Y+h.y, o.Y+13+5.5*length(i), h.word)
	}
	s.letter(at(0, (picHoop1+picHoop2)/2), "I")
	s.letter(at(0, (picHoop3+picHoop4)/2), "L")
	s.say(margin, o.Y-17, small, "the drum stands on its foot; heights are from the ground up")
}

// tape draws a tape lying round the wall, its near side sagging towards us.
func (s *sheet) tape(c path.Point) {
	// the flat arc through the wall's edges that drops 3 mm at the middle
	const drop = 3.0
	r := length((float64(picWall*picWall) + drop*drop) / (2 * drop))
	half := measure.Angle(math.Asin(float64(picWall / r)))
	for _, y := range []length{-1.2, 1.2} {
		centre := path.Pt(c.X, c.Y+y-drop+r+drop/2)
		from := path.Pt(c.X-picWall, c.Y+y+drop/2)
		s.strokes = append(s.strokes, Stroke{Thin, path.Path{{Kind: path.Move, To: from},
			{Kind: path.Arc, To: path.Pt(c.X+picWall, from.Y), Centre: centre, Sweep: 2 * half}}})
	}
}
