package textreport

// claims prints the claims of a drink, each with what checks it and its verdict in one line, and in which world it
// would be false.
func (p view) claims() {
	if len(p.s.Said) == 0 {
		return
	}
	p.heading("Claims")
	for _, c := range p.s.Said {
		p.hanging("“", 1, Clean(c.Say, mostProse)+"”")
		p.paragraph(partIndent, 2, "checked: "+Clean(c.Check, mostProse))
		p.paragraph(partIndent, 2, Clean(c.Line(), mostProse))
		for _, line := range c.Lines() {
			p.paragraph(partIndent, 2, Clean(line, mostProse))
		}
	}
}
