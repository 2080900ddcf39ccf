package sweep

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"silowright/cmd/internal/job"
)

// bounds are a field's range; ok is false for what has none.
func bounds(f job.Field) (low, high float64, ok bool) {
	read := func(s string) (float64, error) {
		s, _, _ = strings.Cut(s, " ")
		return strconv.ParseFloat(s, 64)
	}
	low, err := read(f.Low)
	high, errHigh := read(f.High)
	return low, high, err == nil && errHigh == nil
}

// usual is what a field holds when it is left out; 0 when that is not told.
func usual(f job.Field) float64 {
	s, _, _ := strings.Cut(f.Fallback, " ")
	x, _ := strconv.ParseFloat(s, 64)
	return x
}

// fill gives a field something near its default.
func (m *maker) fill(b *block, f job.Field) {
	if b.has(f.Name) {
		return
	}
	low, high, ranged := bounds(f)
	x := m.near(usual(f))
	if usual(f) == 0 {
		x = m.logBetween(math.Max(low, high*1e-5), math.Max(high*0.02, 1))
	}
	switch {
	case f.Name == "round":
		x = m.between(0, math.Pi*0.8*m.outside)
	case f.Name == "saw" && f.Kind == job.KindLength && m.chance(0.6): // one of a shop's saws
		x = []float64{44.45, 47.625, 50.8, 53.975, 57.15, 60.325, 63.5, 66.675, 73.025, 76.2, 79.375, 88.9, 101.6, 111.125, 114.3}[m.IntN(15)]
	case strings.HasSuffix(f.Name, "_bore"):
		x = m.between(20, 80)
	case f.Section == "bed" && strings.HasSuffix(f.Name, "size"):
		x = m.logBetween(0.2, 10)
	case low < 0:
		x = m.between(-2000, 3000)
	}
	if ranged {
		x = math.Min(high, math.Max(low, x))
	}
	m.put(b, f, x)
}

// far gives a field something anywhere in its range, or at an end of it; a
// hostile job something past it.
func (m *maker) far(b *block, f job.Field) {
	low, high, ranged := bounds(f)
	if !ranged || f.Kind != job.KindLength && f.Kind != job.KindNumber && f.Kind != job.KindCount {
		m.fill(b, f)
		return
	}
	b.lines = slices.DeleteFunc(b.lines, func(l line) bool { return l.name == f.Name })
	x := m.logBetween(math.Max(low, high*1e-4), high)
	switch r := m.Float64(); {
	case r < 0.15:
		x = low
	case r < 0.3:
		x = high
	case r < 0.4 && m.nerve == hostile:
		x = high*1.1 + 1
	case r < 0.45 && m.nerve == hostile:
		b.put(f.Name, words("%s", m.pick(`"x"`, "true", "[]", "{}", "nan", "inf", "-inf", "1e300", `"1/0"`, "2031-02-03", `""`, "-1")))
		return
	}
	if f.Kind == job.KindLength && (x == low || x == high) { // exactly
		b.put(f.Name, value{mm: x, style: asMM})
		return
	}
	m.put(b, f, x)
}

// put writes x, or what else the field's kind takes.
func (m *maker) put(b *block, f job.Field, x float64) {
	switch f.Kind {
	case job.KindLength:
		v := m.length(x)
		if f.Unit == "mm" {
			v = value{mm: math.Round(x*100) / 100, style: asBareMM}
		}
		b.put(f.Name, v)
	case job.KindCount:
		b.put(f.Name, words("%d", int(x)))
	case job.KindNumber:
		x = math.Round(x*1e4) / 1e4
		if strings.HasPrefix(f.Unit, "%") && x > 0 && x < 1 { // bare, it may be a share of one
			b.put(f.Name, words("%q", plain(x)+" "+f.Unit))
			return
		}
		b.put(f.Name, words("%s", plain(x)))
	case job.KindWord:
		if f.Name != "series" && f.Name != "pipe_out_series" || m.chance(0.1) {
			b.put(f.Name, words("%q", m.pick(f.Words...)))
		}
	case job.KindPipe:
		word := m.pick(f.Words...)
		if m.chance(0.6) {
			word = m.pick("1 1/2", "2", "3", "6", "8", "50", "63", "160", "200")
		}
		b.put(f.Name, words("%q", word))
	case job.KindYes:
		b.put(f.Name, words("%s", m.pick("true", "false")))
	default:
		m.special(b, f)
	}
}

// special are the keys of text and the lists.
func (m *maker) special(b *block, f job.Field) {
	points := func(most float64) value {
		var out []string
		q, h := 0.0, m.between(5, most)
		for range 2 + m.IntN(4) {
			out = append(out, fmt.Sprintf(`{flow = "%.0f L/min", head = "%.2f m"}`, q, h))
			q, h = q+m.between(50, 400), h*m.between(0.5, 0.97)
		}
		return words("[%s]", strings.Join(out, ", "))
	}
	switch f.Section + "." + f.Name {
	case "water.flow", "pump.duty_flow", "seed.pipe_flow", "seed.drum_flow":
		b.put(f.Name, words("%q", m.pick("9 gpm", "35 L/min", "0.6 L/s", "2 m3/h", plain(math.Round(m.logBetween(1, 200)*10)/10)+" L/min")))
	case "pump.power":
		b.put(f.Name, words("%s", m.pick("750", `"1 hp"`, `"1.5 kW"`, "0")))
	case "pump.curve":
		b.put(f.Name, points(40))
	case "pump.npsh":
		var out []string
		for q, h := m.between(0, 50), m.between(0.5, 3); len(out) < 3; q, h = q+100, h+m.Float64() {
			out = append(out, fmt.Sprintf(`{flow = "%.0f L/min", head = "%.2f m"}`, q, h))
		}
		b.put(f.Name, words("[%s]", strings.Join(out, ", ")))
	case "pump.kwh_price":
		b.put(f.Name, words("%q", m.pick("0.185", "0", "12", "0.0123456")))
	case "sealant.cartridge", "rates.cement_joint", "rates.primer_joint", "rates.acetone_metre":
		b.put(f.Name, words("%q", m.pick("10.1 fl oz", "300 mL", "25 mL", "150 mL")))
	case "seed.weights":
		b.put(f.Name, words("[{size = 0.3, each = 0.01}, {size = 5, each = 27}, {size = 40, each = %d}]", 5000+m.IntN(20000)))
	case "seed.week_table":
		b.put(f.Name, words("[{growth = 0.5, survival = %d}, {growth = 0.7, survival = 90}]", 50+m.IntN(50)))
	case "work.wage":
		b.put(f.Name, words("%q", m.pick("24", "0", "1500")))
	}
}
