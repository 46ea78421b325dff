package book

import (
	"regexp"
	"strings"

	"rouleau/assets/words"
)

// Words of a comment that could tell who a patient or a colleague is. They are warned of and not refused: only a person can say
// whether they do.

var suspicious = []struct {
	form *regexp.Regexp
	key  string
}{
	{regexp.MustCompile(`\d{6,}|\d{3}[ .-]\d{3}[ .-]?\d{2,}`), "book.looks_like_number"},
	{regexp.MustCompile(`\b\d{1,2}[./-]\d{1,2}[./-](\d{4}|\d{2})\b|\b(19|20)\d\d-\d\d-\d\d\b`), "book.looks_like_birth"},
	{regexp.MustCompile(`(?i)\b(mr|mrs|ms|miss|herr|frau|mme|dr)\.? +\p{Lu}\p{L}*`), "book.looks_like_name"},
	{regexp.MustCompile(`(?i)\b(date of birth|born on|d\.?o\.?b|mrn|hospital number|patient (number|id))\b`), "book.looks_like_identity"},
	{regexp.MustCompile(`[\w.+-]+@[\w-]+\.\w`), "book.looks_like_address"},
}

// Identifying gives what in a text could tell who somebody is, each with the words that do. Names are those of the people of the
// department.
func Identifying(text string, names []string) (warnings []string) {
	for _, s := range suspicious {
		if found := s.form.FindString(text); found != "" {
			warnings = append(warnings, words.Say(s.key, found))
		}
	}
	for _, name := range names {
		for _, part := range strings.Fields(name) {
			if len([]rune(part)) >= 3 && strings.Contains(strings.ToLower(text), strings.ToLower(part)) {
				warnings = append(warnings, words.Say("book.is_a_name", part))
			}
		}
	}
	return warnings
}
