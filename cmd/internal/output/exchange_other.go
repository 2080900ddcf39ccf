//go:build !linux && !darwin

package output

import "errors"

// exchange is not to be had here: two renames stand in.
func exchange(a, b string) error { return errors.ErrUnsupported }
