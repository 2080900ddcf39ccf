package table

import (
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"silowright/cmd/internal/demo"
	"silowright/cmd/internal/job"
	"silowright/cmd/internal/plan"
	"silowright/geometry"
)

// jobError is what is wrong with a job, taken apart.
type jobError struct {
	Line    int    `json:"line"`
	Key     string `json:"key"`
	Field   string `json:"field"` // the field it stands beside; empty when there is none
	Value   string `json:"value"`
	Why     string `json:"why"`
	Allowed string `json:"allowed"`
	Hint    string `json:"hint"`
	Text    string `json:"text"` // all of it in one line
}

// finding is a finding as the page shows it.
type finding struct {
	ID       string `json:"id"`
	Drum     string `json:"drum"`
	Level    string `json:"level"` // "ok", "caution" or "stop"
	Key      string `json:"key"`
	Says     string `json:"says"`
	Basis    string `json:"basis"`
	Measured string `json:"measured"`
	Limit    string `json:"limit"`
	Field    string `json:"field"`
	Fixes    bool   `json:"fixes"` // a change may clear it: worth asking for
}

type drumName struct {
	Label string `json:"label"`
	Path  string `json:"path"` // "drum[0]"
}

// answer is a job worked out.
type answer struct {
	Job        string            `json:"job"`
	Error      *jobError         `json:"error"`
	PriceError *jobError         `json:"priceError"`
	Name       string            `json:"name"`
	Units      string            `json:"units"`
	Tally      string            `json:"tally"`
	Fields     []job.Field       `json:"fields"`
	Sections   map[string]string `json:"sections"` // what each is about
	Drums      []drumName        `json:"drums"`
	Findings   []finding         `json:"findings"`
	Drawings   []kindDrawings    `json:"drawings"`
	Wall       []wall            `json:"wall"`
	Costs      *costs            `json:"costs"`
	Water      []waterLine       `json:"water"`
}

// newJob is what a job without a file is called.
const newJob = "job.toml"

// name is what messages and the price list's place follow from. Prices are
// said to be invented for as long as they are the demo's own.
func (s *server) name(path *string, prices string) string {
	switch {
	case path != nil && *path != "":
		if local(*path) != nil {
			return newJob // nothing is opened by it here; it would only be printed
		}
		return *path
	case path == nil && s.cfg.Job != "":
		return s.cfg.Job
	case prices == string(demo.Prices):
		return demo.JobName
	}
	return newJob
}

// work applies edits and works the job out.
func (s *server) work(_ *http.Request, b *body) (any, error) {
	text := []byte(b.Job)
	out := &answer{Sections: job.SectionWords()}
	if len(b.Edits) > 200 {
		return nil, refuse(http.StatusBadRequest, "edits: too many at once, allowed: 200")
	}
	for _, e := range b.Edits {
		next, err := job.Edit(text, e.Key, e.Value)
		if err != nil {
			out.Error = wrong(err, nil)
			out.Error.Field = e.Key
			break
		}
		text = next
	}
	out.Job = string(text)
	w := s.kept.of(s.name(b.Path, b.Prices), out.Job, b.Prices)
	w.begin(slices.Contains(b.Want, "draw"))
	out.Fields = job.Fields(text)
	out.drums()
	solved, err := w.solved()
	if err != nil {
		if out.Error == nil {
			out.Error = wrong(err, out.Fields)
		}
		return out, nil
	}
	j := solved.file.Job
	out.Name, out.Units = j.Name, j.Units.String()
	if err := w.listed(); err != nil {
		out.PriceError = wrong(err, nil)
	}
	p, err := w.plan()
	if err != nil {
		if out.PriceError == nil {
			out.PriceError = wrong(err, out.Fields)
		}
		p = &plan.Plan{Job: j, Silos: solved.silos, Findings: solved.findings}
	}
	out.Tally = p.Tally()
	for _, f := range p.Findings {
		out.Findings = append(out.Findings, out.finding(f, j))
	}
	if slices.Contains(b.Want, "draw") {
		d, err := w.drawn()
		if err != nil {
			return nil, err
		}
		out.Drawings, out.Wall = d.kinds, d.walls
	}
	if slices.Contains(b.Want, "cost") && out.PriceError == nil {
		c, err := w.costs()
		if err != nil {
			out.PriceError = wrong(err, out.Fields)
		} else {
			out.Costs = costsOf(p, c)
		}
	}
	if slices.Contains(b.Want, "water") {
		out.Water = waterOf(p)
	}
	return out, nil
}

// drums lists the drums by what the fields say of their labels.
func (a *answer) drums() {
	for _, f := range a.Fields {
		if f.Name == "label" && strings.HasPrefix(f.Section, "drum[") {
			label := f.Value
			if label == "" {
				label = f.Fallback
			}
			a.Drums = append(a.Drums, drumName{label, f.Section})
		}
	}
}

// finding sets a finding beside its field: that of its own drum where there is
// one.
func (a *answer) finding(f geometry.Finding, j geometry.Job) finding {
	measured, limit := f.Texts(j.Units)
	out := finding{f.ID, f.Drum, f.Level.String(), f.Key, f.Says, f.Basis.String(), measured, limit, "", false}
	out.Field = fieldOf(a.Fields, a.Drums, f)
	out.Fixes = f.Level != geometry.OK && out.Field != "" && !measuredKey(f.Key)
	return out
}

// fieldOf is the field that a finding's key is, of its drum.
func fieldOf(fields []job.Field, drums []drumName, f geometry.Finding) string {
	section, name, _ := strings.Cut(f.Key, ".")
	var keys []string
	for _, d := range drums {
		if d.Label != f.Drum {
			continue
		}
		if section == "drum" {
			keys = append(keys, d.Path+"."+name)
		} else {
			keys = append(keys, d.Path+"."+f.Key)
		}
	}
	for _, k := range append(keys, f.Key) {
		if slices.ContainsFunc(fields, func(q job.Field) bool { return q.Key == k }) {
			return k
		}
	}
	return ""
}

// measuredKey reports whether a key is what the tape or a label says: not a
// choice that could be changed to please a check.
func measuredKey(key string) bool {
	return strings.HasPrefix(key, "drum.") || strings.HasPrefix(key, "fittings.")
}

// wrong takes an error apart for the page.
func wrong(err error, fields []job.Field) *jobError {
	out := &jobError{Text: oneLine(err.Error())}
	var e *job.Error
	if !errors.As(err, &e) {
		// "file:12: what is wrong; hint: a way out"
		if parts := strings.SplitN(out.Text, ":", 3); len(parts) == 3 {
			out.Line, _ = strconv.Atoi(parts[1])
		}
		out.Why = out.Text
		if why, hint, ok := strings.Cut(out.Text, "; hint: "); ok {
			out.Why, out.Hint = why, hint
		}
		return out
	}
	out.Line, out.Key, out.Value, out.Why, out.Allowed, out.Hint = e.Line, e.Key, e.Value, e.Why, e.Allowed, e.Hint
	if out.Why == "" {
		out.Why = "unknown key"
	}
	out.Field = errorField(fields, e)
	return out
}

// errorField is the field an error is about: that of its key on its line, else
// the first of its key.
func errorField(fields []job.Field, e *job.Error) string {
	best := ""
	for _, f := range fields {
		if f.Plain() != e.Key && !strings.HasSuffix(f.Plain(), "."+e.Key) {
			continue
		}
		if f.Line == e.Line {
			return f.Key
		}
		if best == "" {
			best = f.Key
		}
	}
	return best
}
