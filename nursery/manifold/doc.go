// Package manifold solves the flow from one pump through a branching pipe to
// every silo at once, valves shut or open, and answers what a grower asks of
// that flow: how even it is, which valve to throttle and how far, whether the
// pump can draw its water, and which way the water runs when the power fails.
//
// The water is at rest in the source, runs through suction pipe, pump and main
// to one tee of the manifold, from tee to tee along one or two dead-ended arms,
// and out of each tee through valve, hose and barb to a silo. Steady flow only:
// no surge, no air, no filling.
//
// A head is an energy line's height above the job's own datum in metres of the
// water pumped, so that elevations and heads stand on one scale. Inside a
// formula everything is in SI floats; what goes in and out is typed.
//
// Sources, by the name used in the comments:
//
//   - Çengel & Cimbala: "Fluid Mechanics: Fundamentals and Applications".
//   - Christiansen: multiple-outlet factor, "Irrigation by Sprinkling",
//     University of California Bulletin 670 (1942).
package manifold
