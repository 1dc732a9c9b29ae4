package textreport

import (
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// atLength prints what stands beside a card of its own.
func (p cards) atLength(c *label.Card) {
	p.claims(c)
	p.notes(c)
}

// shortly prints what stands beside a card among other things.
func (p cards) shortly(c *label.Card) {
	p.notComplete(c)
	p.claimNames(c)
}

// claims prints the nutrition claims of a card, in a few words those that are only near.
func (p cards) claims(c *label.Card) {
	allowed, near := sheet.Claims(c)
	status := map[string]bool{}
	for _, k := range allowed {
		text := "claim " + claimName(k) + ": allowed, " + Clean(k.Why, mostProse)
		if k.Disclosure != "" {
			text += "; print with it: " + Clean(k.Disclosure, mostProse)
		}
		p.paragraph(marginWidth, 2, text)
		status[k.Status] = true
	}
	var names []string
	for _, k := range near {
		names = append(names, claimName(k)+" ("+Clean(k.Short, mostProse)+")")
		status[k.Status] = true
	}
	if len(names) > 0 {
		p.paragraph(marginWidth, 2, "not allowed, but near: "+strings.Join(names, ", "))
	}
	for _, s := range statuses {
		if status[s.status] {
			p.paragraph(marginWidth, 2, s.sign+" "+s.says)
		}
	}
}

// claimName quotes a claim, with the sign of its legal reference.
func claimName(k label.Claim) string {
	name := "“" + Clean(k.Claim, mostName) + "”"
	for _, s := range statuses {
		if s.status == k.Status {
			name += " " + s.sign
		}
	}
	return name
}

// statuses are of legal references that nobody has read in an official text: the sign of a
// claim, and what it says.
var statuses = []struct{ status, sign, says string }{
	{"secondary", "‡", "the condition of the claim was read in a secondary source: check the official text"},
	{"unverified", "‡‡", "the condition of the claim is unverified, check the official text"},
}

// claimNames names the claims that are allowed.
func (p cards) claimNames(c *label.Card) {
	allowed, _ := sheet.Claims(c)
	var names []string
	for _, k := range allowed {
		names = append(names, "“"+Clean(k.Claim, mostName)+"”")
	}
	if len(names) > 0 {
		p.hanging("  – ", bulletIndent, sheet.ClaimsAllowed+clean.Listed(names)+"; their conditions: see sipsum card")
	}
}
