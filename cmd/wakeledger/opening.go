package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

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

// nearFile names the season file beside that was meant; "" where none is near.
func nearFile(file string) string {
	beside, err := filepath.Glob(filepath.Join(filepath.Dir(file), "*.duckdb"))
	if err != nil || len(beside) == 0 {
		return ""
	}
	if len(beside) == 1 {
		return "Did you mean --db " + beside[0] + "? "
	}
	return didYouMean(file, beside)
}

func thereIs(file string) error {
	if _, err := os.Stat(file); errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("there is no season file %s. %s'wakeledger season LOG...' makes one, --db FILE names another",
			file, nearFile(file))
	}
	return nil
}
