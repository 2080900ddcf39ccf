package sheets

import "silowright/render"

// column of a table: its head, its share of the width, and how it is set.
type column struct {
	head  string
	share float64
	right bool
	bold  bool
}

// cell is what stands in one field: paragraphs one below the other, a sign in
// front of the first, which alone is bold when the cell is.
type cell struct {
	paras []string
	mark  mark
	bold  bool
	band  bool // a title right across the table, above the rows it is of
	shade float64
}

// say makes a cell of paragraphs; empty ones after the first are left out.
func say(paras ...string) cell { return cell{paras: paras} }

func strong(paras ...string) cell { return cell{paras: paras, bold: true} }

// table has a head that is repeated on each page and rows that are kept whole
// where a page can hold them.
type table struct {
	cols  []column
	rows  [][]cell
	tall  length // least height of a row, for forms filled in by hand
	grid  bool   // upright rules too, for forms
	tight bool   // less air above and below the words, for a page that must hold much
	most  int    // most lines in a field, the rest cut off with "…"; 0: all
}

func (t *table) add(cells ...cell) { t.rows = append(t.rows, cells) }

const padX length = 1.6

// padY is the air above and below the words of a row.
func (t table) padY() length {
	if t.tight {
		return 0.8
	}
	return 1.3
}

// band adds a title right across the table.
func (t *table) band(title string) {
	t.add(cell{paras: []string{title}, bold: true, band: true})
}

// setCell is a cell broken into lines, of which so many are bold.
type setCell struct {
	lines []string
	bold  int
	cell  cell
}

// table sets t down the page.
func (f *flow) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	xs := f.columns(t.cols)
	heads, headH := f.headsOf(t, xs)
	first := f.breakRow(t, xs, t.rows[0])
	f.need(f.tableStart(t))
	f.tableHead(t, xs, heads, headH)
	for i, r := range t.rows {
		cells := first
		if i > 0 {
			cells = f.breakRow(t, xs, r)
		}
		whole := t.rowHeight(cells, t.tall)
		if cells[0].cell.band && i+1 < len(t.rows) { // a title stays with the row below it
			whole += t.rowHeight(f.breakRow(t, xs, t.rows[i+1]), t.tall)
		}
		if i > 0 && f.y+whole > f.bottom() && (whole <= f.bottom()-topY-headH || f.y+lead(small)+2*t.padY() > f.bottom()) {
			f.turn()
			f.tableHead(t, xs, heads, headH)
		}
		for {
			fitting := int((f.bottom()-f.y-2*t.padY()+lead(small)-small-0.6)/lead(small) + 1e-9) // as rowHeight counts
			part, rest := splitRow(cells, fitting)
			f.tableRow(t, xs, part, max(min(t.tall, f.bottom()-f.y), t.rowHeight(part, 0)))
			if rest == nil {
				break
			}
			cells = rest
			f.turn()
			f.tableHead(t, xs, heads, headH)
		}
	}
	f.y += 2.5
}

// headsOf is the table's head as it is set in columns, and how tall it is.
func (f *flow) headsOf(t table, xs []length) ([]setCell, length) {
	head := make([]cell, len(t.cols))
	for i, c := range t.cols {
		head[i] = strong(c.head)
	}
	heads := f.breakRow(heading(t), xs, head)
	return heads, t.rowHeight(heads, 0)
}

// tableStart is the room a table wants where it begins: its head and its first
// row, or the beginning of a very tall one.
func (f *flow) tableStart(t table) length {
	if len(t.rows) == 0 {
		return 0
	}
	xs := f.columns(t.cols)
	_, headH := f.headsOf(t, xs)
	return headH + min(t.rowHeight(f.breakRow(t, xs, t.rows[0]), t.tall), 40)
}

// headed sets a table under a heading that stays with it.
func (f *flow) headed(words string, t table) {
	f.headingOver(words, f.tableStart(t))
	f.table(t)
}

// heading is t with no more than four lines to a field, for its head.
func heading(t table) table {
	t.most = 4
	return t
}

