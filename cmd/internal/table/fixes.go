package table

import (
	"cmp"
	"fmt"
	"math"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"silowright/cmd/internal/job"
	"silowright/geometry"
	"silowright/geometry/measure"
	"silowright/geometry/stock"
	"silowright/nursery"
)

// fix is a change that clears a finding.
type fix struct {
	Key   string `json:"key"`
	Value string `json:"value"`
	Label string `json:"label"` // in the trade's words: "use the 2 1/2 in saw"
}

// The most fixes offered, and the most changes tried to find them.
const (
	mostFixes = 3
	mostTries = 90
)

// fixes looks for changes of a finding's own key that clear it and bring no
// new stop, nearest first: it tries them, each on the whole job.
func (s *server) fixes(r *http.Request, b *body) (any, error) {
	w := s.kept.of(s.name(b.Path, b.Prices), b.Job, b.Prices)
	now, err := w.solved()
	if err != nil {
		return nil, err
	}
	f, ok := findingOf(now.findings, b.ID, b.Drum)
	again := func(text []byte) ([]geometry.Finding, error) {
		s, err := solve(w.name, text)
		if err != nil {
			return nil, err
		}
		return s.findings, nil
	}
	before := now.findings
	if !ok { // one of the whole build
		p, err := w.plan()
		if err != nil {
			return nil, err
		}
		before = p.Findings
		if f, ok = findingOf(before, b.ID, b.Drum); !ok {
			return nil, refuse(http.StatusNotFound, "id: %.60q is no finding of this job", b.ID)
		}
		again = func(text []byte) ([]geometry.Finding, error) {
			p, err := work(w.name, text, w.prices).plan()
			if err != nil {
				return nil, err
			}
			return p.Findings, nil
		}
	}
	found := []fix{}
	a := answer{Fields: job.Fields(w.job)}
	a.drums()
	at := fieldOf(a.Fields, a.Drums, f)
	i := slices.IndexFunc(a.Fields, func(q job.Field) bool { return q.Key == at })
	if i < 0 || f.Level == geometry.OK || measuredKey(f.Key) {
		return map[string]any{"fixes": found}, nil
	}
	t := trial{field: a.Fields[i], finding: f, units: now.file.Job.Units, key: f.Key, series: seriesOf(a.Fields, at)}
	var second []fix // these bring a caution, or leave one
	for n, c := range t.candidates(now.silos) {
		if n >= mostTries || len(found) >= mostFixes || r.Context().Err() != nil {
			break
		}
		text, err := job.Edit(w.job, at, c.value)
		if err != nil {
			continue
		}
		after, err := again(text)
		if err != nil {
			continue
		}
		one := fix{at, c.value, c.label}
		switch left, stops, cautions := outcome(before, after, f); {
		case stops || left >= f.Level:
		case left == geometry.OK && !cautions, c.suits:
			found = append(found, one)
		case len(second) < mostFixes:
			second = append(second, one)
		}
	}
	if len(found) == 0 {
		found = append(found, second...)
	}
	return map[string]any{"fixes": found}, nil
}

func findingOf(list []geometry.Finding, id, drum string) (geometry.Finding, bool) {
	for _, f := range list {
		if f.ID == id && f.Drum == drum {
			return f, true
		}
	}
	return geometry.Finding{}, false
}

// outcome is what is left of a finding after a change, and whether the change
// brought a stop or a caution that was not there.
func outcome(before, after []geometry.Finding, f geometry.Finding) (left geometry.Level, stops, cautions bool) {
	for _, n := range after {
		if n.ID == f.ID && n.Drum == f.Drum {
			left = max(left, n.Level)
			continue
		}
		old, _ := findingOf(before, n.ID, n.Drum)
		if n.Level > old.Level {
			stops = stops || n.Level == geometry.Stop
			cautions = true
		}
	}
	return left, stops, cautions
}

// trial is a finding's key to be changed.
type trial struct {
	field   job.Field
	finding geometry.Finding
	units   measure.Unit
	key     string // without the drum's part
	series  string // of the pipe, where the field is one
}

// candidate is a value to try.
type candidate struct {
	value, label string
	off          float64 // how far from what holds now
	suits        bool    // the geometry itself advises it
}

