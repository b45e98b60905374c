package pipeline

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"strings"
)

// Files puts in the place of each folder the files in it, and in its own folders, that can
// be opened as a log or as a track, by name. passed are the others, hidden ones apart, each
// with why. A folder that holds none is an error.
func Files(paths []string) (files, passed []string, err error) {
	paths, err = spelledOut(paths)
	if err != nil {
		return nil, nil, err
	}
	for _, p := range paths {
		info, err := os.Stat(p)
		if err != nil || !info.IsDir() {
			files = append(files, p)
			continue
		}
		found, others, err := inFolder(p)
		if err != nil {
			return nil, nil, err
		}
		if len(found) == 0 {
			return nil, nil, fmt.Errorf("%s: no log and no track in this folder", p)
		}
		files, passed = append(files, found...), append(passed, others...)
	}
	return files, passed, nil
}

// spelledOut puts in the place of each pattern (*.csv) the files that it stands for. On
// Windows the programs do that; elsewhere the shell has done it, and a name may hold a star.
func spelledOut(paths []string) (names []string, err error) {
	for _, p := range paths {
		if runtime.GOOS != "windows" || !strings.ContainsAny(filepath.Base(p), "*?") {
			names = append(names, p)
			continue
		}
		found, err := fitting(p)
		if err != nil {
			return nil, err
		}
		names = append(names, found...)
	}
	return names, nil
}

// fitting are the files that a pattern stands for, by name; small and capital letters are
// one, as in names on Windows.
func fitting(pattern string) (names []string, err error) {
	dir, base := filepath.Dir(pattern), strings.ToLower(filepath.Base(pattern))
	base = strings.NewReplacer(`[`, `\[`, `\`, `\\`).Replace(base) // in names, these are no signs of a pattern
	entries, err := os.ReadDir(dir)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("folder %s: %w", dir, err)
	}
	for _, e := range entries {
		if fits, err := path.Match(base, strings.ToLower(e.Name())); err != nil {
			return nil, fmt.Errorf("%s: %w", pattern, err)
		} else if fits {
			names = append(names, filepath.Join(dir, e.Name()))
		}
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("%s: there is no file that fits this name", pattern)
	}
	return names, nil
}

func inFolder(folder string) (found, others []string, err error) {
	err = filepath.WalkDir(folder, func(p string, d fs.DirEntry, err error) error {
		switch hidden := strings.HasPrefix(d.Name(), ".") && p != folder; {
		case err != nil:
			return fmt.Errorf("folder %s: %w", folder, err)
		case hidden && d.IsDir():
			return fs.SkipDir
		case hidden || d.IsDir() || !d.Type().IsRegular():
			return nil
		}
		if strings.HasPrefix(strings.ToLower(d.Name()), "readme") {
			others = append(others, p+": passed over, to be read by people")
		} else if err := Readable(p); err != nil {
			others = append(others, p+": passed over, no log and no track")
		} else {
			found = append(found, p)
		}
		return nil
	})
	return found, others, err
}
