// Package phrase reads the words in a log's cell: stretches of trolling told as clock
// times, how many lines at which speed, lists of fish with their measures, and bites
// told in prose. It is one grammar for all of them: a text is scanned once into typed
// items (items.go), and each question puts the items together.
//
// Nothing is guessed. What speaks of fish or of a fate and is not understood is handed
// back in Story.Left, so that no remark becomes a strike and no strike is dropped in
// silence.
package phrase
