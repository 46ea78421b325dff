// Package bench holds the screens of the window: the cautions, the case sheet, the bench with its section drawing, panel,
// charts and dialogs, and the result. It knows no display and no clock.
//
// A frame is one call, [Desk.Frame]: it draws a [View] with the widgets of package ui and returns the acts that the person
// asked for. The view is filled by package session, which also carries the acts out; nothing here touches the simulation.
// What may be done now, and why not, is asked through View.May, so that the screens hold no rules of the bench.
package bench
