// Package first has what can be said without a window said before the graphics library looks for a display. It is imported for
// that alone. The order is the language's: of the packages whose imports are ready the first by path is begun. This one needs
// nothing of the network; the library does, and so comes later. A window test holds that fast.
package first

import (
	"os"

	"rouleau/cmd/rouleau-desk/line"
)

func init() {
	if code, ends := line.Early(os.Args[1:], os.Getenv("DISPLAY"), os.Stdout, os.Stderr); ends {
		os.Exit(code)
	}
}
