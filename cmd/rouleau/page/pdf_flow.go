package page

// This file puts what a page is made of on sheets: pieces that are not cut, one below the other, and columns of them.

// piece is something that stands whole on one sheet.
type piece struct {
	high, gap float64 // gap is the room above it, left out where it begins a sheet
	keep      bool    // the next one stands on the same sheet
	sheet     bool    // it begins a sheet
	again     *piece  // stands above it where it begins a sheet
	id        string  // for links
	title     string  // in the list of contents
	columns   []column
	draw      func(c *canvas, x, y float64) // nil for columns
}

// column is what stands beside others.
type column struct {
	x, wide float64
	pieces  []*piece
}

// spot is where a piece stands.
type spot struct {
	page  int
	x, y  float64
	piece *piece
}

// cursor is where the next piece will stand.
type cursor struct {
	page int
	y    float64
}

func (at *cursor) top() bool { return at.y <= margin }

func (at *cursor) turn() { at.page, at.y = at.page+1, margin }

// flow is what has been put on sheets so far.
type flow struct{ spots []spot }

// slack is what rounding may add to a sum of heights, in mm.
const slack = 1e-6

// run puts pieces below each other and says where they end.
func (f *flow) run(all []*piece, x float64, at cursor) cursor {
	for i := 0; i < len(all); {
		last, need := together(all, i)
		if all[i].sheet && !at.top() {
			at.turn()
		}
		if !at.top() && at.y+all[i].gap+need > bottom+slack {
			at.turn()
		}
		for ; i <= last; i++ {
			f.put(all[i], x, &at)
		}
	}
	return at
}

// together finds the last of the pieces that stay with one of them, and how high they are.
func together(all []*piece, i int) (last int, need float64) {
	need = min(all[i].high, room)
	for last = i; all[last].keep && last+1 < len(all) && !all[last+1].sheet; last++ {
		need += all[last+1].gap + min(all[last+1].high, room)
	}
	return last, need
}

// put puts one piece where the cursor is.
func (f *flow) put(p *piece, x float64, at *cursor) {
	if !at.top() && at.y+p.gap+p.high > bottom+slack && p.columns == nil {
		at.turn() // more stays together than a sheet holds
	}
	switch {
	case !at.top():
		at.y += p.gap
	case p.again != nil:
		f.put(p.again, x, at)
	}
	f.spots = append(f.spots, spot{page: at.page, x: x, y: at.y, piece: p})
	if p.columns != nil {
		f.beside(p, x, at)
		return
	}
	at.y += p.high
}

// beside puts columns, each on as many sheets as it needs.
func (f *flow) beside(p *piece, x float64, at *cursor) {
	end := *at
	for _, col := range p.columns {
		last := f.run(col.pieces, x+col.x, *at)
		if last.page > end.page || last.page == end.page && last.y > end.y {
			end = last
		}
	}
	*at = end
}

// height is how high pieces are below each other on one sheet.
func height(all []*piece) (high float64) {
	for i, p := range all {
		high += p.high
		if i > 0 {
			high += p.gap
		}
	}
	return high
}
