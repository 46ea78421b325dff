package book_test

import (
	"flag"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"rouleau/scoring/book"
	"rouleau/scoring/book/booktest"
)

var flips = flag.Int("flips", 3000, "bits flipped one at a time in stored records; 0 for every bit")

// place is one stored text of a book.
type place struct {
	name string
	text *[]byte
}

func places(m *booktest.Memory) (all []place) {
	for i := range m.All {
		r := &m.All[i]
		all = append(all, place{"leaf", &r.Leaf}, place{"signature", &r.Signature}, place{"body", &r.Body}, place{"attempt", &r.Attachment})
	}
	for i := range m.Kept {
		all = append(all, place{"checkpoint", &m.Kept[i].Signed})
	}
	return slices.DeleteFunc(all, func(p place) bool { return len(*p.text) == 0 })
}

// found says whether anything at all is found.
func found(t testing.TB, m *booktest.Memory) bool {
	t.Helper()
	c, err := book.Read(m)
	if err != nil {
		return true
	}
	return len(c.Log) > 0 || slices.ContainsFunc(c.Findings, func(f book.Finding) bool { return f.Verdict == book.Broken })
}

// Every flip of a bit, wherever it is stored, is found without playing anything.
func TestEveryFlippedBitIsFound(t *testing.T) {
	_, m, _ := full(t)
	if found(t, m) {
		t.Fatal("something is found in a sound book")
	}
	all := places(m)
	bits := 0
	for _, p := range all {
		bits += 8 * len(*p.text)
	}
	flip := func(n int) {
		for _, p := range all {
			if n >= 8*len(*p.text) {
				n -= 8 * len(*p.text)
				continue
			}
			old := *p.text
			changed := slices.Clone(old)
			changed[n/8] ^= 1 << (n % 8)
			*p.text = changed
			if !found(t, m) {
				t.Errorf("bit %d of a %s was flipped and not found", n, p.name)
			}
			*p.text = old
			return
		}
	}
	if *flips == 0 {
		for n := range bits {
			flip(n)
		}
		return
	}
	chance := rand.New(rand.NewPCG(1, 2))
	for range *flips {
		flip(chance.IntN(bits))
	}
	// and some in every text, however short it is
	at := 0
	for _, p := range all {
		for range 4 {
			flip(at + chance.IntN(8*len(*p.text)))
		}
		at += 8 * len(*p.text)
	}
}

// Records taken out, put in, swapped or replaced by others that are properly signed are found too.
func TestMovedRecordsAreFound(t *testing.T) {
	for name, change := range map[string]func(m *booktest.Memory){
		"one taken out":    func(m *booktest.Memory) { m.All = slices.Delete(m.All, 6, 7) },
		"the last one":     func(m *booktest.Memory) { m.All = m.All[:len(m.All)-1] },
		"two swapped":      func(m *booktest.Memory) { m.All[8], m.All[9] = m.All[9], m.All[8] },
		"one twice":        func(m *booktest.Memory) { m.All = append(m.All, m.All[8]) },
		"a checkpoint out": func(m *booktest.Memory) { m.Kept = slices.Delete(m.Kept, 3, 4) },
		"one of elsewhere": func(m *booktest.Memory) { m.Kept[4].Signed = m.Kept[5].Signed },
		"another name":     func(m *booktest.Memory) { m.Name = "department.example/another" },
		"another size":     func(m *booktest.Memory) { m.Kept[4].Size = 6 },
		"a size twice":     func(m *booktest.Memory) { m.Kept = append(m.Kept, m.Kept[4]) },
		"one attached":     func(m *booktest.Memory) { m.All[8].Attachment = []byte("something") },
		"another attempt":  func(m *booktest.Memory) { m.All[6].Attachment = nil },
	} {
		_, m, _ := full(t)
		change(m)
		if !found(t, m) {
			t.Errorf("%s: not found", name)
		}
	}
}

// A book cut off at its end together with its checkpoints shows nothing by itself: that is what a checkpoint kept elsewhere is for.
func TestACheckpointKeptElsewhereFindsACutOffBook(t *testing.T) {
	_, m, _ := full(t)
	elsewhere := m.Kept[len(m.Kept)-1].Signed
	m.All, m.Kept = m.All[:8], m.Kept[:8]
	if found(t, m) {
		t.Fatal("a book cut off cleanly cannot be told from one that was never longer")
	}
	c, err := book.Read(m, elsewhere)
	if err != nil || len(c.Log) != 1 || !strings.Contains(c.Log[0], "records at the end are missing") {
		t.Error(err, c.Log)
	}
}
