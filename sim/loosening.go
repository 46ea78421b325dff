package sim

// A line that works loose in the middle of a case. Nobody sees it happen; a loose outlet line draws air, and looking at the line
// again finds it.

// worksLoose loosens a line that is connected.
func (s *State) worksLoose(line Part) {
	b := &s.Bench
	if line.isLine() && b.Connected[line] {
		b.Loose[line], b.Unseen[line] = true, true
	}
}

// foundLoose says whether somebody has looked at a line since it became loose.
func (b *BenchState) foundLoose(line int) bool {
	return b.Loose[line] && b.Inspected[line] && !b.Unseen[line]
}
