package main

import "runtime/debug"

// version is that of the module, and the commit that it was built from where the build
// knows it.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown version"
	}
	v := info.Main.Version
	if v == "" || v == "(devel)" {
		v = "development version"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			v += ", commit " + s.Value[:12]
		}
	}
	return v + ", " + info.GoVersion
}
