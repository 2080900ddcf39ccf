// Package stock holds the dimensions of parts that are bought: pipe, sockets,
// stoppers, hole saws, clamps, screws, mesh, sheets, and the numbers of the
// materials they are made of. Every row says where it is from (Source) and how
// sure it is (Standing). Whatever a builder can measure in a minute may differ
// from a table; the job file can say what was measured, and that wins.
//
// Lookups take the trade's name for a size ("1 1/2", "110") in any spelling
// that NormalSize knows, and return false for what is not in the tables; they
// never guess. Slices come in a fixed order and are the caller's to keep.
package stock
