//go:build !js

// The clipboard where there is one that a program may ask.

package system

import "github.com/atotto/clipboard"

func readClipboard() (string, error) { return clipboard.ReadAll() }

func writeClipboard(text string) error { return clipboard.WriteAll(text) }
