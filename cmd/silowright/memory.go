package main

import (
	"math"
	"runtime"
	"runtime/debug"
)

// firstCollection is the memory from which garbage is collected at all. A
// command that stays under it, as all but the largest packs do, ends without
// having collected any.
const firstCollection = 40 << 20

// collectLater puts the first garbage collection off until the process holds
// firstCollection bytes. From then on the runtime collects by its own rule, so
// that a large job is not slowed by a heap held too small.
func collectLater() {
	debug.SetGCPercent(-1)
	debug.SetMemoryLimit(firstCollection)
	first := new(*int) // its end is the first collection's
	runtime.AddCleanup(first, func(struct{}) {
		debug.SetGCPercent(100)
		debug.SetMemoryLimit(math.MaxInt64)
	}, struct{}{})
}
