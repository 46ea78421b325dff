package page

import (
	"bytes"
	"fmt"
	"html/template"
	"regexp"

	"rouleau/cmd/rouleau-desk/svg"
	"rouleau/cmd/rouleau-desk/ui"
)

// This file holds drawings: a display list as the window draws it, so that a chart on paper looks as it does on the bench.

// Drawing is a drawing, with what it is called for people who cannot see it.
type Drawing struct {
	List *ui.List
	Says string
}

// Draw makes a drawing on white paper, in the units of the window: 96 to the inch.
func Draw(width, height float32, says string, draw func(c *ui.Core)) *Drawing {
	c := ui.New(ui.Paper())
	c.Pal.Ground = white
	c.Begin(ui.Input{Size: ui.Vec{X: width, Y: height}, Scale: 1, Pointer: ui.Vec{X: -1, Y: -1}})
	draw(c)
	list, _ := c.End()
	return &Drawing{List: list, Says: says}
}

// names are those by which parts of a drawing refer to each other. Quotes stand in attributes only.
var names = regexp.MustCompile(`"(url\(#)?([ch][0-9]+)(\))?"`)

// svg is the drawing as a part of a page, on which it is the nth: names in it are its own.
func (d *Drawing) svg(nth int) template.HTML {
	text := svg.Of(d.List, d.Says)
	if _, inside, found := bytes.Cut(text, []byte("?>\n")); found {
		text = inside
	}
	return template.HTML(names.ReplaceAll(text, fmt.Appendf(nil, `"${1}d%d$2$3"`, nth)))
}
