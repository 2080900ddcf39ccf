package render

import (
	"fmt"
	"strings"

	"silowright/geometry/measure"
)

// Paper is a sheet to print templates on, upright.
type Paper struct {
	Name          string
	Width, Height length
}

const in = measure.Inch

// papers are the sheets known by name: ISO 216 A sizes, ANSI/ASME Y14.1 sizes
// and the architectural sizes.
var papers = []Paper{
	{"letter", 8.5 * in, 11 * in}, {"legal", 8.5 * in, 14 * in}, {"tabloid", 11 * in, 17 * in},
	{"A4", 210, 297}, {"A3", 297, 420}, {"A2", 420, 594}, {"A1", 594, 841}, {"A0", 841, 1189},
	{"ANSI-C", 17 * in, 22 * in}, {"ANSI-D", 22 * in, 34 * in}, {"ANSI-E", 34 * in, 44 * in},
	{"ARCH-C", 18 * in, 24 * in}, {"ARCH-D", 24 * in, 36 * in}, {"ARCH-E", 36 * in, 48 * in}, {"ARCH-E1", 30 * in, 42 * in},
}

// The sizes a printer can take: from a postcard to a 2 m banner.
const (
	minPaper length = 120
	maxPaper length = 5000
)

// PaperNamed reads a paper: a name (case and hyphens do not matter) or
// "WxH", where each side is a length as a shop writes it, bare numbers in u.
func PaperNamed(s string, u measure.Unit) (Paper, error) {
	plain := func(s string) string {
		return strings.NewReplacer("-", "", " ", "", "_", "").Replace(strings.ToLower(s))
	}
	for _, p := range papers {
		if plain(p.Name) == plain(s) {
			return p, nil
		}
	}
	if w, h, ok := strings.Cut(strings.ToLower(s), "x"); ok {
		pw, errW := measure.ParseLength(w, u)
		ph, errH := measure.ParseLength(h, u)
		if errW == nil && errH == nil {
			if pw < minPaper || ph < minPaper || pw > maxPaper || ph > maxPaper {
				return Paper{}, fmt.Errorf("%q: a side is outside %s to %s; hint: give the sheet's own size", s, minPaper.Both(u), maxPaper.Both(u))
			}
			return Paper{Name: s, Width: pw, Height: ph}, nil
		}
	}
	var names []string
	for _, p := range papers {
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("%q is no paper known; hint: one of %s, or a size such as 24x36", s, strings.Join(names, ", "))
}

// Turned returns the sheet lying on its long side.
func (p Paper) Turned() Paper { return Paper{p.Name, p.Height, p.Width} }