// candidates are the values to try, nearest first.
func (t trial) candidates(silos []geometry.Silo) []candidate {
	var out []candidate
	switch {
	case strings.HasSuffix(t.key, ".saw") && t.field.Kind == job.KindLength:
		out = t.saws(silos)
	case t.field.Kind == job.KindLength:
		out = t.lengths()
	case t.field.Kind == job.KindWord || t.field.Kind == job.KindPipe:
		out = t.words()
	case t.field.Kind == job.KindCount:
		out = t.counts()
	case t.field.Kind == job.KindNumber:
		out = t.numbers()
	}
	slices.SortStableFunc(out, func(a, b candidate) int { return cmp.Compare(a.off, b.off) })
	return out
}

// seriesOf is the series of the pipe that a field is; empty where it follows
// from the size.
func seriesOf(fields []job.Field, key string) string {
	name := strings.TrimSuffix(key, ".pipe") + ".series"
	if before, ok := strings.CutSuffix(key, "pipe_out"); ok {
		name = before + "pipe_out_series"
	}
	for _, f := range fields {
		if f.Key == name {
			return cmp.Or(f.Value, f.Fallback)
		}
	}
	return ""
}

func (t trial) force() string {
	if t.field.Value != "" {
		return t.field.Value
	}
	return t.field.Fallback
}

// saws are the hole saws of the series; those that suit the hole come first.
func (t trial) saws(silos []geometry.Silo) []candidate {
	now, _ := measure.ParseLength(t.force(), t.units)
	suits := map[string]int{} // its place among them, from 1
	for _, s := range silos {
		for _, h := range append(s.Holes(), s.Pipe.Hole) {
			if s.Spec.Drum.Label == t.finding.Drum && h.Key()+".saw" == t.key {
				for i, q := range geometry.SawsFor(h) {
					suits[q.Label] = i + 1
				}
			}
		}
	}
	var out []candidate
	for _, q := range stock.HoleSaws() {
		c := candidate{q.Label + " in", "use the " + q.Label + " in saw", (q.Diameter - now).Abs().MM(), suits[q.Label] > 0}
		if t.units == measure.UnitMM {
			c.value, c.label = q.MetricLabel+" mm", "use the "+q.MetricLabel+" mm saw"
		}
		if c.off == 0 {
			continue
		}
		if c.off += 1000; c.suits {
			c.off = float64(suits[q.Label]) // smallest first, as the finding's own words have it
		}
		out = append(out, c)
	}
	return out
}

// lengths are marks of the tape on both sides of the present value: every
// eighth of an inch or 5 mm, further apart further out, and those that the
// finding's own limit calls for.
func (t trial) lengths() []candidate {
	now, err := measure.ParseLength(t.force(), t.units)
	if err != nil {
		return nil
	}
	step, fine := measure.Inch/8, measure.Inch/16
	if t.units == measure.UnitMM {
		step, fine = 5, 1
	}
	seen := map[string]bool{}
	var out []candidate
	add := func(l measure.Length, grid measure.Length, up bool) {
		n := math.Floor(float64(l/grid) + 1e-6)
		if up {
			n = math.Ceil(float64(l/grid) - 1e-6)
		}
		l = grid * measure.Length(n)
		value := l.Metric() + " mm"
		if t.units == measure.UnitInch {
			value = l.Inch(16)
		}
		if off := (l - now).Abs(); l > 0 && off > 0.01 && !seen[value] {
			seen[value] = true
			out = append(out, candidate{value, t.words1(value), off.MM(), false})
		}
	}
	if t.finding.Measured.Unit == "mm" && t.finding.Limit.Unit == "mm" {
		lack := measure.Length(t.finding.Limit.Value - t.finding.Measured.Value).Abs()
		for _, part := range []measure.Length{1, 0.5} {
			add(now+lack*part, fine, true)
			add(now-lack*part, fine, false)
		}
		add(measure.Length(t.finding.Limit.Value), fine, true)
		add(measure.Length(t.finding.Limit.Value), fine, false)
	}
	for k := 1; k <= 36; k++ {
		n := measure.Length(k)
		if k > 16 { // further apart further out
			n = 16 + measure.Length((k-16)*(k-16))/2
		}
		add(now+n*step, step, false)
		add(now-n*step, step, true)
	}
	return out
}

