package textreport

import "sipsum/internal/sheet"

// houseRules prints the answer to each line of house rules: the verdict first, why, and what would
// settle it.
func (p view) houseRules() {
	if p.s.House == nil {
		return
	}
	h := p.s.House
	p.heading("House rules")
	p.paragraph(marginWidth, 2, Clean(h.Rules.From, mostProse)+" ("+Clean(h.Rules.File, mostName)+")")
	for _, l := range h.Lines {
		p.strong(marginWidth, 2, string(l.Verdict)+": "+Clean(l.Rule, mostProse))
		for _, text := range append([]string{l.Why}, l.Settle...) {
			if text != "" {
				p.paragraph(partIndent, 2, Clean(text, mostProse))
			}
		}
	}
	for _, text := range h.Remarks {
		p.paragraph(marginWidth, 2, Clean(text, mostProse))
	}
}

// house is the line of a brief that counts the answers to house rules.
func (p briefly) house(s *sheet.Sheet) []entry {
	text := sheet.HouseInShort(s)
	if text == "" {
		return nil
	}
	return []entry{p.cut("House", mustStand, askEvidence, "rules: "+Clean(text, mostProse))}
}
