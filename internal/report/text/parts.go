package textreport

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
)

// part is what one component, or one food poured directly, brings.
type part struct {
	id   assay.PartID
	name string
	assay.Figure
}

// partsOf gives the parts of a constituent: those with something known, largest
// first, and those of which nothing is known.
func partsOf(a *assay.Assay, id constituent.ID) (known, unknown []part) {
	for i := range a.Components {
		c := &a.Components[i]
		f, ok := c.Constituents.Find(id)
		switch {
		case !ok || empty(f.Result):
		case hollow(f.Result):
			unknown = append(unknown, part{c.ID, cleanPart(c.ID, c.Name), f})
		default:
			known = append(known, part{c.ID, cleanPart(c.ID, c.Name), f})
		}
	}
	slices.SortStableFunc(known, func(x, y part) int { return cmp.Compare(y.Mean, x.Mean) })
	return known, unknown
}

// hasShare reports whether a share of the total was calculated.
func hasShare(s assay.Share) bool { return !math.IsNaN(s.Mean) && s != assay.Share{} }

// The columns of a row of parts.
const (
	partIndent = 4
	shareWidth = 15
	barWidth   = 20
	percentOf  = 100
	tiny       = 0.5 // per cent: smaller shares are counted, not listed
)

// parts prints what the components bring to a constituent.
func (p *page) parts(known, unknown []part) {
	p.shares = true
	if len(known) == 1 {
		p.paragraph(partIndent, 2, allFrom(known[0], unknown))
		p.notKnownIn(unknown)
		return
	}
	left := 0
	names := fitParts(known, p.partWidth())
	for i, k := range known {
		if hasShare(k.Share) && k.Share.Mean*percentOf < tiny && !k.Partial && i > 0 {
			left++
			continue
		}
		p.part(k, names[i])
	}
	if left > 0 {
		p.line(strings.Repeat(" ", partIndent), fmt.Sprintf("and %d more under 1 %%", left))
	}
	p.notKnownIn(unknown)
}

// allFrom says that one component brings all there is, or all that is known.
func allFrom(k part, unknown []part) string {
	if len(unknown) > 0 || k.Partial {
		return "all that is known is from " + k.name
	}
	return "all from " + k.name
}

// partWidth is the room for the name of a part.
func (p *page) partWidth() int {
	return p.width - partIndent - numberWidth - 1 - unitWidth - shareWidth - 1 - barWidth
}

// part prints one component's part: amount, share with interval, bar.
func (p *page) part(k part, name string) {
	s := p.show(k.Result)
	share, bar := "", ""
	if hasShare(k.Share) {
		share, bar = percent(k.Share), p.bar(k.Share)
	}
	p.line(
		strings.Repeat(" ", partIndent), leaders(name, p.partWidth()),
		right(s.number, numberWidth), " ", left(s.unit, unitWidth), left(share, shareWidth), " ", p.accent(bar),
	)
}

// notKnownIn names the parts of which nothing is known.
func (p *page) notKnownIn(unknown []part) {
	if len(unknown) == 0 {
		return
	}
	list := make([]string, len(unknown))
	for i, u := range unknown {
		list[i] = u.name
		if most := p.bound(u.Result, 0); most != "" {
			list[i] += " (" + most + ")"
		}
	}
	p.paragraph(partIndent, 2, "not known in "+strings.Join(list, ", "))
}

// percent writes a share with its interval: "74 % (68–80)".
func percent(s assay.Share) string {
	mean := s.Mean * percentOf
	text := rounded(mean, 0) + glue + "%"
	switch {
	case mean < tiny:
		text = "<" + glue + "1" + glue + "%"
	case mean > percentOf-tiny && mean < percentOf:
		text = ">" + glue + "99" + glue + "%"
	}
	if in := span(s.Low*percentOf, s.High*percentOf, 0); in != "" {
		text += glue + "(" + in + ")"
	}
	return text
}

// bar draws a share: solid up to the low end of its interval, shaded to the
// high end.
func (p *page) bar(s assay.Share) string {
	p.bars = true
	solid := cells(s.Low)
	return strings.Repeat("█", solid) + strings.Repeat("▒", max(cells(s.High)-solid, 0))
}

func cells(share float64) int {
	return int(math.Round(min(max(share, 0), 1) * barWidth))
}
