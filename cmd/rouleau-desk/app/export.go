// What leaves the window as a file of its own: charts, and copies of an attempt.

package app

import (
	"errors"
	"os"
	"path/filepath"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/bench"
	"rouleau/cmd/rouleau-desk/session"
	"rouleau/scoring/attempt"
)

// exportChart saves the charts as they are shown.
func (a *App) exportChart(format int) {
	b := &a.begun
	end := ".png"
	if format == bench.FormatSVG {
		end = ".svg"
	}
	content, err := a.desk.Export(&b.session.View, format)
	place := ""
	if err == nil {
		place, err = a.folder.SaveChart(b.scenario.ID, a.machine.Now(), end, content)
	}
	if err != nil {
		a.notice(err.Error())
		return
	}
	a.notice(words.Say("app.saved", place))
}

// saveCopy saves the attempt of the result page where the person wants it; one that could not be kept is saved there for the
// first time.
func (a *App) saveCopy(to string) {
	place, err := a.copyTo(to)
	if err != nil {
		a.notice(err.Error())
		return
	}
	a.notice(words.Say("app.saved", place))
}

func (a *App) copyTo(to string) (string, error) {
	b := &a.begun
	r := &b.session.View.Result
	to = wholePath(to)
	if info, err := os.Stat(to); err == nil && info.IsDir() {
		name := filepath.Base(r.SavedAs)
		if r.SavedAs == "" {
			name = filepath.Base(a.folder.AttemptPath(b.scenario.ID, a.machine.Now()))
		}
		to = filepath.Join(to, name)
	}
	if b.session.View.Watching {
		return to, b.recorded.Save(to) // the attempt of whoever played it, not one of whoever looks at it
	}
	if r.SavedAs != "" {
		if to == r.SavedAs {
			return to, nil
		}
		saved, err := attempt.Load(r.SavedAs)
		if err != nil {
			return "", err
		}
		return to, saved.Save(to)
	}
	made := session.Grader(b.scenario, b.assessment, b.journal.Head().Operator, to, a.machine.Now)(b.session.Run, b.session.Breaks())
	if made.SavedAs == "" {
		return "", errors.New(made.Fault)
	}
	r.SavedAs, r.Fault = made.SavedAs, ""
	if err := b.session.KeepMarks(to); err != nil {
		r.Fault = err.Error()
	}
	if b.journal.Path() != "" {
		b.journal.Saved() // what is safe is not offered to be gone on with
		b.journal.Flush()
	}
	return to, nil
}
