package main

import (
	"errors"
	"os"
	"syscall"
	"unsafe"

	"golang.org/x/sys/windows"
)

var consoleProcesses = windows.NewLazySystemDLL("kernel32.dll").NewProc("GetConsoleProcessList")

// ownWindow tells whether the window was opened for this program alone: then nobody else is
// at its console (GetConsoleProcessList).
func ownWindow() bool {
	if consoleProcesses.Find() != nil {
		return false
	}
	var ids [2]uint32
	n, _, _ := consoleProcesses.Call(uintptr(unsafe.Pointer(&ids[0])), uintptr(len(ids)))
	return n == 1
}

// readyConsole has the console obey what colours verdicts and edits answers, which Windows
// does for those alone who ask for it (SetConsoleMode). A console that cannot shows no
// colours.
func readyConsole() {
	for _, f := range []*os.File{os.Stdout, os.Stderr} {
		h := windows.Handle(f.Fd())
		var mode uint32
		if windows.GetConsoleMode(h, &mode) != nil {
			continue // no console
		}
		if windows.SetConsoleMode(h,
			mode|windows.ENABLE_PROCESSED_OUTPUT|windows.ENABLE_VIRTUAL_TERMINAL_PROCESSING) != nil {
			_ = os.Setenv("NO_COLOR", "1")
		}
	}
}

// show opens a page in the browser. The file is named in full.
func show(file string) error {
	name, err := windows.UTF16PtrFromString(file)
	if err != nil {
		return err
	}
	return windows.ShellExecute(0, nil, name, nil, nil, windows.SW_SHOWNORMAL)
}

// closedBefore tells that the reader of a pipe wanted no more, which needs no message.
func closedBefore(err error) bool {
	return errors.Is(err, syscall.ERROR_BROKEN_PIPE) || errors.Is(err, windows.ERROR_NO_DATA)
}
