package sweep

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"silowright/cmd/internal/job"
	"silowright/geometry/measure"
)

// maker makes one random job.
type maker struct {
	*rand.Rand
	u       measure.Unit
	nerve   nerve
	doc     doc
	outside float64 // of the first drum, mm
	terms   terms
}

// nerve is how far a job strays from what a shop would write.
type nerve int

const (
	calm    nerve = iota // near the defaults
	wild                 // some keys anywhere in their range, or at its ends
	hostile              // and one thing that is wrong
)

func (m *maker) chance(p float64) bool { return m.Float64() < p }

func (m *maker) pick(list ...string) string { return list[m.IntN(len(list))] }

func (m *maker) between(a, b float64) float64 { return a + m.Float64()*(b-a) }

// logBetween is between a and b, as likely within each octave.
func (m *maker) logBetween(a, b float64) float64 {
	a = math.Max(a, 1e-3)
	return math.Min(b, a*math.Exp(m.Float64()*math.Log(math.Max(b, a)/a)))
}

// near is x with a spread of about an eighth either way.
func (m *maker) near(x float64) float64 { return x * math.Exp(0.12*m.NormFloat64()) }

// length is a length as a person notes it: off a tape in inches, or to a
// millimetre or a part of one.
func (m *maker) length(mm float64) value {
	style := m.IntN(asMM + 1)
	if m.chance(0.5) && math.Abs(mm) > 3 {
		return onTape(mm, style)
	}
	for _, step := range []float64{1, 0.5, 0.1} {
		if mm > 20*step && m.chance(0.5) {
			return value{mm: math.Round(mm/step) * step, style: style}
		}
	}
	return value{mm: math.Round(mm*1000) / 1000, style: style}
}

// mildName is a name that no sheet nor spreadsheet should stumble over.
func (m *maker) mildName() string {
	return m.pick("North shed", "Østre vik", "Σίλο 3", "Бухта", `quay "B"`, `back\slash`, "a,b;c", "'; drop", "<b>&amp;</b>", "=1+1", "-12", "@home",
		"../up", "C:\\con", "100 %d of it", "tab?", "…", "x", "Wharf № 7", "½ barrel", "long long long long long long long long long name 1")
}

// job writes a job but for what depends on its bill.
func (m *maker) job() {
	switch f := m.Float64(); {
	case f < 0.12:
		m.nerve = hostile
	case f < 0.35:
		m.nerve = wild
	}
	if m.chance(0.5) {
		m.u = measure.UnitMM
	}
	top := m.doc.section("")
	if m.chance(0.8) {
		top.put("name", words("%s", quote(m.mildName())))
	}
	kinds := 1
	if m.chance(0.35) {
		kinds = 1 + m.IntN(4)
	}
	counts, sum := make([]int, kinds), 0
	for i := range counts {
		counts[i] = m.IntN(1 + 40/kinds)
		if m.chance(0.01) {
			counts[i] = m.IntN(2000)
		}
		sum += counts[i]
	}
	pipes := 0
	if m.chance(0.75) {
		pipes = m.IntN(30)
	}
	top.put("drum_silos", words("%d", sum))
	top.put("pipe_silos", words("%d", pipes))
	if m.terms.currency = "USD"; m.chance(0.4) {
		m.terms.currency = m.pick("EUR", "JPY", "KWD", "GBP", "CHF")
	}
	top.put("currency", words("%q", m.terms.currency))
	if m.chance(0.2) {
		top.put("projection", words("%q", m.pick("first", "third")))
	}
	size := m.logBetween(250, 1000)
	if m.chance(0.1) {
		size = m.logBetween(80, 1500)
	}
	for i := range kinds {
		m.drum(i, kinds, counts[i], m.near(size))
	}
	m.sections()
}

func quote(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}

// drum writes one kind of drum.
func (m *maker) drum(i, of, count int, outside float64) {
	outside = math.Min(1490, math.Max(85, outside))
	if i == 0 {
		m.outside = outside
	}
	b := &block{head: "[[drum]]"}
	m.doc.blocks = append(m.doc.blocks, b)
	if of > 1 || m.chance(0.6) {
		b.put("label", words("%s", quote(fmt.Sprintf("%s %d", m.pick("blue", "Cove", "Ærø", "β", "Ж", "white/2", "a..b", `"x"`, "long label"), i))))
	}
	if of > 1 || m.chance(0.5) {
		b.put("count", words("%d", count))
	}
	height := math.Min(2480, math.Max(205, outside*m.between(1, 1.9)))
	if m.chance(0.5) {
		b.put("circumference", m.length(outside*math.Pi))
	} else {
		b.put("outside", m.length(outside))
	}
	recess := m.between(0, math.Min(60, 0.05*height))
	foot := height * m.between(0.02, 0.14)
	b.put("height", m.length(height))
	b.put("wall", m.length(m.between(1.5, 9)))
	b.put("foot_outside", m.length(outside*m.between(0.78, 0.995)))
	b.put("foot_height", m.length(foot))
	b.put("head_recess", m.length(recess))
	b.put("hoops", m.hoops(outside, height, foot))
	for range m.IntN(3) {
		if m.chance(0.2) {
			m.own(fmt.Sprintf("[drum.%s]", m.pick("lattice", "ring", "outlet", "mesh", "handle", "load", "saw")))
		}
	}
}

