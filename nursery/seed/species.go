package seed

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

// String returns the name as the job file writes it.
func (s Species) String() string {
	if !s.known() {
		return "unknown"
	}
	return speciesNames[s]
}

func (s Species) known() bool { return s >= 0 && int(s) < len(speciesNames) }
