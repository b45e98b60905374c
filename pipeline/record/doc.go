// Package record holds what the stages of the pipeline say to each other about
// one row of a log: where it stands and what is wrong with it.
//
// It is a leaf: it imports nothing of this module, so that every stage can
// name a place without knowing how the file was read.
package record
