// Another catalogue can take the place of the English one, whole or in part, and faults in it are told.

package words_test

import (
	"strings"
	"testing"

	"rouleau/assets/words"
)

func TestAnotherLanguage(t *testing.T) {
	defer words.Use(nil)
	if err := words.Use(map[string]string{"top.pause": "Anhalten", "top.until": "noch %s bis zum geplanten Ende"}); err != nil {
		t.Fatal(err)
	}
	if got := words.Say("top.pause") + ", " + words.Say("top.until", "5 min"); got != "Anhalten, noch 5 min bis zum geplanten Ende" {
		t.Errorf("got %q", got)
	}
	if got := words.Say("top.no_alarm"); got != "no alarm" {
		t.Errorf("a key that was left out says %q", got)
	}
	err := words.Use(map[string]string{"top.until": "bald", "top.nowhere": "nirgends"})
	if err == nil || !strings.Contains(err.Error(), "top.until") || !strings.Contains(err.Error(), "top.nowhere") {
		t.Errorf("not all faults are told: %v", err)
	}
	if got := words.Say("top.pause"); got != "Anhalten" {
		t.Errorf("a faulty catalogue changed something: %q", got)
	}
	words.Use(nil)
	if got := words.Say("top.pause"); got != "Pause" {
		t.Errorf("English did not come back: %q", got)
	}
}
