package main

import "runtime/debug"

// release is what 'make dist' sets: the version, and the commit that the program was built
// from. "" in every other build.
var release string

// version is the release; else that of the module, and the commit where the build knows it.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown version"
	}
	v := release
	if v == "" {
		v = info.Main.Version
	}
	if v == "" || v == "(devel)" {
		v = "development version"
	}
	for _, s := range info.Settings {
		if release == "" && s.Key == "vcs.revision" && len(s.Value) >= 12 {
			v += ", commit " + s.Value[:12]
		}
	}
	return v + ", " + info.GoVersion
}
