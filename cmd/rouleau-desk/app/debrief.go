// The debrief as a page: made beside the window from what has been played, and written whole or not at all.

package app

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"

	"github.com/natefinch/atomic"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau/page"
	"rouleau/cmd/rouleau/report"
	"rouleau/scoring/attempt"
)

// kinds of pages, by how the name of their file ends.
var kinds = map[string]func(*page.Page) ([]byte, error){".html": (*page.Page).HTML, ".htm": (*page.Page).HTML, ".pdf": (*page.Page).PDF}

// savePage has the debrief made into a page. What came of it is told when it is there.
func (a *App) savePage(to string) {
	r := &report.Report{Draws: a.machine.Draws}
	if r.Debrief, r.Told = a.begun.session.Debriefed(); r.Debrief == nil {
		return
	}
	if a.page != nil {
		a.notice(words.Say("desk_debrief.saving"))
		return
	}
	to = a.pagePath(to)
	kind := kinds[strings.ToLower(filepath.Ext(to))]
	err := attempt.CanSave(to)
	if kind == nil {
		err = errors.New(words.Say("desk_debrief.save_kind", filepath.Base(to)))
	}
	if err == nil {
		r.Attempt, err = a.attempt()
	}
	if err != nil {
		a.notice(err.Error())
		return
	}
	made := make(chan string, 1)
	a.page = made
	a.notice(words.Say("desk_debrief.saving"))
	go func() {
		content, err := kind(r.Page())
		if err == nil {
			err = atomic.WriteFile(to, bytes.NewReader(content))
		}
		if err == nil {
			err = os.Chmod(to, 0o644) // else only its writer could read what is new
		}
		if err != nil {
			made <- words.Say("desk_debrief.unsaved", to, err)
			return
		}
		made <- words.Say("app.saved", to)
	}()
}

// pagePath makes what was typed the path of a page: in a folder it is called as the attempt is.
func (a *App) pagePath(to string) string {
	to = wholePath(to)
	if info, err := os.Stat(to); err == nil && info.IsDir() {
		to = filepath.Join(to, strings.TrimSuffix(filepath.Base(a.begun.session.View.Result.SavedAs), ".json"))
	}
	if filepath.Ext(to) == "" {
		to += ".html"
	}
	return to
}

// attempt is the one on the screen, as its file has it.
func (a *App) attempt() (*attempt.Attempt, error) {
	b := &a.begun
	switch saved := b.session.View.Result.SavedAs; {
	case b.recorded != nil:
		return b.recorded.Attempt, nil
	case saved == "":
		return nil, errors.New(words.Say("desk_debrief.save_first"))
	default:
		return attempt.Load(saved)
	}
}

// pageMade tells what came of a page, on whatever screen there is by then.
func (a *App) pageMade() {
	if a.page == nil {
		return
	}
	select {
	case news := <-a.page:
		a.page = nil
		if a.begun.session == nil {
			a.tell(news)
			return
		}
		a.notice(news)
	default:
	}
}
