package render

import (
	"fmt"
	"slices"
	"strings"

	"silowright/geometry/measure"
)

// Paper is a sheet to print templates on, upright.
type Paper struct {
	Name          string
	Width, Height length
	Roll          bool // cut off a roll: Height is as long as it is needed
}

const in = measure.Inch

// papers are the sheets known by name: ISO 216 A sizes, ANSI/ASME Y14.1 sizes
// and the architectural sizes.
var papers = []Paper{
	{Name: "letter", Width: 8.5 * in, Height: 11 * in}, {Name: "legal", Width: 8.5 * in, Height: 14 * in}, {Name: "tabloid", Width: 11 * in, Height: 17 * in},
	{Name: "A4", Width: 210, Height: 297}, {Name: "A3", Width: 297, Height: 420}, {Name: "A2", Width: 420, Height: 594}, {Name: "A1", Width: 594, Height: 841}, {Name: "A0", Width: 841, Height: 1189},
	{Name: "ANSI-C", Width: 17 * in, Height: 22 * in}, {Name: "ANSI-D", Width: 22 * in, Height: 34 * in}, {Name: "ANSI-E", Width: 34 * in, Height: 44 * in},
	{Name: "ARCH-C", Width: 18 * in, Height: 24 * in}, {Name: "ARCH-D", Width: 24 * in, Height: 36 * in}, {Name: "ARCH-E", Width: 36 * in, Height: 48 * in}, {Name: "ARCH-E1", Width: 30 * in, Height: 42 * in},
}

// Papers lists the sheets known by name.
func Papers() []Paper { return slices.Clone(papers) }

// The sizes a printer can take: from A5 (ISO 216), which just holds the check
// square and its words, to the largest page a PDF file may have (14 400 points,
// ISO 32000-1 annex C).
const (
	minPaper length = 148
	minLong  length = 210
	maxPaper length = 5000
)

// PaperNamed reads a paper: a name (case and hyphens do not matter), "WxH"
// where each side is a length as a shop writes it, or "roll W"; bare numbers
// are in u.
func PaperNamed(s string, u measure.Unit) (Paper, error) {
	plain := func(s string) string {
		return strings.NewReplacer("-", "", " ", "", "_", "").Replace(strings.ToLower(s))
	}
	for _, p := range papers {
		if plain(p.Name) == plain(s) {
			return p, nil
		}
	}
	if width, ok := strings.CutPrefix(strings.ToLower(strings.TrimSpace(s)), "roll"); ok {
		w, err := measure.ParseLength(strings.TrimLeft(width, " :-"), u)
		if err != nil || w < minPaper || w > maxPaper {
			return Paper{}, fmt.Errorf("%q: a roll's width is %s to %s; hint: as in \"roll 36 in\"", s, minPaper.Both(u), maxPaper.Both(u))
		}
		return Paper{Name: s, Width: w, Height: w, Roll: true}, nil
	}
	if w, h, ok := strings.Cut(strings.ToLower(s), "x"); ok {
		pw, errW := measure.ParseLength(w, u)
		ph, errH := measure.ParseLength(h, u)
		if errW == nil && errH == nil {
			if min(pw, ph) < minPaper || max(pw, ph) < minLong || max(pw, ph) > maxPaper {
				return Paper{}, fmt.Errorf("%q: a sheet is from %s by %s (A5) to %s a side; hint: give the sheet's own size",
					s, minPaper.Both(u), minLong.Both(u), maxPaper.Both(u))
			}
			return Paper{Name: s, Width: pw, Height: ph}, nil
		}
	}
	var names []string
	for _, p := range papers {
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("%q is no paper known; hint: one of %s, a size such as 24x36, or a roll such as \"roll 36\"", s, strings.Join(names, ", "))
}

// turned returns the sheet lying on its long side.
func (p Paper) turned() Paper { return Paper{p.Name, p.Height, p.Width, p.Roll} }
