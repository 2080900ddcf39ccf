package work

// Rates are the job's own numbers for the work: minutes a unit, the crew, how
// long things set. All defaults are common practice, no source, except the
// cement's cure; all are meant to be changed after the first silos.
type Rates struct {
	Clean     Minutes // one drum: wash, read the label, measure
	Mark      Minutes // one drum: datum and level lines
	Jigsaw    Minutes // a metre sawn in the drum's wall or foot
	Smooth    Minutes // a metre of edge smoothed
	Bore      Minutes // one hole bored by bit, to let a blade in or turn it
	Hole      Minutes // one hole set out and cut by hole saw, and the fitting tried in it
	MeshDisc  Minutes // one disc marked, cut, snipped and laid in
	Ring      Minutes // one ring bent in, marked and trimmed to length
	Screw     Minutes // one screw: bored, driven, its point nipped and filed
	Bead      Minutes // a metre of sealant or resin run and smoothed, with wiping
	PipeCut   Minutes // one pipe sawn square, its ends taken off
	Socket    Minutes // one socket primed, cemented and held
	Grommet   Minutes // one grommet or bulkhead fitting
	Stopper   Minutes // one stopper tried and pushed in
	Seat      Minutes // one body set in its base and marked
	LeakTest  Minutes // one drum silo filled, dried, looked over, emptied: hands on
	Rinse     Minutes // one drum silo rinsed and filled, or emptied
	Screen    Minutes // one screen cut, stretched and clamped
	Trim      Minutes // one clamp taken off and its screen trimmed
	PipeRinse Minutes // one pipe silo rinsed and laid in water, or taken out

	SetUp     Minutes // once a kind of drum silo: templates traced, jigs, trial holes
	PipeSetUp Minutes // once a kind of pipe silo
	Learning  float64 // what each doubling of the count leaves of a unit's time, 0.5 to 1

	People int     // who work at one time
	Day    Minutes // worked by each a day
	Clamps int     // pipe silos whose resin sets at one time

	CementCure  Minutes // until a joint may carry water; 0: by the pipe maker's table for its size
	SealantCure Minutes // until the leak test
	ResinCure   Minutes // until the clamp may come off
	FullCure    Minutes // of sealant and resin, before the silo is soaked: the maker's
	LeakStand   Minutes // filled, to the outlet
	Soak        Minutes // each of the two soaks
}

// DefaultRates are the rates taken when the job gives none: common practice,
// no source. Sealant is typically hard after 24 h and a neutral silicone may
// take up to 7 days to cure right through (makers' data sheets); the maker's
// own full cure counts.
func DefaultRates() Rates {
	return Rates{
		Clean: 30, Mark: 15, Jigsaw: 4, Smooth: 1.5, Bore: 0.5, Hole: 6,
		MeshDisc: 15, Ring: 10, Screw: 2, Bead: 4, PipeCut: 4, Socket: 3, Grommet: 4, Stopper: 1,
		Seat: 5, LeakTest: 15, Rinse: 8, Screen: 15, Trim: 8, PipeRinse: 3,
		SetUp: 180, PipeSetUp: 45, Learning: 0.9,
		People: 1, Day: 8 * Hour, Clamps: 4,
		SealantCure: 24 * Hour, ResinCure: 12 * Hour, FullCure: 7 * 24 * Hour,
		LeakStand: 1 * Hour, Soak: 24 * Hour,
	}
}
