// Package bom works out what a build uses, what is to be bought for it and
// what that costs: a takeoff from the solved silos, rounded up to the packs a
// price list sells, priced exactly. It is pure but for the reader a price list
// is read from.
//
// # Items
//
// An item is the key that ties a need to the rows of a price list: a plain
// word, then what tells sizes apart, joined by hyphens, in the words of the
// tables and the job file. Fractions keep their slash; sizes that only a
// measure tells apart carry the unit the job works in. Upper and lower case
// are the same. A build has some of these:
//
//	drum
//	pipe-sch40-2             pipe by series and nominal size, bought by length
//	coupling-1-1/2           by pipe size; coupling-sewer-4 for inch sewer pipe
//	grommet-1-1/2            likewise
//	adapter-2x1-1/2          reducing adapter, large × small
//	hose-adapter-1-1/2       from pipe to hose
//	stopper-11               by number
//	mesh-1.6-mm              by opening, always in mm; bought by area
//	screen-0.3-mm            likewise
//	screw-8-5/8-in           by size and length
//	sealant, resin, cement, primer, acetone
//	hose-1-1/2, hose-clamp-1-1/2
//	jigsaw-blade, sandpaper, cutting-disc, pilot-bit, marker
//	hole-saw-2-1/2-in, hole-saw-arbor, drill-5/16-in, drill-for-screw-8,
//	band-clamp-104, plywood  tools, bought once
//
// The retaining ring is made from the drum and is not bought. Pipe and hose
// are bought in whole lengths, pieces sawn longest first and never joined; mesh
// and screen by area, each disc taken as a square, whatever the roll's width.
package bom
