package rolls

import "math"

// stagger is a number of rows at an even pitch, every other one shifted along
// the strip. It is square rows when the pitch is 1, the zigzag with two rows,
// hexagonal rows while a row's own discs touch, and hexagonal columns, whose
// discs touch those of the next column and not those of their own, when the
// rows lie closer.
type stagger struct {
	rows   int
	pitch  float64 // between rows, across
	shift  float64 // of every other row, along
	repeat float64 // of the discs of one row, along
	square bool
}

// staggers are those that fit a strip of width w, the rows spread over it.
// A row's pitch is ½ or more, or the rows two apart would clash.
func staggers(w float64) []pattern {
	all := []pattern{squares(w)}
	for k := 2; float64(k-1) <= 2*w+slack; k++ {
		v := math.Max(w/float64(k-1), 0.5)
		if v >= 1-slack {
			continue
		}
		h := math.Sqrt(1 - v*v)
		all = append(all, stagger{rows: k, pitch: v, shift: h, repeat: math.Max(1, 2*h)})
	}
	return all
}

// squares are rows whose pieces lie abreast.
func squares(w float64) stagger {
	return stagger{rows: int(w+slack) + 1, pitch: 1, repeat: 1, square: true}
}

func (s stagger) name() string {
	switch {
	case s.rows == 1:
		return "one row"
	case s.square:
		return "rows"
	case s.rows == 2 && s.pitch < math.Sqrt(3)/2-slack:
		return "zigzag"
	case s.pitch > math.Sqrt(3)/2-slack:
		return "hexagonal rows"
	}
	return "hexagonal columns"
}

// first is how many lie in the first column: every row of square ones, else
// every other row.
func (s stagger) first() int {
	if s.square {
		return s.rows
	}
	return (s.rows + 1) / 2
}

func (s stagger) extent(n int) float64 {
	full, rest := (n-1)/s.rows, (n-1)%s.rows+1
	e := float64(full) * s.repeat
	if rest > s.first() {
		e += s.shift
	}
	return e
}

func (s stagger) points(n int) []point {
	points := make([]point, 0, n)
	for i := 0; ; i++ {
		x := float64(i) * s.repeat
		if s.square {
			for r := 0; r < s.rows; r++ {
				if points = append(points, point{x, float64(r) * s.pitch}); len(points) == n {
					return points
				}
			}
			continue
		}
		for odd := 0; odd < 2; odd++ {
			for r := odd; r < s.rows; r += 2 {
				p := point{x + float64(odd)*s.shift, float64(r) * s.pitch}
				if points = append(points, p); len(points) == n {
					return points
				}
			}
		}
	}
}
