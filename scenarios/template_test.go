package scenarios

import (
	"bytes"
	"strings"
	"testing"
)

func TestTemplateIsWithoutFaultOrWarning(t *testing.T) {
	for _, lesson := range []bool{false, true} {
		for _, id := range []string{"my-first-case", "abc", "123", "1e5", "yes", "null", "2031-05-14", strings.Repeat("a-", 29) + "bc"} {
			text, err := Template(id, lesson)
			if err != nil {
				t.Fatal(err)
			}
			s, faults := Parse(id+extension, text)
			if len(faults) > 0 || len(s.Warnings) > 0 {
				t.Fatalf("%s: %v %v", id, faults, s)
			}
			if s.ID != id || s.Lesson() != lesson || strings.Contains(s.Title, "New ") {
				t.Errorf("%s: id %s, title %s", id, s.ID, s.Title)
			}
			if out, _ := Format("a.yaml", text); !bytes.Equal(out, text) {
				t.Errorf("%s is not in canonical layout", id)
			}
		}
	}
}

// Each block has a comment above it that says what it is for.
func TestTemplateExplainsEachBlock(t *testing.T) {
	for _, lesson := range []bool{false, true} {
		text, err := Template("my-first-case", lesson)
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(string(text), "\n")
		blocks := 0
		for i, line := range lines {
			if strings.HasSuffix(line, ":") && !strings.HasPrefix(line, " ") && !strings.HasPrefix(line, "#") {
				blocks++
				if !strings.HasPrefix(lines[i-1], "# ") {
					t.Errorf("nothing explains %s", line)
				}
			}
		}
		if blocks < 10 {
			t.Errorf("%d blocks", blocks)
		}
	}
}

func TestNamesThatNoCaseCanHave(t *testing.T) {
	for _, id := range []string{"", "ab", "My-Case", "a case", "../case", "case.yaml", "a/b", `a\b`, "-a-b", "ümlaut", strings.Repeat("a", 61), "steady-oozing-spine", "con\x00", "con", "nul", "com1"} {
		if text, err := Template(id, false); err == nil || text != nil {
			t.Errorf("%q is taken", id)
		}
	}
}