// hoops lists none to four hoops, now and then in a wrong order.
func (m *maker) hoops(outside, height, foot float64) value {
	n := 1 + m.IntN(3)
	if m.nerve == hostile {
		n = m.IntN(6)
	}
	top := height * m.between(0.5, 0.8)
	var list []string
	for i := range n {
		from := foot + (top-foot)*float64(i+1)/float64(max(n, 1))
		to := from + m.between(0.015, 0.06)*height
		over := outside * m.between(1.01, 1.08)
		list = append(list, fmt.Sprintf(`{from = "%.1f mm", to = "%.1f mm", outside = "%.1f mm"}`, from, to, over))
	}
	if m.chance(0.2) {
		slices.Reverse(list)
	}
	return words("[%s]", strings.Join(list, ", "))
}

// own gives the last drum a section of its own.
func (m *maker) own(head string) {
	for _, b := range m.doc.blocks[len(m.doc.blocks)-1:] {
		if b.head == head {
			return
		}
	}
	b := &block{head: head}
	section := strings.TrimSuffix(strings.TrimPrefix(head, "[drum."), "]")
	for _, f := range m.fields() {
		if f.Section == section && m.chance(0.5) {
			m.fill(b, f)
		}
	}
	m.doc.blocks = append(m.doc.blocks, b)
}

// fields are the keys that the job can have, with what they may hold, in mm.
func (m *maker) fields() []job.Field { return job.Fields([]byte(m.doc.text(measure.UnitMM))) }

// siloSections are those that describe the silo, and the two of the bench.
var siloSections = []string{"lattice", "ring", "mesh", "handle", "outlet", "inlet", "drain", "screws", "sealant", "pipe_silo", "saw", "load"}

// sections writes the sections that every job can have.
func (m *maker) sections() {
	fields := m.fields()
	given := map[string]float64{} // how much of a section is given
	for _, s := range siloSections {
		given[s] = m.Float64() * 0.7
	}
	if m.chance(0.3) {
		given["bench"], given["rates"] = 0.4, 0.4
	}
	if m.chance(0.3) {
		given["work"] = 0.3
	}
	if m.chance(0.45) {
		for _, s := range []string{"water", "pump", "suction", "main", "manifold", "lateral", "bed", "failure"} {
			given[s] = m.Float64()
		}
	}
	if m.chance(0.3) {
		given["seed"] = 0.4
	}
	for _, f := range fields {
		if p := given[f.Section]; p > 0 && !strings.Contains(f.Section, "[") && m.chance(p) {
			m.fill(m.doc.section("["+f.Section+"]"), f)
		}
	}
	if given["seed"] > 0 {
		m.seedMusts()
	}
	if m.nerve != calm {
		for range 1 + m.IntN(4) {
			if f := fields[m.IntN(len(fields))]; slices.Contains(siloSections, f.Section) || given[f.Section] > 0 {
				m.far(m.doc.section("["+f.Section+"]"), f)
			}
		}
	}
	m.fittings()
	m.buying()
	m.runs()
}

// seedMusts gives what a section on seed cannot be without.
func (m *maker) seedMusts() {
	b := m.doc.section("[seed]")
	for _, l := range []line{
		{"count", words("%d", int(m.logBetween(1000, 1e7)))}, {"size", value{mm: math.Round(m.logBetween(0.4, 8)*100) / 100, style: asBareMM}},
		{"pipe_meshes", words("[0.3, %s]", plain(math.Round(m.between(0.35, 1)*100)/100))}, {"drum_meshes", words("[1.6, %s]", plain(math.Round(m.between(1.7, 6)*10)/10))},
	} {
		if !b.has(l.name) {
			b.put(l.name, l.v)
		}
	}
	if m.chance(0.1) {
		for i, l := range m.doc.blocks[0].lines {
			if l.name == m.pick("drum_silos", "pipe_silos") {
				m.doc.blocks[0].lines[i].v = words(`"from seed plan"`)
			}
		}
	}
}

// fittings are parts that the builder measured.
func (m *maker) fittings() {
	if !m.chance(0.3) {
		return
	}
	for _, size := range []string{"1 1/2", "2", "50", "63"} {
		if m.chance(0.4) {
			b := m.doc.section(fmt.Sprintf("[fittings.coupling.%q]", size))
			b.put("outside", m.length(m.between(50, 90)))
			if m.chance(0.5) {
				b.put("depth", m.length(m.between(18, 45)))
			}
		}
		if m.chance(0.4) {
			m.doc.section(fmt.Sprintf("[fittings.grommet.%q]", size)).put("hole", m.length(m.between(40, 90)))
		}
		if m.chance(0.4) {
			m.doc.section(fmt.Sprintf("[fittings.bulkhead.%q]", size)).put("ends", words("%q", m.pick("socket", "thread")))
		}
	}
	if m.chance(0.3) {
		b := m.doc.section(`[fittings.stopper."11"]`)
		b.put("top", m.length(m.between(52, 60)))
		b.put("bottom", m.length(m.between(42, 50)))
	}
}

// runs are pipe of the manifold and the mains.
func (m *maker) runs() {
	for range m.IntN(4) {
		if m.chance(0.4) {
			b := &block{head: "[[pipe_run]]"}
			m.doc.blocks = append(m.doc.blocks, b)
			b.put("name", words("%s", quote(m.pick("manifold", "main", "Ω", "to \"A\"", "1"))))
			b.put("pipe", words("%q", m.pick("2", "3", "4", "63", "110", "1 1/2")))
			b.put("length", m.length(m.between(200, 6000)))
			b.put("count", words("%d", m.IntN(12)))
		}
	}
}
