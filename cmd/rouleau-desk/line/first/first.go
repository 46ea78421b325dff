// Package first has what can be said without a window said before the graphics library looks for a display. It is imported for
// that alone. The order is the language's: of the packages whose imports are ready the first by path is begun. The library
// needs the network's packages and is begun after all that come before them by path; this one must need none of those, nor net/url
// (so neither templates nor the app), whose own needs come later still. A window test holds that fast.
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
