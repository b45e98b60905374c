// Package identity decides which log a file holds: one that the season file knows
// already, a changed one, or another. Its functions are pure: what two logs have in
// common is counted elsewhere and comes in as a Likeness.
package identity
