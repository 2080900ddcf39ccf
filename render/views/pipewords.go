package views

import (
	"strings"

	"silowright/geometry"
)

// pipeWords calls a pipe as its print does: inch pipe by its nominal pipe
// size, metric pipe by its outside.
func pipeWords(p geometry.PipeRef) string {
	switch {
	case strings.HasPrefix(p.Series, "sch"):
		return keep("NPS "+p.Size) + " Schedule " + strings.TrimPrefix(p.Series, "sch")
	case strings.HasPrefix(p.Series, "sdr"):
		return keep("NPS "+p.Size) + " SDR " + strings.TrimPrefix(p.Series, "sdr")
	case strings.HasPrefix(p.Series, "pn"):
		return keep(p.Size + " mm PN " + strings.TrimPrefix(p.Series, "pn"))
	}
	return keep(p.Size+" mm") + " pipe"
}

// pipeSize is its size alone.
func pipeSize(p geometry.PipeRef) string {
	if strings.HasPrefix(p.Series, "sch") || strings.HasPrefix(p.Series, "sdr") {
		return keep("NPS " + p.Size)
	}
	return keep(p.Size + " mm")
}
