package page

import (
	"crypto/sha256"
	"encoding/base64"
	"strings"
)

// policy is the content security policy of a page whose only scripts and style
// are the given texts (W3C Content Security Policy Level 3, hash sources).
// The texts must hold no carriage return: an HTML parser turns it into a line
// feed before the browser hashes what it found.
func policy(scripts []string, style string) string {
	parts := []string{"default-src 'none'", "script-src"}
	for _, s := range scripts {
		parts[1] += " " + hashSource(s)
	}
	parts = append(parts, "style-src "+hashSource(style), "base-uri 'none'", "form-action 'none'")
	return strings.Join(parts, "; ")
}

func hashSource(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}
