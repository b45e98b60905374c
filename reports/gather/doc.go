// Package gather asks a season file the questions that each page needs, and fills in what the page
// is made of (package reports), in the units shown. It also writes a season file's tables out, and
// what a boat shares. Only here do the reports' rows come from a season file.
package gather
