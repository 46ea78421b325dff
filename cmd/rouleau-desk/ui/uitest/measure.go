// What can be measured on a display list: targets that are too small or lie on
// each other, words that were cut, things outside the window, contrast.

package uitest

import (
	"fmt"

	"rouleau/cmd/rouleau-desk/ui"
)

// LeastTarget is the least height and width of a control, in logical pixels.
const LeastTarget = 40

// Faults lists everything about a list that a person would stumble over.
func Faults(l *ui.List) (faults []string) {
	faults = append(faults, SmallTargets(l)...)
	faults = append(faults, Overlaps(l)...)
	faults = append(faults, Truncated(l)...)
	return append(faults, Outside(l)...)
}

// SmallTargets lists controls that are too small to hit with a finger.
func SmallTargets(l *ui.List) (faults []string) {
	for i := range l.Marks {
		m := &l.Marks[i]
		if m.Target() && (m.Rect.W < LeastTarget-0.5 || m.Rect.H < LeastTarget-0.5) {
			faults = append(faults, fmt.Sprintf("%s %q is only %.0f × %.0f", m.Kind, m.Label, m.Rect.W, m.Rect.H))
		}
	}
	return faults
}

// Overlaps lists controls that lie on each other, and free words that lie on
// other words or on a control. Areas of a drawing (hits) may contain both.
func Overlaps(l *ui.List) (faults []string) {
	for i := range l.Marks {
		for j := i + 1; j < len(l.Marks); j++ {
			a, b := &l.Marks[i], &l.Marks[j]
			if !apart(a) || !apart(b) || a.Layer != b.Layer || related(a, b) {
				continue
			}
			if o := a.Shown.Intersect(b.Shown); o.W > 1 && o.H > 1 {
				faults = append(faults, fmt.Sprintf("%s %q lies on %s %q by %.0f × %.0f", a.Kind, a.Label, b.Kind, b.Label, o.W, o.H))
			}
		}
	}
	return faults
}

// apart reports whether a mark is of a kind that must lie on nothing else.
func apart(m *ui.Mark) bool {
	switch m.Kind {
	case ui.KindText, ui.KindBadge, ui.KindKeyCap:
		return true
	case ui.KindHit, ui.KindRow:
		return false
	}
	return m.Target()
}

// related reports whether one mark is part of the other: words lie on the
// control they belong to, key caps on the control that holds them.
func related(a, b *ui.Mark) bool { return partOf(a, b) || partOf(b, a) }

func partOf(in, out *ui.Mark) bool {
	if in.Kind == ui.KindKeyCap {
		return out.Target() && out.Rect.Intersect(in.Rect) == in.Rect
	}
	return in.Owner != 0 && in.Owner == out.ID
}

// Truncated lists words that were cut.
func Truncated(l *ui.List) (faults []string) {
	for i := range l.Marks {
		if m := &l.Marks[i]; m.Cut {
			faults = append(faults, fmt.Sprintf("%s %q is cut", m.Kind, m.Label))
		}
	}
	return faults
}

// Outside lists what reaches beyond the window.
func Outside(l *ui.List) (faults []string) {
	window := ui.R(0, 0, l.Size.X, l.Size.Y).Inset(-0.5)
	for i := range l.Marks {
		m := &l.Marks[i]
		if m.Shown.Empty() || m.Kind == ui.KindOverlay {
			continue
		}
		if m.Shown != m.Shown.Intersect(window) || (m.Rect != m.Shown && (m.Rect.X < window.X || m.Rect.Right() > window.Right())) {
			faults = append(faults, fmt.Sprintf("%s %q reaches out of the window", m.Kind, m.Label))
		}
	}
	return faults
}

// FocusOrder lists the labels of controls in the order of the Tab key.
func FocusOrder(l *ui.List) (labels []string) {
	last := -1
	for i := range l.Marks {
		if m := &l.Marks[i]; m.Focus >= 0 && m.Focus != last {
			labels = append(labels, m.Label)
			last = m.Focus
		}
	}
	return labels
}
