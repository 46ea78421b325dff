package page

import (
	"bytes"
	"regexp"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"rouleau/assets"
	"rouleau/assets/words"
)

// This file writes a page as PDF: sheets of A4 on their side, with the cautions and the number of the sheet at the foot of each.
// The same page gives the same bytes.

// Sizes of a sheet, in mm.
const (
	sheetW = 297.0
	sheetH = 210.0
	margin = 10.0
	wide   = sheetW - 2*margin
	bottom = sheetH - margin - 8 // where what stands on a sheet ends, above its foot
	room   = bottom - margin
)

// Sizes of type, in mm.
const (
	point     = 25.4 / 72
	titleSize = 17 * point
	headSize  = 12.5 * point
	underSize = 10.5 * point
	textSize  = 10 * point
	tableSize = 8.5 * point
	smallSize = 8 * point
	footSize  = 7 * point
)

// family is what the typeface is called within the file.
const family = "inter"

// dates is where the library writes when a file was made, which would make every file another one.
var dates = regexp.MustCompile(`/(Creation|Mod)Date \(D:[0-9]*\)`)

// PDF is the page as a file.
func (p *Page) PDF() ([]byte, error) {
	var laid flow
	laid.run(p.pieces(), margin, cursor{page: 1, y: margin})
	c := blank()
	c.pdf.SetTitle(shown(plain(p.Title)), true)
	c.paint(laid.spots)
	var b bytes.Buffer
	if err := c.pdf.Output(&b); err != nil {
		return nil, err
	}
	return dates.ReplaceAllFunc(b.Bytes(), func(date []byte) []byte { return bytes.Repeat([]byte(" "), len(date)) }), nil
}

// blank is a file without sheets.
func blank() *canvas {
	f := fpdf.New("L", "mm", "A4", "")
	f.SetCatalogSort(true)
	f.SetCreationDate(time.Unix(0, 0).UTC())
	f.SetModificationDate(time.Unix(0, 0).UTC())
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes(family, "", bytes.Clone(assets.InterRegular))
	f.AddUTF8FontFromBytes(family, "B", bytes.Clone(assets.InterSemiBold))
	f.SetProducer("rouleau", true)
	f.SetLang("en")
	return &canvas{pdf: f, links: map[string]int{}, at: map[string]*spot{}}
}

// canvas is the file that is painted on.
type canvas struct {
	pdf   *fpdf.Fpdf
	at    map[string]*spot // where anchors stand
	links map[string]int   // what the file calls them, once something leads there
}

// paint puts everything on its sheet.
func (c *canvas) paint(spots []spot) {
	sheets := make([][]*spot, 1)
	for i := range spots {
		s := &spots[i]
		if id := s.piece.id; id != "" && c.at[id] == nil {
			c.at[id] = s
		}
		for len(sheets) < s.page {
			sheets = append(sheets, nil)
		}
		sheets[s.page-1] = append(sheets[s.page-1], s)
	}
	for i, sheet := range sheets {
		c.pdf.AddPage()
		for _, s := range sheet {
			if s.piece.title != "" {
				c.pdf.SetFont(family, "", 10) // a name in the list of contents is written as this typeface is
				c.pdf.Bookmark(shown(s.piece.title), 0, s.y)
			}
			if s.piece.draw != nil {
				s.piece.draw(c, s.x, s.y)
			}
		}
		c.foot(i+1, len(sheets))
	}
}

// foot is the cautions and the number of the sheet.
func (c *canvas) foot(page, pages int) {
	const apart, number = 2.0, 30.0
	small := look{size: footSize, col: soft}
	y := bottom + apart
	c.rule(margin, y, wide, 0.2, line)
	y += 0.8
	for _, l := range wrap(words.Say("cli.caution"), small, wide-number) {
		l.draw(c, margin, y)
		y += small.high()
	}
	for _, l := range wrap(words.Say("page.number", page, pages), small, number) {
		l.draw(c, margin+wide-l.wide, bottom+apart+0.8)
	}
}

// rule is a line across.
func (c *canvas) rule(x, y, long, thick float64, col colour) {
	c.box(x, y-thick/2, long, thick, col)
}

// box is a filled rectangle.
func (c *canvas) box(x, y, w, h float64, col colour) {
	c.pdf.SetFillColor(int(col.R), int(col.G), int(col.B))
	c.pdf.Rect(x, y, w, h, "F")
}

// lead makes a rectangle lead to an anchor, where there is one.
func (c *canvas) lead(id string, x, y, w, h float64) {
	to := c.at[id]
	if to == nil {
		return
	}
	if _, known := c.links[id]; !known {
		c.links[id] = c.pdf.AddLink()
		c.pdf.SetLink(c.links[id], max(to.y-2, 0), to.page)
	}
	c.pdf.Link(x, y, w, h, c.links[id])
}