// columns are the places of the columns' edges.
func (f *flow) columns(cols []column) []length {
	sum := 0.0
	for _, c := range cols {
		sum += c.share
	}
	xs := []length{marginL}
	at := 0.0
	for _, c := range cols {
		at += c.share
		xs = append(xs, marginL+f.wide()*length(at/sum))
	}
	return xs
}

func (f *flow) breakRow(t table, xs []length, row []cell) []setCell {
	out := make([]setCell, len(t.cols))
	for i := range t.cols {
		if i >= len(row) {
			break
		}
		c := row[i]
		c.bold = c.bold || t.cols[i].bold
		room := xs[i+1] - xs[i] - 2*padX
		if c.band {
			room = f.wide() - 2*padX
		}
		if c.mark != noMark {
			room -= markWide
		}
		out[i].cell = c
		for n, p := range c.paras {
			if p == "" && n > 0 {
				continue
			}
			lines := render.Wrap(f.safe(p), small, c.bold && n == 0, room)
			if c.bold && n == 0 {
				out[i].bold = len(lines)
			}
			out[i].lines = append(out[i].lines, lines...)
		}
		if l := out[i].lines; t.most > 0 && len(l) > t.most {
			l[t.most-1] = fit(l[t.most-1]+" "+l[t.most], small, room)
			out[i].bold = min(out[i].bold, t.most-1)
			out[i].lines = l[:t.most]
		}
	}
	return out
}

// splitRow parts a row after n lines; rest is nil when nothing is left.
func splitRow(cells []setCell, n int) (part, rest []setCell) {
	n = max(n, 1)
	more := false
	part, rest = make([]setCell, len(cells)), make([]setCell, len(cells))
	for i, c := range cells {
		part[i], rest[i] = c, c
		rest[i].cell.mark = noMark
		if len(c.lines) > n {
			part[i].lines, rest[i].lines = c.lines[:n], c.lines[n:]
			rest[i].bold = max(0, c.bold-n)
			more = true
		} else {
			rest[i].lines = nil
		}
	}
	if !more {
		return part, nil
	}
	return part, rest
}

func (t table) rowHeight(cells []setCell, tall length) length {
	n := 1
	for _, c := range cells {
		n = max(n, len(c.lines))
	}
	return max(tall, length(n)*lead(small)+2*t.padY()-(lead(small)-small)+0.6)
}

func (f *flow) tableHead(t table, xs []length, heads []setCell, h length) {
	f.shade(xs[0], f.y, xs[len(xs)-1], f.y+h, 0.1)
	f.rule(xs[0], xs[len(xs)-1], f.y, render.Outline)
	f.tableRow(t, xs, heads, h)
}

// tableRow sets one row and the rule below it.
func (f *flow) tableRow(t table, xs []length, cells []setCell, h length) {
	if cells[0].cell.band {
		f.shade(xs[0], f.y, xs[len(xs)-1], f.y+h, 0.05)
	}
	for i, c := range cells {
		if c.cell.shade > 0 {
			f.shade(xs[i], f.y, xs[i+1], f.y+h, c.cell.shade)
		}
		x, a := xs[i]+padX, render.Left
		if c.cell.mark != noMark {
			f.sign(c.cell.mark, x, f.y+t.padY()+small)
			x += markWide
		}
		if t.cols[i].right {
			x, a = xs[i+1]-padX, render.Right
		}
		for n, l := range c.lines {
			f.put(x, f.y+t.padY()+small+length(n)*lead(small), l, small, n < c.bold, a)
		}
	}
	if t.grid {
		for _, x := range xs {
			f.line(x, f.y, x, f.y+h, render.Thin)
		}
	}
	f.y += h
	f.rule(xs[0], xs[len(xs)-1], f.y, render.Thin)
}

// tallOf is how tall a table comes out on one page, with the room below it.
func (f *flow) tallOf(t table) length {
	if len(t.rows) == 0 {
		return 0
	}
	xs := f.columns(t.cols)
	_, headH := f.headsOf(t, xs)
	sum := headH + 2.5
	for _, r := range t.rows {
		sum += t.rowHeight(f.breakRow(t, xs, r), t.tall)
	}
	return sum
}
