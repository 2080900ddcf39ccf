package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"silowright/geometry/measure"
	"silowright/nursery/seed"
)

var countCommand = command{
	name:    "count",
	args:    "SAMPLE…",
	summary: "seed per litre and per gram from counted samples, with how sure it is",
	example: `silowright count "5 mL: 212" "5 mL: 198" "5 mL: 230" --total "3.4 L"`,
	run:     runCount,
}

func runCount(e *env, args []string) error {
	fs := newFlags("count")
	total := fs.String("total", "", `the whole batch, drained: as in "3.4 L" or "1.2 kg"`)
	sure := fs.Float64("confidence", 0.95, "how sure the interval is to be, 0.5 to 0.999")
	asJSON := fs.Bool("json", false, "write the count as JSON")
	rest, err := parseFlags(fs, args, 1, 1000)
	if err != nil {
		return err
	}
	var samples []seed.Sample
	for i, text := range rest {
		s, err := sampleOf(text)
		if err != nil {
			return usagef("count: sample %d: %v", i+1, err)
		}
		samples = append(samples, s)
	}
	c, err := seed.Count(samples, *sure)
	if err != nil {
		return usagef("count: %v", err)
	}
	out := counted{Counted: c}
	if *total != "" {
		v, m, err := seed.ParseAmount(*total)
		if err != nil {
			return usagef("count: --total: %v", err)
		}
		all, ok := c.InVolume(v)
		if m > 0 {
			all, ok = c.InMass(m)
		}
		if !ok {
			return usagef("count: --total: %.40q is not told in what the samples are; hint: give volume for samples by volume, weight for samples by weight", *total)
		}
		out.Total, out.Of = &all, strings.TrimSpace(*total)
	}
	if *asJSON {
		enc := json.NewEncoder(e.stdout)
		enc.SetIndent("", "  ")
		enc.SetEscapeHTML(false)
		return enc.Encode(out)
	}
	return printCount(e.stdout, out)
}

// counted is a count with the whole batch.
type counted struct {
	seed.Counted
	Total *seed.Estimate `json:"batch,omitempty"`
	Of    string         `json:"batch_is,omitempty"`
}

// sampleOf reads "5 mL: 212", or "5 mL, 4 g: 212" for a sample both measured and
// weighed.
func sampleOf(text string) (seed.Sample, error) {
	amounts, count, ok := strings.Cut(text, ":")
	if !ok {
		return seed.Sample{}, fmt.Errorf(`%.40q has no count; hint: write amount and count, as in "5 mL: 212" or "5 mL, 4 g: 212"`, text)
	}
	var s seed.Sample
	n, err := strconv.Atoi(strings.TrimSpace(count))
	if err != nil || n < 0 {
		return s, fmt.Errorf("%.40q is not a number of seed; hint: a whole number after the colon", strings.TrimSpace(count))
	}
	s.Count = n
	for _, a := range strings.Split(amounts, ",") {
		v, m, err := seed.ParseAmount(a)
		if err != nil {
			return s, err
		}
		if v > 0 {
			s.Volume = v
		} else {
			s.Mass = m
		}
	}
	return s, nil
}

func printCount(w io.Writer, c counted) error {
	var b strings.Builder
	sure := strconv.FormatFloat(100*c.Confidence, 'f', -1, 64)
	fmt.Fprintf(&b, "%d samples, %d seed counted\n", c.Samples, c.Count)
	rows := [][]string{{"", "seed", "between", "and", "in " + sure + " of 100 cases"}}
	row := func(name string, e seed.Estimate) {
		if e.Mean > 0 {
			rows = append(rows, []string{"  " + name, figures(e.Mean), figures(e.Low), figures(e.High), ""})
		}
	}
	row("a litre", c.PerLitre)
	row("a gram", c.PerGram)
	if c.Total != nil {
		row("all "+c.Of, *c.Total)
	}
	b.WriteString(columns(rows, "lrrrl"))
	if c.Each > 0 {
		fmt.Fprintf(&b, "one seed weighs %s mg\n", strconv.FormatFloat(c.Each.Milligrams(), 'g', 3, 64))
	}
	if c.Bulk > 0 {
		fmt.Fprintf(&b, "a litre of drained seed weighs %s kg\n", strconv.FormatFloat(c.Bulk.Of(measure.Litre).Kg(), 'g', 3, 64))
	}
	if c.Poisson {
		b.WriteString("The interval is that of seed scattered at random: it is too narrow for a batch that is badly mixed. Count more samples.\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// figures writes a number of seed to three figures.
func figures(x float64) string {
	s := strconv.FormatFloat(x, 'g', 3, 64)
	if f, err := strconv.ParseFloat(s, 64); err == nil {
		return strconv.FormatFloat(f, 'f', -1, 64)
	}
	return s
}
