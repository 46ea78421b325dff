package ledger

import (
	"fmt"
	"os"
	"testing"

	"rouleau/cmd/rouleau/shelf/pgtest"
)

func TestMain(m *testing.M) {
	if os.Getenv(childPlace) != "" {
		if err := child(os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
	code := pgtest.Run(m)
	if storeFolder != "" {
		os.RemoveAll(storeFolder)
	}
	os.Exit(code)
}
