package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// packed is a file of an archive.
type packed struct {
	name    string
	content []byte
	program bool
}

func (p packed) mode() fs.FileMode {
	if p.program {
		return 0o755
	}
	return 0o644
}

// writeArchive writes the files into one folder of a .zip or .tar.gz, all of one time, so
// that the same files give the same bytes.
func writeArchive(name, folder string, files []packed, at time.Time) (err error) {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	if strings.HasSuffix(name, ".zip") {
		return writeZip(zip.NewWriter(f), folder, files, at)
	}
	packer, err := gzip.NewWriterLevel(f, gzip.BestCompression)
	if err != nil {
		return err
	}
	return errors.Join(writeTar(tar.NewWriter(packer), folder, files, at), packer.Close())
}

func writeZip(z *zip.Writer, folder string, files []packed, at time.Time) error {
	for _, p := range files {
		h := &zip.FileHeader{Name: folder + "/" + p.name, Method: zip.Deflate, Modified: at.UTC()}
		h.SetMode(p.mode())
		w, err := z.CreateHeader(h)
		if err == nil {
			_, err = w.Write(p.content)
		}
		if err != nil {
			return err
		}
	}
	return z.Close()
}

func writeTar(t *tar.Writer, folder string, files []packed, at time.Time) error {
	for _, p := range files {
		h := &tar.Header{Typeflag: tar.TypeReg, Name: folder + "/" + p.name, Mode: int64(p.mode()),
			Size: int64(len(p.content)), ModTime: at.UTC(), Format: tar.FormatUSTAR}
		if err := t.WriteHeader(h); err != nil {
			return err
		}
		if _, err := t.Write(p.content); err != nil {
			return err
		}
	}
	return t.Close()
}

// firstOfTar saves the first file of a .tar, which is the program.
func firstOfTar(r io.Reader, file string) error {
	t := tar.NewReader(r)
	if _, err := t.Next(); err != nil {
		return err
	}
	return save(t, file)
}

// sumsFile is what 'sha256sum --check' reads.
const sumsFile = "SHA256SUMS"

// writeSums writes the sums of the folder's archives, by name.
func writeSums(folder string) error {
	names, err := filepath.Glob(filepath.Join(folder, "wakeledger-*"))
	if err != nil {
		return err
	}
	var sums strings.Builder
	for _, n := range names { // Glob has sorted them
		b, err := os.ReadFile(n)
		if err != nil {
			return err
		}
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(b), filepath.Base(n))
	}
	fmt.Print(sums.String())
	return os.WriteFile(filepath.Join(folder, sumsFile), []byte(sums.String()), 0o644)
}
