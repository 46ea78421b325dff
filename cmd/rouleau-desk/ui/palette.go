// The colours of the window: a paper ground, ink, and nothing loud except
// alarms. Every pair that meets on the screen is listed, so that a test can
// compute its contrast (WCAG 2.2).

package ui

import "math"

// Palette holds every colour a widget or screen may use.
type Palette struct {
	Ground Color // paper
	Panel  Color // a sheet lying on the paper
	Well   Color // where something can be written or chosen
	Shade  Color // a pressed or hovered part of paper or panel
	Ink    Color
	Muted  Color // less important words
	Line   Color // rules and frames that carry no meaning
	Edge   Color // outlines of controls: must be seen
	Accent Color // links, values that can be changed, focus
	Tint   Color // ground of what is selected or running
	Focus  Color
	Dark   Color // the one filled control: stop, and the first choice of a screen
	OnDark Color

	Alarm [3]AlarmColors // by Priority; used by alarms and nothing else

	Series [6]Series // for charts

	Strong bool // it keeps the higher contrasts
}

// AlarmColors are the colours of one priority. On and Off are the grounds while
// an alarm flashes; words on them use OnText and OffText.
type AlarmColors struct {
	On, OnText   Color
	Off, OffText Color
	Edge         Color
}

// Series is the look of one line of a chart. Colours repeat never and dashes
// differ, so that a line can be told without seeing colour.
type Series struct {
	Col  Color
	Dash Dash
}

func rgb(v uint32) Color {
	return Color{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 255}
}

// chartSeries is the set of Okabe and Ito (from memory), each hue darkened
// until it reads on paper; their yellow is left out as it belongs to alarms.
var chartSeries = [6]Series{
	{rgb(0x006AA6), Dash{}},                // blue
	{rgb(0xA74A00), Dash{On: 9, Off: 4}},   // vermilion
	{rgb(0x007455), Dash{On: 3, Off: 3}},   // bluish green
	{rgb(0x8D5373), Dash{On: 14, Off: 4}},  // reddish purple
	{rgb(0x3B3B3B), Dash{On: 1.5, Off: 4}}, // black
	{rgb(0x7A5400), Dash{On: 6, Off: 2.5}}, // orange
}

// Paper is the palette the window starts with.
func Paper() *Palette {
	return &Palette{
		Ground: rgb(0xF4EFE3), Panel: rgb(0xFBF8F1), Well: rgb(0xFFFEFA), Shade: rgb(0xECE5D5),
		Ink: rgb(0x1F2B33), Muted: rgb(0x4B545B), Line: rgb(0xD2CAB8), Edge: rgb(0x7A7262),
		Accent: rgb(0x0B5C85), Tint: rgb(0xE1ECF1), Focus: rgb(0x0B5C85),
		Dark: rgb(0x1F2B33), OnDark: rgb(0xFBF8F1),
		Alarm: [3]AlarmColors{
			Low:    {rgb(0x4CC9E0), rgb(0x10202A), rgb(0xDDF4F8), rgb(0x10202A), rgb(0x1B6E80)},
			Medium: {rgb(0xF5C400), rgb(0x10202A), rgb(0xFDF3C9), rgb(0x10202A), rgb(0x8A6A00)},
			High:   {rgb(0xC80040), rgb(0xFFFFFF), rgb(0xFBE3DF), rgb(0x10202A), rgb(0xC80040)},
		},
		Series: chartSeries,
	}
}

// strongSeries is chartSeries darkened further.
var strongSeries = [6]Series{
	{rgb(0x004A75), chartSeries[0].Dash},
	{rgb(0x763300), chartSeries[1].Dash},
	{rgb(0x00503A), chartSeries[2].Dash},
	{rgb(0x663450), chartSeries[3].Dash},
	{rgb(0x1A1A1A), chartSeries[4].Dash},
	{rgb(0x523800), chartSeries[5].Dash},
}

// HighContrast is the palette for those who need more of it: white, black, and
// heavy edges.
func HighContrast() *Palette {
	p := Paper()
	p.Strong = true
	p.Ground, p.Panel, p.Well, p.Shade = rgb(0xFFFFFF), rgb(0xFFFFFF), rgb(0xFFFFFF), rgb(0xE9E9E9)
	p.Ink, p.Muted = rgb(0x000000), rgb(0x2B2B2B)
	p.Line, p.Edge = rgb(0x767676), rgb(0x000000)
	p.Accent, p.Focus, p.Tint = rgb(0x00324F), rgb(0x00324F), rgb(0xDCEAF2)
	p.Dark, p.OnDark = rgb(0x000000), rgb(0xFFFFFF)
	p.Alarm[Low].Edge = rgb(0x0E5564)
	p.Alarm[Medium].Edge = rgb(0x664E00)
	p.Alarm[High].On, p.Alarm[High].Edge = rgb(0xAC0044), rgb(0xAC0044)
	for i := range p.Alarm {
		p.Alarm[i].OffText = p.Ink
	}
	p.Alarm[Low].OnText, p.Alarm[Medium].OnText = p.Ink, p.Ink
	p.Series = strongSeries
	return p
}

// How much of a second colour is mixed into a ground, so that the contrast of
// what stands on it can be computed.
const (
	hoverPart     = 0.06 // ink, under the pointer
	pressPart     = 0.14 // ink, pressed
	darkHoverPart = 0.12 // of the words on the dark control
	holdPart      = 0.22 // ink, where a hold has come to
	selectPart    = 0.28 // accent, behind selected text
)

// Luminance is the relative luminance of WCAG 2.2, alpha left aside.
func Luminance(c Color) float64 {
	lin := func(v uint8) float64 {
		f := float64(v) / 255
		if f <= 0.04045 {
			return f / 12.92
		}
		return math.Pow((f+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
}

// Contrast is the contrast ratio of WCAG 2.2, from 1 to 21.
func Contrast(a, b Color) float64 {
	la, lb := Luminance(a), Luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}
