// Command rouleau does every job that needs no window: it plays, replays, checks and computes. The work is in package cli.
package main

import (
	"os"

	"rouleau/cmd/rouleau/cli"
)

func main() { os.Exit(cli.Run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
