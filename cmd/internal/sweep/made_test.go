package sweep

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"silowright/cmd/internal/pack"
	"silowright/cmd/internal/plan"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/sheets"
)

// made is a random job with its price list and the options of its pack.
type made struct {
	maker  maker
	text   string
	prices string
	offers map[int]offer
	paper  string
	only   []string // parts of the PDF; nil is all
	taken  bool
	// refusals of the job before it had a bill
	refusals []error
}

// headings are a price list that prices nothing.
const headings = "item,pack,unit,price\n"

// random makes a job from a source of chance. What is refused is mended by what
// the refusal says, as a person would, unless the job is a hostile one. A job
// is told its needs by a first bill without prices; the price list and the rack
// go by them.
func random(src rand.Source) made {
	j := made{maker: maker{Rand: rand.New(src)}, prices: headings}
	m := &j.maker
	m.job()
	for tries := 0; ; tries++ {
		j.text = m.doc.text(m.u)
		if m.nerve == hostile && m.chance(0.3) {
			j.text = m.spoilt(j.text)
		}
		p, err := plan.Text("job.toml", []byte(j.text), []byte(j.prices))
		if err == nil {
			j.prices, j.offers = m.priced(p.Cost.Bill.Lines)
			j.text = m.doc.text(m.u)
			break
		}
		if j.refusals = append(j.refusals, err); m.nerve == hostile || tries > 8 || !m.mend(err) {
			return j
		}
	}
	j.taken = true
	j.paper = m.pick("", "", "", "letter", "A4", "A3", "A0", "ARCH-D", "24 in x 36 in", "roll 36 in", "roll 610 mm", "148 mm x 210 mm", "11 in x 17 in", "legal")
	return j
}

// spoilt is a text with one thing wrong.
func (m *maker) spoilt(text string) string {
	at := m.IntN(len(text))
	switch m.IntN(5) {
	case 0:
		return text[:at]
	case 1:
		return text[:at] + m.pick("\x00", "\"", "=", "[", "\n", "é", "\xff", "9") + text[at:]
	case 2:
		return text + m.pick("wall = 3\n", "[drun]\nx = 1\n", "[lattice]\nbar = 2\n", "drum_silos = 1\n", "[[drum]]\n")
	case 3:
		rows := strings.Split(text, "\n")
		i := m.IntN(len(rows))
		return strings.Join(slices.Delete(rows, i, i+1), "\n")
	}
	rows := strings.Split(text, "\n")
	i := m.IntN(len(rows))
	return strings.Join(slices.Insert(rows, i, rows[m.IntN(len(rows))]), "\n")
}

// options are those of the job's pack.
func (j *made) options(u measure.Unit) (pack.Options, error) {
	o := pack.DefaultOptions(u)
	m := &j.maker
	var err error
	if j.paper != "" {
		if o.Paper, err = render.PaperNamed(j.paper, u); err != nil {
			return o, err
		}
	}
	o.Only, o.Strips = j.only, m.chance(0.2)
	if m.chance(0.1) {
		o.Margin, o.Overlap = measure.Length(m.between(0, 15)), measure.Length(m.between(4, 25))
	}
	if m.chance(0.1) {
		o.Stretch, err = render.PrintedAs(fmt.Sprintf("%.1fx%.1f", m.between(97, 103), m.between(97, 103)))
	}
	if m.chance(0.2) {
		o.Page = []sheets.Paper{sheets.Letter, sheets.A4}[m.IntN(2)]
	}
	if m.chance(0.1) {
		o.Sheet = render.Paper{Name: "small", Width: 600, Height: 400}
	}
	return o, err
}
