package render

import (
	"fmt"

	"silowright/geometry/measure"
	"silowright/geometry/path"
)

// longestLine is how far words run on a wide page, to be read with ease.
const longestLine length = 180

// TestSquare is the page to measure before anything is marked: a square of 100
// mm and one of 4 in, with both axes named. The squares stand beside or below
// each other; on a page too small for that they share a corner.
func TestSquare(p Paper, job string, k Stretch) Drawing {
	if p.Roll {
		p.Height = 280
	} else if p.Width > p.Height {
		p = p.turned()
	}
	d := Drawing{Title: "Check squares", Width: p.Width, Height: p.Height}
	left, y := length(18), p.Height-16
	say := func(size length, bold bool, words string) {
		if words == "" {
			return
		}
		for _, l := range Wrap(words, size, bold, min(p.Width-2*left, longestLine)) {
			d.Texts = append(d.Texts, Text{Layer: Notes, At: path.Pt(left, y), Size: size, Bold: bold, Words: l})
			y -= 1.8 * size
		}
	}
	say(min(5, p.Width/40), true, "Measure these before marking anything")
	say(2.5, false, "Print at actual size, 100 %; switch off fit to page and shrink to fit. "+
		"Then measure both squares along both axes with a steel rule.")
	if k.none() {
		say(2.5, false, "When a side is off, pack again with --printed-as and what the 100 mm square measures, such as "+
			"--printed-as 99.4x100.3: across first, then up. Every template is then drawn the other way by as much.")
	} else {
		say(2.5, false, fmt.Sprintf("These squares and every template are drawn × %.4f across, × %.4f up for the printer "+
			"measured, so both must now be true. When a side is off, pack without --printed-as and measure again.", k.across(), k.up()))
	}
	say(2.5, false, job)

	square := func(x, top, side length, name string, inset length) {
		w, h := side*length(k.across()), side*length(k.up())
		d.Rect(Outline, path.Pt(x, top-h), path.Pt(x+w, top))
		d.Words(path.Pt(x+w/2, top-h+3), 3.5, Middle, "across: "+name)
		d.TurnedWords(path.Pt(x+w-inset, top-h/2), 3.5, Middle, 90*measure.Degree, "up: "+name)
	}
	const inches, gap = 4 * measure.Inch, 5
	w1, h1 := checkSquare*length(k.across()), checkSquare*length(k.up())
	w2, h2 := inches*length(k.across()), inches*length(k.up())
	switch {
	case y-h1-gap-h2 > 8:
		square(left, y, checkSquare, "100 mm", 3)
		square(left, y-h1-gap, inches, "4 in", 3)
	case left+w1+gap+w2 < p.Width-8:
		square(left, y, checkSquare, "100 mm", 3)
		square(left+w1+gap, y, inches, "4 in", 3)
	default:
		x := (p.Width - w2) / 2
		square(x, y-(h2-h1), checkSquare, "inner 100 mm, outer 4 in", 3)
		d.Rect(Outline, path.Pt(x, y-h2), path.Pt(x+w2, y))
	}
	return d
}
