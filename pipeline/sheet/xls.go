package sheet

import (
	"errors"
	"fmt"
	"os"

	"github.com/richardlehane/mscfb"
)

// openXLS opens a compound file that holds an old workbook.
func openXLS(f *os.File, name string, opt Options) (Book, error) {
	b := &gridBook{file: f, name: name}
	st, err := f.Stat()
	if err != nil {
		return b, &Refusal{name, "cannot be read: " + err.Error(), err}
	}
	if st.Size() > opt.MaxUnzipped {
		return b, &Refusal{name, fmt.Sprintf("is of %d MiB, more than the %d MiB allowed; save its sheets as CSV",
			st.Size()>>20, opt.MaxUnzipped>>20), nil}
	}
	stream, reason, err := workbookStream(f, st.Size())
	if reason != "" {
		return b, &Refusal{name, reason, err}
	}
	b.sheets, reason, err = readBIFF(stream, opt.Details)
	if reason != "" {
		return b, &Refusal{name, reason, err}
	}
	return b, b.finish(err)
}

// workbookStream reads the stream of a compound file that holds the workbook, or
// says why there is none. The file is taken apart by a package that is not ours,
// and one made to confuse it must not end the program.
func workbookStream(f *os.File, size int64) (stream []byte, reason string, err error) {
	const broken = "is an old office document that is damaged or not complete; get it again"
	defer func() {
		if e := recovered(recover()); e != nil {
			stream, reason, err = nil, broken, e
		}
	}()
	c, err := mscfb.New(f)
	if err != nil {
		return nil, broken, err
	}
	streams := map[string]*mscfb.File{}
	for _, s := range c.File {
		if len(s.Path) == 0 {
			streams[s.Name] = s
		}
	}
	book := streams["Workbook"]
	switch {
	case streams["EncryptedPackage"] != nil:
		return nil, isProtected, nil
	case book == nil && streams["Book"] != nil:
		return nil, isOld, nil
	case book == nil:
		return nil, "is an old office document, not a sheet" + saveAs, nil
	case book.Size > size:
		return nil, broken, nil
	}
	stream = make([]byte, book.Size)
	const step = 32 << 10 // it takes as long as the square of what is asked at once
	for at := 0; at < len(stream); {
		n, err := book.Read(stream[at:min(at+step, len(stream))])
		if at += n; err != nil && at < len(stream) {
			return nil, broken, err
		}
		if n == 0 {
			return nil, broken, errors.New("it ends early")
		}
	}
	return stream, "", nil
}
