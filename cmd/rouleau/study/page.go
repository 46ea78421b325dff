package study

import (
	"fmt"
	"html"
	"strings"

	"rouleau/assets/words"
)

// This file writes the page of a study: one file that loads nothing and runs nothing.

const pageStyle = `:root{color-scheme:light dark;--ink:#1b1f24;--soft:#5b6570;--line:#d4d9df;--bar:#2f6f9f;--bad:#a3341f}
@media(prefers-color-scheme:dark){:root{--ink:#e6e9ec;--soft:#9aa5b0;--line:#3a424b;--bar:#6fb1de;--bad:#f08c73}}
body{font:15px/1.5 system-ui,sans-serif;color:var(--ink);max-width:76rem;margin:2rem auto;padding:0 1rem}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:13px}th,td{padding:.2rem .6rem;border-bottom:1px solid var(--line);text-align:right}
th:first-child,td:first-child{text-align:left}.wide{overflow-x:auto}.n{color:var(--soft)}.bad{color:var(--bad)}
.charts{display:grid;grid-template-columns:repeat(auto-fill,minmax(17rem,1fr));gap:1rem}figure{margin:0}figcaption{font-size:13px}
svg text{font:10px system-ui,sans-serif;fill:var(--soft)}svg rect{fill:var(--bar)}svg line{stroke:var(--line)}`

// page collects the text of the page.
type page struct{ strings.Builder }

func (p *page) put(format string, args ...any) { fmt.Fprintf(&p.Builder, format, args...) }

// text puts a text between tags.
func (p *page) text(tag, text string) { p.put("<%s>%s</%s>\n", tag, html.EscapeString(text), tag) }

// head puts the head of a table; the keys are literal so that a test finds who says them.
func (p *page) head(cells ...string) {
	p.put("<div class=wide><table><thead><tr>")
	for _, c := range cells {
		p.put("<th scope=col>%s</th>", html.EscapeString(c))
	}
	p.put("</tr></thead><tbody>\n")
}

func (p *page) tail() { p.put("</tbody></table></div>\n") }

// cell puts a figure with its interval and n.
func (p *page) cell(i *Interval, format string, factor float64) {
	if i == nil || i.N == 0 {
		p.put("<td class=n>–</td>")
		return
	}
	p.put("<td>"+format+" <span class=n>["+format+", "+format+"] n %d</span></td>", factor*i.Value, factor*i.Low, factor*i.High, i.N)
}

// Page gives the whole page.
func (f *Figures) Page() []byte {
	p := &page{}
	title := html.EscapeString(words.Say("study.title", f.Title))
	p.put("<!doctype html>\n<html lang=en>\n<meta charset=utf-8>\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"+
		"<meta name=viewport content=\"width=device-width\">\n<title>%s</title>\n<style>%s</style>\n<h1>%s</h1>\n", title, pageStyle, title)
	p.text("p", f.What)
	p.text("p", words.Say("study.intervals"))
	f.pageOperators(p)
	f.pageCriteria(p)
	f.pageCritical(p)
	p.text("h2", words.Say("study.seed_head"))
	p.text("p", words.Say("study.seed", 100*f.Spread.Operator, 100*f.Spread.Seed, 100*f.Spread.Rest, f.Spread.Seeds))
	f.pageCohort(p)
	p.text("h2", words.Say("study.rules_head"))
	p.lines(f.Broken(), words.Say("study.rules_hold"))
	p.text("h2", words.Say("study.warnings_head"))
	p.lines(f.Warnings, words.Say("study.no_warnings"))
	p.text("p", words.Say("cli.caution"))
	return []byte(p.String())
}

func (p *page) lines(lines []string, none string) {
	if len(lines) == 0 {
		p.text("p", none)
		return
	}
	p.put("<ul class=bad>\n")
	for _, l := range lines {
		p.text("li", l)
	}
	p.put("</ul>\n")
}

func (f *Figures) pageOperators(p *page) {
	p.text("h2", words.Say("study.operators_head"))
	p.put("<div class=charts>\n")
	for i := range f.Operators {
		o := &f.Operators[i]
		p.put("<figure>%s<figcaption><b>%s</b>: %s</figcaption></figure>\n", histogram(o.Histogram, f.PassMark), html.EscapeString(o.Name), html.EscapeString(o.Failing))
	}
	p.put("</div>\n")
	p.head(words.Say("study.operator"), words.Say("study.passes"), words.Say("study.points"), "SD", words.Say("study.range"),
		words.Say("study.auc"), words.Say("study.recovery"), words.Say("study.matters"))
	for i := range f.Operators {
		o := &f.Operators[i]
		p.put("<tr><td>%s</td>", html.EscapeString(o.Name))
		p.cell(&o.Pass, "%.1f", 100)
		p.cell(&o.Points, "%.1f", 1)
		p.put("<td>%.1f</td><td>%.1f / %.1f / %.1f</td>", o.SD, o.Least, o.Median, o.Most)
		p.cell(o.AUC, "%.3f", 1)
		p.cell(&o.Recovery, "%.2f", 1)
		p.put("<td>%s</td></tr>\n", html.EscapeString(strings.Join(o.Matters, ", ")))
	}
	p.tail()
}

