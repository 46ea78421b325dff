package study

import (
	"fmt"
	"io"
	"strings"

	"rouleau/assets/words"
)

// This file writes the table of many cases, in Markdown.

// Entry is one case of the table.
type Entry struct {
	Lesson bool
	*Figures
}

// WriteTable writes the figures of all cases; those of lessons, which judge nobody, stand apart and need not keep the rules.
func WriteTable(w io.Writer, seeds string, entries []Entry) {
	fmt.Fprintf(w, "# %s\n\n%s\n\n%s\n\n%s\n\n%s\n", words.Say("study.table_title"), words.Say("study.table_made", seeds), words.Say("study.what"), words.Say("study.rules_are"),
		words.Say("study.recovery_published"))
	for _, lesson := range []bool{false, true} {
		if lesson {
			fmt.Fprintf(w, "\n## %s\n", words.Say("study.table_lessons"))
		}
		for _, e := range entries {
			if e.Lesson == lesson {
				e.write(w)
			}
		}
	}
}

func (e *Entry) write(w io.Writer) {
	fmt.Fprintf(w, "\n### %s\n\n", e.Case)
	fmt.Fprintf(w, "| %s | n | %s | %s | %s | %s | %s |\n|---|---:|---:|---:|---:|---:|---|\n", words.Say("study.operator"), words.Say("study.passes"), words.Say("study.points"),
		words.Say("study.auc"), words.Say("study.recovery"), words.Say("study.matters"))
	for i := range e.Operators {
		o := &e.Operators[i]
		auc := "–"
		if o.AUC != nil && o.AUC.N > 0 {
			auc = fmt.Sprintf("%.3f (%.3f–%.3f)", o.AUC.Value, o.AUC.Low, o.AUC.High)
		}
		fmt.Fprintf(w, "| %s | %d | %.1f (%.1f–%.1f) | %.1f (%.1f–%.1f) | %s | %.2f (%.2f–%.2f) | %s |\n", o.Name, o.N, 100*o.Pass.Value, 100*o.Pass.Low, 100*o.Pass.High,
			o.Points.Value, o.Points.Low, o.Points.High, auc, o.Recovery.Value, o.Recovery.Low, o.Recovery.High, strings.Join(o.Matters, ", "))
	}
	e.writeRecovery(w)
	least, name := 2.0, ""
	for i := range e.Criteria {
		c := &e.Criteria[i]
		if c.Best < least {
			least, name = c.Best, c.Name
		}
	}
	if name != "" {
		fmt.Fprintf(w, "\n%s\n", words.Say("study.table_criteria", len(e.Criteria), least, name))
	}
	if idleOnly := e.partedByIdleAlone(); len(idleOnly) > 0 {
		fmt.Fprintf(w, "\n%s\n", words.Say("study.table_idle_only", strings.Join(idleOnly, ", ")))
	}
	if e.Lesson {
		return
	}
	broken := e.Broken()
	if len(broken) == 0 {
		fmt.Fprintf(w, "\n%s\n", e.Verdict())
	}
	for _, b := range broken {
		fmt.Fprintf(w, "\n- %s", b)
	}
	if len(broken) > 0 {
		fmt.Fprintln(w)
	}
}

// writeRecovery writes what comes back, a line for each figure.
func (e *Entry) writeRecovery(w io.Writer) {
	if e.Recovery.Without == nil || !e.Recovery.asked {
		return
	}
	fmt.Fprintln(w)
	for _, line := range e.Recovery.lines() {
		fmt.Fprintf(w, "- %s\n", line)
	}
}
