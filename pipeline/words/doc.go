// Package words holds the word lists of the reader, and is the only place for them:
// what a loss is called, what marks a guess, a total, a day that was not fished, in
// English, Spanish, Italian, French, Portuguese and German.
//
// Each list is a file in lists/. A line is "key: phrase, phrase": a bar parts
// alternatives of one word (pulled|pulls hook|hooks), an underscore stands for up to
// six words (put _ in the box), and between the words of a phrase the text may have an
// article, a pronoun or a hyphen. Texts match whatever their case and accents.
//
// It is a leaf: it imports the standard library only.
package words
