//go:build !windows && !darwin && !js && !(linux && (amd64 || arm64 || loong64))

// Systems on which no way to a sound device was tried.

package system

import "rouleau/assets/words"

func openDevice() (device, string) { return nil, words.Say("sound.no_way") }
