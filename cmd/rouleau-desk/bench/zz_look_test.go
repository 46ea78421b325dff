package bench_test

import (
	"os"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/raster"
	"rouleau/cmd/rouleau-desk/ui"
)

func TestZZLook(t *testing.T) {
	dir := os.Getenv("LOOK")
	if dir == "" {
		t.Skip()
	}
	for _, size := range []ui.Vec{{X: 1280, Y: 800}, {X: 900, Y: 600}} {
		b, _ := debriefed(t, size)
		n := "a"
		if size.X < 1000 {
			n = "b"
		}
		for _, key := range []string{"desk_debrief.tab_costs", "desk_debrief.tab_good", "desk_debrief.tab_questions", "result.tab_timeline", "result.tab_grade"} {
			b.tab(key)
			b.course(0)
			for range 4 {
				b.Idle()
			}
			png, err := raster.PNG(b.List, 1)
			if err != nil {
				t.Fatal(err)
			}
			os.WriteFile(dir+"/"+n+"-"+key+".png", png, 0o644)
		}
	}
	_ = words.Say
}
