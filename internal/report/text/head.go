package textreport

import (
	"fmt"
	"strconv"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/figure"
	"sipsum/internal/sheet"
)

// densityDigits: what matters of a density is how far it is from that of water.
const densityDigits = figure.DensityDigits

// head prints what the drink is: serving, density.
func (p view) head(kind string) {
	p.title(Clean(p.s.Assay.Drink.Name, mostName), kind)
	p.paragraph(0, 2, p.serving(p.s.Assay))
}

// serving says how large a serving is.
func (p view) serving(a *assay.Assay) string {
	d := a.Drink
	text := "One serving: "
	if d.Serves > 1 {
		text = "One of " + grouped(d.Serves) + " servings: "
	}
	text += p.sentence(a.Mass, "")
	wet := sheet.NoLiquid(a) == ""
	if wet {
		text += ", " + p.sentence(a.Volume, "")
	}
	if sheet.Foamy(a) {
		text += ", " + p.sentence(a.Filled, "with its foam")
	}
	if last := place(a.Density.Mean, a.Density.SD, densityDigits); wet && a.Density.Mean > 0 {
		text += ", " + rounded(a.Density.Mean, last) + " " + a.Density.Unit
		if d.At != nil {
			text += " at 20 °C"
		}
	}
	if d.At != nil {
		text += ", served at " + plain(d.At.Number) + " " + Clean(d.At.Unit, mostName)
	}
	if d.Glass != nil {
		text += ", in a glass of " + d.Glass.String()
	}
	return text + "."
}

// foot prints what made the page: of which tables, and how.
func foot(p *page, s *sheet.Sheet) {
	p.gap()
	p.line(p.accent(strings.Repeat("─", p.width)))
	for _, t := range s.Tables {
		name := sentences(t.Title)
		if t.Edition != "" {
			name = strings.TrimSuffix(name, ".") + ", edition " + Clean(t.Edition, mostName) + "."
		}
		p.hanging("table "+Clean(t.ID, mostName)+": ", 2, name)
	}
	made := fmt.Sprintf("%s · seed %d · %s draws", Clean(s.Program, mostName), s.Assay.Seed, grouped(s.Assay.Draws))
	if s.Proof != "" {
		made += " · proof " + s.Proof
	}
	p.hanging("", 2, made)
}

// grouped writes a count with a thin space between thousands; one of up to four
// digits has none (SI Brochure, 9th edition, 5.4.4).
func grouped(n int) string {
	const most = 9999
	if n <= most {
		return strconv.Itoa(n)
	}
	digits := strconv.Itoa(n)
	const group = 3
	for at := len(digits) - group; at > 0; at -= group {
		digits = digits[:at] + "\u2009" + digits[at:]
	}
	return digits
}
