package seed

import (
	"fmt"
	"strings"
)

// Species is a kind of bivalve that is raised in silos, by its general name.
type Species int

// The kinds for which something published is held here.
const (
	Clam Species = iota
	Oyster
	Scallop
	Mussel
)

var speciesNames = [...]string{"clam", "oyster", "scallop", "mussel"}

// AllSpecies lists the kinds in a fixed order.
func AllSpecies() []Species { return []Species{Clam, Oyster, Scallop, Mussel} }

// String returns the name as the job file writes it.
func (s Species) String() string {
	if !s.known() {
		return "unknown"
	}
	return speciesNames[s]
}

func (s Species) known() bool { return s >= 0 && int(s) < len(speciesNames) }

// ParseSpecies reads "clam", "oyster", "scallop" or "mussel".
func ParseSpecies(name string) (Species, error) {
	for i, n := range speciesNames {
		if n == name {
			return Species(i), nil
		}
	}
	return Clam, fmt.Errorf("seed.species: %.40q, is not a kind known here, allowed: %s; hint: take the nearest kind and give your own numbers",
		name, strings.Join(speciesNames[:], ", "))
}
