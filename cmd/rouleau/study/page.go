package study

import (
	"fmt"
	"html"
	"strings"

	"rouleau/assets/words"
)

// This file writes the page of a study: one file that loads nothing and runs nothing, for a screen or for A4. What is told by
// a colour is told by a form or a number as well.

const pageStyle = `:root{color-scheme:light dark;--ink:#1b1f24;--soft:#56606b;--line:#cfd5db;--bar:#1f5f8f;--tint:31,95,143;--page:#fff;--note:#f2f5f8}
@media screen and (prefers-color-scheme:dark){:root{--ink:#e6e9ec;--soft:#a4aeb8;--line:#3a424b;--bar:#79b8e3;--tint:121,184,227;--page:#14181c;--note:#1d232a}}
*{box-sizing:border-box}body{font:15px/1.5 system-ui,sans-serif;color:var(--ink);background:var(--page);max-width:70rem;margin:2rem auto;padding:0 1rem}
h1{font-size:1.6rem;line-height:1.2;margin:0 0 1rem}h2{font-size:1.2rem;margin:2.2rem 0 .6rem}p{max-width:48rem}
.note{background:var(--note);border-left:4px solid var(--bar);padding:.6rem 1rem;margin:1rem 0}.note p{margin:.3rem 0}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:12.5px;line-height:1.3}
th,td{padding:.25rem .5rem;border-bottom:1px solid var(--line);text-align:right;vertical-align:top}thead th{vertical-align:bottom}
th:first-child,td:first-child{text-align:left}.words{text-align:left;max-width:14rem;overflow-wrap:anywhere}.wide{overflow-x:auto;margin:.6rem 0}
small{color:var(--soft);font-size:.85em;white-space:nowrap}td small{display:block}td[style] small{color:var(--ink)}.strong{font-weight:650}
.charts{display:grid;grid-template-columns:repeat(auto-fill,minmax(18rem,1fr));gap:1.4rem 1.6rem}figure{margin:0;break-inside:avoid}figcaption{font-size:13px;line-height:1.35}
svg{display:block;width:100%;height:auto}svg text{font:11px system-ui,sans-serif;fill:var(--soft)}svg .ink{fill:var(--ink)}
svg .bar{fill:var(--bar);stroke:var(--bar)}svg .hollow{fill:none;stroke:var(--bar)}svg .axis{stroke:var(--line)}svg .mark{stroke:var(--ink);stroke-dasharray:3 3}svg .span{stroke:var(--bar);stroke-width:2}
@page{size:A4;margin:12mm}
@media print{body{font-size:10pt;margin:0;padding:0;max-width:none}h2{break-after:avoid}tr,.note{break-inside:avoid}thead{display:table-header-group}
.wide{overflow:visible}table{font-size:7.2pt}th,td{padding:.12rem .24rem}.charts{grid-template-columns:repeat(3,1fr);gap:.8rem}figcaption{font-size:8pt}*{print-color-adjust:exact}}`

// page collects the text of the page.
type page struct{ strings.Builder }

func (p *page) put(format string, args ...any) { fmt.Fprintf(&p.Builder, format, args...) }

// text puts a text between tags.
func (p *page) text(tag, text string) { p.put("<%s>%s</%s>\n", tag, html.EscapeString(text), tag) }

// Page gives the whole page.
func (f *Figures) Page() []byte {
	p := &page{}
	title := html.EscapeString(words.Say("study.title", f.Title))
	p.put("<!doctype html>\n<html lang=en>\n<meta charset=utf-8>\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"+
		"<meta name=viewport content=\"width=device-width,initial-scale=1\">\n<title>%s</title>\n<style>%s</style>\n<h1>%s</h1>\n", title, pageStyle, title)
	p.put("<div class=note>\n")
	p.text("p", f.Verdict())
	p.lines(f.Broken(), "✗ ")
	p.lines(f.NotJudged(), "")
	p.put("</div>\n")
	p.text("p", f.What)
	f.pageOperators(p)
	p.text("h2", words.Say("study.recovery_head"))
	p.lines(f.Recovery.lines(), "")
	p.text("p", words.Say("study.recovery_published"))
	f.pageCriteria(p)
	f.pageCritical(p)
	f.pageSeed(p)
	f.pageCohort(p)
	p.text("h2", words.Say("study.warnings_head"))
	p.lines(f.Warnings, "⚠ ")
	if len(f.Warnings) == 0 {
		p.text("p", words.Say("study.no_warnings"))
	}
	p.text("h2", words.Say("study.methods_head"))
	p.text("p", words.Say("study.rules_are"))
	p.text("p", words.Say("study.intervals"))
	p.text("p", words.Say("cli.caution"))
	return []byte(p.String())
}

