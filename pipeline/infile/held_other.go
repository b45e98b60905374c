//go:build !windows

package infile

// Held tells an error of a file that another program has open and keeps to itself. Only
// Windows has such.
func Held(error) bool { return false }
