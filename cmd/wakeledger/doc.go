// Wakeledger turns a boat's fishing logs into a season file and a report.
//
// This package is the command line alone: flags, messages and exit codes. One
// file a command; what they do is in packages pipeline, queries and reports.
package main
