package sheet

import "bytes"

// kind is what a file is by its content.
type kind int

const (
	kindText kind = iota
	kindZip
	kindOLE // a compound file
)

// signature is the beginning of files that are not logs. The bytes are those
// of the formats' own definitions, from memory, as file(1) knows them too.
type signature struct {
	at     int
	magic  string
	reason string
}

const (
	saveAs      = "; open it in its own program and save it as .xlsx or CSV"
	isPicture   = "is a picture, not a sheet"
	isMedia     = "is a sound or a film, not a sheet"
	isPacked    = "is a packed archive; unpack it first"
	isProtected = "is protected by a password; remove the password and save it again"
	isOld       = "is a workbook from before 1997" + saveAs
)

func signatures() []signature {
	return []signature{
		{0, "%PDF-", "is a PDF; the sheet that it was printed from is needed"},
		{0, "\xff\xd8\xff", isPicture},
		{0, "\x89PNG\r\n\x1a\n", isPicture},
		{0, "GIF8", isPicture},
		{0, "II*\x00", isPicture},
		{0, "MM\x00*", isPicture},
		{8, "WEBP", isPicture},
		{4, "ftyp", "is a picture or a film, not a sheet"},
		{8, "WAVE", isMedia},
		{0, "OggS", isMedia},
		{0, "ID3", isMedia},
		{0, "\x1f\x8b", isPacked},
		{0, "7z\xbc\xaf\x27\x1c", isPacked},
		{0, "Rar!\x1a\x07", isPacked},
		{0, "BZh", isPacked},
		{0, "\xfd7zXZ\x00", isPacked},
		{0, "\x28\xb5\x2f\xfd", isPacked},
		{0, "PK\x05\x06", "is an empty zip archive"},
		{0, "\x09\x00\x04\x00", isOld},
		{0, "\x09\x02\x06\x00", isOld},
		{0, "\x09\x04\x06\x00", isOld},
		{0, "PAR1", "is a Parquet file, not a log"},
		{8, "DUCK", "is a season file, not a log"},
		{0, "SQLite format 3\x00", "is a database, not a log"},
		{0, "{\\rtf", "is a text document (RTF)" + saveAs},
		{0, "\x7fELF", "is a program, not a log"},
		{0, "MZ\x90", "is a program, not a log"},
		{0, "\xff\xfe\x00\x00", "is text in UTF-32; save it as UTF-8"},
		{0, "\x00\x00\xfe\xff", "is text in UTF-32; save it as UTF-8"},
	}
}

// oleMagic begins the compound files of older office programs, and of newer
// ones once a password is set (MS-CFB 2.2; MS-OFFCRYPTO 2.3.2).
const oleMagic = "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"

// classify tells a file's kind from its beginning, or why it is no log.
func classify(head []byte) (kind, string) {
	switch {
	case bytes.HasPrefix(head, []byte("PK\x03\x04")):
		return kindZip, ""
	case bytes.HasPrefix(head, []byte(oleMagic)):
		return kindOLE, ""
	}
	for _, s := range signatures() {
		if len(head) >= s.at && bytes.HasPrefix(head[s.at:], []byte(s.magic)) {
			return kindText, s.reason
		}
	}
	if reason := markupReason(head); reason != "" {
		return kindText, reason
	}
	return kindText, ""
}

// markupReason tells pages and other markup, which web sites serve under a
// sheet's name.
func markupReason(head []byte) string {
	start := bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xef\xbb\xbf")), " \t\r\n")
	start = bytes.ToLower(start[:min(len(start), 1024)])
	switch {
	case bytes.HasPrefix(start, []byte("<!doctype html")), bytes.HasPrefix(start, []byte("<html")):
		return "is a web page" + saveAs
	case bytes.HasPrefix(start, []byte("<?xml")) && bytes.Contains(start, []byte("<gpx")):
		return "is a GPX track, not a sheet"
	case bytes.HasPrefix(start, []byte("<?xml")) && bytes.Contains(start, []byte("spreadsheet")):
		return "is a sheet in XML" + saveAs
	case bytes.HasPrefix(start, []byte("<?xml")):
		return "is an XML document, not a sheet"
	}
	return ""
}

// looksBinary tells bytes that are no text in any encoding read here: of text,
// hardly any byte is a control character. A few are let through, because one
// bad row is no reason to refuse a log.
func looksBinary(head []byte) bool {
	var control int
	for _, c := range head {
		if c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' {
			control++
		}
	}
	return control > 8 && control*20 > len(head)
}
