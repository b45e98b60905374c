package infile

import (
	"errors"
	"syscall"
)

// Codes of Windows (winerror.h) for a file that another program does not share.
const (
	sharingViolation = syscall.Errno(32)
	lockViolation    = syscall.Errno(33)
)

// Held tells an error of a file that another program has open and keeps to itself.
func Held(err error) bool {
	return errors.Is(err, sharingViolation) || errors.Is(err, lockViolation)
}
