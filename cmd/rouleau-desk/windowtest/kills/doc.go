// Package kills tests that a case survives the window: it plays one in a program of its own, kills that at random moments,
// and goes on with the case from its journal.
package kills
