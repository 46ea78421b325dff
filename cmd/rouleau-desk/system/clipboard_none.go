//go:build js

// A browser lets no program read its clipboard without asking the person each time: there cut text stays in the window.

package system

import "errors"

var errNoClipboard = errors.New("no clipboard")

func readClipboard() (string, error) { return "", errNoClipboard }

func writeClipboard(string) error { return errNoClipboard }
