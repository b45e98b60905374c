package main

import "testing"

func TestUnbroken(t *testing.T) {
	const shown = "\x1b[?25lreport: Z:\\tmp\\T\u00f6rn\\seas\r\non.html (open it in a browser)\x1b[K\r\n\x1b[?25h"
	if got := unbroken(shown); got != "report: Z:\\tmp\\T\u00f6rn\\season.html (open it in a browser)" {
		t.Errorf("%q", got)
	}
}
