package main

import (
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"
)

// printVersion writes what this build is: the module's version, the revision
// it was built from where the Go tool recorded one, and Go, system and
// processor. There is no time of building: the same source gives the same
// bytes.
func printVersion(w io.Writer) error {
	info, _ := debug.ReadBuildInfo()
	_, err := io.WriteString(w, versionText(info))
	return err
}

// versionText words what the Go tool recorded of a build; nil is a build it
// recorded nothing of.
func versionText(info *debug.BuildInfo) string {
	var b strings.Builder
	fmt.Fprintf(&b, "silowright %s\n", versionOf(info))
	b.WriteString("revision   " + revisionOf(info) + "\n")
	fmt.Fprintf(&b, "built with %s for %s/%s\n", goOf(info), runtime.GOOS, runtime.GOARCH)
	return b.String()
}

func versionOf(info *debug.BuildInfo) string {
	if info == nil || info.Main.Version == "" {
		return "(unknown version)"
	}
	return info.Main.Version
}

// revisionOf is the commit a build was made from, and whether the tree held
// changes that are in no commit.
func revisionOf(info *debug.BuildInfo) string {
	at, state := setting(info, "vcs.revision"), "changed or not is not recorded"
	if at == "" {
		return "not recorded; hint: build with -buildvcs=true in a checkout"
	}
	switch setting(info, "vcs.modified") {
	case "true":
		state = "with changes that are in no commit"
	case "false":
		state = "unchanged"
	}
	return at + ", " + state
}

func goOf(info *debug.BuildInfo) string {
	if info == nil || info.GoVersion == "" {
		return runtime.Version()
	}
	return info.GoVersion
}

// setting is one of the settings the Go tool recorded; empty when it did not.
func setting(info *debug.BuildInfo, key string) string {
	if info != nil {
		for _, s := range info.Settings {
			if s.Key == key {
				return s.Value
			}
		}
	}
	return ""
}