// lines puts a list with a sign before each line, and nothing where there is none.
func (p *page) lines(lines []string, sign string) {
	if len(lines) == 0 {
		return
	}
	p.put("<ul>\n")
	for _, l := range lines {
		p.text("li", sign+l)
	}
	p.put("</ul>\n")
}

func (f *Figures) pageOperators(p *page) {
	p.text("h2", words.Say("study.operators_head"))
	p.text("p", words.Say("study.histograms_note", f.PassMark))
	p.put("<div class=charts>\n")
	for i := range f.Operators {
		o := &f.Operators[i]
		p.put("<figure>%s<figcaption><b>%s</b>: %s %s</figcaption></figure>\n", histogram(o.Histogram, f.PassMark), html.EscapeString(o.Name),
			html.EscapeString(o.Failing), html.EscapeString(words.Say("study.passes_of", 100*o.Pass.Value, 100*o.Pass.Low, 100*o.Pass.High)))
	}
	p.put("</div>\n")
	var passes, apart []bar
	for i := range f.Operators {
		o := &f.Operators[i]
		passes = append(passes, bar{o.Name, &o.Pass})
		apart = append(apart, bar{o.Name, o.AUC})
	}
	p.put("<figure>%s<figcaption>%s</figcaption></figure>\n", spans(panel{words.Say("study.pass_share"), 0, 1, []float64{faultyPasses, steadyPasses}, passes}, panel{words.Say("study.auc"), 0, 1, []float64{partsWhole}, apart}),
		html.EscapeString(words.Say("study.limits_note")))
	p.head(words.Say("study.operator"), "n", words.Say("study.passes"), words.Say("study.points"), words.Say("study.deviation"), words.Say("study.range"),
		words.Say("study.auc"), words.Say("study.recovery"), words.Say("study.matters"))
	for i := range f.Operators {
		o := &f.Operators[i]
		p.put("<tr><td>%s</td><td>%d</td>", html.EscapeString(o.Name), o.N)
		p.cell(&o.Pass, "%.1f", 100)
		p.cell(&o.Points, "%.1f", 1)
		p.cell(&o.SD, "%.2f", 1)
		p.put("<td>%.1f–%.1f</td>", o.Least, o.Most)
		p.cell(o.AUC, "%.3f", 1)
		p.cell(&o.Recovery, "%.2f", 1)
		p.put("<td class=words>%s</td></tr>\n", html.EscapeString(strings.Join(o.Matters, ", ")))
	}
	p.tail()
}

// pageSeed says what the seed does to the points.
func (f *Figures) pageSeed(p *page) {
	p.text("h2", words.Say("study.seed_head"))
	p.text("p", words.Say("study.seed", f.Spread.Seeds))
	p.head(words.Say("study.share_of_variance"), words.Say("study.with_interval", f.Spread.Seeds))
	for _, line := range [...]struct {
		name  string
		share *Interval
	}{{words.Say("study.seed_who"), &f.Spread.Operator}, {words.Say("study.seed_seed"), &f.Spread.Seed}, {words.Say("study.seed_rest"), &f.Spread.Rest}} {
		p.put("<tr><td>%s</td>", html.EscapeString(line.name))
		p.cell(line.share, "%.1f", 100)
		p.put("</tr>\n")
	}
	p.tail()
}
