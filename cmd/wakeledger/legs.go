package main

import (
	"context"
	"fmt"
	"io"

	"wakeledger/pipeline"
	"wakeledger/pipeline/sentence"
)

// proposeLegs writes the legs that tracks suggest to a new log, for the boat to
// confirm. A log that is there already is not written over unasked: it may be confirmed.
func (a *app) proposeLegs(ctx context.Context, cfg pipeline.Config, tracks []string, name string) error {
	for _, t := range tracks {
		if !pipeline.IsTrack(t) {
			return usage("--legs-from-track: %s is no track", t)
		}
	}
	n := 0
	var reports []pipeline.LogReport
	err := a.target(name, legsFile, tracks...).Write(func(w io.Writer) (err error) {
		n, reports, err = pipeline.ProposeLegs(ctx, cfg, tracks, pipeline.Trolling{}, w)
		return err
	})
	if err != nil {
		return err
	}
	for _, r := range reports {
		a.tellLog(r)
	}
	clock := "UTC (give --zone for the boat's own clock)"
	if cfg.Zone != "" {
		clock = "the clock of " + cfg.Zone
	}
	fmt.Fprintf(a.out, "%s: %s of steady speed, on %s\n", name, sentence.Count(int64(n), "leg", "legs"), clock)
	a.note("delete what was no trolling, fill in the lines out, then load it with the track")
	return nil
}
