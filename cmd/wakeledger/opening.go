package main

import (
	"context"
	"errors"
	"fmt"
	"os"

	"wakeledger/pipeline"
)

// openExisting opens a season file that must be there already, to change it.
func (a *app) openExisting(ctx context.Context) (*pipeline.Season, error) {
	if err := thereIs(a.db); err != nil {
		return nil, err
	}
	return a.open(ctx)
}

// openRead opens a season file that must be there already, to be read and no more.
func (a *app) openRead(ctx context.Context, file string) (*pipeline.Season, error) {
	if err := thereIs(file); err != nil {
		return nil, err
	}
	return pipeline.OpenRead(ctx, file, a.cfg, false)
}

func thereIs(file string) error {
	if _, err := os.Stat(file); errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("no season file %s: 'wakeledger load LOG...' makes one, --db names another", file)
	}
	return nil
}
