package study

import (
	"fmt"
	"html"
	"math"
	"strings"

	"rouleau/assets/words"
)

// This file puts the tables of criteria, of what is never made up for, and of people on the page.

// head puts the head of a table; the keys are literal so that a test finds who says them.
func (p *page) head(cells ...string) {
	p.put("<div class=wide><table><thead><tr>")
	for _, c := range cells {
		p.put("<th scope=col>%s</th>", strings.ReplaceAll(html.EscapeString(c), " n ", " n&nbsp;"))
	}
	p.put("</tr></thead><tbody>\n")
}

func (p *page) tail() { p.put("</tbody></table></div>\n") }

// cell puts a figure over its interval; n stands in the row or in the head of the column.
func (p *page) cell(i *Interval, format string, factor float64) { p.shaded(i, format, factor, 0) }

// shaded is a cell with a tint of 0 to 1 behind it.
func (p *page) shaded(i *Interval, format string, factor, tint float64) {
	if i == nil || i.N == 0 {
		p.put("<td>–</td>")
		return
	}
	style := ""
	if tint > 0 {
		style = fmt.Sprintf(" style=\"background:rgba(var(--tint),%.2f)\"", tint)
	}
	p.put("<td%s>"+format+"<small>"+format+" – "+format+"</small></td>", style, factor*i.Value, factor*i.Low, factor*i.High)
}

func (f *Figures) pageCriteria(p *page) {
	p.text("h2", words.Say("study.criteria_head"))
	p.text("p", words.Say("study.criteria_note"))
	var hard, rest []bar
	n, cells := 0, []string{words.Say("study.criterion"), words.Say("study.of")}
	for i := range f.Criteria {
		c := &f.Criteria[i]
		hard = append(hard, bar{c.Name, &c.Difficulty})
		rest = append(rest, bar{c.Name, c.Correlation})
		n = max(n, c.Difficulty.N)
	}
	if len(hard) > 0 {
		p.put("<figure>%s<figcaption>%s</figcaption></figure>\n", spans(panel{words.Say("study.difficulty_n", n), 0, 1, nil, hard}, panel{words.Say("study.correlation_n", n), -1, 1, nil, rest}),
			html.EscapeString(words.Say("study.spans_note")))
	}
	cells = append(cells, words.Say("study.difficulty_n", n), words.Say("study.correlation_n", n))
	for i := range f.Operators {
		if o := &f.Operators[i]; o.Name != steady && o.AUC != nil {
			cells = append(cells, words.Say("study.auc_of", o.Name, o.AUC.N))
		}
	}
	p.head(cells...)
	for i := range f.Criteria {
		c := &f.Criteria[i]
		p.put("<tr><td>%s</td><td>%g</td>", html.EscapeString(c.Name), c.Of)
		p.cell(&c.Difficulty, "%.2f", 1)
		p.cell(c.Correlation, "%.2f", 1)
		for k := range c.AUC {
			if o := &f.Operators[k]; o.Name != steady && o.AUC != nil {
				p.shaded(&c.AUC[k], "%.2f", 1, 0.35*math.Abs(2*c.AUC[k].Value-1))
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
		cells = append(cells, words.Say("study.named_n", f.Operators[i].Name, f.Operators[i].N))
	}
	p.head(cells...)
	for i := range f.Critical {
		p.put("<tr><td>%s</td>", html.EscapeString(f.Critical[i].Name))
		for k := range f.Critical[i].Share {
			share := &f.Critical[i].Share[k]
			p.shaded(share, "%.1f", 100, 0.35*share.Value)
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
	p.head("n", words.Say("study.passes"), words.Say("study.points"), words.Say("study.deviation_people"), words.Say("study.auc_people"))
	p.put("<tr><td>%d</td>", c.N)
	p.cell(c.Pass, "%.1f", 100)
	p.cell(c.Points, "%.1f", 1)
	p.cell(c.SD, "%.2f", 1)
	p.cell(c.AUC, "%.3f", 1)
	p.put("</tr>")
	p.tail()
	if len(c.Criteria) == 0 {
		p.text("p", words.Say("study.cohort_no_criteria"))
		return
	}
	p.head(words.Say("study.criterion"), "n", words.Say("study.difficulty"), words.Say("study.correlation"), words.Say("study.auc_people_of"))
	for i := range c.Criteria {
		p.put("<tr><td>%s</td><td>%d</td>", html.EscapeString(c.Criteria[i].Name), c.Criteria[i].N)
		p.cell(c.Criteria[i].Difficulty, "%.2f", 1)
		p.cell(c.Criteria[i].Correlation, "%.2f", 1)
		p.cell(c.Criteria[i].AUC, "%.2f", 1)
		p.put("</tr>\n")
	}
	p.tail()
	if len(c.Critical) > 0 {
		p.head(words.Say("study.critical_head"), words.Say("study.named_n", words.Say("study.cohort_head"), c.N))
		for i := range c.Critical {
			p.put("<tr><td>%s</td>", html.EscapeString(c.Critical[i].Name))
			p.cell(&c.Critical[i].Share, "%.1f", 100)
			p.put("</tr>\n")
		}
		p.tail()
	}
}
