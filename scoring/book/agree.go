package book

// How far two raters agree.

// Agreement compares two raters over the items that both have rated.
type Agreement struct {
	Items    int     // rated by both
	Same     int     // with the same level
	Kappa    float64 // Cohen 1960, Educ Psychol Meas 20:37: 1 full agreement, 0 no more than by chance
	Computed bool    // false where there is too little for a kappa: fewer than two items, or both raters gave one level throughout
}

// Agree compares pairs of levels.
func Agree(pairs [][2]int) Agreement {
	a := Agreement{Items: len(pairs)}
	if a.Items == 0 {
		return a
	}
	var first, second [mostLevel + 1]float64
	for _, p := range pairs {
		if p[0] == p[1] {
			a.Same++
		}
		first[p[0]]++
		second[p[1]]++
	}
	n := float64(a.Items)
	chance := 0.0
	for l := range first {
		chance += float64(first[l] / n * second[l] / n)
	}
	if a.Items < 2 || chance >= 1-1e-12 {
		return a
	}
	a.Kappa, a.Computed = (float64(a.Same)/n-chance)/(1-chance), true
	return a
}

// Agreement is how far the second raters of records agree with the first; of one record, or with "" of all.
func (s *State) Agreement(id string) Agreement {
	var pairs [][2]int
	for _, e := range s.Entries {
		second, ok := e.Body.(*Rating)
		if !ok || !e.InForce() || id != "" && second.Of != id {
			continue
		}
		of := s.byID[second.Of]
		if of == nil || !of.InForce() {
			continue
		}
		first, ok := of.Body.(*SignOff)
		if !ok {
			continue
		}
		for _, a := range first.Rated {
			for _, b := range second.Rated {
				if a.Item == b.Item {
					pairs = append(pairs, [2]int{a.Level, b.Level})
				}
			}
		}
	}
	return Agree(pairs)
}

// Ratings are those of second raters of a record that are in force.
func (s *State) Ratings(id string) (all []*Rating) {
	for _, e := range s.Entries {
		if b, ok := e.Body.(*Rating); ok && e.InForce() && b.Of == id {
			all = append(all, b)
		}
	}
	return all
}