// histogram draws how often each band of five points was reached, with a line at the pass mark.
func histogram(counts [bins]int, mark float64) string {
	const width, height, base = 260.0, 110.0, 90.0
	most, all := 1, 0
	for _, n := range counts {
		most, all = max(most, n), all+n
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<svg viewBox="0 0 %g %g" role="img" aria-label="%s">`, width, height, html.EscapeString(words.Say("study.histogram", all)))
	step := width / bins
	for i, n := range counts {
		if n > 0 {
			h := 78 * float64(n) / float64(most)
			fmt.Fprintf(&b, `<rect x="%.1f" y="%.1f" width="%.1f" height="%.1f"><title>%d–%d: %d</title></rect>`, float64(i)*step+1, base-h, step-2, h, i*5, i*5+5, n)
		}
	}
	fmt.Fprintf(&b, `<line x1="0" y1="%g" x2="%g" y2="%g"/><line x1="%.1f" y1="6" x2="%.1f" y2="%g" stroke-dasharray="3 3"/>`, base, width, base, width*mark/100, width*mark/100, base)
	fmt.Fprintf(&b, `<text x="0" y="104">0</text><text x="%.1f" y="104" text-anchor="middle">%g</text><text x="%g" y="104" text-anchor="end">100</text><text x="0" y="10">n %d</text></svg>`,
		width*mark/100, mark, width, all)
	return b.String()
}

func (f *Figures) pageCriteria(p *page) {
	p.text("h2", words.Say("study.criteria_head"))
	p.text("p", words.Say("study.criteria_note"))
	cells := []string{words.Say("study.criterion"), words.Say("study.of"), words.Say("study.difficulty"), words.Say("study.correlation")}
	for i := range f.Operators {
		if name := f.Operators[i].Name; name != steady {
			cells = append(cells, words.Say("study.auc_of", name))
		}
	}
	p.head(cells...)
	for i := range f.Criteria {
		c := &f.Criteria[i]
		p.put("<tr><td>%s</td><td>%g</td>", html.EscapeString(c.Name), c.Of)
		p.cell(&c.Difficulty, "%.2f", 1)
		p.cell(c.Correlation, "%.2f", 1)
		for k := range c.AUC {
			if f.Operators[k].Name != steady {
				p.cell(&c.AUC[k], "%.2f", 1)
			}
		}
		p.put("</tr>\n")
	}
	p.tail()
}

func (f *Figures) pageCritical(p *page) {
	p.text("h2", words.Say("study.critical_head"))
	if len(f.Critical) == 0 {
		p.text("p", words.Say("study.no_critical"))
		return
	}
	cells := []string{""}
	for i := range f.Operators {
		cells = append(cells, f.Operators[i].Name)
	}
	p.head(cells...)
	for i := range f.Critical {
		p.put("<tr><td>%s</td>", html.EscapeString(f.Critical[i].Name))
		for k := range f.Critical[i].Share {
			p.cell(&f.Critical[i].Share[k], "%.1f", 100)
		}
		p.put("</tr>\n")
	}
	p.tail()
}

func (f *Figures) pageCohort(p *page) {
	c := f.Cohort
	if c == nil {
		return
	}
	p.text("h2", words.Say("study.cohort_head"))
	p.text("p", c.Note)
	if c.Pass == nil {
		return
	}
	p.put("<div class=charts><figure>%s</figure></div>\n", histogram(c.hist, f.PassMark))
	p.head(words.Say("study.passes"), words.Say("study.points"), words.Say("study.auc"))
	p.put("<tr>")
	p.cell(c.Pass, "%.1f", 100)
	p.cell(c.Points, "%.1f", 1)
	p.cell(c.AUC, "%.3f", 1)
	p.put("</tr>")
	p.tail()
	p.head(words.Say("study.criterion"), words.Say("study.difficulty"), words.Say("study.correlation"))
	for i := range c.Criteria {
		p.put("<tr><td>%s</td>", html.EscapeString(c.Criteria[i].Name))
		p.cell(&c.Criteria[i].Difficulty, "%.2f", 1)
		p.cell(c.Criteria[i].Correlation, "%.2f", 1)
		p.put("</tr>\n")
	}
	p.tail()
}
