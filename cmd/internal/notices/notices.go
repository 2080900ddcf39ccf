// Package notices holds what the licences of the modules that the program is
// built from ask to be handed on with it: who wrote what, and on which terms.
// Both files are written by the package's own test from the module cache
// (go test ./cmd/internal/notices -update), which fails when they and the
// build differ.
package notices

import _ "embed"

//go:embed modules.txt
var modules string

//go:embed texts.txt
var texts string

// Modules is the list of modules in columns: module, version, licence by its
// SPDX identifier, purpose; those in the program first, then those that only
// tests use.
func Modules() string { return modules }

// Texts is the licence of every module in the program, word for word, of Go's
// standard library and of the fonts. Equal texts are written once.
func Texts() string { return texts }
