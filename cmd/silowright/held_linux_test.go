package main

import (
	"os"
	"syscall"
)

// mostHeld is the most memory that a process held, in kilobytes.
func mostHeld(p *os.ProcessState) int64 { return p.SysUsage().(*syscall.Rusage).Maxrss }
