// Pictures and drawings that a person took of charts.

package keep

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"time"

	"github.com/natefinch/atomic"

	"rouleau/assets/words"
)

const chartsName = "charts"

// SaveChart puts a picture of charts into the folder and gives its place. The end is that of the file's name, such as ".png".
func (f *Folder) SaveChart(scenarioID string, when time.Time, end string, content []byte) (string, error) {
	folder := filepath.Join(f.path, chartsName)
	err := os.MkdirAll(folder, folderMode)
	path := ""
	if err == nil {
		path = unused(folder, plain(scenarioID)+"-"+when.Format("20060102-150405"), end)
		err = atomic.WriteFile(path, bytes.NewReader(content))
	}
	if err != nil {
		return "", errors.New(words.Say("keep.chart_unsaved", folder, reason(err)))
	}
	return path, nil
}
