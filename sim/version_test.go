package sim

import "testing"

// One whole case of this version of the model, to the bit. Attempts on disk are played again by it, so what only makes the model
// faster or tidier must leave this hash alone. Where a change is meant to alter runs, raise ModelVersion and write its hash here.
func TestRunsOfAVersionStayTheSame(t *testing.T) {
	const version, want = "3", 0x4359de4e387b3ffd
	if ModelVersion != version {
		t.Fatalf("the hash here is of version %s of the model, which is now %s: write the new one", version, ModelVersion)
	}
	all := hashes(t, 7)
	if got := all[len(all)-1]; got != want {
		t.Errorf("the last state of the whole case has the hash %#016x, want %#016x", got, uint64(want))
	}
}
