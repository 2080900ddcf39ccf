package geometry

import (
	"strings"

	"silowright/geometry/path"
)

// pipeWrapTemplate goes once round the pipe silo: its upright edges meet when
// the pipe's outside is what the table says. Lower edge: the screened end. A
// hole that breaks out of an end, which is a stop, is drawn whole beside it.
func pipeWrapTemplate(s *Silo) Template {
	u := s.Spec.Units
	p := s.Pipe
	below, above := p.Hole.past(p.Hole.Height), p.Hole.past(s.Spec.Pipe.Length-p.Hole.Height)
	t := newTemplate(s, "pipe-wrap", "Pipe silo wrap", "pipe silo", 0, p.Wrap, below+s.Spec.Pipe.Length+above)
	t.Up = "screened end downwards"
	t.mark(path.Rect(path.Box{Min: path.Pt(0, 0), Max: path.Pt(t.Width, t.Height)}))
	if below > 0 {
		t.Up = "screened end downwards, the pipe's end along the line above the lower edge"
		t.mark(line(path.Pt(0, below), path.Pt(t.Width, below)))
	}
	if above > 0 {
		t.mark(line(path.Pt(0, t.Height-above), path.Pt(t.Width, t.Height-above)))
	}
	c := path.Pt(t.Width/2, below+p.Hole.Height)
	t.mark(line(path.Pt(c.X, 0), path.Pt(c.X, t.Height)))
	t.mark(line(path.Pt(0, c.Y), path.Pt(t.Width, c.Y)))
	t.cut(moved(p.Hole.Outline(), c))
	t.drill(path.Circle(c, pilotBit/2))
	t.column(t.Width/4, c.Y, 2.5, "level line:", p.Hole.Height.Both(u), "above the screened end")
	t.label(path.Pt(t.Width/4, 6), minLength(3.5, t.room("screened end")), "screened end")
	t.column(3*t.Width/4, 2, 2.5, "pipe "+p.Outside.Both(u)+",", "wrap "+p.Wrap.Both(u)+" long")
	t.column(3*t.Width/4, c.Y, 2.5, "hole saw", p.Hole.Saw.Both(u))
	return t
}

// letterWidth is how wide a letter of a label is at most on average, over its
// height: words of digits and capitals in the fonts used come to under 0.9.
const letterWidth = 0.9

// room is the largest letters in which words fit on half the template's width.
func (t *Template) room(words string) length {
	return (t.Width/2 - 4) / (letterWidth * length(len([]rune(words))))
}

// column writes words about x just above a line at y, in one row where they
// fit on half the template and are not pushed off its upper edge, else in rows,
// above the line or, where there is more room, below it.
func (t *Template) column(x, y, size length, words ...string) {
	if all := strings.Join(words, " "); t.room(all) >= size && y+4+size < t.Height {
		t.label(path.Pt(x, y+4), size, "%s", all)
		return
	}
	for _, w := range words {
		size = minLength(size, t.room(w))
	}
	step := 1.5 * size
	at := y + 4 + step*length(len(words)-1)
	if y > t.Height/2 {
		at = y - 4 - size
	}
	for i, w := range words {
		t.label(path.Pt(x, at-step*length(i)), size, "%s", w)
	}
}
