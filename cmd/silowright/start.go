package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"silowright/cmd/internal/job"
	"silowright/cmd/internal/output"
	"silowright/geometry/measure"
	"silowright/render"
	"silowright/render/pdf"
)

var startCommand = command{
	name:    "start",
	args:    "DIR",
	summary: "write a commented job file, a price list and a measuring sheet to DIR",
	example: "silowright start my-silos",
	run:     runStart,
}

func runStart(e *env, args []string) error {
	fs := newFlags("start")
	units := fs.String("units", "in", "the units you measure in: in or mm")
	rest, err := parseFlags(fs, args, 1, 1)
	if err != nil {
		return err
	}
	u := measure.UnitInch
	switch strings.ToLower(strings.TrimSpace(*units)) {
	case "in":
	case "mm":
		u = measure.UnitMM
	default:
		return usagef("start: --units %q is not known, allowed: in, mm; hint: silowright start %s --units mm", *units, rest[0])
	}
	sheet, err := measuringSheet(u)
	if err != nil {
		return err
	}
	text := job.Template(u)
	first, err := job.Parse("job.toml", text)
	if err != nil {
		return err
	}
	prices, err := blankPrices(first)
	if err != nil {
		return err
	}
	files := []output.File{
		{Name: "job.toml", Data: text},
		{Name: "prices.csv", Data: prices},
		{Name: "measuring-sheet.pdf", Data: sheet},
	}
	if err := output.Create(e.path(rest[0]), files); err != nil {
		return err
	}
	name := func(i int) string { return filepath.Join(rest[0], files[i].Name) }
	_, err = fmt.Fprintf(e.stdout, "%s: print it, measure your drums\n%s: fill in the measures, they are an example now\n%s: fill in your prices\nthen: silowright check %s\n",
		name(2), name(0), name(1), name(0))
	return err
}

// measuringSheet is the measuring sheet as a PDF file.
func measuringSheet(u measure.Unit) ([]byte, error) {
	book := pdf.New(pdf.Meta{Title: "Measuring sheet", Subject: "where the tape goes on a drum"})
	if err := book.Page(render.MeasuringSheet(u), "", 0); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if _, err := book.WriteTo(&b); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
