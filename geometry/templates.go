package geometry

import (
	"fmt"
	"strings"
	"unicode"

	"silowright/geometry/path"
)

// templates draws every full-scale pattern of one silo. A new template is one
// more function in a file of its own, named here.
func templates(s *Silo) []Template {
	return []Template{
		latticeTemplate(s),
		meshDiscTemplate(s),
		outletTemplate(s),
		handleTemplate(s),
		inletTemplate(s),
		drainTemplate(s),
		pipeWrapTemplate(s),
		bodyStripTemplate(s),
		baseStripTemplate(s),
	}
}

// newTemplate begins a template that holds for one drum kind.
func newTemplate(s *Silo, id, title, part string, count int, w, h length) Template {
	return Template{ID: Slug(s.Spec.Drum.Label) + "-" + id, Title: title, Part: part,
		Drum: s.Spec.Drum.Label, Count: count, Width: w, Height: h, Sheet: Flexible}
}

// Slug is a label as part of a file name: lower-case letters and digits, one
// hyphen for each run of anything else. It is empty when the label holds none.
func Slug(label string) string {
	words := strings.FieldsFunc(strings.ToLower(label), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })
	return strings.Join(words, "-")
}

// cut adds a closed cut line and counts its area and length.
func (t *Template) cut(p path.Path) {
	t.Shapes = append(t.Shapes, Shape{Cut, p})
	a := p.Area()
	if a < 0 {
		a = -a
	}
	t.OpenArea += a
	t.CutLength += p.Length()
}

func (t *Template) drill(p path.Path) { t.Shapes = append(t.Shapes, Shape{Drill, p}) }
func (t *Template) mark(p path.Path)  { t.Shapes = append(t.Shapes, Shape{Mark, p}) }

func (t *Template) label(at path.Point, size length, format string, args ...any) {
	t.Labels = append(t.Labels, Label{At: at, Size: size, Text: fmt.Sprintf(format, args...)})
}

// cross marks a centre.
func (t *Template) cross(at path.Point, arm length) {
	t.mark(line(path.Pt(at.X-arm, at.Y), path.Pt(at.X+arm, at.Y)))
	t.mark(line(path.Pt(at.X, at.Y-arm), path.Pt(at.X, at.Y+arm)))
}

func line(a, b path.Point) path.Path {
	var p path.Path
	p.MoveTo(a)
	p.LineTo(b)
	return p
}

func moved(p path.Path, by path.Point) path.Path { return p.Transform(path.Translate(by.X, by.Y)) }
