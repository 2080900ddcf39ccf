package sheets

import (
	"errors"
	"fmt"
	"slices"

	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/render"
)

// Paper is the size of a document page, upright.
type Paper struct{ Width, Height length }

// The two document sizes offered: US letter (ANSI/ASME Y14.1 size A) and A4
// (ISO 216).
var (
	Letter = Paper{8.5 * measure.Inch, 11 * measure.Inch}
	A4     = Paper{210, 297}
)

// Pack is everything the document pages are set from.
type Pack struct {
	Name      string // of the job
	Units     measure.Unit
	Revision  string // printed at the foot of every page
	DrumSilos int
	PipeSilos int
	Silos     []geometry.Silo    // one a kind
	Findings  []geometry.Finding // all of them; nil takes those of Silos
	Defaulted []geometry.Default
	Bill      Bill
	Cuts      []CutRow
	Templates []TemplateRow

	Cost   *Cost // nil, or none of the kind below: the section says so
	Bars   []Bars
	Rolls  []Roll
	Plates []Sheet
	Orders []Order
	Work   *Work
	Water  *Water // nil: the section says so
	Seed   *Seed  // nil: the section says so
	// Have names the tools on hand as the tool lists call them ("jigsaw",
	// "hole saw 2 1/2 in"), sorted: they come ticked.
	Have []string

	// Figures are placed on the page "What you will build", in order, each
	// scaled down when it is larger than the page.
	Figures []render.Drawing
	// Pictures are the small pictures of the build steps by step id; a step without one is set without.
	Pictures map[string]render.Drawing
	// FirstSerial is the serial number of the first silo; 0 is taken as 1.
	FirstSerial int
}

// Bill is the priced list of what to buy; amounts are already written out.
type Bill struct {
	Currency   string
	Rows       []BillRow
	Categories []Amount
	Total      string
	PerSilo    []Amount // such as "each drum silo"
	Missing    []string // items without a price: the total leaves them out
	Invented   bool     // the prices are made up and must not be bought by
	PriceFile  string   // what the prices were read from; "" when there is none
}

// BillRow is one thing to buy.
type BillRow struct {
	Category string
	Item     string
	Need     string // what the build uses, with its unit
	Pack     string // what it is sold in
	Packs    string // how many of those
	Price    string // of one; "" when there is none
	Total    string // "" when there is no price
	From     string // supplier and date of the quotation; may be ""
	Have     string // what is on hand and not bought; "" when nothing is
}

// Amount is a named sum of money, written out.
type Amount struct{ Name, Sum string }

// CutRow is one kind of piece to cut.
type CutRow struct {
	Stock  string // what it is cut from
	Piece  string
	Drum   string // drum kind; "" when it fits all
	Count  int
	Length length
	Width  length // 0 for pipe and hose
	Note   string
}

// TemplateRow is one full-scale template of the pack.
type TemplateRow struct {
	Title         string
	Drum          string
	Count         int // parts marked with it
	Width, Height length
	Sheets        int // paper sheets it takes; 0 when it is not printed
	Note          string
}

// Section is a run of pages under one bookmark.
type Section struct {
	ID    string // a plain word, for choosing parts
	Title string
	Pages []render.Drawing
}

// parts are the sections in the order a shop needs them. A new section is one
// more function in a file of its own, named here.
var parts = []struct {
	id, title string
	set       func(*flow, *Pack)
}{
	{"findings", "Findings and cautions first", setFindings},
	{"build", "What you will build", setBuild},
	{"tools", "Tools and saw sizes", setTools},
	{"buy", "What to buy", setBill},
	{"cost", "What it costs", setCost},
	{"orders", "Orders to send", setOrders},
	{"cuts", "Cut list", setCuts},
	{"cutting", "Cutting plan", setCutting},
	{"work", "Hours and days", setWork},
	{"water", "Water", setWater},
	{"seed", "Seed", setSeed},
	{"holes", "Hole schedule", setHoles},
	{"marking", "Marking without paper", setMarking},
	{"steps", "Build steps", setSteps},
	{"traveller", "Traveller", setTraveller},
	{"basis", "What the numbers rest on", setBasis},
}

// IDs are the ids of all sections, in order.
func IDs() []string {
	out := make([]string, len(parts))
	for i, p := range parts {
		out[i] = p.id
	}
	return out
}

// ErrSheets is wrapped by every error of Sections.
var ErrSheets = errors.New("document pages")

// Sections sets the chosen sections (all when only is empty) on paper. It
// fails on paper too small to set a table on (under 180 × 200 mm), on an
// unknown id, and on a drawing render.Check refuses.
func Sections(p Pack, paper Paper, only ...string) ([]Section, error) {
	if !(paper.Width >= 180 && paper.Height >= 200 && paper.Width <= 2000 && paper.Height <= 3000) {
		return nil, fmt.Errorf("%w: paper %s × %s mm: allowed from 180 × 200 to 2000 × 3000 mm; hint: letter or A4",
			ErrSheets, paper.Width.Metric(), paper.Height.Metric())
	}
	for _, id := range only {
		if !slices.Contains(IDs(), id) {
			return nil, fmt.Errorf("%w: %q is not a section; hint: one of %v", ErrSheets, id, IDs())
		}
	}
	if p.Findings == nil {
		for _, s := range p.Silos {
			p.Findings = append(p.Findings, s.Findings...)
		}
	}
	var out []Section
	var flows []*flow
	for _, part := range parts {
		if len(only) > 0 && !slices.Contains(only, part.id) {
			continue
		}
		f := newFlow(paper, p.Units, p.Name, part.title)
		part.set(f, &p)
		flows = append(flows, f)
		out = append(out, Section{ID: part.id, Title: part.title})
	}
	finish(flows, p.Revision)
	for i, f := range flows {
		out[i].Pages = f.pages
		for n := range f.pages {
			if err := render.Check(f.pages[n]); err != nil {
				return nil, fmt.Errorf("%w: %s, page %d: %w", ErrSheets, out[i].ID, n+1, err)
			}
		}
	}
	return out, nil
}
