package textreport

import "sipsum/internal/sheet"

// readings prints what was read, what the recipe expects and what is used, the readings
// that do not agree with the recipe first.
func (p view) readings() {
	read := p.s.Read()
	if read.None() {
		return
	}
	p.heading("Readings")
	for _, r := range read.Disagree {
		p.hanging("  ! ", bulletIndent, sheet.ReadingLine(r)+" – recipe and reading disagree: "+Clean(r.Advice, mostProse))
	}
	for _, text := range read.Notes {
		p.hanging("  ! ", bulletIndent, Clean(text, mostProse))
	}
	for _, r := range read.Agree {
		p.hanging("  – ", bulletIndent, sheet.ReadingLine(r))
	}
}

// contradicting says which readings contradict their recipe, on a page that tells no others.
func contradicting(p *page, s *sheet.Sheet) {
	lines := sheet.Contradictions(s)
	if len(lines) > 0 {
		p.gap()
	}
	for _, text := range lines {
		p.hanging("  ! ", bulletIndent, Clean(text, mostProse))
	}
}
