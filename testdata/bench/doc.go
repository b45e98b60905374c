// Package bench has what the benchmarks share: logs and tracks as large as they
// come, invented and the same at every run, and the time and memory of a command.
package bench
