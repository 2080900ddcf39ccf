// Package geometry solves a silo: from a drum as measured and the chosen
// parts to stations, lattice, ring, mesh disc, holes, seat, pipe silo,
// weights, templates and findings. It is pure: no files, no clock, no state.
package geometry