// phrases say a length of a key as the trade does.
var phrases = map[string]string{
	"below_rim": "set the %s %s below the rim", "above_ground": "set the %s %s above the ground", "round": "set the %s %s round from the datum",
	"width": "make the %s %s wide", "length": "make the %s %s long", "height": "make the %s %s high", "across": "make the %s %s across",
	"nipple": "cut the %s's nipple %s long", "stub": "cut the %s's stub %s long", "bar_width": "make the %s's bars %s wide", "trim": "leave the %s %s past the ring",
	"pilot": "drill the %s's corner holes %s", "drape": "drape the %s's screen %s", "outlet_above_screen": "set the %s's outlet %s above the screen",
	"pipe_out_length": "cut the %s's short pipe %s long", "spacing": "set the %s %s apart",
}

// nouns are the sections as the trade names the part.
var nouns = map[string]string{"handle": "handle slots", "pipe_silo": "pipe silo", "screws": "screws", "ring": "ring", "mesh": "mesh"}

func (t trial) noun() string {
	section, _, _ := strings.Cut(t.key, ".")
	if n, ok := nouns[section]; ok {
		return n
	}
	return strings.ReplaceAll(section, "_", " ")
}

// words1 is the label for a length.
func (t trial) words1(value string) string {
	if t.units == measure.UnitInch {
		value += " in"
	}
	if t.key == "screws.length" {
		return "use screws " + value + " long"
	}
	if p, ok := phrases[t.field.Name]; ok {
		return fmt.Sprintf(p, t.noun(), value)
	}
	return fmt.Sprintf("set the %s's %s to %s", t.noun(), strings.ReplaceAll(t.field.Name, "_", " "), value)
}

// words are the other words the key takes, neighbours first.
func (t trial) words() []candidate {
	at := slices.Index(t.field.Words, t.force())
	var out []candidate
	for i, w := range t.field.Words {
		if i == at {
			continue
		}
		label := fmt.Sprintf("take %s for the %s's %s", w, t.noun(), strings.ReplaceAll(t.field.Name, "_", " "))
		switch {
		case t.field.Name == "stopper":
			label = "use a No. " + w + " stopper"
		case t.field.Name == "joint":
			label = "join the " + t.noun() + " by " + geometry.Joint(w).Makeup().By
		case t.field.Kind == job.KindPipe:
			label = "use " + nursery.Named(geometry.PipeRef{Size: w, Series: t.series}) + " pipe for the " + t.noun()
		}
		out = append(out, candidate{w, label, math.Abs(float64(i - max(at, 0))), false})
	}
	return out
}

func (t trial) counts() []candidate {
	now, err := strconv.Atoi(t.force())
	if err != nil {
		return nil
	}
	var out []candidate
	for d := 1; d <= 6; d++ {
		for _, n := range []int{now + d, now - d} {
			if n >= 0 {
				out = append(out, candidate{fmt.Sprint(n), fmt.Sprintf("take %d %s", n, strings.ReplaceAll(t.field.Name, "_", " ")), float64(d), false})
			}
		}
	}
	return out
}

// numbers are tenths more and less; of a weight, half kilograms less.
func (t trial) numbers() []candidate {
	now, err := strconv.ParseFloat(t.force(), 64)
	if err != nil {
		return nil
	}
	var out []candidate
	if t.key == "load.seed_kg" {
		for n := math.Ceil(now*2-1e-9) - 1; n > 0; n-- {
			v := strconv.FormatFloat(n/2, 'f', -1, 64)
			out = append(out, candidate{v, "load " + v + " kg of wet seed", now - n/2, false})
		}
		return out
	}
	for k := 1; k <= 9; k++ {
		for _, n := range []float64{now * (1 + float64(k)/10), now * (1 - float64(k)/10)} {
			v := strconv.FormatFloat(n, 'g', 3, 64)
			out = append(out, candidate{v, fmt.Sprintf("set the %s's %s to %s", t.noun(), strings.ReplaceAll(t.field.Name, "_", " "), v), math.Abs(n - now), false})
		}
	}
	return out
}
