package geometry

import (
	"strings"

	"silowright/geometry/measure"
	"silowright/geometry/stock"
)

// Key is the job-file section of a hole.
func (h Hole) Key() string {
	if h.Name == "pipe silo outlet" {
		return "pipe_silo"
	}
	return h.Name
}

func (h Hole) id(check string) string { return strings.ReplaceAll(h.Key(), "_", "-") + "." + check }

// pipeKey is the job-file key of the pipe that goes into the joint.
func (h Hole) pipeKey() string {
	switch {
	case h.Name == "pipe silo outlet":
		return "pipe_silo.pipe_out_length"
	case h.Name == "inlet" && !h.Joint.Makeup().Nipple:
		return "inlet.stub"
	}
	return h.Key() + ".nipple"
}

// HoleChecks are the checks of one hole by itself: saw against pipe, and what
// its joint needs. Sentences are written for a reader who works in u.
func HoleChecks(h Hole, u measure.Unit) []Finding {
	j, ok := h.Joint.row()
	if !ok {
		return nil
	}
	return j.checks(h, u)
}

// unlike is the hole that is asked for where it is not the saw's own.
func unlike(saw, asks string) string {
	if saw == asks {
		return ""
	}
	return " (" + asks + ")"
}

// sawAdvice names the smallest saw of the series that would do.
func sawAdvice(h Hole, u measure.Unit) string {
	for _, s := range SawsFor(h) {
		return "the " + s.Name(u) + " saw"
	}
	return "another pipe: no saw of the series does"
}

// SawsFor lists the saws of the series that suit the hole's joint, smallest
// first; what suits one is said in the joint's file.
func SawsFor(h Hole) []stock.HoleSaw {
	j, ok := h.Joint.row()
	if !ok {
		return nil
	}
	oversize := h.Diameter - h.Saw
	var out []stock.HoleSaw
	for _, s := range stock.HoleSaws() {
		if j.suits(h, s.Diameter, s.Diameter+oversize) {
			out = append(out, s)
		}
	}
	return out
}
