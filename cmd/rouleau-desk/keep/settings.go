// The settings a person chose, kept in one small file.

package keep

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/natefinch/atomic"

	"rouleau/assets/words"
)

// Limits of the person's own scale.
const (
	LeastScale = 1.0
	MostScale  = 2.5
)

// Settings are what a person chose for the window.
type Settings struct {
	Who      string  `json:"who"`      // pseudonym or staff code, "" while nobody said
	Scale    float64 `json:"scale"`    // LeastScale to MostScale
	Contrast bool    `json:"contrast"` // the strong palette
	Sound    bool    `json:"sound"`
	Still    bool    `json:"still"` // reduced motion
}

// Defaults are the settings of somebody who has chosen nothing.
func Defaults() Settings { return Settings{Scale: LeastScale, Sound: false} }

// Settings reads the file. A damaged one is set aside and told, and the defaults stand in its place; that there is none yet is
// no error.
func (f *Folder) Settings() (Settings, error) {
	path := filepath.Join(f.path, settingsName)
	content, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return Defaults(), nil
	case err != nil:
		return Defaults(), errors.New(words.Say("keep.settings_unread", path, reason(err)))
	}
	s := Defaults()
	if err := json.Unmarshal(content, &s); err == nil && s.right() {
		return s, nil
	}
	to := unused(f.path, "settings-damaged", ".json")
	if err := os.Rename(path, to); err != nil {
		return Defaults(), errors.New(words.Say("keep.settings_stuck", path, reason(err)))
	}
	return Defaults(), errors.New(words.Say("keep.settings_damaged", to))
}

func (s *Settings) right() bool {
	return s.Scale >= LeastScale && s.Scale <= MostScale && (s.Who == "" || WhyNotWho(s.Who) == "")
}

// SaveSettings replaces the file, whole or not at all.
func (f *Folder) SaveSettings(s Settings) error {
	return f.write(settingsName, s, func(why error) string { return words.Say("keep.settings_unsaved", f.path, why) })
}

// write replaces a file of the folder, whole or not at all; unsaved tells that it could not.
func (f *Folder) write(name string, value any, unsaved func(why error) string) error {
	content, err := json.MarshalIndent(value, "", "  ")
	if err != nil {
		return err
	}
	path := filepath.Join(f.path, name)
	if err := atomic.WriteFile(path, bytes.NewReader(append(content, '\n'))); err != nil {
		return errors.New(unsaved(reason(err)))
	}
	return os.Chmod(path, fileMode)
}

// Bounds of a pseudonym or staff code, in letters.
const (
	leastWho = 2
	mostWho  = 24
)

// WhyNotWho says why a text cannot stand in records as who played, "" when it can. Records hold a pseudonym or a staff code:
// what looks like a full name is turned away.
func WhyNotWho(who string) string {
	letters := []rune(who)
	switch {
	case strings.ContainsAny(strings.TrimSpace(who), " \t\u00a0"):
		return words.Say("who.full_name")
	case len(letters) < leastWho:
		return words.Say("who.short", leastWho)
	case len(letters) > mostWho:
		return words.Say("who.long", mostWho)
	}
	for _, r := range letters {
		if !whoLetter(r) {
			return words.Say("who.letter", string(r))
		}
	}
	return ""
}
