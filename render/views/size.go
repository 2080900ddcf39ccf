// Package views draws a solved silo to scale: assembly, parts, joints and the
// small pictures of the build steps. Each view is one function in a file of
// its own that takes the silo and the room it has and returns a drawing; it
// measures nothing and decides nothing about the silo.
//
// Lines follow ISO 128 (group 0.5), lettering ISO 3098 (2.5 and 3.5 mm high,
// captions 1.8), scales ISO 5455, dimensions ISO 129 and ASME Y14.5: heights
// and distances from one datum stand at the end of their extension lines,
// without dimension lines.
package views

import (
	"strings"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/path"
	"silowright/render"
)

type length = measure.Length

// Size is the room a drawing has and what its title strip says. Width and
// Height, both more than 0, count the frame; a page's margins do not belong to
// it. Room under 176 × 244 mm upright or 248 × 178 mm lying gets a drawing of
// that size reduced, which then says "not to scale". Empty words leave their
// cell empty, for a pen.
type Size struct {
	Width, Height length
	Sheet         string // such as "3 of 12"
	Job           string // whose drawing it is
	Revision      string
	Date          string
	FirstAngle    bool // the view from above stands below the side view
}

const (
	caption length = 1.8
	small   length = 2.5
	medium  length = 3.5

	inset     length = 3 // between frame and drawing
	stripTall length = 17
	lead      length = 4.2 // between the base lines of small words
)

// sheet is a drawing being made.
type sheet struct {
	render.Drawing
	units    measure.Unit
	size     Size
	drum     string
	part     string
	area     path.Box        // what the frame and the title strip leave
	projects bool            // it has views in projection: the strip names which
	left     length          // where words of level dimensions may begin, once a view has a column beside it
	less     float64         // how much larger it is drawn than its room is; 1 when to scale
	avoid    [][4]path.Point // places sections leave clear, such as a screw in them
}

func begin(s geometry.Silo, size Size, title, part string) *sheet {
	for _, w := range []*string{&size.Sheet, &size.Job, &size.Revision, &size.Date} {
		*w = plain(*w)
	}
	leastW, leastH := length(176), length(244)
	if size.Width > size.Height*1.15 {
		leastW, leastH = 248, 178
	}
	less := max(1, float64(leastW/size.Width), float64(leastH/size.Height))
	size.Width, size.Height = size.Width*length(less), size.Height*length(less)
	d := &sheet{less: less, units: s.Spec.Units, size: size, drum: plain(s.Spec.Drum.Label), part: plain(part)}
	d.Title = title
	d.Description = part + ", drum " + d.drum
	d.Width, d.Height = size.Width, size.Height
	d.Rect(render.Outline, path.Pt(0.25, 0.25), path.Pt(size.Width-0.25, size.Height-0.25))
	d.area = path.Box{Min: path.Pt(inset, stripTall+inset+3), Max: path.Pt(size.Width-inset, size.Height-inset)}
	return d
}

// finish writes the title strip, breaks thin lines at words, cuts off what
// reaches past the page and returns the drawing.
func (d *sheet) finish(main scale) render.Drawing {
	if d.less > 1 {
		main.name = noScale
	}
	d.strip(main)
	d.fitWords(path.Pt(inset, stripTall+1.4), d.size.Width-2*inset, caption, false,
		"Round the wall: from the datum line to the right, facing the wall. Heights: up from the ground or the foot, down from the rim.")
	for i := range d.Texts {
		d.Texts[i].Words = plain(d.Texts[i].Words)
	}
	d.breakAtWords()
	d.atEdge()
	if d.less == 1 {
		return d.Drawing
	}
	out := render.Drawing{Title: d.Title, Description: d.Description,
		Width: d.Width / length(d.less), Height: d.Height / length(d.less)}
	out.Place(d.Drawing, path.Point{}, 1/d.less)
	return out
}

// plain replaces letters the printing face lacks, so that a label in any
// script leaves a mark instead of stopping the drawing.
func plain(words string) string {
	if render.HasGlyphs(words) {
		return words
	}
	var b strings.Builder
	for _, r := range words {
		switch {
		case r == '\n' || r == '\r' || r == '\t' || r == '\u00a0':
			b.WriteByte(' ')
		case render.HasGlyphs(string(r)):
			b.WriteRune(r)
		default:
			b.WriteRune('□')
		}
	}
	return b.String()
}

// both writes a length in both units; the title strip says that brackets or
// bare numbers are millimetres.
func (d *sheet) both(l length) string { return dual(l, d.units) }

// dia writes a diameter.
func (d *sheet) dia(l length) string { return "Ø " + dual(l, d.units) }

// wide is how long a line of small words comes out.
func wide(words string) length { return render.TextWidth(words, small, false) }

func widest(words ...string) length {
	w := length(0)
	for _, x := range words {
		w = max(w, wide(x))
	}
	return w
}
