// Package species knows the fish: FAO 3-alpha codes, scientific names and the
// names that anglers write.
//
// Two embedded tables hold all of it. species.csv has one row a species with its
// code from FAO's ASFIS list and the largest length and weight on record.
// names.csv has one row a name as written - trade names, abbreviations, Spanish,
// Portuguese, French, Italian, German, Japanese and Hawaiian names - with the code it means and,
// where the same name means several species, the ocean in which it means it.
// Every row says where it comes from; most local names are common practice that
// no source settles.
//
// A name is never guessed. Where it means several species and the ocean does not
// settle it, Find returns the candidates instead, and the user's own alias table
// (WithAliases) or an ocean decides. A name of a group, such as tuna or shark, is a
// name of several species.
//
// Find reads a whole cell; In finds the names inside a longer text, where ordinary
// words that happen to be names (king, sail, bet) need a sign that they are fish.
package species
