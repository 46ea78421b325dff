// Package windowtest tests the built window on a virtual display, with real keys and a real pointer. It does not import the
// window, whose engine would ask for a display at once; it builds the command and starts it.
package windowtest
