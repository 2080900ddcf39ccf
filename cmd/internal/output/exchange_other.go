//go:build !linux

package output

import "errors"

// exchange is not to be had here without a library; two renames stand in.
func exchange(a, b string) error { return errors.ErrUnsupported }
