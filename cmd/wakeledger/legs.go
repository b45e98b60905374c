package main

import (
	"context"
	"errors"
	"fmt"
	"os"

	"wakeledger/pipeline"
)

// proposeLegs writes the legs that tracks suggest to a new log, for the boat to
// confirm. A log that is there already is not written over: it may be confirmed.
func (a *app) proposeLegs(ctx context.Context, cfg pipeline.Config, tracks []string, name string) (err error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, os.ErrExist) {
		return fmt.Errorf("%s is there already: name a new file", name)
	}
	if err != nil {
		return err
	}
	defer func() {
		if err = errors.Join(err, f.Close()); err != nil {
			os.Remove(name)
		}
	}()
	for _, t := range tracks {
		if !pipeline.IsTrack(t) {
			return usage("--legs-from-track: %s is no track", t)
		}
	}
	n, reports, err := pipeline.ProposeLegs(ctx, cfg, tracks, pipeline.Trolling{}, f)
	if err != nil {
		return err
	}
	for _, r := range reports {
		a.tellLog(r)
	}
	clock := "UTC: give --zone for the boat's own clock"
	if cfg.Zone != "" {
		clock = "the clock of " + cfg.Zone
	}
	fmt.Fprintf(a.out, "%s: %d legs of steady speed, on %s\n", name, n, clock)
	a.note("strike out what was no trolling, put in the lines out, then load it beside the track")
	return nil
}
