package pipeline

import (
	"errors"
	"fmt"
	"strconv"

	"wakeledger/pipeline/store"
)

// ErrNoLog is wrapped where a log is named that the season file has not, or that several
// have the name of.
var ErrNoLog = errors.New("no such log")

// FindLog is the log that is meant by its number, its label or its file's name. The error
// wraps ErrNoLog.
func FindLog(all []store.Log, name string) (store.Log, error) {
	if n, err := strconv.ParseInt(name, 10, 64); err == nil {
		for _, l := range all {
			if l.ID == n {
				return l, nil
			}
		}
	}
	for _, same := range []func(store.Log) bool{
		func(l store.Log) bool { return l.State == store.In && l.Label == name },
		func(l store.Log) bool { return l.State == store.In && l.Name == name },
		func(l store.Log) bool { return l.Label == name || l.Name == name },
	} {
		var found []store.Log
		for _, l := range all {
			if same(l) {
				found = append(found, l)
			}
		}
		if len(found) == 1 {
			return found[0], nil
		}
		if len(found) > 1 {
			return store.Log{},
				fmt.Errorf("%w: %q may be any of %d logs: give its number, 'wakeledger logs' lists them",
					ErrNoLog, name, len(found))
		}
	}
	return store.Log{}, fmt.Errorf("%w: %q: 'wakeledger logs' lists the logs that there are", ErrNoLog, name)
}

// successor is the log of the season that took the place of one that was replaced, itself
// or by others between; none where that was forgotten.
func (h *shelf) successor(id int64) store.Log {
	seen := map[int64]bool{}
	for !seen[id] {
		seen[id] = true
		l := h.by(id)
		if l.State == store.In {
			return l
		}
		if l.State != store.Replaced {
			return store.Log{}
		}
		id = l.ReplacedBy
	}
	return store.Log{}
}
