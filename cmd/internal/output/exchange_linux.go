package output

import (
	"errors"
	"os"
	"runtime"
	"syscall"
	"unsafe"
)

// renameat2 is the number of the system call, which package syscall does not
// list: arch/x86/entry/syscalls/syscall_64.tbl and
// include/uapi/asm-generic/unistd.h of Linux.
var renameat2 = map[string]uintptr{"amd64": 316, "arm64": 276, "riscv64": 276, "loong64": 276}

// exchange swaps two names in one step, or changes nothing: renameat2(2) with
// RENAME_EXCHANGE.
func exchange(a, b string) error {
	const (
		hereFD         = -100 // AT_FDCWD
		renameExchange = 1 << 1
	)
	call, ok := renameat2[runtime.GOARCH]
	if !ok {
		return errors.ErrUnsupported
	}
	from, err := syscall.BytePtrFromString(a)
	if err != nil {
		return err
	}
	to, err := syscall.BytePtrFromString(b)
	if err != nil {
		return err
	}
	here := hereFD
	for {
		_, _, errno := syscall.Syscall6(call, uintptr(here), uintptr(unsafe.Pointer(from)),
			uintptr(here), uintptr(unsafe.Pointer(to)), renameExchange, 0)
		switch errno {
		case 0:
			return nil
		case syscall.EINTR:
			continue
		}
		return &os.LinkError{Op: "exchange", Old: a, New: b, Err: errno}
	}
}
